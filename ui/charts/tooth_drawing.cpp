// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/tooth_drawing.h"

#include <QContextMenuEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/parts/sprocket_tooth.h"
#include "core/units.h"
#include "ui/charts/tooth_shapes.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {
namespace {

constexpr double kPitchesAcross = 7.0;   // at most, of the picture's width
constexpr double kPitchesUpright = 3.0;  // at most, of its height
constexpr double kPlateWidth = 0.95;     // of the roller
constexpr int kPlateAlpha = 60;

}  // namespace

ToothDrawing::ToothDrawing(QWidget* parent) : QWidget(parent), colours_(palette()) {
  exposeReadablePictures();
  setAccessibleName(tr("Drawing of the teeth"));
}

void ToothDrawing::show(const WearBook& book, const UnitsShown& units) {
  book_ = book;
  units_ = units;
  describe();
}

void ToothDrawing::setElongation(double percent) {
  elongationPercent_ = percent;
  describe();
}

void ToothDrawing::setView(View view) {
  view_ = view;
  describe();
}

void ToothDrawing::describe() {
  if (book_ && book_->size)
    setAccessibleDescription(toothDrawingWords(*book_, elongationPercent_, view_ == View::NewChain, units_));
  update();
}

void ToothDrawing::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) colours_ = ChartPalette(palette());
}

void ToothDrawing::contextMenuEvent(QContextMenuEvent* event) {
  emit menuRequested(event->globalPos());
}

void ToothDrawing::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paint(painter);
}

void ToothDrawing::renderInto(QPainter& painter, const QRectF& target) {
  paintScaled(painter, target, size(), [this](QPainter& scaled) { paint(scaled); });
}

void ToothDrawing::paint(QPainter& painter) const {
  painter.fillRect(rect(), colours_.background);
  if (!book_ || !book_->size) return;
  painter.setRenderHint(QPainter::Antialiasing);
  const double line = QFontMetricsF(font()).height();
  const QString caption = toothDrawingCaption(*book_, elongationPercent_, view_ == View::NewChain, units_);
  const double lines = QFontMetricsF(font()).horizontalAdvance(caption) > width() - 8 ? 2.0 : 1.0;
  const QRectF area = QRectF(rect()).adjusted(0, line / 2.0, 0, -(lines + 0.4) * line);
  const double pitch = units::metresFromMillimetres(book_->size->pitchMm);
  const double scale =
      std::max(area.width() / (kPitchesAcross * pitch), area.height() / (kPitchesUpright * pitch));
  // So that the longest chain's rollers are still in the picture.
  constexpr double kTop = 1.0;  // pitches above the pitch circle
  const double radius = ridingRadiusM(*book_->size, book_->rearTeeth, 0.0);
  QTransform toPixels;
  toPixels.translate(area.center().x(), area.top() + scale * (radius + kTop * pitch));
  toPixels.scale(scale, scale);
  painter.save();
  painter.setClipRect(area, Qt::IntersectClip);
  paintTeeth(painter, toPixels);
  paintChain(painter, toPixels);
  painter.restore();
  painter.setPen(colours_.text);
  painter.drawText(QRectF(4, area.bottom() + 0.2 * line, width() - 8, lines * line),
                   Qt::AlignHCenter | Qt::TextWordWrap, caption);
}

void ToothDrawing::paintTeeth(QPainter& painter, const QTransform& toPixels) const {
  const ChainSize& size = *book_->size;
  const double loss = view_ == View::NewChain ? flankLossM(size, book_->rearTeeth, elongationPercent_) : 0.0;
  painter.setPen(QPen(colours_.line, 1));
  painter.setBrush(colours_.grid);
  painter.drawPath(toPixels.map(toothPath(size, book_->rearTeeth, loss)));
  painter.setBrush(Qt::NoBrush);
  // What was there when it was new, and where a new chain's rollers ride.
  painter.setPen(QPen(colours_.stock, 1, Qt::DashLine));
  if (loss > 0.0) painter.drawPath(toPixels.map(toothPath(size, book_->rearTeeth, 0.0)));
  QPainterPath circle;
  const double radius = ridingRadiusM(size, book_->rearTeeth, 0.0);
  circle.addEllipse(QPointF(0, 0), radius, radius);
  painter.drawPath(toPixels.map(circle));
}

void ToothDrawing::paintChain(QPainter& painter, const QTransform& toPixels) const {
  const ChainSize& size = *book_->size;
  const int teeth = book_->rearTeeth;
  constexpr int kEachWay = 6;
  const double percent = view_ == View::WornChain ? elongationPercent_ : 0.0;
  const auto rollers = rollersOn(teeth, ridingRadiusM(size, teeth, percent), -kEachWay, kEachWay);
  const double roller = toPixels.m11() * units::metresFromMillimetres(size.rollerDiameterMm);
  QPen plate(faint(colours_.proposed, kPlateAlpha), kPlateWidth * roller);
  plate.setCapStyle(Qt::RoundCap);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(plate);
  // Every other link has its plates outside.
  for (std::size_t i = 1; i < rollers.size(); i += 2)
    painter.drawLine(toPixels.map(rollers[i - 1]), toPixels.map(rollers[i]));
  painter.setPen(QPen(colours_.proposed, 1.5));
  for (const QPointF& middle : rollers) {
    const QPointF at = toPixels.map(middle);
    painter.setBrush(colours_.background);
    painter.drawEllipse(at, roller / 2.0, roller / 2.0);
    painter.setBrush(colours_.proposed);
    painter.drawEllipse(at, roller / 10.0, roller / 10.0);
  }
  if (view_ == View::WornChain) return;
  // At the other end of its gap: what the chain can move to and fro.
  const double turn = flankLossM(size, teeth, elongationPercent_) / ridingRadiusM(size, teeth, 0.0);
  QTransform moved;
  moved.rotateRadians(-turn);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colours_.proposed, 1, Qt::DashLine));
  for (const QPointF& middle : rollers)
    painter.drawEllipse(toPixels.map(moved.map(middle)), roller / 2.0, roller / 2.0);
}

}  // namespace layshaft::ui
