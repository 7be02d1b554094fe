// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// On what assumptions the pull rests, a sentence each: values that were taken, the torque beyond the curve's
/// last point, a surface's rolling resistance in place of the chassis' form.
QStringList pullNotes(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
