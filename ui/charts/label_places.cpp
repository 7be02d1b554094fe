// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/label_places.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace layshaft::ui {
namespace {

constexpr double kFromEnd = 4.0;  // px between a name and the right end of its line

/// Highest and lowest level of a line between two places across.
struct Levels {
  double top = std::numeric_limits<double>::infinity(), bottom = -top;
};

Levels levelsBetween(const QPolygonF& line, double left, double right) {
  Levels levels;
  const auto take = [&](double y) {
    levels.top = std::min(levels.top, y);
    levels.bottom = std::max(levels.bottom, y);
  };
  for (qsizetype i = 1; i < line.size(); ++i) {
    const QPointF a = line[i - 1], b = line[i];
    const double from = std::max(left, a.x()), to = std::min(right, b.x());
    if (from > to) continue;
    const auto level = [&](double x) {
      return b.x() > a.x() ? a.y() + (b.y() - a.y()) * (x - a.x()) / (b.x() - a.x()) : b.y();
    };
    take(level(from));
    take(level(to));
  }
  if (levels.top > levels.bottom) take(line.back().y());
  return levels;
}

/// Above its line or below it, across where `right` is its right end.
QRectF nameBeside(const NamedLine& named, double right, bool below, const QRectF& plot) {
  const double left = std::max(right - named.name.width(), plot.left());
  QRectF place(QPointF(left, 0), named.name);
  const Levels levels = levelsBetween(named.line, place.left(), place.right());
  if (below)
    place.moveTop(std::min(levels.bottom + 1, plot.bottom() - place.height()));
  else
    place.moveBottom(std::max(levels.top - 1, plot.top() + 2 + place.height()));
  return place;
}

/// Whether the straight line from `a` to `b` touches the box.
bool touches(const QRectF& box, const QPointF& a, const QPointF& b) {
  if (std::max(a.x(), b.x()) < box.left() || std::min(a.x(), b.x()) > box.right() ||
      std::max(a.y(), b.y()) < box.top() || std::min(a.y(), b.y()) > box.bottom())
    return false;
  if (box.contains(a) || box.contains(b)) return true;
  // It passes the box by where all corners lie on one side of it.
  const QPointF along = b - a;
  const auto side = [&](const QPointF& corner) {
    return along.x() * (corner.y() - a.y()) - along.y() * (corner.x() - a.x());
  };
  const double sides[] = {side(box.topLeft()), side(box.topRight()), side(box.bottomLeft()),
                          side(box.bottomRight())};
  const auto [low, high] = std::minmax_element(std::begin(sides), std::end(sides));
  return *low <= 0.0 && *high >= 0.0;
}

}  // namespace

void LabelSpace::avoid(const QPolygonF& line) {
  if (line.size() > 1) lines_.push_back({line, line.boundingRect().adjusted(-1, -1, 1, 1)});
}

bool LabelSpace::isFree(const QRectF& place) const {
  return std::none_of(taken_.begin(), taken_.end(), [&](const QRectF& box) { return box.intersects(place); });
}

int LabelSpace::crossings(const QRectF& place) const {
  return static_cast<int>(std::count_if(lines_.begin(), lines_.end(), [&](const Line& line) {
    if (!line.bounds.intersects(place)) return false;
    for (qsizetype i = 1; i < line.points.size(); ++i)
      if (touches(place, line.points[i - 1], line.points[i])) return true;
    return false;
  }));
}

QRectF LabelSpace::inside(QRectF place) const {
  place.moveLeft(
      std::clamp(place.left(), bounds_.left(), std::max(bounds_.left(), bounds_.right() - place.width())));
  place.moveTop(
      std::clamp(place.top(), bounds_.top(), std::max(bounds_.top(), bounds_.bottom() - place.height())));
  return place;
}

std::optional<QRectF> LabelSpace::nearestFree(const QRectF& wanted) const {
  std::optional<QRectF> best;
  double least = std::numeric_limits<double>::infinity();
  const double across = std::max(4.0, wanted.width() / 3.0), down = std::max(4.0, wanted.height() / 3.0);
  for (double top = bounds_.top(); top + wanted.height() <= bounds_.bottom(); top += down)
    for (double left = bounds_.left(); left + wanted.width() <= bounds_.right(); left += across) {
      const double away = std::hypot(left - wanted.left(), top - wanted.top());
      const QRectF place(QPointF(left, top), wanted.size());
      if (away >= least || !isFree(place)) continue;
      least = away;
      best = place;
    }
  return best;
}

std::optional<QRectF> LabelSpace::put(const std::vector<QRectF>& places) {
  if (places.empty() || places.front().width() > bounds_.width() ||
      places.front().height() > bounds_.height())
    return std::nullopt;
  std::optional<QRectF> best;
  int fewest = std::numeric_limits<int>::max();
  for (const QRectF& wanted : places) {
    const QRectF place = inside(wanted);
    if (!isFree(place)) continue;
    const int crossed = crossings(place);
    if (crossed >= fewest) continue;
    fewest = crossed;
    best = place;
    if (crossed == 0) break;
  }
  if (!best) best = nearestFree(inside(places.front()));
  if (best) take(*best);
  return best;
}

std::vector<QRectF> placesAlong(const NamedLine& named, const QRectF& plot) {
  std::vector<QRectF> places;
  const double end = std::min(named.line.back().x(), plot.right()) - kFromEnd;
  const double start = std::max(named.line.front().x(), plot.left()) + named.name.width();
  for (double right = end; right == end || right >= start; right -= named.name.width() / 2.0)
    for (const bool below : {false, true}) places.push_back(nameBeside(named, right, below, plot));
  return places;
}

}  // namespace layshaft::ui
