// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/bike/records.h"
#include "ui/words/units_shown.h"

/// How much a bike was used, as people read and type it: hours everywhere; of kilometres, miles where speeds
/// are read in miles per hour.
namespace layshaft::ui {

double shownUse(UseUnit unit, double use, const UnitsShown& units);
double fileUse(UseUnit unit, double shown, const UnitsShown& units);
QString useName(UseUnit unit, const UnitsShown& units);  ///< "h", "km" or "mi"
int useDecimals(UseUnit unit);
/// "12.5 h", "18,200 km".
QString useText(UseUnit unit, double use, const UnitsShown& units);

}  // namespace layshaft::ui
