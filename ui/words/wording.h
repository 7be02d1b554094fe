// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/plan.h"
#include "core/problem.h"
#include "ui/words/units_shown.h"

/// Numbers and plain sentences for people. Everything a person reads that depends on data is made here.
namespace layshaft::ui {

QString number(double value, int decimals);  ///< in the desktop's locale, thousands grouped
QString signedNumber(double value,
                     int decimals);  ///< with + or a true minus sign; "±0" where it rounds to nothing
QString percent(double value);       ///< unsigned, one decimal below 10

/// Direction and size of a step in a few words: "small, shorter".
QString stepWords(const GearingChange& change);

/// A setup's teeth, front first: "15/43".
QString teethPair(const Setup& setup);

/// What is said of a typed number that is outside what is allowed, under the field's own name.
QString outsideAllowed(const QString& field, const QString& typed, double low, double high);

/// One clear sentence for a problem: key path, value, what is allowed. Never empty, ends without a full stop.
QString sentence(const Problem& problem);

/// The same for people at the window, who never see key paths: "gear 2: 3.5 must be below …".
QString spokenSentence(const Problem& problem);

/// The two plain sentences of the readout.
struct Summary {
  QString headline;
  QString detail;
};
Summary summary(const Plan& plan, const UnitsShown& units);

/// What people must know before they act on this; short, one per line.
QStringList cautions();

/// The table of speed per gear as people read it: a row of column titles and a row per gear.
std::vector<QStringList> gearTable(const Plan& plan, const UnitsShown& units);

/// The text report: readout, key figures, table and cautions.
QString textReport(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
