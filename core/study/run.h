// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/pull_along.h"
#include "core/study/run_plan.h"

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

/// How a place in a gear, which may be a slipping clutch, is told.
RunPoint runPoint(const RoadModel& model, std::size_t gear, const RunPlace& place);
/// The same on a leg, which may be held by the limiter.
RunPoint runPoint(const RoadModel& model, const RunLeg& leg, const RunPlace& place);

/// A full-throttle run from a speed by a plan: pulls from shift to shift. Speed rises monotonically in a gear
/// and the forces depend on speed alone, so time and distance are integrals over speed, between the speeds
/// where a force changes form. Keeps a pointer to its model.
class Run {
 public:
  /// Goes on until both `untilM` and `untilMps` are passed or the speed no longer rises. A shift after which
  /// the next gear does not pull ends it at that speed. `model` must accelerate.
  Run(const RoadModel& model, double fromMps, const RunPlan& plan, double untilM, double untilMps);

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
  void go(std::size_t gear, int shifts);
  PullEnd pullTo(std::size_t gear, double mps);
  void coast(std::size_t gear);

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
  std::optional<int> exitGear;  ///< 1 is first; the best one where not given
};

struct DriveFigures {
  double timeS;
  double endSpeedMps;
  int endGear;
  double endRpm;
  double revRangeLeftRpm;
  double secondsOnLimiter;
  RunPlan plan;

  int startGear() const { return static_cast<int>(plan.gear) + 1; }
  int shifts() const { return endGear - startGear(); }
};

/// Nobody can tell two times apart that are so near to each other.
inline constexpr double kEqualTimesS = 0.01;
inline bool equalTimes(double a, double b, double band = 0.0) {
  return std::abs(a - b) <= std::max(kEqualTimesS, band) + 1e-9;
}

struct RollOnRequest {
  double fromMps;
  double toMps;
  std::optional<int> gear;  ///< 1 is first; top gear where not given
};

/// The usual figures of a run from a standstill and of roll-ons, each the least over all plans for itself.
/// What is never reached is empty.
struct RunFigures {
  std::optional<double> zeroTo60MphS, zeroTo100KmhS;
  std::optional<double> hundredMetresS, eighthMileS, eighthMileSpeedMps, quarterMileS, quarterMileSpeedMps;
  std::optional<double> rollOnTopS, rollOnBestS;  ///< 80 to 120 km/h
  std::optional<double> askedRollOnS;             ///< of the profile's own speeds and gear
  std::optional<DriveFigures> drive;
  std::optional<RunPlan> quarterMilePlan;
  std::optional<int> quarterMileShifts;  ///< one less than its plan's where it ends inside a shift
};

/// From one speed to another in top gear, and in the least time over all plans; empty where it is not
/// reached.
struct RollOnFigures {
  std::optional<double> topS, bestS;
};
RollOnFigures rollOnFigures(const RoadModel& model, double fromMps, double toMps);

/// `rollOns` false leaves the roll-ons out, for who needs the rest alone.
RunFigures runFigures(const RoadModel& model, const std::optional<DriveRequest>& drive,
                      const std::optional<RollOnRequest>& rollOn, bool rollOns = true);

/// By a plan from a standstill over the quarter mile.
RunTrace standingStartTrace(const RoadModel& model, const RunPlan& plan);

/// By a plan down the straight.
RunTrace driveTrace(const RoadModel& model, const DriveRequest& drive, const RunPlan& plan);

}  // namespace layshaft
