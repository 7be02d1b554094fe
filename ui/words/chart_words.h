// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include "core/plan.h"
#include "ui/words/units_shown.h"

/// The pictures in words, for who does not see them: what is drawn, what differs, and where the numbers are.
namespace layshaft::ui {

/// What the sawtooth cannot do without, in a sentence.
QString sawtoothNeeds();

QString sawtoothWords(const Plan& plan, const UnitsShown& units);
/// `measured` is the title of the axis that is drawn upwards. The profile must have a torque curve.
QString pullChartWords(const Plan& plan, const UnitsShown& units, const QString& measured);
/// `along` is the title of the axis that is drawn to the right; `straight` says that it is the drive.
QString runChartWords(const Plan& plan, const UnitsShown& units, const QString& along, bool straight);
/// Both setups must have a chain run.
QString chainDrawingWords(const Plan& plan, const UnitsShown& units);

/// One thing that a crosshair reads of every setup: "Gear 3: Stock 8,120, Proposed 8,400." Empty where no
/// setup has a value.
QString readingWords(const QString& what, const QStringList& setups, const QStringList& values);
/// All that it reads at a place; says so where there is nothing.
QString readingWords(const QString& place, const QStringList& rows);

/// What stands for a value where there is none.
QString noValue();

}  // namespace layshaft::ui
