// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/speedometer.h"

#include <gtest/gtest.h>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Gearing gearingOf(int frontTeeth, int rearTeeth, double rolloutMm) {
  Setup setup = bareSetup();
  setup.frontTeeth = front(frontTeeth);
  setup.rearTeeth = rear(rearTeeth);
  setup.options.rolloutMm = rolloutMm;
  return gearing(setup, {.revLimitRpm = 10000});
}

/// Stock 16/40 on 2000 mm; now 16/44 (10 % shorter) on 2200 mm (10 % more), unless said otherwise.
SpeedometerFigures figures(std::optional<SpeedSensor> sensor, std::optional<double> readsHigh = {},
                           const Gearing& now = gearingOf(16, 44, 2200)) {
  return speedometer({.sensor = sensor, .readsHighPercent = readsHigh, .extras = {}}, gearingOf(16, 40, 2000),
                     now, 70)
      .value();
}

TEST(Speedometer, TheGearboxOutputSeesSprocketsAndTyre) {
  EXPECT_NEAR(figures(SpeedSensor::GearboxOutput).indicatedOverTrue, 1.0, 1e-12);
  EXPECT_NEAR(figures(SpeedSensor::GearboxOutput, {}, gearingOf(16, 44, 2000)).indicatedOverTrue, 1.1, 1e-12);
  EXPECT_NEAR(figures(SpeedSensor::GearboxOutput, {}, gearingOf(16, 40, 2500)).indicatedOverTrue, 0.8, 1e-12);
}

TEST(Speedometer, TheRearWheelSeesItsTyreOnly) {
  EXPECT_NEAR(figures(SpeedSensor::RearWheel, {}, gearingOf(16, 44, 2000)).indicatedOverTrue, 1.0, 1e-12);
  EXPECT_NEAR(figures(SpeedSensor::RearWheel, {}, gearingOf(16, 44, 2500)).indicatedOverTrue, 0.8, 1e-12);
}

TEST(Speedometer, TheFrontWheelSeesNothing) {
  EXPECT_EQ(figures(SpeedSensor::FrontWheel, {}, gearingOf(14, 50, 1900)).indicatedOverTrue, 1.0);
}

TEST(Speedometer, WhatItReadsHighIsShownButNotCounted) {
  const SpeedometerFigures now = figures(SpeedSensor::GearboxOutput, 5, gearingOf(16, 44, 2000));
  EXPECT_NEAR(now.indicatedOverTrue, 1.1 * 1.05, 1e-12);
  EXPECT_NEAR(now.at100KmhIndicatedKmh, 115.5, 1e-9);
  EXPECT_NEAR(now.odometerOverTrue, 1.1, 1e-12);
  EXPECT_NEAR(now.correctorPercent, 100 * (1 / 1.1 - 1), 1e-9);
}

TEST(Speedometer, StockNeedsNoCorrector) {
  for (const SpeedSensor sensor :
       {SpeedSensor::GearboxOutput, SpeedSensor::RearWheel, SpeedSensor::FrontWheel}) {
    const SpeedometerFigures stock = figures(sensor, 4, gearingOf(16, 40, 2000));
    EXPECT_NEAR(stock.indicatedOverTrue, 1.04, 1e-12);
    EXPECT_NEAR(stock.odometerOverTrue, 1, 1e-12);
    EXPECT_NEAR(stock.correctorPercent, 0, 1e-12);
    EXPECT_EQ(stock.verdict, SpeedometerVerdict::Within);
  }
}

TEST(Speedometer, TheCorrectorUndoesTheChange) {
  const SpeedometerFigures now = figures(SpeedSensor::GearboxOutput, 3, gearingOf(15, 43, 1950));
  EXPECT_NEAR(now.indicatedOverTrue * (1 + now.correctorPercent / 100), 1.03, 1e-12);
}

TEST(Speedometer, NoSensorNoFigures) {
  const Gearing any = gearingOf(16, 40, 2000);
  EXPECT_FALSE(speedometer({.sensor = {}, .readsHighPercent = 4, .extras = {}}, any, any, 70));
}

TEST(Speedometer, IsTriedAsFarAsTheBikeGoes) {
  const Gearing any = gearingOf(16, 40, 2000);
  // 15 % high: 46 at 40 and 92 at 80 are allowed, 138 at 120 is not.
  const auto verdict = [&](double topKmh) {
    return speedometer({.sensor = SpeedSensor::FrontWheel, .readsHighPercent = 15, .extras = {}}, any, any,
                       topKmh / 3.6)
        ->verdict;
  };
  EXPECT_EQ(verdict(39.9), std::nullopt);
  EXPECT_EQ(verdict(40), SpeedometerVerdict::Within);
  EXPECT_EQ(verdict(80), SpeedometerVerdict::Within);
  EXPECT_EQ(verdict(119.9), SpeedometerVerdict::Within);
  EXPECT_EQ(verdict(120 - 1e-8), SpeedometerVerdict::Within);
  EXPECT_EQ(verdict(120 - 1e-10), SpeedometerVerdict::ReadsHigh) << "the end belongs to it";
  EXPECT_EQ(verdict(120), SpeedometerVerdict::ReadsHigh);
  EXPECT_EQ(verdict(300), SpeedometerVerdict::ReadsHigh);
}

TEST(Speedometer, MayNeverShowLess) {
  EXPECT_EQ(figures(SpeedSensor::RearWheel, 0, gearingOf(16, 40, 2002)).verdict,
            SpeedometerVerdict::ReadsLow);
  EXPECT_EQ(figures(SpeedSensor::RearWheel, 0, gearingOf(16, 40, 2000)).verdict, SpeedometerVerdict::Within);
}

/// A bike that drag stops below 120 km/h is not tried there, however far its gears would reach.
TEST(Speedometer, OfAPlanIsTriedUpToTheTopSpeedThatDragAllows) {
  Json profile = Json::parse(contentsOf(sourceFolder() / "sample-profiles/youth-85.bike.json"));
  profile["bike"]["speedometer"] = {{"sensor", "front_wheel"}, {"reads_high_percent", 15}};
  profile["bike"]["chassis"]["drag_area_m2"] = 1.2;
  const Plan slow = plan(profileFrom(profile.dump()));
  ASSERT_LT(slow.stock.road.topSpeed->speedMps, 100 / 3.6);
  profile["stock"]["front_teeth"] = 20;
  const Plan tall = plan(profileFrom(profile.dump()));
  ASSERT_GT(tall.stock.gearing.gears.back().speedAtRevLimitMps, 121 / 3.6);
  ASSERT_LT(tall.stock.road.topSpeed->speedMps, 119 / 3.6);
  EXPECT_EQ(tall.stock.speedometer->verdict, SpeedometerVerdict::Within);
}

TEST(UnR39, TakesItsEndsAndNothingBeyond) {
  EXPECT_EQ(unR39(100, 100), SpeedometerVerdict::Within);
  EXPECT_EQ(unR39(100 - 1e-10, 100), SpeedometerVerdict::Within);
  EXPECT_EQ(unR39(100 - 1e-8, 100), SpeedometerVerdict::ReadsLow);
  EXPECT_EQ(unR39(114, 100), SpeedometerVerdict::Within);
  EXPECT_EQ(unR39(114 + 1e-10, 100), SpeedometerVerdict::Within);
  EXPECT_EQ(unR39(114 + 1e-8, 100), SpeedometerVerdict::ReadsHigh);
}

}  // namespace
}  // namespace layshaft::test
