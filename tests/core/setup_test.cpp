// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/setup.h"

#include <gtest/gtest.h>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Setup fullStock() {
  return profileFrom(everyKeyProfile().dump()).stock;
}
SetupChange fullChange() {
  return profileFrom(everyKeyProfile().dump()).proposed;
}

TEST(Applied, NoChangeIsStock) {
  EXPECT_EQ(applied({}, fullStock()), fullStock());
  EXPECT_EQ(applied({}, bareSetup()), bareSetup());
}

TEST(Applied, AFullChangeReplacesEverything) {
  const SetupChange change = fullChange();
  const auto setup = applied(change, fullStock());
  EXPECT_EQ(setup.frontTeeth, *change.frontTeeth);
  EXPECT_EQ(setup.rearTeeth, *change.rearTeeth);
  EXPECT_EQ(setup.rearTyre, *change.rearTyre);
  EXPECT_EQ(setup.primaryRatio, *change.primaryRatio);
  EXPECT_EQ(setup.gearRatios, *change.gearRatios);
  EXPECT_EQ(setup.options, change.options);
}

TEST(Applied, WhatIsMissingFollowsStock) {
  const auto stock = fullStock();
  auto expected = stock;
  expected.options.links = 118;
  EXPECT_EQ(applied({.options = {.links = 118}}, stock), expected);
  expected = stock;
  expected.primaryRatio = 1.8;
  expected.options.primaryTeeth.reset();
  EXPECT_EQ(applied({.primaryRatio = 1.8}, stock), expected);
}

TEST(Applied, WhatWasMeasuredOnATyreGoesWithIt) {
  const auto stock = fullStock();
  const auto other = applied({.rearTyre = tyre("180/60ZR17")}, stock);
  EXPECT_FALSE(other.options.rolloutMm);
  EXPECT_FALSE(other.options.crownRadiusMm);
  EXPECT_FALSE(other.options.treadWearMm);
  EXPECT_FALSE(other.options.growthPerKmh2);
  // How far estimates are trusted is not the tyre's.
  EXPECT_EQ(other.options.rollingAllowancePercent, stock.options.rollingAllowancePercent);
  EXPECT_EQ(other.options.chainSize, stock.options.chainSize);
  // The other tyre's own figures count.
  EXPECT_EQ(
      applied({.rearTyre = tyre("180/60ZR17"), .options = {.rolloutMm = 2001}}, stock).options.rolloutMm,
      2001);
}

TEST(Applied, ATyreWrittenAnotherWayIsStillStocks) {
  const auto stock = fullStock();
  const auto same = applied({.rearTyre = tyre("190/55-17")}, stock);
  EXPECT_EQ(same.options.rolloutMm, stock.options.rolloutMm);
  EXPECT_EQ(same.options.treadWearMm, stock.options.treadWearMm);
  EXPECT_EQ(same.rearTyre.text(), "190/55-17");
}

TEST(Applied, AnotherToothCountIsAnotherSprocket) {
  const auto stock = fullStock();
  const auto other = applied({.frontTeeth = front(15)}, stock);
  ASSERT_TRUE(other.options.frontSprocket);
  EXPECT_EQ(other.options.frontSprocket->material, stock.options.frontSprocket->material);
  EXPECT_FALSE(other.options.frontSprocket->massKg);
  EXPECT_EQ(other.options.rearSprocket, stock.options.rearSprocket);

  const auto rearOnly = applied({.rearTeeth = rear(45)}, stock);
  EXPECT_EQ(rearOnly.options.frontSprocket, stock.options.frontSprocket);
  ASSERT_TRUE(rearOnly.options.rearSprocket);
  EXPECT_FALSE(rearOnly.options.rearSprocket->massKg);

  const SprocketDetails weighed{.material = SprocketMaterial::Aluminium, .massKg = 0.25, .extras = {}};
  EXPECT_EQ(
      applied({.frontTeeth = front(15), .options = {.frontSprocket = weighed}}, stock).options.frontSprocket,
      weighed);
}

TEST(Applied, TheTeethOfAGearGoWithItsRatio) {
  auto stock = fullStock();
  const auto another = applied({.primaryRatio = 1.8, .gearRatios = gears({2.583, 1.95, 1.667})}, stock);
  EXPECT_FALSE(another.options.primaryTeeth);
  EXPECT_EQ(another.options.gearTeeth, (TeethOfGears{GearTeeth{12, 31}, std::nullopt, GearTeeth{18, 30}}));
  EXPECT_EQ(
      applied({.options = {.gearTeeth = {std::nullopt, GearTeeth{15, 30}}}}, stock).options.gearTeeth[1],
      (GearTeeth{15, 30}))
      << "other gears of the same ratio";
}

