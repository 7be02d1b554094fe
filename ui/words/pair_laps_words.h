// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "ui/words/pair_book.h"
#include "ui/words/units_shown.h"

/// The pairs in reach and their laps, in words and in tables.
namespace layshaft::ui {

/// Whether a pair fits as the bike is, with which length it would, or a dash where that is not known.
QString lapFitWords(bool fits, const std::optional<int>& links, bool belt);
/// That some pairs, the nearest first, are equal to one that was named before.
QString equalPairsWords(const QStringList& pairs);
/// Which of equal pairs to take, and why.
QString takenWords(const QString& pair, bool isStock, LapDecidedBy by, bool belt);

/// Which pair is the quickest that fits, which are equal to it, and which of them to take. Empty until all
/// pairs are lapped.
QString pairPickWords(const PairBook& book);

/// Lap, difference and fit of one pair, as read at the cursor of the map.
QString pairWords(const PairBook& book, const RankedPair& pair);

/// What the signs of the map mean; `inTenths`: its figures are tenths of a second.
QString pairMapLegend(const PairBook& book, bool inTenths);
/// The map, for who does not see it.
QString pairMapWords(const PairBook& book);

/// A row for each pair, by rank: titles, then cells.
std::vector<QStringList> pairTable(const PairBook& book);

/// The same as comma-separated values.
QString pairLapsCsv(const PairBook& book, const UnitsShown& units);

}  // namespace layshaft::ui
