// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include "core/plan.h"
#include "ui/words/units_shown.h"

/// Sentences on the run of the chain: whether a pair fits, where the axle ends up, which chain to order.
namespace layshaft::ui {

/// Of three sentences the one for how an axle moves: not as far as can be read, back, or forward. `%1` in the
/// latter two becomes the length; what else they want stays open.
QString byShift(double shiftM, const UnitsShown& units, const QString& stays, const QString& back,
                const QString& forward);

/// One sentence on whether a setup fits and where its axle goes; empty where the profile says nothing about
/// it.
enum class FitDetail {
  Short,  ///< for the readout: which lengths would do
  Full    ///< for the chain's own page: also where each comes from, and where it puts the axle
};
QString fitWords(const Plan& plan, const SetupPlan& setup, const UnitsShown& units, FitDetail detail);

/// "Does not fit", or not properly, for a headline; empty where it fits or nothing is known.
QString misfitHeading(const ChainRunFigures& run);

/// Why it does not fit, for one reason.
QString misfitWords(Misfit misfit, const ChainRunFigures& run, const UnitsShown& units);

/// "with 112 or 114 links", the lengths that would fit, rising; empty if none.
QString otherLengthsWords(const ChainRunFigures& run);

/// Why a bigger rear sprocket makes every gear shorter, in one sentence under the drawing.
QString turnWords(const Plan& plan);

/// Whether it fits, with which chain, and what speaks against it; a paragraph each.
QStringList chainVerdict(const Plan& plan, const UnitsShown& units);
/// What the sprockets' weight is worth, and how the suspension moves the chain; a paragraph each.
QStringList chainNotes(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