TEST(WithoutStockValues, DropsTeethThatAreStocksAnyway) {
  const auto stock = fullStock();
  const SetupChange kept = withoutStockValues(
      {.gearRatios = gears({2.583, 1.95}), .options = {.gearTeeth = {GearTeeth{12, 31}, GearTeeth{20, 39}}}},
      stock);
  EXPECT_EQ(kept.options.gearTeeth, (TeethOfGears{std::nullopt, GearTeeth{20, 39}}));
}

TEST(ForgetOtherGearTeeth, KeepsWhatStillMakesTheRatio) {
  auto stock = fullStock();
  SetupChange change{.options = {.primaryTeeth = GearTeeth{48, 77},
                                 .gearTeeth = {GearTeeth{12, 31}, GearTeeth{16, 32}, GearTeeth{18, 30}}}};
  stock.primaryRatio = 1.61;
  stock.gearRatios = gears({2.5, 2});
  forgetOtherGearTeeth(change, stock);
  EXPECT_EQ(change, (SetupChange{.options = {.gearTeeth = {std::nullopt, GearTeeth{16, 32}}}}));
}

TEST(Applied, TheSameToothCountIsTheSameSprocket) {
  const auto stock = fullStock();
  const auto same = applied({.frontTeeth = stock.frontTeeth, .rearTeeth = stock.rearTeeth}, stock);
  EXPECT_EQ(same.options.frontSprocket, stock.options.frontSprocket);
  EXPECT_EQ(same.options.rearSprocket, stock.options.rearSprocket);
}

TEST(WithoutStockValues, DropsWhatIsStockAnyway) {
  const auto stock = fullStock();
  const SetupChange all{.frontTeeth = stock.frontTeeth,
                        .rearTeeth = stock.rearTeeth,
                        .rearTyre = stock.rearTyre,
                        .primaryRatio = stock.primaryRatio,
                        .gearRatios = stock.gearRatios,
                        .options = stock.options};
  EXPECT_TRUE(withoutStockValues(all, stock).changesNothing());
}

TEST(WithoutStockValues, KeepsWhatDiffers) {
  EXPECT_EQ(withoutStockValues(fullChange(), fullStock()), fullChange());
  EXPECT_EQ(withoutStockValues({}, fullStock()), SetupChange{});
}

TEST(WithoutStockValues, KeepsEqualFiguresOfAnotherTyreOrSprocket) {
  const auto stock = fullStock();
  const SetupChange change{.frontTeeth = front(15),
                           .rearTyre = tyre("180/60ZR17"),
                           .options = {.rolloutMm = stock.options.rolloutMm,
                                       .treadWearMm = stock.options.treadWearMm,
                                       .frontSprocket = stock.options.frontSprocket,
                                       .rearSprocket = stock.options.rearSprocket}};
  const SetupChange kept = withoutStockValues(change, stock);
  EXPECT_EQ(kept.options.rolloutMm, stock.options.rolloutMm);
  EXPECT_EQ(kept.options.treadWearMm, stock.options.treadWearMm);
  EXPECT_EQ(kept.options.frontSprocket, stock.options.frontSprocket);
  EXPECT_FALSE(kept.options.rearSprocket);  // the rear sprocket is stock's
}

TEST(WithoutStockValues, LeavesTheResultAsItWas) {
  const auto stock = fullStock();
  const SetupChange full = fullChange();
  for (const SetupChange& change :
       {SetupChange{}, full, SetupChange{.frontTeeth = stock.frontTeeth},
        SetupChange{.frontTeeth = front(15), .options = {.frontSprocket = stock.options.frontSprocket}},
        SetupChange{.rearTyre = stock.rearTyre, .options = {.rolloutMm = 1990}},
        SetupChange{.rearTyre = full.rearTyre, .options = {.rolloutMm = stock.options.rolloutMm}},
        SetupChange{.options = {.links = stock.options.links, .beltTeeth = 130}}})
    EXPECT_EQ(applied(withoutStockValues(change, stock), stock), applied(change, stock));
}

TEST(SetupChange, ChangesNothingWhateverUnknownKeysItCarries) {
  EXPECT_TRUE(SetupChange{}.changesNothing());
  EXPECT_TRUE((SetupChange{.options = {.extras = {{"colour", "\"red\""}}}}.changesNothing()));
  EXPECT_FALSE((SetupChange{.frontTeeth = front(15)}.changesNothing()));
  EXPECT_FALSE((SetupChange{.options = {.rolloutMm = 1990}}.changesNothing()));
}

}  // namespace
}  // namespace layshaft::test
