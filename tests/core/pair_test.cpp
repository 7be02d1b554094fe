// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/pair.h"

#include <gtest/gtest.h>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// Stock 16/43 on 520 steel, weighed; 45 aluminium proposed, weighed; a box with a light 47 and a worn 48.
Profile boxedProfile() {
  Json json = minimalProfile();
  json["stock"]["chain_size"] = "520";
  json["stock"]["front_sprocket"] = {{"material", "steel"}, {"mass_kg", 0.3}};
  json["stock"]["rear_sprocket"] = {{"material", "steel"}, {"mass_kg", 0.9}};
  json["proposed"] = {{"rear_teeth", 45}, {"rear_sprocket", {{"material", "aluminium"}, {"mass_kg", 0.41}}}};
  json["spares_box"]["rear"] = Json::array(
      {{{"teeth", 47}, {"size", "525"}, {"mass_kg", 0.7}},
       {{"teeth", 47}, {"size", "520"}, {"material", "aluminium"}, {"mass_kg", 0.44}, {"state", "used"}},
       {{"teeth", 48}, {"material", "steel"}, {"mass_kg", 1.0}, {"state", "worn"}}});
  return profileFrom(json.dump());
}

/// The same with three pins: 16/47 with another primary, and 15/44 and 16/47 as the proposal would be.
Profile minimalProfileWithPins() {
  Profile profile = boxedProfile();
  Pin other{.name = "other", .change = pinOfPair(profile, front(16), rear(47))};
  other.change.primaryRatio = 1.75;
  profile.pins = {other,
                  {.name = "15/44", .change = pinOfPair(profile, front(15), rear(44))},
                  {.name = "16/47", .change = pinOfPair(profile, front(16), rear(47))}};
  return profile;
}

TEST(ProposalWithPair, TheSameTeethKeepTheirSprocket) {
  const Profile profile = boxedProfile();
  const SetupChange change = proposalWithPair(profile, front(15), rear(45));
  EXPECT_EQ(change.options.rearSprocket->massKg, 0.41);
  EXPECT_EQ(change.frontTeeth->count(), 15);
  EXPECT_FALSE(applied(change, profile.stock).options.frontSprocket->massKg) << "stock's belongs to 16 teeth";
}

TEST(ProposalWithPair, OtherTeethBringWhatTheBoxKnows) {
  const Profile profile = boxedProfile();
  const auto details = proposalWithPair(profile, front(16), rear(47)).options.rearSprocket;
  ASSERT_TRUE(details);
  EXPECT_EQ(details->massKg, 0.44) << "the one that runs with the chain";
  EXPECT_EQ(details->size->name, "520");
  EXPECT_EQ(details->material, SprocketMaterial::Aluminium);
}

TEST(ProposalWithPair, OtherTeethForgetTheMassOfTheOneBefore) {
  const Profile profile = boxedProfile();
  for (const int teeth : {46, 48}) {  // not in the box; worn
    const auto details = proposalWithPair(profile, front(16), rear(teeth)).options.rearSprocket;
    ASSERT_TRUE(details);
    EXPECT_FALSE(details->massKg) << teeth;
    EXPECT_EQ(details->material, SprocketMaterial::Aluminium) << "likely the same again";
  }
}

TEST(ProposalWithPair, BackOnStocksTeethItIsStocksSprocket) {
  const Profile profile = boxedProfile();
  const auto setup = applied(proposalWithPair(profile, front(16), rear(43)), profile.stock);
  EXPECT_EQ(setup.options.rearSprocket, profile.stock.options.rearSprocket);
}

TEST(ProposalWithPair, UnknownKeysOfASprocketAreNeverLost) {
  Profile profile = boxedProfile();
  profile.proposed.options.rearSprocket->extras.keep("maker_note", "\"kept\"");
  for (const int teeth : {43, 46, 47}) {
    const auto details = proposalWithPair(profile, front(16), rear(teeth)).options.rearSprocket;
    ASSERT_TRUE(details) << teeth;
    EXPECT_EQ(details->extras.size(), 1U) << teeth;
  }
  const auto back = applied(proposalWithPair(profile, front(16), rear(43)), profile.stock);
  EXPECT_EQ(back.options.rearSprocket->massKg, 0.9) << "and stock's sprocket is still stock's";
}

TEST(SpareSprocketOnHand, MustRunWithTheChain) {
  const Profile profile = boxedProfile();
  const auto& rears = profile.sparesBox->rear;
  EXPECT_EQ(spareSprocket(rears, 47, profile.stock), &rears[1]);
  EXPECT_EQ(spareSprocket(rears, 48, profile.stock), nullptr) << "worn";
  EXPECT_EQ(spareSprocket(rears, 46, profile.stock), nullptr);
}

TEST(PinnedPairs, TellWhichPairAndWhetherAllElseIsTheProposals) {
  Profile profile = minimalProfileWithPins();
  EXPECT_EQ(pinnedPairs(profile), (std::vector<PinnedPair>{{16, 47, false}, {15, 44, true}, {16, 47, true}}));
  const auto pins = pinnedPairs(profile);
  EXPECT_EQ(pinOn(pins, 16, 47), 2u) << "the one that is the proposal on this pair";
  EXPECT_EQ(pinOn(pins, 15, 44), 1u);
  EXPECT_EQ(pinOn(pins, 15, 45), std::nullopt);
  profile.proposed.primaryRatio = 2.0;
  EXPECT_EQ(pinOn(pinnedPairs(profile), 16, 47), 0u) << "none is as proposed any more: the first";
}

TEST(PinnedPairs, KeepTheirPairWhateverBecomesOfStocks) {
  Profile profile = minimalProfileWithPins();
  const auto pair = [&](std::size_t pin) {
    const layshaft::Setup setup = applied(profile.pins[pin].change, profile.stock);
    return std::pair(setup.frontTeeth.count(), setup.rearTeeth.count());
  };
  profile.stock.frontTeeth = front(17);
  EXPECT_EQ(pair(2), std::pair(16, 47));
  profile.stock.frontTeeth = front(15);
  profile.stock.rearTeeth = rear(44);
  EXPECT_EQ(pair(1), std::pair(15, 44)) << "also what stock has for a while";
  profile.stock.frontTeeth = front(16);
  EXPECT_EQ(pair(1), std::pair(15, 44));
}

TEST(PinnedPairs, APinOfAFileThatFollowsStockDoesSoOn) {
  Profile profile = boxedProfile();
  profile.pins = {
      {.name = "47", .change = withoutStockValues(pinOfPair(profile, front(16), rear(47)), profile.stock)}};
  ASSERT_FALSE(profile.pins[0].change.frontTeeth);
  EXPECT_EQ(pinnedPairs(profile), (std::vector<PinnedPair>{{16, 47, true}}));
  profile.stock.frontTeeth = front(17);
  EXPECT_EQ(pinnedPairs(profile)[0].frontTeeth, 17);
}

}  // namespace
}  // namespace layshaft::test
