// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>

#include "core/study/road_model.h"
#include "core/study/speed_sums.h"

namespace layshaft {

/// Where something stands on its way: seconds and metres from the start, and how fast it is.
struct RunPlace {
  double timeS = 0.0, distanceM = 0.0, speedMps = 0.0;
};

/// A piece of a run between two places on which one formula holds: a pull on one stretch of speed, the gap of
/// a shift, or a speed that is held to the end.
struct RunLeg {
  enum class Kind { Pull, Coast, Hold };
  Kind kind;
  std::size_t gear;  ///< of the model, the slipping clutch's too
  PullModel::Stretch on;
  RunPlace start, end;  ///< a hold never ends
  bool limiter;         ///< held by the rev limiter

  // `model` is the one that the leg was made with. None where the leg does not get there.
  std::optional<RunPlace> atSpeed(const RoadModel& model, double speedMps) const;
  std::optional<RunPlace> atDistance(const RoadModel& model, double distanceM) const;
  std::optional<RunPlace> atTime(const RoadModel& model, double timeS) const;
  /// Of a pull only.
  RunPlace pulledTo(const RoadModel& model, double speedMps) const;
};

/// The gap of a shift out of a gear: coasting for the bike's shift time.
RunLeg shiftLeg(const RoadModel& model, std::size_t gear, const RunPlace& start);
/// Staying at a speed in a gear.
RunLeg holdLeg(std::size_t gear, const RunPlace& start, bool limiter);

/// Seconds and metres of a pull from one speed to another on a stretch: t = ∫dv/a and x = ∫v·dv/a.
using PullSums = SpeedSums;
PullSums pullSums(const PullModel& model, const PullModel::Stretch& on, std::size_t gear, double fromMps,
                  double toMps);

}  // namespace layshaft
