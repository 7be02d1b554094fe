// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPolygonF>
#include <QRectF>
#include <optional>
#include <vector>

/// Where words stand in a picture so that none covers another, px.
namespace layshaft::ui {

/// A line of a chart, from left to right, and the size of its name.
struct NamedLine {
  QPolygonF line;
  QSizeF name;
};

/// The room for words in a picture, which are put down one after another, the most important first.
class LabelSpace {
 public:
  /// No word leaves `bounds`.
  explicit LabelSpace(const QRectF& bounds) : bounds_(bounds) {}

  /// Something stands there that no word may cover.
  void take(const QRectF& box) { taken_.push_back(box); }
  /// A line on which a word should not lie if there is another place for it.
  void avoid(const QPolygonF& line);

  /// The free place among `places` that the fewest lines cross, of equal ones the first; where none of them
  /// is free, the nearest to the first that is. It is taken from then on. None where there is no room at all.
  std::optional<QRectF> put(const std::vector<QRectF>& places);

  int crossings(const QRectF& place) const;  ///< how many lines cross it

 private:
  struct Line {
    QPolygonF points;
    QRectF bounds;
  };
  bool isFree(const QRectF& place) const;
  QRectF inside(QRectF place) const;
  std::optional<QRectF> nearestFree(const QRectF& wanted) const;

  QRectF bounds_;
  std::vector<QRectF> taken_;
  std::vector<Line> lines_;
};

/// Places for a line's name, best first: above it and below it at its right end, then further to the left.
std::vector<QRectF> placesAlong(const NamedLine& named, const QRectF& plot);

}  // namespace layshaft::ui
