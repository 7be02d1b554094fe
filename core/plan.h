// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/bike/profile.h"
#include "core/study/chain_run.h"
#include "core/study/gearing.h"
#include "core/study/pull.h"
#include "core/study/pull_curves.h"
#include "core/study/run.h"
#include "core/study/speedometer.h"
#include "core/study/sprocket_saving.h"

namespace layshaft {

/// How far a figure moves if an estimated rollout is 2 % off either way.
struct Band {
  double low, high;
};

/// What a setup does on the road, as far as the profile has data for it.
struct RoadPlan {
  PullCurves curves;           ///< empty without an engine curve
  std::vector<GearPull> pull;  ///< empty without an engine curve
  std::optional<TopSpeed> topSpeed;
  RunFigures run;
  std::vector<RunPoint> standingStart;  ///< from a standstill on, for drawing
  std::vector<RunPoint> drive;          ///< down the profile's straight, for drawing
  std::vector<RunShift> standingShifts, driveShifts;
  // None where the rollout was measured.
  std::optional<Band> topSpeedBandMps, zeroTo100BandS, quarterMileBandS, driveBandS;
};

/// What a setup's sprockets weigh, as weighed or estimated, and what the difference from stock is worth.
struct SprocketPlan {
  std::optional<SprocketMass> front, rear;
  std::optional<SprocketSaving> saving;
};

/// One setup put through every study that the profile has data for.
struct SetupPlan {
  std::string name;  ///< of a pin, else empty
  Setup setup;
  Gearing gearing;
  GearingChange change;  ///< against stock
  std::optional<SpeedometerFigures> speedometer;
  std::optional<double> leanFactor;  ///< engine speed leaned over upright, at the profile's lean angle
  std::optional<ChainRunFigures> chainRun;
  SprocketPlan sprockets;
  RoadPlan road;
};

/// Where the shift points of a plan come from.
enum class ShiftPointSource { Typed, Best, RevLimit };

/// Stock, proposed and pins side by side: the one thing that screens and reports ask for.
struct Plan {
  std::string bikeName;
  double revLimitRpm;
  double idleRpm;
  ShiftPointSource shiftPoints;
  std::shared_ptr<const PullBike> pullBike;  ///< what the bike brings, what it lacks, what was assumed
  std::optional<DriveRequest> drive;
  RollOnRequest rollOn;
  std::optional<double> leanDeg;
  ChainRun chainRoom;  ///< where the chain runs and what there is room for, as the profile gives it
  SetupPlan stock;
  SetupPlan proposed;
  std::vector<SetupPlan> pins;
};

/// Pure: the same profile gives the same plan. Total: what the profile lacks data for is left empty.
Plan plan(const Profile& profile);

}  // namespace layshaft
