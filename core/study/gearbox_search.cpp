// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gearbox_search.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "core/bike/pair.h"
#include "core/limits.h"
#include "core/study/chain_run.h"

namespace layshaft {
namespace {

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

/// Puts gearboxes together from first gear up, those with fewer gears changed first: where there are too many
/// to try, every gear on hand is in some that are tried.
class GearboxBuilder {
 public:
  GearboxBuilder(const Setup& proposed, const std::vector<SpareGearPair>& onHand) {
    addPlace(0, proposed.primaryRatio, onHand);
    for (std::size_t i = 0; i < proposed.gearRatios.count(); ++i)
      addPlace(static_cast<int>(i) + 1, proposed.gearRatios[i], onHand);
  }

  GearboxChoices all() {
    for (std::size_t changes = 0; changes <= places_.size() && !choices_.more; ++changes)
      extend(0, changes, std::numeric_limits<double>::infinity());
    return std::move(choices_);
  }

 private:
  static constexpr int kMostSteps = 1'000'000;  // of the search, most of which may lead nowhere

  struct Place {
    int gear;  ///< 0 is the primary
    double ratioIn;
    std::vector<const SpareGearPair*> others;
  };

  void addPlace(int gear, double ratioIn, const std::vector<SpareGearPair>& onHand) {
    places_.push_back({gear, ratioIn, othersFor(gear, ratioIn, onHand)});
  }

  /// The places from one on, with so many of them changed.
  void extend(std::size_t place, std::size_t changes, double lastRatio) {
    if (choices_.more || changes > places_.size() - place) return;
    if (place == places_.size()) return take();
    if (++steps_ > kMostSteps) {
      choices_.more = true;
      return;
    }
    const Place& here = places_[place];
    const auto goOn = [&](double ratio, std::size_t left) {
      if (here.gear == 0) return extend(place + 1, left, lastRatio);
      if (ratio < lastRatio) extend(place + 1, left, ratio);
    };
    goOn(here.ratioIn, changes);
    if (changes == 0) return;
    for (const SpareGearPair* pair : here.others) {
      taken_.push_back(*pair);
      goOn(teethIn(*pair).ratio(), changes - 1);
      taken_.pop_back();
    }
  }

  void take() {
    if (choices_.gearboxes.size() == kMostGearboxes)
      choices_.more = true;
    else
      choices_.gearboxes.push_back(taken_);
  }

  std::vector<Place> places_;
  GearsTaken taken_;
  int steps_ = 0;
  GearboxChoices choices_;
};

}  // namespace

GearboxChoices gearboxChoices(const Setup& proposed, const std::vector<SpareGearPair>& onHand) {
  return GearboxBuilder(proposed, onHand).all();
}

std::vector<PairTeeth> pairsThatFit(const LadderInput& input, const LadderRange& range) {
  std::vector<PairTeeth> pairs;
  for (int front = range.fewestFront; front <= range.mostFront; ++front)
    for (int rear = range.fewestRear; rear <= range.mostRear; ++rear) {
      const auto frontTeeth = Teeth::front(front), rearTeeth = Teeth::rear(rear);
      if (!frontTeeth || !rearTeeth) continue;
      const Setup setup =
          applied(withPair(input.proposed, input.stock, input.fronts, input.rears, *frontTeeth, *rearTeeth),
                  input.stock);
      const auto run = chainRun(input.shared.bike, input.stock, setup, nullptr);
      if (!run || run->fits.value_or(true)) pairs.push_back({front, rear});
    }
  return pairs;
}

void sortGearboxes(std::vector<GearboxRow>& rows, const GearboxChoices& choices) {
  std::stable_sort(rows.begin(), rows.end(), [&](const GearboxRow& a, const GearboxRow& b) {
    if (a.lapS != b.lapS) return a.lapS < b.lapS;
    return choices.gearboxes[a.gearbox].size() < choices.gearboxes[b.gearbox].size();
  });
}

GearboxSearch::GearboxSearch(LadderInput input, const Track& track, const std::vector<SpareGearPair>& onHand)
    : input_(std::move(input)),
      choices_(gearboxChoices(applied(input_.proposed, input_.stock), onHand)),
      laps_(input_.shared, asked(input_.shared), track),
      stock_(laps_.times(input_.stock, input_.stock)) {}

SetupChange GearboxSearch::change(std::size_t gearbox) const {
  return withGears(input_.proposed, input_.stock, choices_.gearboxes[gearbox]).value();
}

Setup GearboxSearch::setup(const GearboxRow& row) const {
  return setupOf(change(row.gearbox), row.pair);
}

Setup GearboxSearch::setupOf(const SetupChange& gearbox, const PairTeeth& pair) const {
  return applied(withPair(gearbox, input_.stock, input_.fronts, input_.rears,
                          Teeth::front(pair.front).value(), Teeth::rear(pair.rear).value()),
                 input_.stock);
}

std::optional<GearboxRow> GearboxSearch::row(std::size_t gearbox, const std::vector<PairTeeth>& pairs,
                                             const std::function<bool()>& stopped) const {
  std::optional<GearboxRow> best;
  const SetupChange with = change(gearbox);
  for (const PairTeeth& pair : pairs) {
    if (stopped && stopped()) return std::nullopt;
    const auto lapS = laps_.seconds(input_.stock, setupOf(with, pair));
    if (!lapS || (best && best->lapS <= *lapS)) continue;
    best = GearboxRow{.gearbox = gearbox,
                      .pair = pair,
                      .lapS = *lapS,
                      .changeS = stock_.seconds ? std::optional(*lapS - *stock_.seconds) : std::nullopt};
  }
  return best;
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
  sortGearboxes(result, choices_);
  return result;
}

std::optional<double> GearboxSearch::bandS(const GearboxRow& row) const {
  const auto of = laps_.times(input_.stock, setup(row));
  return stock_.seconds && of.seconds ? std::optional(lapBandS(stock_, of)) : std::nullopt;
}

}  // namespace layshaft
