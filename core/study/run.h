// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/pull.h"

namespace layshaft {

/// When a run shifts: engine speeds for every gear but the last, and whether somebody typed them.
struct ShiftPoints {
  std::vector<double> rpm;
  bool typed = false;
};

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

/// A full-throttle run from a speed in a gear. Speed rises monotonically in a gear and the forces depend on
/// speed alone, so time and distance are integrals over speed, t = ∫dv/a and x = ∫v·dv/a, between the speeds
/// where a force changes form: seven-point Gauss-Legendre quadrature, halved where the pull runs out.
class Run {
 public:
  enum class Clutch { Engaged, Slipping };

  /// Goes on until both `untilM` and `untilMps` are passed or the speed no longer rises. `stayInGear`: never
  /// shifts. `model` must accelerate. Gears count from 0.
  Run(const PullModel& model, const ShiftPoints& shifts, double fromMps, std::size_t gear, Clutch clutch,
      double untilM, double untilMps, bool stayInGear = false);

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
  enum class Kind { Pull, Coast, Hold };
  struct Leg {
    Kind kind;
    std::size_t gear;  ///< of the model; the slipping clutch's counts as first
    PullModel::Stretch on;
    double timeS, distanceM, speedMps;           ///< at its start
    double endTimeS, endDistanceM, endSpeedMps;  ///< a hold never ends
    bool limiter;
  };

  void pullUpTo(std::size_t gear, double speedMps);
  void runOut(std::size_t gear, double terminalMps);
  void addPull(const PullModel::Stretch& on, std::size_t gear, int depth);
  void addCoast(std::size_t gear);
  void addHold(std::size_t gear, bool limiter);
  std::optional<double> whereItStops(std::size_t gear,
                                     const std::vector<PullModel::Stretch>& stretches) const;
  bool farEnough() const { return distance_ >= untilM_ && speed_ >= untilMps_; }
  RunPoint pointIn(const Leg& leg, double time, double distance, double speed) const;
  RunPoint pullPoint(const Leg& leg, double speed) const;

  const PullModel* model_;
  double untilM_, untilMps_;
  std::vector<Leg> legs_;
  std::vector<RunShift> shifts_;
  double time_ = 0.0, distance_ = 0.0, speed_ = 0.0;
  bool stopped_ = false;
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
  std::optional<DriveFigures> drive;
};

/// The launch engine speed: typed, else the lowest of the torque peak's, 60 % of the limit and first gear's
/// shift point.
double launchRpm(const PullBike& bike, const ShiftPoints& shifts);

/// The gear that accelerates hardest at a speed, of those between idle and shift point; of equals the
/// highest. `model.slipping()` where that is first gear below the launch engine speed. None if no gear can be
/// ridden there.
std::optional<std::size_t> bestGear(const PullModel& model, const ShiftPoints& shifts, double speedMps);

/// A run from a speed in the best gear there; none if no gear can be ridden there.
std::optional<Run> bestRun(const PullModel& model, const ShiftPoints& shifts, double fromMps, double untilM,
                           double untilMps);

/// `rollOns` false leaves the roll-ons out, for who needs the rest alone.
RunFigures runFigures(const PullModel& model, const ShiftPoints& shifts,
                      const std::optional<DriveRequest>& drive, const std::optional<RollOnRequest>& rollOn,
                      bool rollOns = true);

}  // namespace layshaft
