// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/offers.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/bike/pair.h"
#include "core/study/chain_run.h"
#include "core/study/gearing.h"
#include "core/study/ladder.h"

namespace layshaft {
namespace {

/// About one rear tooth: a smaller step nobody feels. Common practice.
constexpr double kFeltPercent = 2.0;
constexpr double kSameGearingPercent = 1e-6;

/// A pair in reach that is on the wanted side of stock.
struct Candidate {
  Teeth front, rear;
  Setup setup;
  double awayPercent;  ///< from stock's gearing
  int exchanged;       ///< sprockets that are not stock's
};

std::vector<Candidate> candidates(const LadderInput& input, Wish wish) {
  // Which shift points there are changes no ratio.
  const GearingConditions conditions{.revLimitRpm = input.shared.bike.engine.revLimitRpm};
  const Gearing stock = gearing(input.stock, conditions);
  const LadderRange range = usualRange(input);
  std::vector<Candidate> found;
  for (int frontTeeth = range.fewestFront; frontTeeth <= range.mostFront; ++frontTeeth)
    for (int rearTeeth = range.fewestRear; rearTeeth <= range.mostRear; ++rearTeeth) {
      const Teeth front = Teeth::front(frontTeeth).value(), rear = Teeth::rear(rearTeeth).value();
      Setup setup =
          applied(withPair(input.proposed, input.stock, input.fronts, input.rears, front, rear), input.stock);
      const double shorter = gearingChange(input.stock, stock, gearing(setup, conditions)).gearingPercent;
      const double away = wish == Wish::Shorter ? shorter : -shorter;
      if (away < kFeltPercent) continue;
      const int exchanged = (front != input.stock.frontTeeth) + (rear != input.stock.rearTeeth);
      found.push_back({front, rear, std::move(setup), away, exchanged});
    }
  std::sort(found.begin(), found.end(), [](const Candidate& a, const Candidate& b) {
    if (std::abs(a.awayPercent - b.awayPercent) > kSameGearingPercent) return a.awayPercent < b.awayPercent;
    return a.exchanged < b.exchanged;
  });
  return found;
}

bool fits(const LadderInput& input, const Setup& setup) {
  const auto run = chainRun(input.shared.bike, input.stock, setup, nullptr, input.shared.chainsOnHand);
  return !run || run->fits.value_or(true);
}

std::vector<Offer> nearest(const Profile& profile, Wish wish) {
  const LadderInput input = ladderInput(profile);
  std::vector<Offer> nearest;
  double last = 0.0;
  for (const Candidate& candidate : candidates(input, wish)) {
    if (candidate.awayPercent - last < kFeltPercent || !fits(input, candidate.setup)) continue;
    nearest.push_back({{}, proposalWithPair(profile, candidate.front, candidate.rear)});
    if (nearest.size() == kMostOffers) break;
    last = candidate.awayPercent;
  }
  return nearest;
}

std::vector<Offer> familiarSteps(const Profile& profile) {
  const int front = profile.stock.frontTeeth.count(), rear = profile.stock.rearTeeth.count();
  std::vector<Offer> steps;
  for (const auto& [fewer, more] : {std::pair{0, 2}, {1, 0}, {1, 2}}) {
    const auto newFront = Teeth::front(front - fewer), newRear = Teeth::rear(rear + more);
    if (newFront && newRear) steps.push_back({{}, proposalWithPair(profile, *newFront, *newRear)});
  }
  return steps;
}

std::vector<Offer> pinned(const Profile& profile) {
  std::vector<Offer> pins;
  for (const Pin& pin : profile.pins)
    if (pins.size() < kMostOffers) pins.push_back({pin.name, pin.change});
  return pins;
}

}  // namespace

std::vector<Offer> offers(const Profile& profile, Wish wish) {
  switch (wish) {
    case Wish::Shorter:
    case Wish::Taller:
      return nearest(profile, wish);
    case Wish::FamiliarSteps:
      return familiarSteps(profile);
    case Wish::Pins:
      break;
  }
  return pinned(profile);
}

PlanInput offerInput(const Profile& profile, const Offer& offer) {
  Profile offered = profile;
  offered.proposed = offer.change;
  offered.pins.clear();
  return planInput(offered);
}

}  // namespace layshaft
