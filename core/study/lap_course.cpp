// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_course.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include "core/defaults.h"
#include "core/units.h"

namespace layshaft {
namespace {

/// What a piece of a track says of itself.
struct Piece {
  double lengthM = 0.0;
  double curvaturePerM = 0.0;
  std::optional<double> cornerMps;  ///< in place of the curvature
  double slopePercent = 0.0;
  std::optional<Surface> surface;
};

Piece pieceOf(const TrackSegment& segment) {
  Piece piece{.lengthM = segment.lengthM.value_or(0.0),
              .curvaturePerM = 0.0,
              .cornerMps = {},
              .slopePercent = segment.slopePercent.value_or(defaults::kSlopePercent),
              .surface = segment.surface};
  if (segment.radiusM) {
    piece.curvaturePerM = 1.0 / *segment.radiusM;
    if (segment.angleDeg) piece.lengthM = *segment.radiusM * units::radiansFromDegrees(*segment.angleDeg);
  } else if (segment.cornerSpeedKmh) {
    piece.cornerMps = units::mpsFromKmh(*segment.cornerSpeedKmh);
  }
  return piece;
}

Piece pieceOf(const TrackPath& path, std::size_t i) {
  return {.lengthM = path.spacingM,
          .curvaturePerM = std::abs(path.curvaturePerKm[i]) / 1000.0,
          .cornerMps = {},
          .slopePercent = path.slopePercent.empty() ? defaults::kSlopePercent : path.slopePercent[i],
          .surface = {}};
}

/// Puts the pieces of a track on the roads of a ride.
class Paver {
 public:
  Paver(const Bike& bike, const Ride& ride, const Track& track, double gripFactor, LapCourse& course)
      : bike_(bike),
        ride_(ride),
        cornerShare_(track.cornerSharePercent.value_or(defaults::kCornerSharePercent) / 100.0),
        gripFactor_(gripFactor),
        course_(course) {
    if (track.maxLeanDeg) mostTan_ = std::tan(units::radiansFromDegrees(*track.maxLeanDeg));
  }

  void add(const Piece& piece, std::size_t segment) {
    const std::size_t index = roadIndex(piece);
    const Road& road = course_.roads[index];
    const double down = units::kStandardGravityMps2 * std::cos(road.slopeRad);
    double lateral = cornerShare_ * road.grip.value_or(1.0) * down;
    if (mostTan_) lateral = std::min(lateral, down * *mostTan_);
    LapStretch stretch{.lengthM = piece.lengthM,
                       .curvaturePerM = piece.curvaturePerM,
                       .lateralMps2 = lateral,
                       .bendMps = std::numeric_limits<double>::infinity(),
                       .limitMps = kFastestMps,
                       .road = index,
                       .segment = segment};
    if (piece.cornerMps) {
      stretch.curvaturePerM = lateral / (*piece.cornerMps * *piece.cornerMps);
      stretch.bendMps = *piece.cornerMps;
    } else if (piece.curvaturePerM > 0.0) {
      stretch.bendMps = std::sqrt(lateral / piece.curvaturePerM);
    }
    stretch.limitMps = std::min(stretch.bendMps, kFastestMps);
    course_.stretches.push_back(stretch);
  }

 private:
  std::size_t roadIndex(const Piece& piece) {
    const Surface surface = piece.surface.value_or(ride_.surface.value_or(Surface::Asphalt));
    const auto [known, isNew] = known_.try_emplace({surface, piece.slopePercent}, course_.roads.size());
    if (!isNew) return known->second;
    auto level = level_.find(surface);
    if (level == level_.end()) {
      Ride there = ride_;
      there.surface = surface;
      level = level_.emplace(surface, roadOf(bike_, there)).first;
      if (level->second.grip) *level->second.grip *= gripFactor_;
    }
    Road road = level->second;
    road.slopeRad = std::atan(piece.slopePercent / 100.0);
    course_.roads.push_back(road);
    return known->second;
  }

  const Bike& bike_;
  const Ride& ride_;
  double cornerShare_;
  double gripFactor_;
  std::optional<double> mostTan_;
  LapCourse& course_;
  std::map<Surface, Road> level_;
  std::map<std::pair<Surface, double>, std::size_t> known_;
};

}  // namespace

LapCourse lapCourse(const Bike& bike, const Ride& ride, const Track& track, double gripFactor) {
  LapCourse course;
  course.closed = track.closed.value_or(false);
  course.startMps = units::mpsFromKmh(track.startSpeedKmh.value_or(0.0));
  course.brakeShare = track.brakeSharePercent.value_or(defaults::kBrakeSharePercent) / 100.0;
  Paver paver(bike, ride, track, gripFactor, course);
  if (track.path) {
    const std::size_t count = track.path->curvaturePerKm.size();
    course.stretches.reserve(count);
    for (std::size_t i = 0; i < count; ++i) paver.add(pieceOf(*track.path, i), i);
  } else {
    course.segments = track.segments.size();
    for (std::size_t i = 0; i < track.segments.size(); ++i) paver.add(pieceOf(track.segments[i]), i);
  }
  // Without grip nobody knows how fast a bend is, nor how hard the brakes may be.
  const bool gripKnown = std::all_of(course.roads.begin(), course.roads.end(),
                                     [](const Road& road) { return road.grip.has_value(); });
  if (!gripKnown) course.lacks.emplace_back("bike.chassis.tyre_grip");
  return course;
}

}  // namespace layshaft
