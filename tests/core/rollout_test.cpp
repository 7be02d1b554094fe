// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/rollout.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Rollout rolloutWith(const SetupOptions& options) {
  Setup setup = bareSetup();  // 180/55ZR17: 629.8 mm, 1978.575... mm around
  setup.options = options;
  return rolloutOf(setup);
}
constexpr double kFree = 1.9785750530935;  // m, pi by 0.6298

TEST(Rollout, IsEstimatedFromTheTyreWithTheUsualAllowance) {
  const Rollout rollout = rolloutWith({});
  EXPECT_EQ(rollout.source, RolloutSource::TyreSize);
  EXPECT_NEAR(rollout.metres, 1.9390035520, 1e-9);
  EXPECT_NEAR(rollout.radiusM(), 0.308602, 1e-9);
  EXPECT_EQ(rollout.growthPerMps2, 0);
}

TEST(Rollout, TakesTheAllowanceGiven) {
  EXPECT_NEAR(rolloutWith({.rollingAllowancePercent = 0}).metres, kFree, 1e-9);
  EXPECT_NEAR(rolloutWith({.rollingAllowancePercent = 10}).metres, 0.9 * kFree, 1e-9);
}

TEST(Rollout, MeasuredWins) {
  const Rollout rollout = rolloutWith({.rolloutMm = 1944.5, .rollingAllowancePercent = 5, .treadWearMm = 3});
  EXPECT_EQ(rollout.source, RolloutSource::Measured);
  EXPECT_DOUBLE_EQ(rollout.metres, 1.9445);
}

// One millimetre off the radius is 2 pi millimetres off the circumference.
TEST(Rollout, ShrinksWithTheTread) {
  const double fresh = rolloutWith({}).metres;
  EXPECT_NEAR(rolloutWith({.treadWearMm = 1}).metres, fresh - 0.0062831853, 1e-9);
  EXPECT_NEAR(rolloutWith({.treadWearMm = 5}).radiusM(), 0.308602 - 0.005, 1e-9);
}

TEST(Rollout, GrowsWithTheSquareOfSpeed) {
  const Rollout rollout = rolloutWith({.rolloutMm = 2000, .growthPerKmh2 = 2e-7});
  EXPECT_NEAR(rollout.atSpeed(0), 2.0, 1e-12);
  EXPECT_NEAR(rollout.atSpeed(100 / 3.6), 2.0 * 1.002, 1e-12);
  EXPECT_NEAR(rollout.atSpeed(200 / 3.6), 2.0 * 1.008, 1e-12);
}

TEST(Rollout, EngineSpeedAndRoadSpeedAreInverse) {
  for (const double growth : {0.0, 1e-8, 2e-7, 1e-6}) {
    const Rollout rollout = rolloutWith({.growthPerKmh2 = growth});
    for (const double rpm : {0.0, 1000.0, 8000.0, 15000.0}) {
      const double speed = rollout.speedMps(rpm, 6.5);
      EXPECT_NEAR(rollout.rpm(speed, 6.5), rpm, 1e-8) << growth;
    }
  }
}

TEST(Rollout, SpeedByHand) {
  // 6000 rpm through 6:1 are 1000 wheel turns a minute of 2 m each.
  EXPECT_NEAR(rolloutWith({.rolloutMm = 2000}).speedMps(6000, 6), 2000.0 / 60, 1e-12);
  EXPECT_NEAR(rolloutWith({.rolloutMm = 2000}).rpm(20, 6), 3600, 1e-9);
}

TEST(Rollout, StaysFiniteWhereGrowthWouldRunAway) {
  const Rollout rollout = rolloutWith({.rolloutMm = 4000, .growthPerKmh2 = 1e-6});
  double last = 0;
  for (const double rpm : {1000.0, 10000.0, 20000.0, 30000.0}) {
    const double speed = rollout.speedMps(rpm, 0.1);
    EXPECT_TRUE(std::isfinite(speed));
    EXPECT_GT(speed, last);
    last = speed;
  }
}

}  // namespace
}  // namespace layshaft::test
