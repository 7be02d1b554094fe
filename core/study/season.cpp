// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/season.h"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <utility>

namespace layshaft {
namespace {

using Teeth2 = std::pair<int, int>;

bool canFit(const SeasonPair& pair) {
  return pair.fits || pair.links.has_value();
}

/// Each pair with its lap times in place of what it is later.
std::vector<SeasonPair> lappedEverywhere(const std::vector<std::vector<LapRow>>& rowsOfTracks) {
  std::map<Teeth2, SeasonPair> byTeeth;
  for (const auto& rows : rowsOfTracks)
    for (const LapRow& row : rows) {
      if (!row.lapS) continue;
      SeasonPair& pair =
          byTeeth
              .try_emplace({row.frontTeeth, row.rearTeeth}, SeasonPair{.frontTeeth = row.frontTeeth,
                                                                       .rearTeeth = row.rearTeeth,
                                                                       .finalRatio = row.finalRatio,
                                                                       .fits = row.fits,
                                                                       .links = row.links,
                                                                       .laterS = {},
                                                                       .lossS = 0.0})
              .first->second;
      pair.laterS.push_back(*row.lapS);
    }
  std::vector<SeasonPair> pairs;
  for (auto& [teeth, pair] : byTeeth)
    if (pair.laterS.size() == rowsOfTracks.size()) pairs.push_back(std::move(pair));
  return pairs;
}

/// The quickest on a track; of those that can be made to fit where there are any.
std::size_t quickestOn(const std::vector<SeasonPair>& pairs, std::size_t track) {
  const auto better = [&](const SeasonPair& a, const SeasonPair& b) {
    if (canFit(a) != canFit(b)) return canFit(a);
    return a.laterS[track] < b.laterS[track];
  };
  return static_cast<std::size_t>(std::min_element(pairs.begin(), pairs.end(), better) - pairs.begin());
}

}  // namespace

Season season(const std::vector<std::vector<LapRow>>& rowsOfTracks) {
  Season result;
  result.pairs = lappedEverywhere(rowsOfTracks);
  auto& pairs = result.pairs;
  if (pairs.empty()) return result;
  for (std::size_t track = 0; track < rowsOfTracks.size(); ++track) {
    const double least = pairs[quickestOn(pairs, track)].laterS[track];
    for (SeasonPair& pair : pairs) pair.laterS[track] -= least;
  }
  for (SeasonPair& pair : pairs) pair.lossS = std::accumulate(pair.laterS.begin(), pair.laterS.end(), 0.0);
  std::stable_sort(pairs.begin(), pairs.end(), [](const SeasonPair& a, const SeasonPair& b) {
    if (a.fits != b.fits) return a.fits;
    return a.lossS < b.lossS;
  });
  for (std::size_t track = 0; track < rowsOfTracks.size(); ++track)
    result.quickest.push_back(quickestOn(pairs, track));
  for (std::size_t track = 1; track < result.quickest.size(); ++track) {
    const SeasonPair &from = pairs[result.quickest[track - 1]], &to = pairs[result.quickest[track]];
    result.swaps += (from.frontTeeth != to.frontTeeth ? 1 : 0) + (from.rearTeeth != to.rearTeeth ? 1 : 0);
    if (from.links && to.links && *from.links != *to.links) ++result.chainChanges;
  }
  return result;
}

}  // namespace layshaft
