// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/fitted.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/study/chain_run.h"
#include "core/study/pull.h"
#include "core/study/sprocket_saving.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Setup weighedSetup(std::optional<double> frontKg, std::optional<double> rearKg) {
  auto setup = bareSetup();
  setup.options.chainSize = chainSize("520");
  setup.options.links = 114;
  setup.options.frontSprocket = SprocketDetails{.material = SprocketMaterial::Steel, .massKg = frontKg};
  setup.options.rearSprocket = SprocketDetails{.material = SprocketMaterial::Steel, .massKg = rearKg};
  return setup;
}

TEST(Fitted, NothingChangesBetweenLikeSetups) {
  const Fitted none = fitted(weighedSetup(0.3, 0.9), weighedSetup(0.3, 0.9));
  EXPECT_EQ(none.axleShiftM, 0.0);
  EXPECT_EQ(none.massKg, 0.0);
  EXPECT_EQ(none.wheelInertiaKgM2, 0.0);
}

TEST(Fitted, ALighterRearSprocketTakesItsMassAndItsTurning) {
  const Fitted light = fitted(weighedSetup(0.3, 0.9), weighedSetup(0.3, 0.4));
  EXPECT_NEAR(light.massKg, -0.5, 1e-12);
  const double r = 0.108740;  // pitch radius of 43 teeth, bore at 0.4 of it
  EXPECT_NEAR(light.wheelInertiaKgM2, -0.5 * 0.5 * 1.16 * r * r, 1e-7);
}

TEST(Fitted, AFrontSprocketTurnsByTheFinalRatio) {
  const Fitted heavy = fitted(weighedSetup(0.3, 0.9), weighedSetup(0.5, 0.9));
  const double r = 0.040686, ratio = 43.0 / 16.0;
  EXPECT_NEAR(heavy.massKg, 0.2, 1e-12);
  EXPECT_NEAR(heavy.wheelInertiaKgM2, 0.2 * 0.5 * 1.16 * r * r * ratio * ratio, 1e-7);
}

TEST(Fitted, AnEstimateIsShownAndNeverEntered) {
  const auto stock = weighedSetup(0.3, 0.9);
  auto light = weighedSetup(0.3, std::nullopt);
  light.options.rearSprocket->material = SprocketMaterial::Aluminium;
  EXPECT_EQ(fitted(stock, light).massKg, 0.0);
  EXPECT_TRUE(sprocketMass(stock, light, SprocketPlace::Rear)->estimated);
  EXPECT_FALSE(sprocketMass(stock, stock, SprocketPlace::Rear)->estimated);
  const auto saving = sprocketSaving(stock, light, 0.31);
  ASSERT_TRUE(saving);
  EXPECT_FALSE(saving->allCounted());
  EXPECT_FALSE(saving->anyCounted());
  EXPECT_GT(saving->kg, 0.4);
  EXPECT_GT(saving->equivalentKg, saving->kg);
  EXPECT_TRUE(sprocketSaving(stock, weighedSetup(0.3, 0.4), 0.31)->allCounted());
}

TEST(Fitted, AnEstimateIsComparedWithAnEstimate) {
  // Weighed far above what its material lets expect: the other, of the same make, is no lighter for being
  // estimated.
  const auto stock = weighedSetup(0.3, 5.0);
  const auto same = weighedSetup(0.3, std::nullopt);
  const auto difference = sprocketDifference(stock, same, SprocketPlace::Rear);
  ASSERT_TRUE(difference);
  EXPECT_FALSE(difference->weighed);
  EXPECT_EQ(difference->kg, 0.0);
}

TEST(Fitted, WhatIsWeighedCountsBesideWhatIsNot) {
  const auto stock = weighedSetup(0.3, 0.9);
  auto mixed = weighedSetup(std::nullopt, 0.4);
  mixed.frontTeeth = front(15);
  EXPECT_NEAR(fitted(stock, mixed).massKg, -0.5, 1e-12);
  const auto saving = sprocketSaving(stock, mixed, 0.31);
  EXPECT_TRUE(saving->anyCounted());
  EXPECT_FALSE(saving->allCounted());
}

