// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

#include "core/study/road_model.h"

namespace layshaft {

/// How a run is ridden: the gear it begins in and how often it shifts up, each time at the gear's shift
/// point. After the last shift the gear is held, to the limiter if it comes.
struct RunPlan {
  std::size_t gear = 0;  ///< counted from 0
  bool slips = false;    ///< begins with the clutch slipping at the launch engine speed
  int shifts = 0;

  static constexpr int kEveryShift = std::numeric_limits<int>::max();
  bool operator==(const RunPlan&) const = default;
};

/// The road speed at which a gear, in which a pull begins at `fromMps`, is left for the next: its shift
/// point; where the pull runs out below a typed one, the best one. None in the last gear.
std::optional<double> leavingMps(const RoadModel& model, std::size_t gear, double fromMps);

/// Whether a gear goes on from the speed at which the shift into it ends. A shift after which it does not is
/// in no plan.
bool takesOver(const RoadModel& model, std::size_t gear, double mps);

// How a run may begin. The shifts of what is given are left at none.

/// From a standstill: in first or second gear with the clutch slipping.
std::vector<RunPlan> standingStarts(const RoadModel& model);
/// At a speed: in every gear between idle, or the first point of the curve, and its shift point, and in first
/// with the clutch slipping below the launch engine speed, in second too from rest. If there is none, in the
/// highest gear that turns at least at idle and not above the limit.
std::vector<RunPlan> startsAt(const RoadModel& model, double mps);
/// At a speed in a gear that somebody chose, with the clutch slipping too where `startsAt` has that; none
/// below idle or above the limit.
std::vector<RunPlan> startsIn(const RoadModel& model, std::size_t gear, double mps);

}  // namespace layshaft
