// SPDX-License-Identifier: GPL-3.0-or-later
//
// A bike of which teeth and tyre are known, but no rev limit and no gear ratios: what follows from the parts
// is there, the rest is left out and named.
#include <initializer_list>

#include "core/plan.h"
#include "core/report.h"
#include "core/study/adopted.h"
#include "core/study/ladder.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// 16/43 with a chain and a sensor on the gearbox output, proposed one tooth less in front; without the keys.
Json toothBike(std::initializer_list<const char*> unknown = {"/bike/engine/rev_limit_rpm",
                                                             "/stock/gear_ratios"}) {
  Json json = minimalProfile();
  json["stock"]["chain_size"] = "525";
  json["stock"]["links"] = 114;
  json["proposed"] = {{"front_teeth", 15}};
  json["bike"]["speedometer"] = {{"sensor", "gearbox_output"}};
  json["bike"]["chassis"] = {{"mass_kg", 180}, {"drag_area_m2", 0.5}};
  json["bike"]["engine"]["torque_curve"] = {{{"rpm", 3000}, {"torque_nm", 60}},
                                            {{"rpm", 9000}, {"torque_nm", 70}}};
  json["cruise_speed_kmh"] = 110;
  for (const char* pointer : unknown) json = Json::parse(without(pointer, json));
  return json;
}

Plan toothPlan(const Json& json) {
  return plan(profileFrom(json.dump()));
}

// 43/15 over 43/16 is 16/15: by hand.
TEST(UnknownGears, FinalRatioSpeedometerAndChainNeedNone) {
  const Plan bare = toothPlan(toothBike()), full = toothPlan(toothBike({}));
  EXPECT_NEAR(bare.proposed.change.finalRatioPercent, 100.0 / 15, 1e-9);
  EXPECT_NEAR(bare.proposed.change.gearingPercent, 100.0 / 15, 1e-9);
  EXPECT_EQ(bare.proposed.change.direction, Direction::Shorter);
  ASSERT_TRUE(bare.proposed.chainRun && bare.proposed.speedometer);
  EXPECT_NEAR(bare.proposed.speedometer->odometerOverTrue, 16.0 / 15, 1e-12);
  EXPECT_EQ(bare.proposed.chainRun->axleShiftM, full.proposed.chainRun->axleShiftM);
  EXPECT_EQ(bare.proposed.chainRun->topChainSpeedMps, std::nullopt);
}

TEST(UnknownGears, WhatNeedsThemIsLeftOutAndNamed) {
  const Plan bare = toothPlan(toothBike());
  for (const SetupPlan* setup : {&bare.stock, &bare.proposed}) {
    EXPECT_TRUE(setup->gearing.gears.empty());
    EXPECT_FALSE(setup->gearing.cruise);
    EXPECT_FALSE(setup->model);
    EXPECT_FALSE(setup->road.topSpeed);
    EXPECT_FALSE(setup->road.run.zeroTo100KmhS);
    EXPECT_TRUE(setup->road.pull.empty());
  }
  EXPECT_EQ(sawtoothLacks(bare),
            (std::vector<std::string_view>{"bike.engine.rev_limit_rpm", "stock.gear_ratios"}));
  const Json report = Json::parse(reportJson(bare));
  EXPECT_EQ(report["lacks"]["pull"], Json({"bike.engine.rev_limit_rpm", "stock.gear_ratios"}));
  EXPECT_EQ(report["proposed"]["gears"], Json::array());
  EXPECT_EQ(report["proposed"]["chain_run"]["top_chain_speed_mps"], nullptr);
}

TEST(UnknownGears, WithoutTheRevLimitTheGearsStillTellRevsAtASpeed) {
  const Plan limitless = toothPlan(toothBike({"/bike/engine/rev_limit_rpm"})),
             full = toothPlan(toothBike({}));
  ASSERT_EQ(limitless.proposed.gearing.gears.size(), 3u);
  for (std::size_t g = 0; g < 3; ++g) {
    EXPECT_EQ(limitless.proposed.gearing.gears[g].speedPer1000RpmMps,
              full.proposed.gearing.gears[g].speedPer1000RpmMps);
    EXPECT_EQ(limitless.proposed.gearing.gears[g].speedAtRevLimitMps, std::nullopt);
    EXPECT_EQ(limitless.proposed.gearing.gears[g].shiftRpm, std::nullopt);
  }
  ASSERT_TRUE(limitless.proposed.gearing.cruise);
  EXPECT_EQ(limitless.proposed.gearing.cruise->rpm, full.proposed.gearing.cruise->rpm);
  EXPECT_FALSE(limitless.proposed.road.topSpeed);
  EXPECT_EQ(limitless.pullBike->forceLacks, std::vector<std::string_view>{"bike.engine.rev_limit_rpm"});
  Json shifting = toothBike({"/bike/engine/rev_limit_rpm"});
  shifting["bike"]["engine"]["shift_rpm"] = 8000;
  const Plan typed = toothPlan(shifting);
  EXPECT_EQ(typed.stock.gearing.gears[0].shiftRpm, 8000) << "a typed shift point needs no limit";
  EXPECT_TRUE(typed.stock.gearing.gears[0].rpmAfterShift);
}

TEST(UnknownGears, APrimaryRatioStillCounts) {
  Json json = toothBike();
  json["proposed"] = {{"primary_ratio", 1.955 * 1.1}};
  EXPECT_NEAR(toothPlan(json).proposed.change.gearingPercent, 10, 1e-9);
}

TEST(UnknownGears, TheLadderStillRanksByFinalRatio) {
  Json json = toothBike();
  json["aims"] = {{{"want", "rev_at_speed"}, {"speed_kmh", 110}, {"rpm", 5000}},
                  {{"want", "pull_gain"}, {"percent", 5}},
                  {{"want", "top_speed_at_least"}, {"speed_kmh", 180}}};
  const Profile profile = profileFrom(json.dump());
  const LadderRow row = Ladder(ladderInput(profile)).row(15, 43);
  EXPECT_NEAR(row.change.gearingPercent, 100.0 / 15, 1e-9);
  EXPECT_TRUE(row.speedAtLimitMps.empty());
  for (const AimOutcome& aim : row.aims) EXPECT_FALSE(aim.reached);
}

TEST(UnknownGears, TheProposalCanBecomeStock) {
  const Profile profile = profileFrom(toothBike().dump());
  EXPECT_EQ(adopted(profile).stock.frontTeeth.count(), 15);
  EXPECT_TRUE(adopted(profile).stock.gearRatios.empty());
  EXPECT_TRUE(readsHighPercentCarried(profile));
}

}  // namespace
}  // namespace layshaft::test
