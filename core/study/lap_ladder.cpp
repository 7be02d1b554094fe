// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_ladder.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/bike/pair.h"
#include "core/limits.h"
#include "core/study/chain_run.h"
#include "core/study/run.h"

namespace layshaft {

LapLadder::LapLadder(LadderInput input, const Track& track)
    : input_(std::move(input)),
      asked_(asked(input_.shared)),
      laps_(input_.shared, asked_, track),
      stock_(laps_.times(input_.stock, input_.stock)) {}

Setup LapLadder::setupOf(int frontTeeth, int rearTeeth) const {
  return applied(withPair(input_.proposed, input_.stock, input_.fronts, input_.rears,
                          Teeth::front(frontTeeth).value(), Teeth::rear(rearTeeth).value()),
                 input_.stock);
}

std::optional<double> LapLadder::bandS(const LapRow& from, const LapRow& to) const {
  const LapTimes a = laps_.times(input_.stock, setupOf(from.frontTeeth, from.rearTeeth)),
                 b = laps_.times(input_.stock, setupOf(to.frontTeeth, to.rearTeeth));
  return a.seconds && b.seconds ? std::optional(lapBandS(a, b)) : std::nullopt;
}

LapRow LapLadder::row(int frontTeeth, int rearTeeth, Bands bands) const {
  const Setup setup = setupOf(frontTeeth, rearTeeth);
  LapRow row{.frontTeeth = frontTeeth,
             .rearTeeth = rearTeeth,
             .finalRatio = finalRatio(setup.frontTeeth, setup.rearTeeth),
             .lapS = {},
             .changeS = {},
             .bandS = {},
             .fits = true,
             .links = {}};
  if (const auto run =
          chainRun(input_.shared.bike, input_.stock, setup, nullptr, input_.shared.chainsOnHand)) {
    row.fits = run->fits.value_or(true);
    if (const auto length = nearestLength(*run)) row.links = length->links;
  }
  const LapTimes times =
      bands == Bands::All
          ? laps_.times(input_.stock, setup)
          : LapTimes{.seconds = laps_.seconds(input_.stock, setup), .off = {}, .otherDays = {}};
  row.lapS = times.seconds;
  if (!times.seconds || !stock_.seconds) return row;
  row.changeS = *times.seconds - *stock_.seconds;
  if (bands == Bands::All) row.bandS = lapBandS(stock_, times);
  return row;
}

std::vector<LapRow> LapLadder::rows(const LadderRange& range, Bands bands,
                                    const std::function<bool()>& stopped) const {
  std::vector<LapRow> result;
  for (int front = range.fewestFront; front <= range.mostFront; ++front)
    for (int rear = range.fewestRear; rear <= range.mostRear; ++rear) {
      if (stopped && stopped()) return {};
      if (limits::kFrontTeeth.contains(front) && limits::kRearTeeth.contains(rear))
        result.push_back(row(front, rear, bands));
    }
  std::stable_sort(result.begin(), result.end(), comesBefore);
  return result;
}

bool comesBefore(const LapRow& a, const LapRow& b) {
  if (a.lapS.has_value() != b.lapS.has_value()) return a.lapS.has_value();
  if (a.fits != b.fits) return a.fits;
  return a.lapS && *a.lapS < *b.lapS;
}

bool equalLaps(const LapRow& a, const LapRow& b) {
  if (!a.lapS || !b.lapS) return false;
  return equalTimes(*a.lapS, *b.lapS, std::max(a.bandS.value_or(0.0), b.bandS.value_or(0.0)));
}

int swapsFromStock(const LapRow& row, int stockFront, int stockRear) {
  return (row.frontTeeth != stockFront ? 1 : 0) + (row.rearTeeth != stockRear ? 1 : 0);
}

std::optional<LapPick> lapPick(const std::vector<LapRow>& rows, int stockFront, int stockRear) {
  std::vector<std::size_t> asQuick;  // the quickest, then those that are equal to it
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (rows[i].fits && rows[i].lapS) asQuick.push_back(i);
  if (asQuick.empty()) return std::nullopt;
  std::stable_sort(asQuick.begin(), asQuick.end(),
                   [&](std::size_t a, std::size_t b) { return *rows[a].lapS < *rows[b].lapS; });
  std::erase_if(asQuick,
                [&, best = asQuick.front()](std::size_t i) { return !equalLaps(rows[i], rows[best]); });

  const auto swaps = [&](std::size_t i) { return swapsFromStock(rows[i], stockFront, stockRear); };
  const auto change = [&, stock = static_cast<double>(stockRear) / stockFront](std::size_t i) {
    constexpr double kPerNoise = 1e9;  // one ratio from other teeth is the same one
    return std::round(std::abs(std::log(rows[i].finalRatio / stock)) * kPerNoise);
  };
  const auto lessTrouble = [&](std::size_t a, std::size_t b) {
    return std::pair(swaps(a), change(a)) < std::pair(swaps(b), change(b));
  };
  const std::size_t taken = *std::min_element(asQuick.begin(), asQuick.end(), lessTrouble);
  const auto others = [&](auto isAsGood) {
    return std::any_of(asQuick.begin(), asQuick.end(),
                       [&](std::size_t i) { return i != taken && isAsGood(i); });
  };
  const auto swapsAsFew = [&](std::size_t i) { return swaps(i) == swaps(taken); };
  const auto changesAsLittle = [&](std::size_t i) { return !lessTrouble(taken, i); };
  const LapDecidedBy by = asQuick.size() == 1        ? LapDecidedBy::Nothing
                          : !others(swapsAsFew)      ? LapDecidedBy::FewestSwaps
                          : !others(changesAsLittle) ? LapDecidedBy::SmallestChange
                                                     : LapDecidedBy::LapTime;
  return LapPick{asQuick.front(), {asQuick.begin() + 1, asQuick.end()}, taken, by};
}

}  // namespace layshaft
