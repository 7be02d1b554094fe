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

/// "Lap of Reedmace Short", cut where the name is long; "Lap" where there is none.
QString lapName(const Plan& plan);

/// Why nobody laps the track.
QString lapRefusalWords(const LapRefusal& refusal, const Track& track);
/// The same where nothing is refused: somewhere no gear pulls.
QString stopsForGoodWords(const Track& track);
/// The same of stock or of the proposal, with the place.
QString stopsForGoodWords(const Plan& plan);
/// Why stock or the proposal has no lap: what is not known, a track that is refused, or a bike that stops.
QString noLapWords(const Plan& plan);

/// A row for each corner with the straight behind it: titles, then cells of stock → proposed.
std::vector<QStringList> lapTable(const LapBook& book, const UnitsShown& units);

/// "a, b and c".
QString listedWords(const QStringList& items);
/// Seconds as they are told, without their sign.
QString secondsText(double s);
/// How far a time may be off, never less than it is.
QString bandText(double s);
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
