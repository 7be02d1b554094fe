// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <vector>

#include "core/plan.h"
#include "ui/words/units_shown.h"

/// What is written at the parts of the chain drawing and in the table beside it. Stock's value stands behind
/// the proposal's where it differs. Both setups must have a chain run.
namespace layshaft::ui {

QString teethLabel(const Plan& plan, SprocketPlace place);
QString wrapLabel(const Plan& plan);
QStringList loopLabel(const Plan& plan, const UnitsShown& units);  ///< size and length, tension
QString centreLabel(const Plan& plan, const UnitsShown& units);
QStringList axleLabel(const Plan& plan, const UnitsShown& units);

/// The figures of the chain run: titles, then rows of name, stock, proposed, difference.
std::vector<QStringList> chainTable(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
