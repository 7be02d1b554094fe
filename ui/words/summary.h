// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// Direction and size of a step in a few words: "small, shorter".
QString stepWords(const GearingChange& change);

/// What the readout says in words.
struct Summary {
  QString misfit;  ///< "Does not fit", to stand before the headline; empty where it fits or nothing is known
  QString headline;
  QString detail;
  QStringList cautions;
};
Summary summary(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
