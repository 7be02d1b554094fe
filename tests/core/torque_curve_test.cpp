// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/torque_curve.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

std::vector<TorquePoint> rampOf(int count) {
  std::vector<TorquePoint> points;
  for (int i = 0; i < count; ++i) points.push_back({.rpm = 1000.0 + i, .torqueNm = 50});
  return points;
}

TEST(TorqueCurve, KeepsItsPoints) {
  const Result<TorqueCurve> curve = TorqueCurve::make({{4000, 41}, {8000, 57}, {15200, 45.5}});
  ASSERT_TRUE(curve);
  ASSERT_EQ(curve->points().size(), 3U);
  EXPECT_EQ(curve->points()[1], (TorquePoint{8000, 57}));
}

TEST(TorqueCurve, TakesTwoToAThousandPoints) {
  EXPECT_TRUE(TorqueCurve::make(rampOf(2)));
  EXPECT_TRUE(TorqueCurve::make(rampOf(1000)));
  for (const int count : {0, 1, 1001})
    EXPECT_EQ(TorqueCurve::make(rampOf(count)).problem(),
              (Problem{.kind = Kind::WrongCount, .given = std::to_string(count), .low = 2, .high = 1000}));
}

TEST(TorqueCurve, TakesTheEndsOfItsLimits) {
  EXPECT_TRUE(TorqueCurve::make({{0, 0}, {30000, 1000}}));
}

TEST(TorqueCurve, RefusesJustOutside) {
  EXPECT_EQ(TorqueCurve::make({{-0.5, 10}, {9000, 10}}).problem(), (Problem{.kind = Kind::OutOfRange,
                                                                            .path = "[0].rpm",
                                                                            .given = "-0.5",
                                                                            .low = 0,
                                                                            .high = 30000,
                                                                            .unit = "rpm"}));
  EXPECT_EQ(TorqueCurve::make({{0, 10}, {30000.5, 10}}).problem().path, "[1].rpm");
  EXPECT_EQ(TorqueCurve::make({{0, 10}, {9000, 1000.5}}).problem(), (Problem{.kind = Kind::OutOfRange,
                                                                             .path = "[1].torque_nm",
                                                                             .given = "1000.5",
                                                                             .low = 0,
                                                                             .high = 1000,
                                                                             .unit = "N·m"}));
  EXPECT_EQ(TorqueCurve::make({{0, std::nextafter(0, -1)}, {9000, 10}}).problem().path, "[0].torque_nm");
}

TEST(TorqueCurve, RefusesWhatIsNotFinite) {
  for (const double bad : {kNaN, kInfinity, -kInfinity}) {
    const Problem rpm = TorqueCurve::make({{1000, 10}, {bad, 10}}).problem();
    EXPECT_EQ(rpm.kind, Kind::NotFinite);
    EXPECT_EQ(rpm.path, "[1].rpm");
    const Problem torque = TorqueCurve::make({{1000, bad}, {2000, 10}}).problem();
    EXPECT_EQ(torque.kind, Kind::NotFinite);
    EXPECT_EQ(torque.path, "[0].torque_nm");
  }
}

TEST(TorqueCurve, RefusesEngineSpeedsThatDoNotRise) {
  EXPECT_EQ(TorqueCurve::make({{1000, 10}, {2000, 20}, {2000, 30}}).problem(),
            (Problem{.kind = Kind::NotRising,
                     .path = "[2].rpm",
                     .given = "2000",
                     .low = 2000,
                     .high = 30000,
                     .unit = "rpm"}));
  EXPECT_EQ(TorqueCurve::make({{1000, 10}, {900, 20}}).problem().kind, Kind::NotRising);
  EXPECT_TRUE(TorqueCurve::make({{1000, 10}, {std::nextafter(1000, 2000), 20}}));
}

TEST(TorqueCurve, RefusesACurveThatNeverPulls) {
  EXPECT_EQ(TorqueCurve::make({{1000, 0}, {2000, 0}, {3000, 0}}).problem(),
            (Problem{.kind = Kind::TorqueAllZero}));
  EXPECT_TRUE(TorqueCurve::make({{1000, 0}, {2000, 1e-9}, {3000, 0}}));
}

}  // namespace
}  // namespace layshaft::test
