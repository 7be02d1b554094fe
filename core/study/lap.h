// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/study/allowed_speed.h"
#include "core/study/road_model.h"

namespace layshaft {

/// A segment of a track as it is ridden.
struct LapSegment {
  double timeS;
  double entryMps, minMps, exitMps;
  /// At the lowest speed, of the pull in which it is or that follows; none where none follows.
  std::optional<int> gearAtMin;  ///< 1 is first
  std::optional<double> rpmAtMin;
};

/// A pull of a lap: from where it begins to where it meets the brakes or a bend's own speed.
struct LapPullFigures {
  double fromM, toM;  ///< from the start of the lap
  double fromMps, endMps;
  int firstGear, endGear;  ///< 1 is first
  double endRpm;
  double seconds;
};

/// A place on a lap, for drawing.
struct LapPoint {
  double distanceM, timeS, speedMps;
  std::optional<int> gear;  ///< none where nothing more is pulled: on the brakes any will do
  std::optional<double> rpm;
  bool limiter;
};

/// A lap in the least time that the gearing allows. Distances and times are from its start: of a closed track
/// where the allowed speed is lowest.
struct LapFigures {
  double timeS;
  double topMps;
  int shifts;
  double limiterS;                   ///< at the rev limiter or above
  double fullThrottleS;              ///< in pulls, the gaps of shifts left out
  std::vector<LapSegment> segments;  ///< in the order of the track; empty of a recorded path
  std::vector<LapPullFigures> pulls;
  std::vector<LapPoint> points;
};

/// Total; none where `allowed` is refused or lacks something, or where the bike stops for good. `model` must
/// accelerate. `crownShare` is of the setup's tyre.
std::optional<LapFigures> lap(const AllowedSpeed& allowed, const RoadModel& model, double crownShare);

/// The time alone, for who compares many setups.
std::optional<double> lapTimeS(const AllowedSpeed& allowed, const RoadModel& model, double crownShare);

/// Where a bike stops for good that for nothing else has no lap: the segment of the track, of a recorded path
/// the stretch. None where it laps.
std::optional<std::size_t> lapStop(const AllowedSpeed& allowed, const RoadModel& model, double crownShare);

/// By how much one lap is later than another at places of the track.
struct LapDifference {
  double distanceM, laterS;
};
/// At the points of both, rising; both must be of one track.
std::vector<LapDifference> lapDifference(const LapFigures& from, const LapFigures& to);

}  // namespace layshaft
