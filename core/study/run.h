// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/pull_along.h"

namespace layshaft {

/// A place on a run.
struct RunPoint {
  double timeS;
  double distanceM;
  double speedMps;
  int gear;  ///< 1 is first; inside a shift the gear left
  double rpm;
  double limiterS;  ///< of the time, how long on the rev limiter
};

/// One shift of a run: where it begins and which gear is left.
struct RunShift {
  double timeS, distanceM, speedMps;
  int fromGear;
};

/// A run as it is drawn.
struct RunTrace {
  std::vector<RunPoint> points;
  std::vector<RunShift> shifts;
};

/// A full-throttle run from a speed in a gear: pulls from shift to shift. Speed rises monotonically in a gear
/// and the forces depend on speed alone, so time and distance are integrals over speed, between the speeds
/// where a force changes form. Keeps a pointer to its model.
class Run {
 public:
  enum class Clutch { Engaged, Slipping };

  /// Goes on until both `untilM` and `untilMps` are passed or the speed no longer rises. `stayInGear`: never
  /// shifts. `model` must accelerate. Gears count from 0.
  Run(const RoadModel& model, double fromMps, std::size_t gear, Clutch clutch, double untilM, double untilMps,
      bool stayInGear = false);

  /// Whether the bike moves at all: false if it does not accelerate at the start.
  bool moves() const { return !legs_.empty(); }
  /// The first place with that speed; none if it is never reached.
  std::optional<RunPoint> atSpeed(double speedMps) const;
  std::optional<RunPoint> atDistance(double distanceM) const;
  std::optional<RunPoint> atTime(double timeS) const;

  const std::vector<RunShift>& shifts() const { return shifts_; }
  /// Points along the run for drawing, its kinks included, up to `untilM`.
  std::vector<RunPoint> trace() const;

 private:
  void go(std::size_t gear, bool stayInGear);
  /// Up to where a gear is left for the next; none if it is the last one or the next would not pull there.
  std::optional<double> shiftMps(std::size_t gear) const;
  PullEnd pullTo(std::size_t gear, double mps);
  void coast(std::size_t gear);
  void hold(std::size_t gear, bool limiter);
  RunPoint pointIn(const RunLeg& leg, const RunPlace& place) const;

  const RoadModel* model_;
  double untilM_, untilMps_;
  std::vector<RunLeg> legs_;
  std::vector<RunShift> shifts_;
  RunPlace place_;
};

/// What a straight asks for.
struct DriveRequest {
  double exitMps;
  double lengthM;
};

struct DriveFigures {
  double timeS;
  double endSpeedMps;
  int endGear;
  double endRpm;
  double revRangeLeftRpm;
  double secondsOnLimiter;
};

struct RollOnRequest {
  double fromMps;
  double toMps;
  std::optional<int> gear;  ///< 1 is first; top gear where not given
};

/// The usual figures of a run from a standstill and of roll-ons. What is never reached is empty.
struct RunFigures {
  std::optional<double> zeroTo60MphS, zeroTo100KmhS;
  std::optional<double> hundredMetresS, eighthMileS, eighthMileSpeedMps, quarterMileS, quarterMileSpeedMps;
  std::optional<double> rollOnTopS, rollOnBestS;  ///< 80 to 120 km/h
  std::optional<double> askedRollOnS;             ///< of the profile's own speeds and gear
  std::optional<int> driveStartGear;              ///< 1 is first; none where the drive never moves off
  std::optional<DriveFigures> drive;
};

/// The gear that accelerates hardest at a speed, of those between idle and shift point; of equals the
/// highest. `model.slipping()` where that is first gear below the launch engine speed. None if no gear can be
/// ridden there.
std::optional<std::size_t> bestGear(const RoadModel& model, double speedMps);

/// The start from a standstill.
Run standingStart(const RoadModel& model, double untilM, double untilMps);

/// A run from a speed in the best gear there; none if no gear can be ridden there.
std::optional<Run> bestRun(const RoadModel& model, double fromMps, double untilM, double untilMps);

/// `rollOns` false leaves the roll-ons out, for who needs the rest alone.
RunFigures runFigures(const RoadModel& model, const std::optional<DriveRequest>& drive,
                      const std::optional<RollOnRequest>& rollOn, bool rollOns = true);

/// From a standstill over the quarter mile; empty where it does not move.
RunTrace standingStartTrace(const RoadModel& model);

/// Down the straight; empty where no gear pulls at its start.
RunTrace driveTrace(const RoadModel& model, const DriveRequest& drive);

}  // namespace layshaft
