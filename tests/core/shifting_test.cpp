// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/shifting.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <vector>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// Two metres per turn and an overall ratio of 6 per gear ratio: gear 1 turns 180 rpm per m/s.
Setup shiftingSetup(std::vector<double> ratios) {
  Setup setup{.frontTeeth = front(15),
              .rearTeeth = rear(45),
              .rearTyre = tyre("180/55ZR17"),
              .primaryRatio = 2,
              .gearRatios = gears(std::move(ratios)),
              .options = {}};
  setup.options.rolloutMm = 2000;
  return setup;
}

Bike shiftingBike(std::vector<TorquePoint> curve, double limit) {
  Bike bike;
  bike.engine.revLimitRpm = limit;
  bike.engine.torqueCurve = TorqueCurve::make(std::move(curve)).value();
  bike.chassis = Chassis{.massKg = 130, .riderMassKg = 70, .dragAreaM2 = 0.4, .rollingResistance = 0.02};
  return bike;
}

PullModel shiftingModel(const Bike& bike, const Setup& setup) {
  return PullModel(std::make_shared<const PullBike>(pullBike(bike, {})), roadOf(bike, {}), setup,
                   rolloutOf(setup), Fitted{});
}

std::vector<double> bestRpm(const Bike& bike, std::vector<double> ratios) {
  const auto setup = shiftingSetup(std::move(ratios));
  return bestShiftRpm(shiftingModel(bike, setup));
}

TEST(Shifting, AtTheLimitWhereTheGearIsAlwaysBetter) {
  // Flat torque: a lower gear always pulls harder.
  const auto rpm = bestRpm(shiftingBike({{2000, 50}, {9000, 50}}, 9000), {3, 2, 1});
  ASSERT_EQ(rpm.size(), 2U);
  EXPECT_DOUBLE_EQ(rpm[0], 9000);
  EXPECT_DOUBLE_EQ(rpm[1], 9000);
}

TEST(Shifting, OneGearNeverShifts) {
  EXPECT_TRUE(bestRpm(shiftingBike({{2000, 50}, {9000, 50}}, 9000), {1}).empty());
}

TEST(Shifting, WhereThePullsAreEqual) {
  // 60 N·m to 5000 rpm, then straight down, 110 − n/100. Equal thrust is T(n) = 0.8·T(0.8·n): 110 − n/100 =
  // 48 at n = 6200, landing at 4960.
  const auto rpm = bestRpm(shiftingBike({{5000, 60}, {9000, 20}}, 9000), {1.25, 1});
  EXPECT_NEAR(rpm[0], 6200, 1e-6);
}

TEST(Shifting, TheGreatestOfSeveralEqualPlaces) {
  // Falls to a hole at 6000, climbs out of it to 7000 and falls for good to the limit: first gear is no
  // better than second around the hole, better again on the hump, and worse near the limit.
  const auto bike =
      shiftingBike({{3000, 60}, {5500, 60}, {6000, 20}, {6500, 60}, {7000, 60}, {8000, 10}}, 8000);
  const auto setup = shiftingSetup({1.25, 1});
  const PullModel model = shiftingModel(bike, setup);
  const double shift = bestShiftMps(model, 0);
  const auto gain = [&](double v) {
    return model.freeAccelerationMps2(v, 0) - model.freeAccelerationMps2(v, 1);
  };
  EXPECT_GT(model.rpm(shift, 0), 7000);
  EXPECT_NEAR(gain(shift), 0, 1e-9);
  EXPECT_LT(gain(6000 / 225.0), 0);  // in the hole
  for (double v = shift + 0.001; v <= model.limitMps(0); v += 0.01) EXPECT_LT(gain(v), 0) << v;
}

TEST(Shifting, AtTheLowestSpeedOfTheNextGearWhereThatIsAlwaysBetter) {
  // The engine turns so much mass that first gear accelerates less than second at every speed.
  Bike bike = shiftingBike({{2000, 50}, {9000, 50}}, 9000);
  bike.engine.rotatingInertiaKgm2 = 1.0;
  bike.engine.idleRpm = 1200;
  const auto setup = shiftingSetup({3, 2});
  const PullModel model = shiftingModel(bike, setup);
  for (const double v : {1.0, 5.0, 15.0})
    ASSERT_LT(model.freeAccelerationMps2(v, 0), model.freeAccelerationMps2(v, 1)) << v;
  EXPECT_NEAR(bestShiftMps(model, 0), 1200 / 360.0, 1e-12);  // idle in second
  EXPECT_NEAR(bestRpm(bike, {3, 2})[0], 1800, 1e-9);
  bike.engine.idleRpm.reset();
  EXPECT_EQ(bestRpm(bike, {3, 2})[0], 0);
}

TEST(Shifting, NeverAboveTheLimit) {
  // Idle in second is beyond the end of first: the gears do not overlap.
  Bike bike = shiftingBike({{2000, 50}, {5000, 20}}, 5000);
  bike.engine.idleRpm = 3000;
  bike.engine.rotatingInertiaKgm2 = 5;
  EXPECT_DOUBLE_EQ(bestRpm(bike, {3, 1})[0], 5000);
}

TEST(Shifting, DoesNotAskForGripOrLift) {
  Bike bike = shiftingBike({{3000, 40}, {6000, 60}, {8000, 50}, {9000, 20}}, 9000);
  const auto free = bestRpm(bike, {3, 2.2, 1.7});
  bike.chassis->wheelbaseMm = 1400;
  bike.chassis->cgHeightMm = 700;
  bike.chassis->cgAheadOfRearAxleMm = 300;
  bike.chassis->tyreGrip = 0.3;
  EXPECT_EQ(bestRpm(bike, {3, 2.2, 1.7}), free);
  EXPECT_LT(free[0], 9000);
}

TEST(Shifting, OfThePlanAreTypedOrBestOrTheLimit) {
  Json profile = minimalProfile();
  EXPECT_EQ(planFor(profile).shiftPoints, ShiftPointSource::RevLimit);
  profile["bike"]["engine"]["torque_curve"] = {{{"rpm", 3000}, {"torque_nm", 50}},
                                               {{"rpm", 7000}, {"torque_nm", 60}},
                                               {{"rpm", 10000}, {"torque_nm", 20}}};
  // A curve alone is not enough: the equivalent masses matter.
  EXPECT_EQ(planFor(profile).shiftPoints, ShiftPointSource::RevLimit);
  EXPECT_EQ(planFor(profile).stock.gearing.gears[0].shiftRpm, 10000);
  profile["bike"]["chassis"] = {{"mass_kg", 180}, {"drag_area_m2", 0.4}};
  const Plan best = planFor(profile);
  EXPECT_EQ(best.shiftPoints, ShiftPointSource::Best);
  ASSERT_TRUE(best.stock.gearing.gears[0].shiftRpm);
  EXPECT_LT(*best.stock.gearing.gears[0].shiftRpm, 9990);
  EXPECT_GT(*best.stock.gearing.gears[0].shiftRpm, 7000);
  profile["bike"]["engine"]["shift_rpm"] = 8000;
  EXPECT_EQ(planFor(profile).shiftPoints, ShiftPointSource::Typed);
  EXPECT_EQ(planFor(profile).stock.gearing.gears[0].shiftRpm, 8000);
}

}  // namespace
}  // namespace layshaft::test
