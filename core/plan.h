// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/bike/profile.h"
#include "core/study/gearing.h"
#include "core/study/speedometer.h"

namespace layshaft {

/// One setup put through every study that the profile has data for.
struct SetupPlan {
  std::string name;  ///< of a pin, else empty
  Setup setup;
  Gearing gearing;
  GearingChange change;  ///< against stock
  std::optional<SpeedometerFigures> speedometer;
};

/// Where the shift points of a plan come from.
enum class ShiftPointSource { Typed, RevLimit };

/// Stock, proposed and pins side by side: the one thing that screens and reports ask for.
struct Plan {
  std::string bikeName;
  double revLimitRpm;
  double idleRpm;
  ShiftPointSource shiftPoints;
  SetupPlan stock;
  SetupPlan proposed;
  std::vector<SetupPlan> pins;
};

/// Pure: the same profile gives the same plan. Total: what the profile lacks data for is left empty.
Plan plan(const Profile& profile);

}  // namespace layshaft
