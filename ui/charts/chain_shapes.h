// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainterPath>
#include <QPointF>
#include <QPolygonF>
#include <vector>

#include "core/parts/chain_path.h"

/// The parts of a chain run as painter paths, in metres, y up.
namespace layshaft::ui {

QPointF point(const ChainPoint& p);

QPainterPath outlineOf(const ChainSize& size, int teeth);  ///< of a sprocket round the origin, with its bore
QPainterPath pulleyOf(double radiusM);                     ///< a belt's pulley: a rim on the pitch circle
QPainterPath pitchLine(const ChainPath& path);
/// What the link plates cover: the pitch line, `width` metres wide. To be filled by the odd-even rule; a wide
/// pen along the pitch line costs half as much again.
QPainterPath platesOf(const ChainPath& path, double width);
/// The rollers once the chain has moved on by `travel` pitches. Each on its own: in one path together they
/// cost four times as much to fill.
std::vector<QPolygonF> rollersOf(const ChainPath& path, int links, double travel, double radiusM);

}  // namespace layshaft::ui
