// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/ride_fields.h"

namespace layshaft::ui {

void addConditions(FieldForm& form) {
  form.addFields({"ride.surface", "ride.surfaces.*.grip", "ride.surfaces.*.rolling_resistance",
                  "ride.surfaces.*.slip_percent", "ride.slope_percent", "ride.headwind_kmh",
                  "ride.altitude_m", "ride.air_temperature_c", "ride.air_pressure_hpa",
                  "ride.humidity_percent"});
}

void addLaunchAndLean(FieldForm& form) {
  form.addFields({"ride.launch_rpm", "ride.lean_deg"});
}

void addDrive(FieldForm& form) {
  form.addFields({"ride.drive.exit_speed_kmh", "ride.drive.length_m", "ride.drive.exit_gear"});
}

void addDayOfLap(FieldForm& form) {
  form.addFields({"ride.surface", "ride.headwind_kmh", "ride.air_temperature_c"});
}

void addRollOn(FieldForm& form) {
  form.addFields({"ride.roll_on.from_speed_kmh", "ride.roll_on.to_speed_kmh", "ride.roll_on.gear"});
}

}  // namespace layshaft::ui
