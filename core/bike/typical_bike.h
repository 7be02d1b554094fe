// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/profile.h"

namespace layshaft {

/// A field for which a class of bike may have a usual value.
struct TypicalField {
  std::string_view key;  ///< its path in the profile
  std::optional<double> Chassis::*member;
};

inline constexpr std::array<TypicalField, 8> kTypicalFields{
    {{"bike.chassis.mass_kg", &Chassis::massKg},
     {"bike.chassis.wheelbase_mm", &Chassis::wheelbaseMm},
     {"bike.chassis.cg_height_mm", &Chassis::cgHeightMm},
     {"bike.chassis.cg_ahead_of_rear_axle_mm", &Chassis::cgAheadOfRearAxleMm},
     {"bike.chassis.drag_area_m2", &Chassis::dragAreaM2},
     {"bike.chassis.rolling_resistance", &Chassis::rollingResistance},
     {"bike.chassis.drivetrain_efficiency", &Chassis::drivetrainEfficiency},
     {"bike.chassis.tyre_grip", &Chassis::tyreGrip}}};

/// What is usual in a class of bike, in the units of the profile; empty where no figure was found. Good to
/// about ±15 %: what is measured or weighed takes its place. The sources stand beside the values.
Chassis typicalChassis(BikeClass bikeClass);

/// Makes the bike one of that class and gives every field that is open, or still holds what another class had
/// in it, the class's usual value, marked as such. With no class the marked values go, and nothing comes.
void takeTypicalValues(Profile& profile, std::optional<BikeClass> bikeClass);

/// The fields that hold a value and are marked as typical.
std::vector<TypicalField> typicalFields(const Bike& bike, const std::vector<std::string>& marks);

/// Whether the field of that key is one of them.
bool isTypical(const Profile& profile, std::string_view key);

/// What is known of a field is typical no more.
void forgetTypical(Profile& profile, std::string_view key);

}  // namespace layshaft
