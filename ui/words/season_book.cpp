// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/season_book.h"

#include <algorithm>

namespace layshaft::ui {
namespace {

/// Without a proposal that stands outside of the range.
std::vector<LapRow> inRange(const SeasonBook& book, std::size_t track) {
  std::vector<LapRow> rows;
  for (const LapRow& row : book.tracks[track].rows)
    if (book.range.contains(row.frontTeeth, row.rearTeeth)) rows.push_back(row);
  return rows;
}

}  // namespace

bool SeasonTrack::laps() const {
  return std::any_of(rows.begin(), rows.end(), [](const LapRow& row) { return row.lapS.has_value(); });
}

std::optional<LapPick> SeasonBook::pick(const PairTeeth& stock) const {
  if (!bandS) return std::nullopt;
  std::vector<LapRow> losses;
  for (std::size_t i = 0; i <= behindBandS.size(); ++i) {
    const SeasonPair& pair = season.pairs[i];
    losses.push_back({.frontTeeth = pair.frontTeeth,
                      .rearTeeth = pair.rearTeeth,
                      .finalRatio = pair.finalRatio,
                      .lapS = pair.lossS,
                      .changeS = {},
                      .bandS = i == 0 ? std::nullopt : behindBandS[i - 1],
                      .fits = pair.fits,
                      .links = pair.links});
  }
  return lapPick(losses, stock.front, stock.rear);
}

const LapRow* SeasonBook::row(std::size_t track, const PairTeeth& pair) const {
  const auto& rows = tracks[track].rows;
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const LapRow& one) {
    return one.frontTeeth == pair.front && one.rearTeeth == pair.rear;
  });
  return found == rows.end() ? nullptr : &*found;
}

std::optional<double> SeasonBook::lapS(std::size_t track, const PairTeeth& pair) const {
  const LapRow* of = row(track, pair);
  return of ? of->lapS : std::nullopt;
}

std::optional<LapRow> SeasonBook::quickest(std::size_t track) const {
  const auto place = std::find(ridden.begin(), ridden.end(), track);
  const bool all = place != ridden.end() && !season.empty();
  const Season alone = all ? Season() : layshaft::season({inRange(*this, track)});
  if (!all && alone.empty()) return std::nullopt;
  const SeasonPair& pair =
      all ? season.pairs[season.quickest[static_cast<std::size_t>(place - ridden.begin())]]
          : alone.pairs[alone.quickest.front()];
  return *row(track, {pair.frontTeeth, pair.rearTeeth});
}

std::optional<double> SeasonBook::lossS(std::size_t track, const std::optional<double>& lapS) const {
  const auto best = quickest(track);
  return best && lapS ? std::optional(*lapS - *best->lapS) : std::nullopt;
}

void addUp(SeasonBook& book) {
  book.ridden.clear();
  book.bandS.reset();
  book.behindBandS.clear();
  std::vector<std::vector<LapRow>> rows;
  for (std::size_t track = 0; track < book.tracks.size(); ++track) {
    if (!book.tracks[track].chosen || !book.tracks[track].laps()) continue;
    book.ridden.push_back(track);
    rows.push_back(inRange(book, track));
  }
  book.season = season(rows);
}

}  // namespace layshaft::ui
