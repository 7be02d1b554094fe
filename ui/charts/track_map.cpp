// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/track_map.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/words/lap_words.h"
#include "ui/words/picture_words.h"

namespace layshaft::ui {
namespace {

constexpr double kMapMargin = 26.0;  // px, for the names of corners at the edge
constexpr double kReach = 24.0;      // px, from the pointer to the line
constexpr double kMark = 5.0;        // px, half the size of the mark
constexpr double kKeySteps = 100.0;  // of a lap

}  // namespace

TrackMap::TrackMap(QWidget* parent) : PaintedPicture(parent) {
  setAccessibleName(tr("Map of the track"));
}

void TrackMap::show(const LapBook& book, const UnitsShown& units) {
  book_ = book;
  units_ = units;
  if (cut_ != book_.line) {
    cut_ = book_.line;
    pieces_ = cut_ ? trackPieces(*cut_) : std::vector<TrackPiece>();
    fit();
  }
  setAccessibleDescription(trackMapWords(book_, units_));
  repaintAll();
}

void TrackMap::setColouring(Colouring colouring) {
  colouring_ = colouring;
  repaintAll();
}

void TrackMap::mark(std::optional<double> distanceM) {
  if (marked_ == distanceM) return;
  marked_ = distanceM;
  update();
  if (hasFocus()) tellMovedCrosshair(*this);
}

void TrackMap::fit() {
  if (pieces_.empty()) return;
  QRectF bounds(pieces_.front().from, QSizeF(0, 0));
  for (const TrackPiece& piece : pieces_) {
    bounds.setLeft(std::min(bounds.left(), piece.to.x()));
    bounds.setRight(std::max(bounds.right(), piece.to.x()));
    bounds.setTop(std::min(bounds.top(), piece.to.y()));
    bounds.setBottom(std::max(bounds.bottom(), piece.to.y()));
  }
  const double foot = 2.0 * fontMetrics().height();
  const QRectF room = QRectF(rect()).adjusted(kMapMargin, kMapMargin, -kMapMargin, -foot - kMapMargin / 2.0);
  const double scale =
      std::min(room.width() / std::max(bounds.width(), 1.0), room.height() / std::max(bounds.height(), 1.0));
  toPixels_ = QTransform();
  toPixels_.translate(room.center().x(), room.center().y());
  toPixels_.scale(scale, -scale);
  toPixels_.translate(-bounds.center().x(), -bounds.center().y());
}

std::optional<QPointF> TrackMap::positionOf(double distanceM) const {
  if (pieces_.empty() || distanceM < 0.0 || distanceM > cut_->lengthM) return std::nullopt;
  const TrackPlace place = placeAt(*cut_, distanceM);
  return toPixels_.map(QPointF(place.xM, place.yM));
}

std::optional<double> TrackMap::nearest(const QPointF& position) const {
  std::optional<double> found;
  double least = kReach * kReach;
  for (const TrackPiece& piece : pieces_) {
    const QPointF a = toPixels_.map(piece.from), along = toPixels_.map(piece.to) - a;
    const double square = QPointF::dotProduct(along, along);
    const double share =
        square > 0.0 ? std::clamp(QPointF::dotProduct(position - a, along) / square, 0.0, 1.0) : 0.0;
    const QPointF off = a + share * along - position;
    const double distance = QPointF::dotProduct(off, off);
    if (distance >= least) continue;
    least = distance;
    found = piece.fromM + share * (piece.toM - piece.fromM);
  }
  return found;
}

void TrackMap::paintMoving(QPainter& painter) const {
  const auto place = marked_ ? positionOf(*marked_) : std::nullopt;
  if (!place) return;
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colours().text, 2));
  painter.setBrush(colours().background);
  painter.drawEllipse(*place, kMark, kMark);
}

void TrackMap::paint(QPainter& painter) const {
  TrackPainting({.book = book_,
                 .units = units_,
                 .colours = colours(),
                 .colouring = colouring_,
                 .pieces = pieces_,
                 .toPixels = toPixels_,
                 .size = size(),
                 .font = font()})
      .paint(painter);
}

QString TrackMap::pictureHeading() const {
  return book_.plan ? ui::pictureHeading(*book_.plan) : QString();
}

QString TrackMap::pictureCaption() const {
  if (!book_.plan) return {};
  return ui::pictureCaption(*book_.plan, true) + QLatin1Char(' ') + lapHonesty(*book_.plan);
}

void TrackMap::point(std::optional<double> distanceM) {
  mark(distanceM);
  emit pointedAt(distanceM);
}

void TrackMap::mouseMoveEvent(QMouseEvent* event) {
  if (book_.laps()) point(nearest(event->position()));
}

void TrackMap::leaveEvent(QEvent* event) {
  QWidget::leaveEvent(event);
  point(std::nullopt);
}

void TrackMap::keyPressEvent(QKeyEvent* event) {
  if (!book_.laps()) return QWidget::keyPressEvent(event);
  const double step = book_.lengthM / kKeySteps, from = marked_.value_or(0.0);
  switch (event->key()) {
    case Qt::Key_Left:
      return point(std::max(0.0, from - step));
    case Qt::Key_Right:
      return point(marked_ ? std::min(book_.lengthM, from + step) : 0.0);
    case Qt::Key_Home:
      return point(0.0);
    case Qt::Key_End:
      return point(book_.lengthM);
    case Qt::Key_Escape:
      if (marked_) return point(std::nullopt);
      break;
    default:
      break;
  }
  QWidget::keyPressEvent(event);
}

void TrackMap::focusOutEvent(QFocusEvent* event) {
  PaintedPicture::focusOutEvent(event);
  if (!underMouse()) point(std::nullopt);
}

std::optional<ReadablePicture::CrosshairSpan> TrackMap::crosshairSpan() const {
  if (!book_.laps()) return std::nullopt;
  const double length = units_.shown(Quantity::Length, book_.lengthM);
  return CrosshairSpan{0.0, length, length / kKeySteps};
}

std::optional<double> TrackMap::crosshairAt() const {
  return marked_ ? std::optional(units_.shown(Quantity::Length, *marked_)) : std::nullopt;
}

void TrackMap::moveCrosshair(double x) {
  point(std::clamp(units_.si(Quantity::Length, x), 0.0, book_.lengthM));
}

QString TrackMap::crosshairWords() const {
  return marked_ && book_.laps() ? placeWords(book_, *marked_, units_) : QString();
}

}  // namespace layshaft::ui
