// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/plan.h"
#include "ui/units_shown.h"

/// Words for the run of the chain: whether a pair fits, where the axle ends up, which chain to order.
namespace layshaft::ui {

/// One sentence on whether a setup fits and where its axle goes; empty where the profile says nothing about
/// it.
QString fitWords(const Plan& plan, const SetupPlan& setup, const UnitsShown& units);

/// Why it does not fit, for one reason.
QString misfitWords(Misfit misfit, const ChainRunFigures& run, const UnitsShown& units);

/// "116 links (axle 4.2 mm back)", … for the lengths that would fit; empty if none.
QString lengthWords(const std::vector<FittingLength>& lengths, const UnitsShown& units);

/// What is written at the parts of the drawing, stock's value behind it where it differs.
QString teethWords(const Plan& plan, SprocketPlace place);
QString wrapWords(const Plan& plan);
QStringList loopWords(const Plan& plan, const UnitsShown& units);  ///< size and length, tension
QString centreWords(const Plan& plan, const UnitsShown& units);
QStringList axleWords(const Plan& plan, const UnitsShown& units);

/// Why a bigger rear sprocket makes every gear shorter, in one sentence under the drawing.
QString turnWords(const Plan& plan);

/// The figures of the chain run: titles, then rows of name, stock, proposed, difference.
std::vector<QStringList> chainTable(const Plan& plan, const UnitsShown& units);

/// Whether it fits, with which chain, and what speaks against it; a paragraph each.
QStringList chainVerdict(const Plan& plan, const UnitsShown& units);
/// What the sprockets' weight is worth, and how the suspension moves the chain; a paragraph each.
QStringList chainNotes(const Plan& plan, const UnitsShown& units);

/// What the profile lacks before the chain run can be drawn; empty if nothing.
QStringList chainLacks(const Plan& plan);

}  // namespace layshaft::ui
