// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "ui/words/season_book.h"

/// One pair for all tracks in words and in tables.
namespace layshaft::ui {

/// What the one pair loses and what it saves, which are equal to it and which to take; which tracks have no
/// lap, and why.
QString seasonWords(const SeasonBook& book, const PairTeeth& stock);

/// A row for each track and one of sums: titles, then cells. Losses are against the quickest pair there.
std::vector<QStringList> seasonTable(const SeasonBook& book, const PairTeeth& stock,
                                     const PairTeeth& proposed);

/// The pairs that lose least, with titles.
inline constexpr std::size_t kSeasonPairsTold = 12;
std::vector<QStringList> seasonPairsTable(const SeasonBook& book);

/// The first table as comma-separated values.
QString seasonCsv(const SeasonBook& book, const PairTeeth& proposed);

}  // namespace layshaft::ui