TEST(Fitted, NothingIsKnownWithoutMassOrMaterial) {
  auto unknown = weighedSetup({}, {});
  unknown.options.frontSprocket.reset();
  unknown.options.rearSprocket.reset();
  EXPECT_FALSE(sprocketMass(unknown, unknown, SprocketPlace::Rear));
  EXPECT_FALSE(sprocketDifference(weighedSetup(0.3, 0.9), unknown, SprocketPlace::Rear));
  EXPECT_FALSE(sprocketSaving(weighedSetup(0.3, 0.9), unknown, 0.31));
}

TEST(Fitted, WeighedPulleysOfABeltCountToo) {
  auto stock = weighedSetup(1.6, 3.0);
  stock.options.finalDrive = FinalDrive::Belt;
  stock.options.beltPitchMm = 14;
  stock.options.beltTeeth = 146;
  auto light = stock;
  light.options.rearSprocket->massKg = 2.0;
  const Fitted less = fitted(stock, light);
  EXPECT_NEAR(less.massKg, -1.0, 1e-12);
  const double r = 0.007 / std::sin(M_PI / 43);
  EXPECT_NEAR(less.wheelInertiaKgM2, -0.5 * 1.16 * r * r, 1e-9);
}

TEST(Fitted, WhatTurnsIsComparedOnlyWhereBothPitchesAreKnown) {
  auto stock = weighedSetup(0.3, 0.9);
  const auto light = weighedSetup(0.3, 0.4);
  stock.options.chainSize.reset();
  const Fitted less = fitted(stock, light);
  EXPECT_NEAR(less.massKg, -0.5, 1e-12);
  EXPECT_EQ(less.wheelInertiaKgM2, 0.0);
}

TEST(Fitted, StocksOwnSavingIsPlainZero) {
  const auto saving = sprocketSaving(weighedSetup(0.3, 0.9), weighedSetup(0.3, 0.9), 0.31);
  EXPECT_FALSE(std::signbit(saving->kg));
  EXPECT_FALSE(std::signbit(saving->equivalentKg));
}

Profile ridingProfile() {
  return loadProfile(sourceFolder() / "sample-profiles/motocross-450.bike.json").value();
}

TEST(Fitted, EntersTheEquivalentMassOfEveryGear) {
  const Profile profile = ridingProfile();
  const auto bike = std::make_shared<const PullBike>(pullBike(profile.bike, *profile.ride));
  const auto proposed = applied(profile.proposed, profile.stock);
  const Fitted changes = fitted(profile.stock, proposed);
  ASSERT_NEAR(changes.massKg, 0.44 - 0.96, 1e-12);
  const Rollout rollout = rolloutOf(proposed);
  const Road road = roadOf(profile.bike, *profile.ride);
  const PullModel with(bike, road, proposed, rollout, changes), without(bike, road, proposed, rollout, {});
  const double expected = changes.massKg + changes.wheelInertiaKgM2 / std::pow(rollout.radiusM(), 2);
  for (std::size_t g = 0; g < with.gearCount(); ++g)
    EXPECT_NEAR(with.equivalentMassKg(g) - without.equivalentMassKg(g), expected, 1e-9);
  EXPECT_NEAR(with.coastingMassKg() - without.coastingMassKg(), expected, 1e-9);
  EXPECT_LT(with.resistanceN(10), without.resistanceN(10)) << "it also rolls lighter";
}

TEST(Fitted, ALighterSprocketIsWorthSeconds) {
  const Plan light = plan(ridingProfile());
  const auto& saving = light.proposed.sprockets.saving;
  ASSERT_TRUE(saving);
  EXPECT_TRUE(saving->allCounted());
  EXPECT_NEAR(saving->kg, 0.52, 1e-9);
  ASSERT_TRUE(saving->driveS && saving->zeroTo100S && saving->quarterMileS);
  EXPECT_GT(*saving->driveS, 0.0);
  // Common practice, no source: time goes with mass where the pull does not.
  const double share = saving->equivalentKg / 190.0;
  EXPECT_LT(*saving->zeroTo100S, 3.0 * share * *light.proposed.road.run.zeroTo100KmhS);
  EXPECT_GT(*saving->zeroTo60S, 0.0);
  EXPECT_LT(*saving->zeroTo60S, *saving->zeroTo100S) << "96.6 km/h come before 100";
  // It is in the run already: the same ride with stock's mass takes that much longer.
  Profile heavy = ridingProfile();
  heavy.proposed.options.rearSprocket->massKg.reset();
  EXPECT_NEAR(plan(heavy).proposed.road.run.drive->timeS - light.proposed.road.run.drive->timeS,
              *saving->driveS, 1e-9);
}

