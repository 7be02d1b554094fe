// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/study/road_model.h"

namespace layshaft {

/// A point of a curve over road speed. The acceleration is what the force leaves for it before any bound; 0
/// where the resistance is not known.
struct PullPoint {
  double speedMps, forceN, accelerationMps2;
  /// The line that leads here lies beyond the torque curve's last point, where the torque is assumed.
  bool assumed = false;
};

/// Force at the wheel as it is drawn: a curve per gear, the one that a run follows, and what stands against
/// it.
struct PullCurves {
  std::vector<std::vector<PullPoint>> gears;
  std::vector<PullPoint> followed;    ///< slipping clutch, then gear by gear from shift to shift
  std::vector<PullPoint> shifts;      ///< where they shift, in the gear left
  std::vector<PullPoint> resistance;  ///< with slope and wind; empty where not known
  std::vector<PullPoint> grip, lift;  ///< the bounds, as force at the contact patch; empty without one
};

/// Few points, at every place where a curve changes form: lines through them are true to the eye.
PullCurves pullCurves(const RoadModel& model);

}  // namespace layshaft
