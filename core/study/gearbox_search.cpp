// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gearbox_search.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "core/bike/pair.h"
#include "core/limits.h"

namespace layshaft {
namespace {

GearTeeth teethIn(const SpareGearPair& pair) {
  return {.driving = pair.driving, .driven = pair.driven};
}

/// A gearbox that is put together from first gear up.
struct Partial {
  GearsTaken taken;
  std::optional<double> lastRatio;
};

/// What can be in one place: nothing of the box, or one of these.
std::vector<const SpareGearPair*> othersFor(int gear, double ratioIn,
                                            const std::vector<SpareGearPair>& onHand) {
  const Limit& limit = gear == 0 ? limits::kPrimaryRatio : limits::kGearRatio;
  std::vector<const SpareGearPair*> others;
  for (const SpareGearPair& pair : onHand) {
    if (pair.gear != gear || teethIn(pair).make(ratioIn) || !limit.contains(teethIn(pair).ratio())) continue;
    const bool known = std::any_of(others.begin(), others.end(), [&](const SpareGearPair* other) {
      return teethIn(*other).ratio() == teethIn(pair).ratio();
    });
    if (!known) others.push_back(&pair);
  }
  return others;
}

}  // namespace

SetupChange withGears(SetupChange change, const Setup& stock, const GearsTaken& taken) {
  std::vector<double> ratios = applied(change, stock).gearRatios.values();
  bool gears = false;
  for (const SpareGearPair& pair : taken) {
    const GearTeeth teeth = teethIn(pair);
    if (pair.gear == 0) {
      change.primaryRatio = teeth.ratio();
      change.options.primaryTeeth = teeth;
      continue;
    }
    const auto index = static_cast<std::size_t>(pair.gear - 1);
    ratios.at(index) = teeth.ratio();
    setTeethOf(change.options.gearTeeth, index, teeth);
    gears = true;
  }
  if (gears) change.gearRatios = GearRatios::make(std::move(ratios)).value();
  return change;
}

GearboxChoices gearboxChoices(const Setup& proposed, const std::vector<SpareGearPair>& onHand) {
  GearboxChoices choices;
  std::vector<Partial> made{{}};
  const auto extend = [&](int gear, double ratioIn) {
    std::vector<Partial> more;
    const auto add = [&](const Partial& to, double ratio, const SpareGearPair* pair) {
      if (gear > 1 && ratio >= *to.lastRatio) return;
      Partial next = to;
      if (gear > 0) next.lastRatio = ratio;
      if (pair) next.taken.push_back(*pair);
      more.push_back(std::move(next));
    };
    const auto others = othersFor(gear, ratioIn, onHand);
    for (const Partial& partial : made) add(partial, ratioIn, nullptr);
    for (const Partial& partial : made)
      for (const SpareGearPair* pair : others) add(partial, teethIn(*pair).ratio(), pair);
    made = std::move(more);
    if (made.size() <= kMostGearboxes) return;
    made.resize(kMostGearboxes);
    choices.more = true;
  };
  extend(0, proposed.primaryRatio);
  for (std::size_t i = 0; i < proposed.gearRatios.count(); ++i)
    extend(static_cast<int>(i) + 1, proposed.gearRatios[i]);
  for (Partial& partial : made) choices.gearboxes.push_back(std::move(partial.taken));
  return choices;
}

GearboxSearch::GearboxSearch(LadderInput input, const Track& track, const std::vector<SpareGearPair>& onHand)
    : input_(std::move(input)),
      choices_(gearboxChoices(applied(input_.proposed, input_.stock), onHand)),
      laps_(input_.shared, asked(input_.shared), track),
      stockS_(laps_.seconds(input_.stock, input_.stock)) {}

Setup GearboxSearch::setupOf(const SetupChange& gearbox, const PairTeeth& pair) const {
  return applied(withPair(gearbox, input_.stock, input_.fronts, input_.rears,
                          Teeth::front(pair.front).value(), Teeth::rear(pair.rear).value()),
                 input_.stock);
}

std::optional<GearboxRow> GearboxSearch::row(std::size_t gearbox, const std::vector<PairTeeth>& pairs,
                                             const std::function<bool()>& stopped) const {
  std::optional<GearboxRow> best;
  const SetupChange change = withGears(input_.proposed, input_.stock, choices_.gearboxes[gearbox]);
  for (const PairTeeth& pair : pairs) {
    if (stopped && stopped()) return std::nullopt;
    const auto lapS = laps_.seconds(input_.stock, setupOf(change, pair));
    if (!lapS || (best && best->lapS <= *lapS)) continue;
    best = GearboxRow{.gearbox = gearbox,
                      .pair = pair,
                      .lapS = *lapS,
                      .changeS = stockS_ ? std::optional(*lapS - *stockS_) : std::nullopt};
  }
  return best;
}

std::optional<GearboxRow> GearboxSearch::row(std::size_t gearbox, const std::vector<PairTeeth>& pairs) const {
  return row(gearbox, pairs, {});
}

std::vector<GearboxRow> GearboxSearch::rows(const std::vector<PairTeeth>& pairs,
                                            const std::function<bool(std::size_t done)>& stopped) const {
  std::vector<GearboxRow> result;
  for (std::size_t i = 0; i < choices_.gearboxes.size(); ++i) {
    bool stop = false;
    const auto next = row(i, pairs, [&] { return stop = stopped && stopped(i); });
    if (stop) return {};
    if (next) result.push_back(*next);
  }
  std::stable_sort(result.begin(), result.end(), [&](const GearboxRow& a, const GearboxRow& b) {
    if (a.lapS != b.lapS) return a.lapS < b.lapS;
    return choices_.gearboxes[a.gearbox].size() < choices_.gearboxes[b.gearbox].size();
  });
  return result;
}

std::optional<double> GearboxSearch::bandS(const GearboxRow& row) const {
  const auto stock = laps_.times(input_.stock, input_.stock);
  const SetupChange change = withGears(input_.proposed, input_.stock, choices_.gearboxes[row.gearbox]);
  const auto of = laps_.times(input_.stock, setupOf(change, row.pair));
  return stock.seconds && of.seconds ? std::optional(lapBandS(stock, of)) : std::nullopt;
}

}  // namespace layshaft
