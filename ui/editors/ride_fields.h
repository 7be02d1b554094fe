// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/editors/field_form.h"

/// The fields of a profile's ride, in the groups in which the window shows them: all in the bike's details,
/// each beside the picture that it changes.
namespace layshaft::ui {

void addConditions(FieldForm& form);     ///< surface, slope, wind, air
void addLaunchAndLean(FieldForm& form);  ///< launch engine speed, lean angle
void addDrive(FieldForm& form);          ///< exit speed and length of the straight
void addDayOfLap(FieldForm& form);       ///< what a day on a track changes: surface, wind, temperature
void addRollOn(FieldForm& form);         ///< from, to, gear

}  // namespace layshaft::ui