TEST(Fitted, AWheelsInertiaDoesNotHideAMassThatIsGone) {
  Profile profile = ridingProfile();
  profile.bike.chassis->massKg = 20;
  profile.bike.chassis->riderMassKg = 0;
  profile.bike.chassis->rearWheelInertiaKgm2 = 10;
  profile.stock.options.rearSprocket->massKg = 20;
  const Plan strange = plan(profile);
  EXPECT_GT(strange.proposed.model->resistanceN(1.0), 0.0) << "weight keeps its sign";
}

TEST(Fitted, MassesThatOutweighTheBikeAreNotBelieved) {
  Profile profile = ridingProfile();
  profile.bike.chassis->massKg = 20;
  profile.bike.chassis->riderMassKg = 0;
  profile.stock.options.rearSprocket->massKg = 20;
  const Plan strange = plan(profile);
  ASSERT_TRUE(strange.proposed.road.run.quarterMileS);
  EXPECT_GT(*strange.proposed.road.run.quarterMileS, 1.0);
}

TEST(SizeMixes, AreNamed) {
  const auto stock = weighedSetup(0.3, 0.9);
  auto setup = stock;
  EXPECT_TRUE(sizeMixes(stock, setup).empty());
  setup.options.chainSize = chainSize("525");
  auto mixes = sizeMixes(stock, setup);
  ASSERT_EQ(mixes.size(), 2U) << "both sprockets stay and are cut for 520";
  EXPECT_EQ(mixes[0].place, SprocketPlace::Front);
  EXPECT_EQ(mixes[0].sprocket.name, "520");
  EXPECT_EQ(mixes[0].chain.name, "525");
  setup.rearTeeth = rear(45);
  EXPECT_EQ(sizeMixes(stock, setup).size(), 1U) << "another rear sprocket is bought to suit";
  setup.options.rearSprocket->size = chainSize("520");
  EXPECT_EQ(sizeMixes(stock, setup).size(), 2U) << "unless it says otherwise";
  setup.options.frontSprocket->size = chainSize("525");
  setup.options.rearSprocket->size = chainSize("525");
  EXPECT_TRUE(sizeMixes(stock, setup).empty()) << "a whole change of size with the same teeth";
}

TEST(SizeMixes, SayWhichDimensionsDiffer) {
  const auto differs = [](const char* a, const char* b) {
    return sizeDifference(*chainSize(a), *chainSize(b));
  };
  EXPECT_FALSE(differs("520", "520").any());
  EXPECT_TRUE(differs("520", "525").innerWidth);
  EXPECT_FALSE(differs("520", "525").pitch);
  EXPECT_FALSE(differs("520", "525").roller);
  EXPECT_TRUE(differs("420", "428").roller);
  EXPECT_FALSE(differs("420", "428").pitch);
  EXPECT_TRUE(differs("428", "520").pitch);
}

Bike roomyBike() {
  Bike bike;
  bike.chainRun = ChainRun{.adjusterForwardMm = 20, .adjusterBackMm = 20};
  return bike;
}

