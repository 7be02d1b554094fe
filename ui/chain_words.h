// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/plan.h"
#include "ui/units_shown.h"

/// Words for the run of the chain: whether a pair fits, where the axle ends up, which chain to order.
namespace layshaft::ui {

/// One sentence on whether a setup fits and where its axle goes; empty where the profile says nothing about
/// it.
QString fitWords(const Plan& plan, const SetupPlan& setup, const UnitsShown& units);

/// Why it does not fit, for one reason.
QString misfitWords(Misfit misfit, const SetupPlan& setup, const UnitsShown& units);

/// "116 links (axle 4.2 mm back)", … for the lengths that would fit; empty if none.
QString lengthWords(const std::vector<FittingLength>& lengths, const UnitsShown& units);

}  // namespace layshaft::ui
