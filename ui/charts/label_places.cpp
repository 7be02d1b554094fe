// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/label_places.h"

#include <algorithm>
#include <limits>

namespace layshaft::ui {
namespace {

constexpr double kFromEnd = 4.0;  // px between a name and the right end of its line
constexpr double kApart = 8.0;    // px between two labels

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

QRectF nameClearOf(const NamedLine& named, bool below, const QRectF& plot, const QRectF& taken) {
  const QRectF place =
      nameBeside(named, std::min(named.line.back().x(), plot.right()) - kFromEnd, below, plot);
  return place.intersects(taken) ? nameBeside(named, taken.left() - kApart, below, plot) : place;
}

}  // namespace

std::vector<QRectF> lineNamePlaces(const std::vector<NamedLine>& lines, const QRectF& plot,
                                   const QRectF& taken) {
  std::vector<QRectF> places(lines.size());
  std::vector<std::size_t> downwards(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) downwards[i] = i;
  std::stable_sort(downwards.begin(), downwards.end(), [&](std::size_t a, std::size_t b) {
    return lines[a].line.back().y() < lines[b].line.back().y();
  });
  for (std::size_t n = 0; n < downwards.size(); ++n) {
    const NamedLine& named = lines[downwards[n]];
    QRectF place = nameClearOf(named, false, plot, taken);
    for (std::size_t before = 0; before < n; ++before) {
      const QRectF& higher = places[downwards[before]];
      if (!place.intersects(higher)) continue;
      place = nameClearOf(named, true, plot, taken);
      if (place.intersects(higher)) place.moveTop(higher.bottom());
    }
    places[downwards[n]] = place;
  }
  return places;
}

QRectF clearOf(const QRectF& label, const QRectF& other, double steep, const QRectF& bounds) {
  if (!label.intersects(other)) return label;
  const double away = other.right() + kApart - label.left();
  const QRectF aside = label.translated(away, steep * away);
  if (aside.right() <= bounds.right() && aside.top() >= bounds.top()) return aside;
  QRectF above = label;
  above.moveBottom(other.top() - kApart / 2.0);
  return above;
}

}  // namespace layshaft::ui
