// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// Direction and size of a step in a few words: "small, shorter".
QString stepWords(const GearingChange& change);

/// The two plain sentences of the readout.
struct Summary {
  QString headline;
  QString detail;
};
Summary summary(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
