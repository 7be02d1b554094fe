// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/pull_along.h"

namespace layshaft {

/// The pull in one gear from a speed on, as far up as anybody has asked yet. The forces depend on speed
/// alone, so every run that uses the gear above that speed rides along one track, only later and further down
/// the road. Keeps a pointer to its model.
class PullTrack {
 public:
  /// `gear` may be a slipping clutch.
  PullTrack(const RoadModel& model, std::size_t gear, double fromMps);

  std::size_t gear() const { return gear_; }
  double fromMps() const { return fromMps_; }
  /// Where a speed is reached, counted from the track's beginning; none if the pull runs out below it or the
  /// gear does not turn so fast.
  std::optional<RunPlace> atSpeed(double mps);
  /// Where a distance is reached; none if the pull does not get there below `mostMps`.
  std::optional<RunPlace> atDistance(double metres, double mostMps);
  /// Where it has become as fast as it can.
  RunPlace end();
  /// Whether the end is the speed at which nothing is left to accelerate; else the gear turns no faster.
  bool runsOut();

 private:
  void extend(double mostMps, double untilM);

  const RoadModel* model_;
  std::size_t gear_;
  double fromMps_;
  RunPlace reached_;
  bool ranOut_ = false;
  std::vector<RunLeg> legs_;
};

}  // namespace layshaft