TEST(LengthsThatFit, SayHowManyLinksTheBikesOwnChainLoses) {
  const auto stock = weighedSetup(0.3, 0.9);
  const int own = *stock.options.links;
  auto longer = stock;
  longer.options.links = 120;
  const auto run = chainRun(roomyBike(), stock, longer, nullptr,
                            {{.size = *chainSize("520"), .links = 116, .state = SpareState::Worn},
                             {.size = *chainSize("525"), .links = 114},
                             {.size = *chainSize("520"), .links = 130},
                             {.size = *chainSize("520"), .links = 118}});
  ASSERT_TRUE(run);
  EXPECT_EQ(run->fits, false);
  ASSERT_FALSE(run->lengthsThatFit.empty());
  for (const FittingLength& length : run->lengthsThatFit) {
    EXPECT_EQ(length.links % 2, 0);
    if (length.links <= own)
      EXPECT_EQ(length.shortenBy, own - length.links) << "not of the 120 that are proposed";
    else
      EXPECT_FALSE(length.shortenBy) << length.links;
    ASSERT_TRUE(length.spare);
    EXPECT_EQ(length.spare->links, 118) << "the one that least is cut from";
    EXPECT_EQ(length.spare->shortenBy, 118 - length.links);
  }
}

/// First what is on the bike, as it is and then shorter; what must be had from elsewhere comes after it.
TEST(LengthsThatFit, TheBikesOwnChainComesFirst) {
  const auto stock = weighedSetup(0.3, 0.9);
  const int own = *stock.options.links;
  auto longer = stock;
  longer.options.links = own + 4;
  auto bike = roomyBike();
  bike.chainRun->adjusterForwardMm = bike.chainRun->adjusterBackMm = 30;
  const auto run = chainRun(bike, stock, longer, nullptr, {{.size = *chainSize("520"), .links = own + 2}});
  ASSERT_TRUE(run);
  const auto& lengths = run->lengthsThatFit;
  ASSERT_GE(lengths.size(), 3U);
  EXPECT_EQ(lengths[0].links, own);
  EXPECT_EQ(lengths[0].shortenBy, 0);
  EXPECT_EQ(lengths[1].links, own - 2);
  EXPECT_EQ(lengths[1].shortenBy, 2);
  bool elsewhere = false;
  for (std::size_t i = 1; i < lengths.size(); ++i) {
    if (!lengths[i].shortenBy) elsewhere = true;
    EXPECT_EQ(!lengths[i].shortenBy, elsewhere) << "nothing of the own chain after " << lengths[i].links;
    if (elsewhere && lengths[i - 1].shortenBy == std::nullopt) {
      EXPECT_GT(lengths[i].links, lengths[i - 1].links);
    }
  }
  EXPECT_TRUE(elsewhere);
}

/// A chain of another size on the bike cannot be cut to one of this.
TEST(LengthsThatFit, AChainOfAnotherSizeIsNotTheBikesOwn) {
  const auto stock = weighedSetup(0.3, 0.9);
  auto other = stock;
  other.options.chainSize = chainSize("525");
  other.options.frontSprocket = other.options.rearSprocket = std::nullopt;
  other.frontTeeth = front(other.frontTeeth.count() + 1);
  other.rearTeeth = rear(other.rearTeeth.count() + 1);
  auto bike = roomyBike();
  bike.chainRun->adjusterForwardMm = bike.chainRun->adjusterBackMm = 30;
  const auto run = chainRun(bike, stock, other, nullptr);
  ASSERT_TRUE(run);
  ASSERT_FALSE(run->lengthsThatFit.empty());
  for (const FittingLength& length : run->lengthsThatFit) EXPECT_FALSE(length.shortenBy) << length.links;
}

TEST(LengthsThatFit, AShortChainCannotGrow) {
  const auto stock = weighedSetup(0.3, 0.9);
  auto larger = stock;
  larger.rearTeeth = rear(stock.rearTeeth.count() + 8);
  const auto run = chainRun(roomyBike(), stock, larger, nullptr);
  ASSERT_TRUE(run);
  ASSERT_FALSE(run->lengthsThatFit.empty());
  bool longer = false;
  for (const FittingLength& length : run->lengthsThatFit) {
    EXPECT_FALSE(length.spare);
    if (length.links <= *stock.options.links) continue;
    longer = true;
    EXPECT_FALSE(length.shortenBy) << length.links;
  }
  EXPECT_TRUE(longer);
}

}  // namespace
}  // namespace layshaft::test
