// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/track.h"
#include "core/study/road.h"

namespace layshaft {

/// A piece of a track on which bend, slope and surface stay the same.
struct LapStretch {
  double lengthM;
  double curvaturePerM;  ///< 0 on a straight
  double lateralMps2;    ///< what a bend may ask of the tyre across the road, or the lean across the bike
  double bendMps;        ///< the speed at which that is all used up; infinite on a straight
  double limitMps;       ///< the same, `kFastestMps` at most
  std::size_t road;      ///< of the course
  std::size_t segment;   ///< of the track; of a recorded path the stretch itself
};

/// Faster than anything on two wheels: no road holds anybody back below it.
inline constexpr double kFastestMps = 1000.0;

/// A track as a bike meets it in its ride, the same for whatever gearing: in SI, with what the surfaces and
/// the rider's shares of the grip allow.
struct LapCourse {
  std::vector<LapStretch> stretches;
  std::vector<Road> roads;
  bool closed = false;
  double startMps = 0.0;     ///< of an open track
  double brakeShare = 1.0;   ///< of what grip and rear wheel allow
  std::size_t segments = 0;  ///< how many the track names; 0 of a recorded path
  /// Keys of the profile without which there is no lap.
  std::vector<std::string_view> lacks;
};

/// Total. Slopes that a track leaves open are level, surfaces the ride's. `gripFactor` is on the grip of
/// every surface.
LapCourse lapCourse(const Bike& bike, const Ride& ride, const Track& track, double gripFactor = 1.0);

}  // namespace layshaft
