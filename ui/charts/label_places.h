// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPolygonF>
#include <QRectF>
#include <vector>

/// Where words stand in a picture so that none covers another, px.
namespace layshaft::ui {

/// A line of a chart, from left to right, and the size of its name.
struct NamedLine {
  QPolygonF line;
  QSizeF name;
};

/// Where each line's name stands: near the line's right end above it, clear of `taken`; where two names would
/// meet, that of the lower line stands below its line. All of them inside `plot` as far as there is room.
std::vector<QRectF> lineNamePlaces(const std::vector<NamedLine>& lines, const QRectF& plot,
                                   const QRectF& taken);

/// The place of a label that stands on a sloping line (`steep`: px down per px to the right): moved to the
/// right along the line until it is clear of `other`, or above `other` where it would leave `bounds` by that.
QRectF clearOf(const QRectF& label, const QRectF& other, double steep, const QRectF& bounds);

}  // namespace layshaft::ui
