// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPolygonF>

namespace layshaft::ui {

/// A line through fewer of its points, both ends among them, that passes all others within `px` of their
/// height: nobody sees the difference, and a painter has less to join. `line` goes to the right, or straight
/// up or down.
QPolygonF thinnedLine(const QPolygonF& line, double px = 0.2);

}  // namespace layshaft::ui
