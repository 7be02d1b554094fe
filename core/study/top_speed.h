// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/study/pull.h"

namespace layshaft {

struct GearPull {
  int gear;  ///< 1 is first
  double peakForceN;
  double peakForceSpeedMps;  ///< the lowest at which it is
};

struct TopSpeed {
  double speedMps;
  int gear;
  std::optional<LimitedBy> limitedBy;  ///< none where only the gearing is known
};

/// The greatest force in each gear from the torque curve's first point to the rev limit, unbounded. A tyre
/// that grows with speed moves it below the engine speed of the greatest torque.
std::vector<GearPull> peakPull(const PullModel& model);

/// The greatest speed over all gears that the pull can hold, of gears equal to 1e-9 in the highest; none if
/// no gear pulls anywhere.
std::optional<TopSpeed> topSpeed(const PullModel& model);

}  // namespace layshaft
