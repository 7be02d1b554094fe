// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/plan.h"
#include "ui/words/compare_table.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The text report: readout, key figures, tables and cautions. What is on hand need not be bought.
QString textReport(const Plan& plan, const UnitsShown& units, const PartsOnHand& onHand = {});

}  // namespace layshaft::ui
