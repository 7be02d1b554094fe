// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// What a change of `percent` in every gear does for the pull where the tyre or the front wheel is the limit,
/// gear by gear, and where it does bring or cost something: "Grip limit: 1st up to 62 km/h. There …". Empty
/// where neither limits a gear. What limits the weaker of the two setups takes nothing from the other.
QString limitedPullWords(const Plan& plan, double percent, const UnitsShown& units);

}  // namespace layshaft::ui
