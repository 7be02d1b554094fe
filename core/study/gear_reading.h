// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/study/rollout.h"

namespace layshaft {

/// What a rev counter shows at a road speed in one gear.
struct GearReading {
  double rpm;
  double speedMps;  ///< true road speed, not what a speedometer shows
};

/// The ratio of the gear that a reading was taken in: i = n·C(v) / (v · primary · final), with the rollout C
/// as it has grown at that speed. `speedMps`, `primaryRatio` and `finalRatio` are above zero; with a primary
/// ratio of 1 the real one is folded into the gear's.
double gearRatioOf(const GearReading& reading, const Rollout& rollout, double primaryRatio,
                   double finalRatio);

}  // namespace layshaft
