// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/bike/setup.h"
#include "core/study/rollout.h"

namespace layshaft {

/// What the gearing study asks of the engine and the rider.
struct GearingConditions {
  std::optional<double> revLimitRpm;
  double idleRpm = 0.0;
  std::vector<double> shiftRpm;  ///< one per gear but the last; an empty list means: at the rev limit
  std::optional<double> cruiseSpeedMps;
};

struct GearFigures {
  int gear;  ///< 1 is first
  double ratio;
  double overallRatio;  ///< engine turns per wheel turn: primary · gear · final
  std::optional<double> speedAtRevLimitMps;
  double speedPer1000RpmMps;       ///< without tyre growth
  std::optional<double> shiftRpm;  ///< none in the last gear, or where neither it nor the limit is known
  std::optional<double> shiftSpeedMps;
  std::optional<double> rpmAfterShift;  ///< in the next gear, at the shift speed
};

/// The highest gear that can hold the cruise speed between idle and the rev limit, as far as that is known.
struct CruiseFigures {
  int gear;
  double rpm;
  double turnsPerKm;  ///< engine turns per kilometre, on the tyre as it has grown at that speed
};

struct Gearing {
  double finalRatio;  ///< rear / front
  double primaryRatio;
  Rollout rollout;
  std::optional<double> revLimitRpm;
  std::vector<GearFigures> gears;  ///< empty where the ratios are not known
  std::optional<double> cruiseSpeedMps;
  std::optional<CruiseFigures> cruise;

  double speedMps(double rpm, std::size_t gearIndex) const {
    return rollout.speedMps(rpm, gears[gearIndex].overallRatio);
  }
  double rpm(double speedMps, std::size_t gearIndex) const {
    return rollout.rpm(speedMps, gears[gearIndex].overallRatio);
  }
};

/// Road speed against engine speed in every gear: v = (n/60)·C/i, i = primary·gear·rear/front.
Gearing gearing(const Setup& setup, const GearingConditions& conditions);

enum class Direction { Same, Shorter, Taller };
enum class StepSize { None, Small, Moderate, Large };

/// How one setup's gearing differs from another's. Positive per cent is shorter: more pull, less speed.
struct GearingChange {
  double finalRatioPercent;
  /// Of overall ratio / rollout in the last gear, so that tyre and gearbox count too; of primary and final
  /// ratio / rollout where the gear ratios are not known.
  double gearingPercent;
  Direction direction;
  StepSize size;
  double rearTeethEquivalent;  ///< rear teeth that would change stock's final ratio as much
  /// Rear teeth that would do the same to the whole gearing, tyre and gearbox included.
  double wholeGearingTeethEquivalent;
};

/// Sizes by s = |100·ln ratio|, alike up and down: none below 0.05, small to 5.5, moderate to 10, large
/// above. Puts the trade's steps where the trade has them: two rear teeth are small, one front tooth is the
/// next step.
StepSize stepSize(double gearingRatio);

GearingChange gearingChange(const Setup& stock, const Gearing& stockGearing, const Gearing& otherGearing);

/// By how many per cent each gear that both have is shorter (positive) or taller than stock's.
std::vector<double> gearChangesPercent(const Gearing& stock, const Gearing& other);

}  // namespace layshaft
