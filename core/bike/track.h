// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/bike/surface.h"
#include "core/extras.h"

namespace layshaft {

/// Which way a bend goes: for the map alone.
enum class Turn { Left, Right };

/// A straight or a corner as a mechanic knows it: a length alone is a straight; a bend has a radius with a
/// length or an angle, or a length and the speed through it.
struct TrackSegment {
  std::string name;
  std::optional<double> lengthM;
  std::optional<double> radiusM;
  std::optional<double> angleDeg;
  std::optional<double> cornerSpeedKmh;
  std::optional<double> slopePercent;  ///< positive uphill; level where not given
  std::optional<Surface> surface;      ///< the ride's where not given
  std::optional<Turn> turn;
  Extras extras;
  bool operator==(const TrackSegment&) const = default;
};

/// A line measured by a recording, cut into stretches of one length. All lists are as long as there are
/// stretches.
struct TrackPath {
  double spacingM = 0.0;
  std::vector<double> curvaturePerKm;  ///< positive to the left
  std::vector<double> slopePercent;    ///< empty where no height was recorded
  std::vector<double> xM, yM;          ///< where each stretch begins, in a local plane, x east and y north
  std::string source;                  ///< what it was read from
  /// What the noise of the fixes leaves in the curvature of a stretch (standard deviation), and over which
  /// length the line was smoothed: not known where it was not made from fixes.
  std::optional<double> curvatureNoisePerKm, smoothingM;
  Extras extras;
  bool operator==(const TrackPath&) const = default;
};

/// A path is thousands of numbers that nobody edits: profiles share it.
class SharedPath {
 public:
  SharedPath() = default;
  explicit SharedPath(TrackPath path) : path_(std::make_shared<const TrackPath>(std::move(path))) {}
  explicit operator bool() const { return path_ != nullptr; }
  const TrackPath& operator*() const { return *path_; }
  const TrackPath* operator->() const { return path_.get(); }
  bool operator==(const SharedPath& other) const {
    return path_ == other.path_ || (path_ && other.path_ && *path_ == *other.path_);
  }

 private:
  std::shared_ptr<const TrackPath> path_;
};

/// Where laps are ridden: segments as a mechanic knows them, or a path from a recording.
struct Track {
  std::string name;
  std::optional<bool> closed;  ///< open where not given
  std::optional<double> startSpeedKmh;
  std::optional<double> cornerSharePercent;
  std::optional<double> brakeSharePercent;
  std::optional<double> maxLeanDeg;
  std::vector<TrackSegment> segments;
  SharedPath path;
  Extras extras;
  bool operator==(const Track&) const = default;
};

/// Another pair of teeth for a gear, on hand.
struct SpareGearPair {
  int gear = 0;  ///< 1 is first; 0 the primary
  int driving = 0;
  int driven = 0;
  std::string note;
  Extras extras;
  bool operator==(const SpareGearPair&) const = default;
};

}  // namespace layshaft
