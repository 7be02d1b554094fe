// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include "core/plan.h"
#include "core/study/parts_list.h"
#include "ui/words/units_shown.h"

/// What a mechanic is told to do, in the order of the work.
namespace layshaft::ui {

/// Where the axle is expected, as a length and, where the adjuster's marks are known, in marks: "Axle
/// expected 4.4 mm forward, 1.8 marks". Empty where nothing is known.
QString axleOrderText(const Plan& plan, const UnitsShown& units);
/// The marks alone: "1.8 marks forward"; empty where they are not known.
QString axleMarksText(const Plan& plan);

struct WorkOrder {
  QStringList remove;
  QStringList fit;
  QStringList set;     ///< axle and slack
  QStringList checks;  ///< before it is ridden
};
WorkOrder workOrder(const Profile& profile, const Plan& plan, const UnitsShown& units);

/// What is written down from the bike's manual, by hand: torques, spanner sizes; slack where it is not typed.
QStringList fromTheManual(const Profile& profile, const Plan& plan);

}  // namespace layshaft::ui
