// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/track_preview.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/charts/steady_range.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

constexpr double kPreviewMargin = 22.0;  // px, for names at the edge
constexpr double kFarAway = 40.0;        // px: a name there would be another corner's

QPolygonF polygonOf(const TrackLine& line) {
  QPolygonF points;
  for (const TrackPlace& place : line.places) points << QPointF(place.xM, place.yM);
  return points;
}

/// Where a name may stand beside its place, best first.
std::vector<QRectF> placesAround(const QPointF& at, const QSizeF& size) {
  const double w = size.width(), h = size.height(), x = at.x(), y = at.y();
  std::vector<QRectF> places;
  for (const double gap : {6.0, 11.0, 18.0})
    for (const QPointF& corner :
         {QPointF(x + gap, y - h / 2), QPointF(x - gap - w, y - h / 2), QPointF(x - w / 2, y + gap),
          QPointF(x - w / 2, y - gap - h), QPointF(x + gap, y + gap), QPointF(x - gap - w, y - gap - h),
          QPointF(x + gap, y - gap - h), QPointF(x - gap - w, y + gap)})
      places.emplace_back(corner, size);
  return places;
}

}  // namespace

TrackPreview::TrackPreview(QWidget* parent) : QWidget(parent) {
  exposeReadablePictures();
  setAccessibleName(tr("Map of the track"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void TrackPreview::show(const TrackLine& line, const std::vector<NamedPlace>& names, const QString& words,
                        const UnitsShown& units) {
  line_ = line;
  names_ = names;
  units_ = units;
  setAccessibleDescription(words);
  update();
}

QTransform TrackPreview::toPixels() const {
  const QRectF bounds = polygonOf(line_).boundingRect();
  const QRectF room = QRectF(rect()).adjusted(kPreviewMargin, kPreviewMargin, -kPreviewMargin,
                                              -kPreviewMargin - fontMetrics().height());
  const double scale =
      std::min(room.width() / std::max(bounds.width(), 1.0), room.height() / std::max(bounds.height(), 1.0));
  QTransform transform;
  transform.translate(room.center().x(), room.center().y());
  transform.scale(scale, -scale);
  transform.translate(-bounds.center().x(), -bounds.center().y());
  return transform;
}

void TrackPreview::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const ChartPalette colours(palette());
  painter.fillRect(rect(), colours.background);
  if (line_.places.size() < 2) {
    painter.setPen(colours.mutedText);
    painter.drawText(rect().adjusted(8, 8, -8, -8), Qt::AlignCenter | Qt::TextWordWrap, emptyWords_);
    return;
  }
  const QPolygonF points = toPixels().map(polygonOf(line_));
  if (line_.closingGapM) {
    QPen missing(colours.warning, 1.5, Qt::DotLine);
    painter.setPen(missing);
    painter.drawLine(points.back(), points.front());
  }
  QPen road(colours.proposed, 2.5);
  road.setJoinStyle(Qt::RoundJoin);
  painter.setPen(road);
  painter.drawPolyline(points);
  paintStart(painter, colours);
  paintNames(painter, colours);
  paintScale(painter, colours);
}

/// A stroke across the start, and an arrow on the way from it.
void TrackPreview::paintStart(QPainter& painter, const ChartPalette& colours) const {
  constexpr double kHalf = 9.0, kArrow = 9.0, kAhead = 8.0;
  const TrackPlace& start = line_.places.front();
  const QPointF at = toPixels().map(QPointF(start.xM, start.yM));
  const QPointF along(std::cos(start.headingRad), -std::sin(start.headingRad)), across(-along.y(), along.x());
  painter.setPen(QPen(colours.text, 2, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(at - kHalf * across, at + kHalf * across);
  const QPointF foot = at + 1.3 * kHalf * across, tip = foot + kAhead * along;
  painter.setPen(QPen(colours.text, 1.4));
  painter.drawLine(foot, tip);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colours.text);
  painter.drawPolygon(
      QPolygonF{tip + kArrow * along, tip + 0.45 * kArrow * across, tip - 0.45 * kArrow * across});
  painter.setBrush(Qt::NoBrush);
}

void TrackPreview::paintNames(QPainter& painter, const ChartPalette& colours) const {
  if (names_.empty()) return;  // a recorded line has thousands of pieces and no names
  const QTransform transform = toPixels();
  LabelSpace space(QRectF(rect()).adjusted(2, 2, -2, -2.0 - fontMetrics().height()));
  const QPolygonF points = transform.map(polygonOf(line_));
  for (qsizetype i = 0; i + 1 < points.size(); ++i) space.avoid(QPolygonF{points[i], points[i + 1]});
  const QFontMetricsF metrics(font());
  painter.setPen(colours.text);
  for (const NamedPlace& named : names_) {
    const TrackPlace place = placeAt(line_, named.distanceM);
    const QPointF at = transform.map(QPointF(place.xM, place.yM));
    const QString text = metrics.elidedText(named.name, Qt::ElideRight, width() / 3.0);
    const QSizeF size(std::ceil(metrics.horizontalAdvance(text)), std::ceil(metrics.height()));
    const auto free = space.put(placesAround(at, size));
    if (!free) continue;
    const QPointF off = free->center() - at;
    if (std::hypot(off.x(), off.y()) > kFarAway + size.width() / 2.0) continue;
    painter.drawText(*free, Qt::AlignCenter, text);
  }
}

/// How long a stretch of a round length is.
void TrackPreview::paintScale(QPainter& painter, const ChartPalette& colours) const {
  const double pxPerShown = toPixels().m11() * units_.si(Quantity::Length, 1.0);
  constexpr double kShareOfWidth = 0.16, kTick = 4.0, kEdge = 8.0;
  const double length = roundRange(0.0, std::max(kShareOfWidth * width() / pxPerShown, 1e-6), 1).step;
  const QPointF left(kEdge, height() - kEdge), right = left + QPointF(length * pxPerShown, 0.0);
  painter.setPen(QPen(colours.mutedText, 1));
  painter.drawPolyline(QPolygonF{left - QPointF(0, kTick), left, right, right - QPointF(0, kTick)});
  painter.drawText(right + QPointF(kTick, 0.0), units_.withUnit(number(length, 0), Quantity::Length));
}

std::vector<NamedPlace> namedPlaces(const Track& track, const TrackLine& line) {
  std::vector<NamedPlace> names;
  for (std::size_t i = 0; i < line.begins.size() && i < track.segments.size(); ++i) {
    const TrackSegment& segment = track.segments[i];
    const QString name = shownName(segment.name);
    const bool bend = segment.radiusM || segment.angleDeg || segment.cornerSpeedKmh;
    if (!bend || name.isEmpty()) continue;
    const std::size_t next = i + 1 < line.begins.size() ? line.begins[i + 1] : line.places.size() - 1;
    names.push_back({(line.places[line.begins[i]].distanceM + line.places[next].distanceM) / 2.0, name});
  }
  return names;
}

}  // namespace layshaft::ui
