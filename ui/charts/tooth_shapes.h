// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainterPath>
#include <QPixmap>
#include <QPointF>
#include <vector>

#include "core/bike/records.h"
#include "core/parts/chain.h"
#include "ui/charts/palette.h"

/// A few teeth of a sprocket, for pictures of how they wear: in metres, y down, the middle gap of the row
/// straight above the origin, the front of the bike to the left.
namespace layshaft::ui {

/// The sprocket's outline round the origin, its loaded flanks cut back by `lossM`.
QPainterPath toothPath(const ChainSize& size, int teeth, double lossM);

/// Middles of the rollers in the gaps, from `first` to `last` counted to the right from the middle one.
std::vector<QPointF> rollersOn(int teeth, double radiusM, int first, int last);

/// A small drawing of teeth as a mechanic sees them, `height` px high.
QPixmap teethSeenPixmap(TeethSeen seen, int height, double pixelRatio, const ChartPalette& colours);

}  // namespace layshaft::ui
