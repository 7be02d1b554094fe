// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/chain_sketch.h"

#include <QPainter>
#include <algorithm>

#include "core/study/wear.h"
#include "ui/charts/palette.h"

namespace layshaft::ui {
namespace {

constexpr int kWidth = 64;        // characters of the font
constexpr double kHeight = 5.0;   // lines of the font
constexpr int kAround = 1;        // links that are drawn beyond either end
constexpr int kLeastLinkPx = 14;  // closer together their numbers could not be read
constexpr double kHead = 6.0;     // px

}  // namespace

ChainSketch::ChainSketch(const ChainSize& size, QWidget* parent) : QWidget(parent), size_(size), pitches_(0) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Sketch: how the chain is measured"));
  setPitches(kUsualPitches);
}

void ChainSketch::setPitches(int pitches) {
  pitches_ = pitches;
  setAccessibleDescription(
      tr("A straight run of chain; %n links are counted from the middle of one pin to the middle of another.",
         nullptr, pitches));
  update();
}

QSize ChainSketch::sizeHint() const {
  return {fontMetrics().averageCharWidth() * kWidth, qRound(fontMetrics().lineSpacing() * kHeight)};
}

void ChainSketch::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const ChartPalette colours(palette(), QPalette::Window);
  const double line = fontMetrics().lineSpacing();
  const double link = static_cast<double>(width()) / (pitches_ + 2 * kAround + 1);
  const double roller = link * size_.rollerDiameterMm / size_.pitchMm;
  const double middle = 1.2 * line + std::max(roller, 8.0) / 2.0;
  const auto pin = [&](int i) { return QPointF((i + kAround + 0.5) * link, middle); };
  QPen plate(faint(colours.text, 60), 0.9 * roller);
  plate.setCapStyle(Qt::RoundCap);
  painter.setPen(plate);
  for (int i = -kAround; i < pitches_ + kAround; i += 2) painter.drawLine(pin(i), pin(i + 1));
  painter.setPen(QPen(colours.line, 1));
  painter.setBrush(colours.background);
  for (int i = -kAround; i <= pitches_ + kAround; ++i)
    painter.drawEllipse(pin(i), roller / 2.0, roller / 2.0);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colours.proposed);
  for (const int i : {0, pitches_}) painter.drawEllipse(pin(i), roller / 4.0, roller / 4.0);
  // The links' numbers, as many as there is room for.
  painter.setPen(colours.mutedText);
  const int each = link >= kLeastLinkPx ? 1 : 5;
  for (int i = 1; i <= pitches_; ++i)
    if (i == 1 || i == pitches_ || i % each == 0)
      painter.drawText(QRectF((pin(i - 1).x() + pin(i).x()) / 2.0 - 20, 0, 40, line), Qt::AlignCenter,
                       QString::number(i));
  const double level = middle + roller / 2.0 + 0.55 * line;
  painter.setPen(QPen(colours.proposed, 2));
  painter.drawLine(QPointF(pin(0).x(), level), QPointF(pin(pitches_).x(), level));
  for (const int i : {0, pitches_}) {
    painter.setPen(QPen(colours.proposed, 1));
    painter.drawLine(pin(i), QPointF(pin(i).x(), level + 3));
    const double inwards = i == 0 ? kHead : -kHead;
    painter.setBrush(colours.proposed);
    painter.drawPolygon(QPolygonF{QPointF(pin(i).x(), level),
                                  QPointF(pin(i).x() + inwards, level - kHead / 2),
                                  QPointF(pin(i).x() + inwards, level + kHead / 2)});
  }
  painter.setPen(colours.text);
  painter.drawText(QRectF(0, level + 2, width(), line), Qt::AlignCenter,
                   tr("%n links, middle of pin to middle of pin", nullptr, pitches_));
}

}  // namespace layshaft::ui
