// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>

#include "core/bike/record_list.h"
#include "core/records_csv.h"
#include "ui/words/units_shown.h"

/// Services, track notes and measurements in words.
namespace layshaft::ui {

QString recordKindName(RecordKind kind);

/// What an entry says beside its figures, on one line: parts and note, weather and the rider's words, what
/// was measured.
QString recordText(const Service& service);
QString recordText(const TrackNote& note);
QString recordText(const WearMeasurement& measurement, const UnitsShown& units);

/// "Struck through 12/05/2026: other bike".
QString struckText(const Struck& struck);

/// A lap time of under a minute in seconds, else in minutes and seconds: "58.20", "1:32.41".
QString lapTimeText(double seconds);
/// As it is typed: seconds, or minutes and seconds; nothing if it is neither.
std::optional<double> typedLapTime(const QString& text);

/// A setup in a few words: "16/45, 114 links, 180/55ZR17".
QString setupText(const SetupChange& setup);

/// What was decided last, by the newest entry that says it: "12/05/2026: 13/50 on the 116-link chain, Short
/// course." Empty where no entry does.
QString latestDecision(const Profile& profile);

/// Why a table of records was not taken, naming row and column, in one sentence without a full stop.
QString refusalWords(const CsvRefusal& refusal, const Profile& profile);
/// What was taken of it, and what was not.
QString importedWords(const RecordsRead& read);

}  // namespace layshaft::ui
