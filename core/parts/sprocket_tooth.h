// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/parts/chain.h"
#include "core/parts/sprocket_body.h"

namespace layshaft {

/// Radius on which the rollers of a chain ride that is so much longer than new, m: each link spans one tooth,
/// and so its pitch is a side of the polygon of N equal sides, p·(1 + e)/(2·sin(π/N)). A longer chain climbs
/// the teeth. Geometry.
double ridingRadiusM(const ChainSize& size, int teeth, double elongationPercent);

/// How far that is above a new chain's pitch circle, m.
double rideOutM(const ChainSize& size, int teeth, double elongationPercent);

/// How far the flanks of teeth are cut back for a picture of teeth as worn as their chain, m: half of how far
/// its rollers ride out, by which rollers sink back against a flank that leans 30° (sin 30° = ½). An
/// assumption: how fast teeth wear beside their chain differs with material, dirt and lubrication.
double flankLossM(const ChainSize& size, int teeth, double elongationPercent);

/// The outline of `sprocketOutline` with each tooth's loaded flank, the one that follows a seat
/// counter-clockwise, cut back by `lossM` along the pitch circle; less at the tip, which therefore overhangs
/// as a hook. `lossM` is 0 to a quarter of the pitch; what is beyond is taken as that.
std::vector<ChainPoint> wornSprocketOutline(const ChainSize& size, int teeth, double lossM);

}  // namespace layshaft
