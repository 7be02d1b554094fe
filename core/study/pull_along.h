// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

#include "core/study/run_leg.h"

namespace layshaft {

/// How far a pull goes.
struct PullGoal {
  double mostMps;                                           ///< a speed that it must not exceed
  double untilM = std::numeric_limits<double>::infinity();  ///< metres from the start of the whole run
  double untilMps = 0.0;                                    ///< goes on beyond `untilM` until it is this fast
};

/// Why a pull ended.
enum class PullEnd {
  Speed,     ///< as fast as it must be at most
  Distance,  ///< at the end of its way
  NoPull     ///< nothing is left to accelerate: it stays at this speed
};

/// A pull down a stretch of road in one gear.
struct Pulled {
  double timeS, distanceM, endMps;
  PullEnd end;
};

/// The pull to the end of a stretch of `lengthM` from a speed in a gear, which may be the slipping clutch,
/// not beyond `mostMps` nor what the gear can turn. At a speed that it cannot exceed it ends before the
/// stretch does; from one that is not below that it goes nowhere.
Pulled pullAlong(const RoadModel& model, std::size_t gear, double fromMps, double lengthM, double mostMps);

/// The same as part of a run: adds its legs to those of the run, from `place` on, which it moves to their
/// end. Ends with the leg on which the goal is passed.
PullEnd pullOn(const RoadModel& model, std::size_t gear, const PullGoal& goal, RunPlace& place,
               std::vector<RunLeg>& legs);

/// Whether a gear accelerates from a speed on: what holds just above it counts.
bool pullsAt(const PullModel& model, std::size_t gear, double mps);

/// The first speed from `fromMps` up to `toMps` at which a gear no longer accelerates; none if it always
/// does.
std::optional<double> pullRunsOut(const PullModel& model, std::size_t gear, double fromMps, double toMps);

}  // namespace layshaft
