// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/lap_ladder.h"

namespace layshaft {

/// A pair over several tracks.
struct SeasonPair {
  int frontTeeth, rearTeeth;
  double finalRatio;
  bool fits;                   ///< as the bike is, or nothing is known that speaks against it
  std::optional<int> links;    ///< of a length with which it would fit
  std::vector<double> laterS;  ///< on each track than the pair that is quickest there; below 0 where that
                               ///< pair cannot be made to fit and is left out
  double lossS;                ///< all of them, a lap of each
};

/// Several tracks ridden in turn: each with its own quickest pair, or all with one.
struct Season {
  std::vector<SeasonPair> pairs;      ///< those that fit first, the smallest loss first
  std::vector<std::size_t> quickest;  ///< of each track, among those that a chain length makes fit
  /// Sprockets that are changed, and chains that are cut or changed, from track to track if each is ridden
  /// with its own pair: what one pair for all saves.
  int swaps = 0, chainChanges = 0;

  bool empty() const { return pairs.empty(); }
  /// The pair that loses least.
  const SeasonPair& one() const { return pairs.front(); }
};

/// What the rows of a lap ladder, those of one track after the other, add up to. Only pairs that have a lap
/// on every track count; empty without any, and without tracks.
Season season(const std::vector<std::vector<LapRow>>& rowsOfTracks);

}  // namespace layshaft
