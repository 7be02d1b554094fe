// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "ui/words/lap_book.h"
#include "ui/words/units_shown.h"

/// A lap in words and in tables.
namespace layshaft::ui {

/// How the proposal laps against stock: both times, and where it wins and loses.
QString lapWords(const LapBook& book);

/// What the times rest on: grip and rider, the wind, limits that nobody knows of this bike.
QString lapHonesty(const Plan& plan);

/// Why nobody laps the track. The book must have a refusal.
QString lapRefusalWords(const LapBook& book);

/// A row for each corner with the straight behind it: titles, then cells of stock → proposed.
std::vector<QStringList> lapTable(const LapBook& book, const UnitsShown& units);

/// "a, b and c".
QString listedWords(const QStringList& items);
/// "0.03": how far a difference may be off, never less than it is.
QString lapBandText(double s);

/// "+0.04": seconds that are won, signed; "±0" below what can be told.
QString wonText(double wonS);

/// The pictures, for who does not see them.
QString lapChartWords(const LapBook& book, const UnitsShown& units);
QString trackMapWords(const LapBook& book, const UnitsShown& units);
/// What stock and proposal do at a place of the track, m from its start.
QString placeWords(const LapBook& book, double distanceM, const UnitsShown& units);

/// The whole lap of every setup as comma-separated values.
QString lapNumbersCsv(const LapBook& book, const UnitsShown& units);

}  // namespace layshaft::ui
