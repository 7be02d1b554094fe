// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/input.h"
#include "core/study/chain_run.h"
#include "core/study/gear_limits.h"
#include "core/study/gearing.h"
#include "core/study/lap_comparison.h"
#include "core/study/road_model.h"
#include "core/study/run.h"
#include "core/study/speedometer.h"
#include "core/study/sprocket_saving.h"
#include "core/study/top_speed.h"
#include "core/study/wear.h"

namespace layshaft {

/// How far a figure moves if an estimated rollout is 2 % off either way.
struct Band {
  double low, high;
};

/// What a setup does on the road, as far as the profile has data for it.
struct RoadPlan {
  std::vector<GearPull> pull;                    ///< empty without an engine curve
  std::vector<std::optional<GearLimit>> limits;  ///< a gear each; empty without an engine curve
  std::optional<TopSpeed> topSpeed;
  RunFigures run;
  // None where the rollout was measured.
  std::optional<Band> topSpeedBandMps, zeroTo60BandS, zeroTo100BandS, quarterMileBandS, driveBandS;
  /// Down the straight with the rollout at the lower and the upper end of what an estimate may be off by; as
  /// it is where it was measured.
  std::optional<double> driveAtLeastRolloutS, driveAtMostRolloutS;
};

/// What a setup's sprockets weigh, as weighed or estimated, and what the difference from stock is worth.
struct SprocketPlan {
  std::optional<SprocketMass> front, rear;
  std::optional<SprocketSaving> saving;
};

/// One setup put through every study that the profile has data for: figures alone. What is drawn is made of
/// its model when somebody asks, by `core/traces.h`.
struct SetupPlan {
  std::string name;  ///< of a pin, else empty
  Setup setup;
  Gearing gearing;
  GearingChange change;  ///< against stock
  std::optional<SpeedometerFigures> speedometer;
  std::optional<double> leanFactor;  ///< engine speed leaned over upright, at the profile's lean angle
  /// Leaned over at the drive's exit speed, in the gear that starts it; the launch engine speed while its
  /// clutch slips.
  std::optional<double> cornerExitRpm;
  std::optional<ChainRunFigures> chainRun;
  SprocketPlan sprockets;
  RoadPlan road;
  std::shared_ptr<const RoadModel> model;  ///< null without an engine curve, a rev limit or gear ratios
  std::shared_ptr<const LapFigures> lap;   ///< null without a track or data for it, or if the bike stops
};

/// Where the shift points of a plan come from.
enum class ShiftPointSource { Typed, Best, RevLimit };

/// Stock, proposed and pins side by side: the one thing that screens and reports ask for.
struct Plan {
  std::string bikeName;
  std::optional<double> revLimitRpm;
  double idleRpm;
  ShiftPointSource shiftPoints;
  std::shared_ptr<const PullBike> pullBike;  ///< what the bike brings, what it lacks, what was assumed
  Road road;
  std::optional<DriveRequest> drive;
  RollOnRequest rollOn;
  std::optional<double> leanDeg;
  ChainRun chainRoom;  ///< where the chain runs and what there is room for, as the profile gives it
  SetupPlan stock;
  SetupPlan proposed;
  std::vector<SetupPlan> pins;
  std::optional<WearFigures> wear;  ///< of the parts that stock runs
  /// The track as the bike meets it, and what laps on it are compared by; null without a track or data for
  /// resistance and pull.
  std::shared_ptr<const LapComparison> laps;
  PlanInput input;  ///< what all of it was made from
};

/// What a setup takes more down the straight than another, and how far that may be off because rollouts are
/// estimates: less than for either time alone, for both are off the same way.
struct DriveChange {
  double seconds;
  double bandS;
  bool equal() const { return equalTimes(seconds, 0.0, bandS); }
};

/// None where one of them has no time.
std::optional<DriveChange> driveChange(const RoadPlan& from, const RoadPlan& to);

/// What a setup of the plan takes more round the track than stock, and how far that may be off: worked out
/// when somebody asks. None where one of them has no lap.
std::optional<LapChange> lapChange(const Plan& plan, const SetupPlan& setup);

/// Roll-ons from 50 to 75 mph, for who reads speeds in miles per hour: worked out when somebody asks.
RollOnFigures rollOnInMiles(const SetupPlan& setup);

/// A plan as it is handed to whoever shows it: made once, never copied, never changed.
using SharedPlan = std::shared_ptr<const Plan>;

/// The keys that are missing for speeds at the rev limit, and so for the sawtooth; empty where it can be
/// drawn.
std::vector<std::string_view> sawtoothLacks(const Plan& plan);

/// The keys that are missing for laps; empty where the bike can be lapped, or the track is refused.
std::vector<std::string_view> lapLacks(const Plan& plan);

/// Pure: the same input gives the same plan. Total: what the input lacks data for is left empty. What the
/// plan `before`, if there, holds of the same setups in the same circumstances is taken over, not worked out
/// again.
Plan plan(PlanInput input, const Plan* before = nullptr);
Plan plan(const Profile& profile);

}  // namespace layshaft
