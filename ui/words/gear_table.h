// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <vector>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The table of speed per gear as people read it: a row of column titles and a row per gear.
std::vector<QStringList> gearTable(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
