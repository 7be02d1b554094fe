// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/gearbox_search.h"
#include "core/study/season.h"

namespace layshaft::ui {

/// What is known of the laps on one of the tracks.
struct SeasonTrack {
  Track track;
  bool chosen = true;        ///< part of the season
  std::vector<LapRow> rows;  ///< no order; empty until they are worked out
  std::optional<double> stockS;
  std::optional<LapRefusal> refusal;

  bool laps() const;  ///< with some pair
};

/// All that is told of the bike's tracks taken together.
struct SeasonBook {
  LadderRange range{0, -1, 0, -1};  ///< of the pairs that may be the one for all
  std::vector<SeasonTrack> tracks;  ///< in the order of the bike
  bool worked = false;              ///< all rows are there
  std::vector<std::size_t> ridden;  ///< the tracks of the season: chosen, and with a lap
  Season season;                    ///< of those
  bool belt = false;                ///< what goes round is a belt
  std::optional<double> bandS;      ///< how far the loss of the one pair may be off, once it is known
  /// The same of what the pairs behind it lose more than the one, in their order.
  std::vector<std::optional<double>> behindBandS;

  /// Which pairs that fit cannot be told from the one by what they lose, and which of them is least trouble
  /// on a bike with such sprockets; places are those in `season.pairs`. None before bands are known.
  std::optional<LapPick> pick(const PairTeeth& stock) const;
  /// The row of a pair; null where it was not worked out.
  const LapRow* row(std::size_t track, const PairTeeth& pair) const;
  std::optional<double> lapS(std::size_t track, const PairTeeth& pair) const;
  /// The quickest that can be made to fit; of a track of the season, that laps on all of them.
  std::optional<LapRow> quickest(std::size_t track) const;
  /// What a lap takes more than the quickest; below 0 where it is of a pair that cannot be made to fit, or of
  /// another gearbox or tyre.
  std::optional<double> lossS(std::size_t track, const std::optional<double>& lapS) const;
};

/// Adds the season up anew, after tracks were chosen or rows have come. The bands are to be asked for again.
void addUp(SeasonBook& book);

}  // namespace layshaft::ui
