// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/bike/records.h"
#include "ui/words/units_shown.h"

/// How much a bike was used, as people read it: hours, or kilometres or miles by the units shown.
namespace layshaft::ui {

/// A number of the profile in the unit shown, and back.
double shownUse(double use, UseUnit unit, const UnitsShown& units);
double useFromShown(double shown, UseUnit unit, const UnitsShown& units);
QString useUnitName(UseUnit unit, const UnitsShown& units);  ///< "h", "km", "mi"
/// "14.5", "12,400": a tenth where it is not a whole number.
QString useNumber(double use, UseUnit unit, const UnitsShown& units);

}  // namespace layshaft::ui
