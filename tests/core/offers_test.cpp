// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/offers.h"

#include <gtest/gtest.h>

#include "core/plan.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Profile offeredBike() {
  return loadProfile(sourceFolder() / "sample-profiles/club-600.bike.json").value();
}

std::vector<Plan> plansOf(const Profile& profile, Wish wish) {
  std::vector<Plan> plans;
  for (const Offer& offer : offers(profile, wish)) plans.push_back(plan(offerInput(profile, offer)));
  return plans;
}

std::vector<std::pair<int, int>> pairsOf(const Profile& profile, Wish wish) {
  std::vector<std::pair<int, int>> pairs;
  for (const Offer& offer : offers(profile, wish)) {
    const Setup setup = applied(offer.change, profile.stock);
    pairs.emplace_back(setup.frontTeeth.count(), setup.rearTeeth.count());
  }
  return pairs;
}

TEST(Offers, ShorterAndTallerAreThreePairsThatFitNearestFirst) {
  const Profile profile = offeredBike();
  for (const auto& [wish, sign] : {std::pair{Wish::Shorter, 1.0}, {Wish::Taller, -1.0}}) {
    const auto plans = plansOf(profile, wish);
    ASSERT_EQ(plans.size(), kMostOffers);
    double last = 0.0;
    for (const Plan& plan : plans) {
      EXPECT_TRUE(plan.proposed.chainRun->fits.value()) << plan.proposed.setup.rearTeeth.count();
      const double away = sign * plan.proposed.change.gearingPercent;
      EXPECT_GE(away - last, 2.0) << "no step that nobody feels";
      last = away;
    }
    EXPECT_LT(last, 12.0) << "near to what one has";
  }
}

TEST(Offers, WhatFitsIsTheLaddersJudgement) {
  Profile profile = offeredBike();
  profile.bike.chainRun->largestRearTeeth = profile.stock.rearTeeth.count();
  profile.sparesBox.reset();
  for (const auto& [frontTeeth, rearTeeth] : pairsOf(profile, Wish::Shorter)) {
    EXPECT_LE(rearTeeth, profile.stock.rearTeeth.count());
    EXPECT_LT(frontTeeth, profile.stock.frontTeeth.count());
  }
  profile.bike.chainRun->smallestFrontTeeth = profile.stock.frontTeeth.count();
  EXPECT_TRUE(offers(profile, Wish::Shorter).empty());
}

TEST(Offers, OfEqualGearingsTheOneThatExchangesFewerSprockets) {
  // 16/44 and 12/33 are one ratio.
  Profile profile = profileFrom(minimalProfile().dump());
  ASSERT_EQ(profile.stock.frontTeeth.count(), 16);
  profile.sparesBox.emplace();
  profile.sparesBox->front.push_back({.teeth = 12});
  profile.sparesBox->rear.push_back({.teeth = 33});
  EXPECT_EQ(pairsOf(profile, Wish::Shorter).front(), std::pair(16, 44));
}

TEST(Offers, TheFamiliarStepsStartFromStockWhateverIsProposed) {
  Profile profile = profileFrom(minimalProfile().dump());
  profile.proposed.rearTeeth = rear(40);
  const std::vector<std::pair<int, int>> steps{{16, 45}, {15, 43}, {15, 45}};
  EXPECT_EQ(pairsOf(profile, Wish::FamiliarSteps), steps);
}

TEST(Offers, WhatElseIsProposedStays) {
  Profile profile = offeredBike();
  profile.proposed.rearTyre = tyre("190/55ZR17");
  for (const Wish wish : {Wish::Shorter, Wish::Taller, Wish::FamiliarSteps})
    for (const Offer& offer : offers(profile, wish))
      EXPECT_EQ(offer.change.rearTyre, profile.proposed.rearTyre);
}

TEST(Offers, PinsAreOfferedAsTheyArePinned) {
  const Profile profile = offeredBike();
  ASSERT_FALSE(profile.pins.empty());
  const auto pins = offers(profile, Wish::Pins);
  ASSERT_EQ(pins.size(), std::min(profile.pins.size(), kMostOffers));
  for (std::size_t i = 0; i < pins.size(); ++i) {
    EXPECT_EQ(pins[i].name, profile.pins[i].name);
    EXPECT_EQ(pins[i].change, profile.pins[i].change);
  }
}

TEST(Offers, APlanOfAnOfferIsThePlanOfThatProposal) {
  Profile profile = offeredBike();
  profile.stock.options.chainElongationPercent.reset();
  profile.stock.options.chainKind = ChainKind::Sealed;
  profile.wear = Wear{};
  WearMeasurement worn;
  worn.lengthsMm = {319.0};  // 0.5 % over twenty pitches of 15.875 mm: the offer runs that chain, too
  profile.wear->measurements.add(worn);
  const Offer offer = offers(profile, Wish::Taller).front();
  const Plan offered = plan(offerInput(profile, offer));
  profile.proposed = offer.change;
  profile.pins.clear();
  EXPECT_EQ(offered.input, planInput(profile));
}

}  // namespace
}  // namespace layshaft::test
