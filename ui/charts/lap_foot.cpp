// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/lap_foot.h"

#include <algorithm>
#include <cmath>

#include "ui/charts/thinned_line.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kRibbon = 4.0;       // px, of a bend
constexpr double kGap = 2.0;          // px, between gears
constexpr int kOdd = 70, kEven = 35;  // alpha of neighbouring gears
constexpr double kAirBetweenNames = 6.0;

}  // namespace

void LapFoot::paint(QPainter& painter) const {
  double top = place_.area.top();
  paintCorners(painter, top);
  top += place_.layout.names;
  paintWon(painter, top);
  top += place_.layout.won;
  for (std::size_t i = 0; i < book_.setups.size() && i < look_.pens.size(); ++i) {
    paintGears(painter, top, book_.setups[i], look_.pens[i]);
    top += place_.layout.gear;
  }
}

void LapFoot::text(QPainter& painter, const QRectF& area, Qt::Alignment alignment, const QString& text,
                   const QColor& colour, bool bold) const {
  painter.setPen(colour);
  look_.texts.draw(painter, bold ? look_.boldFont : look_.font, area, alignment, text);
}

/// Bends as bars on the road, their names below as far as they stand free; the slower a corner the sooner it
/// gets its name.
void LapFoot::paintCorners(QPainter& painter, double top) const {
  const double road = top + kRibbon / 2.0;
  painter.fillRect(QRectF(place_.xAt(0.0), road - 0.5, place_.xAt(book_.lengthM) - place_.xAt(0.0), 1.0),
                   look_.colours.line);
  struct Name {
    const LapPart* part;
    double slowness;
  };
  std::vector<Name> names;
  for (std::size_t i = 0; i < book_.parts.size(); ++i) {
    const LapPart& part = book_.parts[i];
    if (part.bend) {
      const double left = place_.xAt(part.fromM);
      painter.fillRect(QRectF(left, top, std::max(place_.xAt(part.toM) - left, 2.0), kRibbon),
                       look_.colours.mutedText);
    }
    if (part.bend) names.push_back({&part, partFigures(book_, book_.proposed(), i).minMps});
  }
  std::stable_sort(names.begin(), names.end(),
                   [](const Name& a, const Name& b) { return a.slowness < b.slowness; });
  std::vector<QRectF> taken;
  const double height = place_.layout.names - kRibbon;
  for (const Name& name : names) {
    const double width = look_.texts.width(look_.font, name.part->name);
    const double middle = (place_.xAt(name.part->fromM) + place_.xAt(name.part->toM)) / 2.0;
    const double left =
        std::clamp(middle - width / 2.0, 0.0, std::max(0.0, place_.area.right() - width - 2.0));
    const QRectF box(left, top + kRibbon, width, height);
    const QRectF wide = box.adjusted(-kAirBetweenNames, 0, kAirBetweenNames, 0);
    if (std::any_of(taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(wide); }))
      continue;
    taken.push_back(box);
    text(painter, box, Qt::AlignLeft, name.part->name, look_.colours.text);
  }
}

void LapFoot::paintWon(QPainter& painter, double top) const {
  const double bottom = top + place_.layout.won - 3.0, high = top + 3.0;
  const AxisRange& range = place_.won;
  const auto yAt = [&](double won) {
    return bottom - (won - range.low) / (range.high - range.low) * (bottom - high);
  };
  const double line = QFontMetricsF(look_.font).height();
  double lastLabel = bottom + 2.0 * line;
  for (const double tick : ticks(range)) {
    const bool zero = std::abs(tick) < range.step / 2.0;
    const double y = yAt(tick);
    painter.fillRect(QRectF(place_.left, y - 0.5, place_.right - place_.left, 1.0),
                     zero ? look_.colours.line : look_.colours.grid);
    if (lastLabel - y < line * 0.9) continue;
    lastLabel = y;
    const double middle = std::clamp(y, top + line / 2.0, top + place_.layout.won - line / 2.0);
    text(painter, QRectF(0, middle - line / 2.0, place_.left - 5.0, line), Qt::AlignRight,
         zero ? number(0.0, 0) : signedNumber(tick, range.step < 0.1 ? 2 : 1), look_.colours.mutedText);
  }
  painter.save();
  painter.setClipRect(QRectF(place_.left, top, place_.right - place_.left, place_.layout.won),
                      Qt::IntersectClip);
  // Stock is the zero line. The proposal lies above the pins.
  std::vector<std::size_t> order;
  for (std::size_t i = 2; i < book_.setups.size(); ++i) order.push_back(i);
  order.push_back(1);
  for (const std::size_t i : order) {
    if (i >= book_.setups.size() || i >= look_.pens.size()) continue;
    QPolygonF won;
    for (const LapDifference& difference : book_.setups[i].later)
      won << QPointF(place_.xAt(difference.distanceM), yAt(-difference.laterS));
    painter.setPen(look_.pens[i]);
    painter.drawPolyline(thinnedLine(won));
  }
  painter.restore();
  QRectF title(place_.left + 6.0, high, look_.texts.width(look_.font, wonTitle()), line);
  // In the corner at the left that the proposal leaves free.
  const auto isUnderTitle = [&](const LapDifference& difference) {
    const double x = place_.xAt(difference.distanceM);
    return x <= title.right() && yAt(-difference.laterS) <= title.bottom() + 2.0;
  };
  const auto& later = book_.proposed().later;
  if (std::any_of(later.begin(), later.end(), isUnderTitle)) title.moveBottom(bottom);
  constexpr int kPatchAlpha = 225;  // a line under words is still seen
  painter.fillRect(title, faint(look_.colours.background, kPatchAlpha));
  text(painter, title, Qt::AlignLeft, wonTitle(), look_.colours.mutedText);
}

QString LapFoot::wonTitle() {
  return tr("Won against stock, s");
}

/// A row of boxes, each a gear; of the limiter what is on it.
void LapFoot::paintGears(QPainter& painter, double top, const LapOfSetup& lap, const QPen& pen) const {
  const QRectF row(place_.left, top + 1.0, place_.right - place_.left, place_.layout.gear - 2.0);
  text(painter, QRectF(0, row.top(), place_.left - 5.0, row.height()), Qt::AlignRight,
       teethPair(lap.setup->setup), look_.colours.words(pen.color()));
  const auto& points = lap.points;
  for (std::size_t i = 0; i + 1 < points.size();) {
    std::size_t end = i + 1;
    while (end + 1 < points.size() && points[end].gear == points[i].gear) ++end;
    const double left = place_.xAt(points[i].distanceM), right = place_.xAt(points[end].distanceM);
    if (points[i].gear && right > left) {
      const QRectF box(left, row.top(), std::max(right - left - kGap, 1.0), row.height());
      painter.fillRect(box, faint(pen.color(), *points[i].gear % 2 == 0 ? kEven : kOdd));
      const QString gear = number(*points[i].gear, 0);
      if (box.width() > look_.texts.width(look_.boldFont, gear) + 2.0)
        text(painter, box, Qt::AlignHCenter, gear, look_.colours.text, true);
    }
    i = end;
  }
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    if (!points[i].limiter || !points[i + 1].limiter) continue;
    const double left = place_.xAt(points[i].distanceM), right = place_.xAt(points[i + 1].distanceM);
    painter.fillRect(QRectF(left, row.bottom() - 2.0, right - left, 3.0), look_.colours.warning);
  }
}

}  // namespace layshaft::ui
