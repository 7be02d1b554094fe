// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The core's comma-separated values, which are SI and millimetres, in the units shown: titles that end with
/// a unit get the other one's, `speed_at_rev_limit_mps` that of `speed_at_rev_limit_mph`. Of a pair of
/// columns for 100 km/h and 60 mph the one stays that goes with the unit of speed. Numbers keep twelve digits
/// and a point; what is no number, and what has no unit, stays as it is.
std::string csvInUnits(const std::string& csv, const UnitsShown& units);

}  // namespace layshaft::ui
