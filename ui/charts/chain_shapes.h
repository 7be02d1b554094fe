// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainterPath>
#include <QPointF>

#include "core/parts/chain_path.h"

/// The parts of a chain run as painter paths, in metres, y up.
namespace layshaft::ui {

QPointF point(const ChainPoint& p);

QPainterPath outlineOf(const ChainSize& size, int teeth);  ///< of a sprocket round the origin, with its bore
QPainterPath pulleyOf(double radiusM);                     ///< a belt's pulley: a rim on the pitch circle
QPainterPath pitchLine(const ChainPath& path);
/// All rollers in one path, for a call for each costs several times as much, once the chain has moved on by
/// `travel` pitches.
QPainterPath rollersOf(const ChainPath& path, int links, double travel, double radiusM);

}  // namespace layshaft::ui
