// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gear_limits.h"

#include <gtest/gtest.h>

#include <memory>

#include "core/study/ladder.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// One gear, overall 18, two metres a turn: 540 rpm per m/s; 200 kg with rider, no losses.
RoadModel limitedModel(std::vector<TorquePoint> curve) {
  Bike bike;
  bike.engine.revLimitRpm = 9000;
  bike.engine.torqueCurve = TorqueCurve::make(std::move(curve)).value();
  bike.chassis = Chassis{.massKg = 130,
                         .riderMassKg = 70,
                         .cgHeightMm = 600,
                         .cgAheadOfRearAxleMm = 650,
                         .dragAreaM2 = 0.4,
                         .rollingResistance = 0.02,
                         .drivetrainEfficiency = 0.9};
  Setup setup{.frontTeeth = front(15),
              .rearTeeth = rear(45),
              .rearTyre = tyre("180/55ZR17"),
              .primaryRatio = 2,
              .gearRatios = gears({3}),
              .options = {}};
  setup.options.rolloutMm = 2000;
  const Ride ride{.launchRpm = 2000};
  return {std::make_shared<const PullBike>(pullBike(bike, ride)), roadOf(bike, ride), setup, rolloutOf(setup),
          Fitted{}};
}

std::optional<GearLimit> limitOfOnlyGear(const RoadModel& model) {
  return gearLimits(model, peakPull(model)).at(0);
}

TEST(GearLimits, SayWhereTheGearPullsFreelyInBetween) {
  // 15.1 m/s² at 2000 rpm, 8.6 at 5000, 14.7 at 9000; the front wheel lifts from 10.6 falling to 10.3.
  const auto dip = limitOfOnlyGear(limitedModel({{2000, 60}, {5000, 35}, {9000, 60}}));
  ASSERT_TRUE(dip);
  EXPECT_EQ(dip->by, LimitedBy::Lift);
  EXPECT_TRUE(dip->fromStart && dip->toEnd && dip->gaps);
  const auto full = limitOfOnlyGear(limitedModel({{2000, 60}, {9000, 60}}));
  ASSERT_TRUE(full);
  EXPECT_TRUE(full->fromStart && full->toEnd && !full->gaps);
  EXPECT_FALSE(limitOfOnlyGear(limitedModel({{2000, 30}, {9000, 30}})));
}

TEST(GearLimits, LeaveTheForceAtTheLimit) {
  const RoadModel strong = limitedModel({{2000, 60}, {9000, 60}}),
                  weak = limitedModel({{2000, 30}, {9000, 30}});
  const auto strongPull = peakPull(strong), weakPull = peakPull(weak);
  const auto strongLimits = gearLimits(strong, strongPull), weakLimits = gearLimits(weak, weakPull);
  const SetupPull limited{strongPull, strongLimits}, open{weakPull, weakLimits};
  // m·g·b/h less the drag's share, plus what drag and rolling take: most where the limit is highest, at once.
  const double v = 2000 / 540.0;
  const ComparedPull gained = comparedPull(open, 0, limited, 0);
  EXPECT_EQ(gained.fromN, weakPull[0].peakForceN);
  EXPECT_NEAR(gained.toN, 200 * *strong.boundMps2(v) + strong.resistanceN(v), 1e-6);
  EXPECT_LT(gained.toN, strongPull[0].peakForceN - 500);
  const ComparedPull same = comparedPull(limited, 0, limited, 0);
  EXPECT_EQ(same.fromN, same.toN);
}

// "5 % more pull in first" cannot be had from the sprockets where the tyre's grip is the limit.
TEST(GearLimits, AnAimForMorePullIsOfWhatGripLetsThrough) {
  Profile profile = profileFrom(contentsOf(sourceFolder() / "sample-profiles/motocross-450.bike.json"));
  profile.stock.options.links.reset();  // the axle stays
  profile.aims = {{.want = Aim::Want::PullGain, .gear = 1, .percent = 5}};
  ASSERT_EQ(profile.ride->surface, Surface::Loam);
  const int f = profile.stock.frontTeeth.count(), r = profile.stock.rearTeeth.count();
  const LadderRow loose = Ladder(ladderInput(profile)).row(f, r + 5);
  EXPECT_FALSE(loose.aims[0].reached);
  EXPECT_NEAR(*loose.aims[0].margin, -5.0, 0.5);  // the limit rises a little with speed
  profile.bike.chassis->cgHeightMm.reset();       // nothing limits
  const LadderRow firm = Ladder(ladderInput(profile)).row(f, r + 5);
  EXPECT_TRUE(firm.aims[0].reached);
  EXPECT_NEAR(*firm.aims[0].margin, 500.0 / r - 5.0, 1e-6);
}

}  // namespace
}  // namespace layshaft::test
