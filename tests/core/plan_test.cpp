// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan.h"

#include <gtest/gtest.h>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TEST(Plan, OfTheRequiredKeysAlone) {
  const Plan bare = planFor(minimalProfile());
  EXPECT_EQ(bare.bikeName, "Bare");
  EXPECT_EQ(bare.revLimitRpm, 10000);
  EXPECT_EQ(bare.idleRpm, 0);
  EXPECT_EQ(bare.shiftPoints, ShiftPointSource::RevLimit);
  EXPECT_EQ(bare.stock.setup, bare.proposed.setup);
  EXPECT_EQ(bare.stock.gearing.gears.size(), 3U);
  EXPECT_EQ(bare.stock.gearing.gears[0].shiftRpm, 10000);
  EXPECT_EQ(bare.stock.change.direction, Direction::Same);
  EXPECT_EQ(bare.proposed.change.direction, Direction::Same);
  EXPECT_EQ(bare.proposed.change.gearingPercent, 0);
  EXPECT_FALSE(bare.stock.gearing.cruise);
  EXPECT_FALSE(bare.stock.speedometer || bare.proposed.speedometer);
  EXPECT_TRUE(bare.pins.empty());
}

TEST(Plan, ComparesProposedAndPinsWithStock) {
  Json profile = minimalProfile();
  profile["proposed"] = {{"front_teeth", 15}};
  profile["pins"] = {{{"name", "Fast"}, {"rear_teeth", 40}}, {{"name", "As stock"}}};
  const Plan result = planFor(profile);
  EXPECT_EQ(result.proposed.setup.frontTeeth.count(), 15);
  EXPECT_EQ(result.proposed.setup.rearTeeth.count(), 43);
  EXPECT_EQ(result.proposed.change.direction, Direction::Shorter);
  ASSERT_EQ(result.pins.size(), 2U);
  EXPECT_EQ(result.pins[0].name, "Fast");
  EXPECT_EQ(result.pins[0].setup.frontTeeth.count(), 16);  // pins follow stock, not the proposal
  EXPECT_EQ(result.pins[0].change.direction, Direction::Taller);
  EXPECT_NEAR(result.pins[0].change.rearTeethEquivalent, -3, 1e-12);
  EXPECT_EQ(result.pins[1].change.direction, Direction::Same);
  EXPECT_EQ(result.stock.name, "");
}

TEST(Plan, ATypedShiftPointHoldsInEveryGearButTheLast) {
  Json profile = minimalProfile();
  profile["bike"]["engine"]["shift_rpm"] = 9200;
  profile["proposed"] = {{"gear_ratios", {3, 2.5, 2, 1.5, 1}}};
  profile["pins"] = {{{"name", "One"}, {"gear_ratios", {1}}}};
  const Plan result = planFor(profile);
  EXPECT_EQ(result.shiftPoints, ShiftPointSource::Typed);
  for (const SetupPlan* setup : {&result.stock, &result.proposed, &result.pins[0]}) {
    const auto& gears = setup->gearing.gears;
    for (std::size_t g = 0; g + 1 < gears.size(); ++g) EXPECT_EQ(gears[g].shiftRpm, 9200);
    EXPECT_FALSE(gears.back().shiftRpm);
  }
  EXPECT_EQ(result.proposed.gearing.gears.size(), 5U);
  EXPECT_EQ(result.pins[0].gearing.gears.size(), 1U);
}

TEST(Plan, CruisesAtTheSpeedAsked) {
  Json profile = minimalProfile();
  profile["cruise_speed_kmh"] = 90;
  profile["bike"]["engine"]["idle_rpm"] = 1200;
  const Plan result = planFor(profile);
  EXPECT_NEAR(*result.stock.gearing.cruiseSpeedMps, 25, 1e-12);
  ASSERT_TRUE(result.stock.gearing.cruise);
  EXPECT_EQ(result.stock.gearing.cruise->gear, 3);
  EXPECT_EQ(result.idleRpm, 1200);
  profile["cruise_speed_kmh"] = 400;
  EXPECT_FALSE(planFor(profile).stock.gearing.cruise);
}

TEST(Plan, TheSpeedometerIsRightWithStock) {
  Json profile = minimalProfile();
  profile["bike"]["speedometer"] = {{"sensor", "gearbox_output"}, {"reads_high_percent", 2}};
  profile["proposed"] = {{"front_teeth", 15}};
  const Plan result = planFor(profile);
  EXPECT_NEAR(result.stock.speedometer->indicatedOverTrue, 1.02, 1e-12);
  EXPECT_NEAR(result.proposed.speedometer->indicatedOverTrue, 1.02 * 16 / 15, 1e-12);
  profile["bike"]["speedometer"].erase("sensor");
  EXPECT_FALSE(planFor(profile).stock.speedometer);
}

TEST(Plan, AnotherTyreLeavesTheMeasuredRolloutBehind) {
  Json profile = minimalProfile();
  profile["stock"]["rollout_mm"] = 1960;
  profile["proposed"] = {{"rear_tyre", "190/55ZR17"}};
  const Plan result = planFor(profile);
  EXPECT_EQ(result.stock.gearing.rollout.source, RolloutSource::Measured);
  EXPECT_EQ(result.proposed.gearing.rollout.source, RolloutSource::TyreSize);
}

TEST(Plan, OfEverySampleProfile) {
  for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    if (entry.path().extension() != ".json") continue;
    const Plan result = planFor(Json::parse(contentsOf(entry.path())));
    EXPECT_GT(result.stock.gearing.gears.back().speedAtRevLimitMps, 15) << entry.path();
    EXPECT_LT(result.stock.gearing.gears.back().speedAtRevLimitMps, 120) << entry.path();
    EXPECT_NE(result.proposed.change.size, StepSize::None) << entry.path();
  }
}

}  // namespace
}  // namespace layshaft::test
