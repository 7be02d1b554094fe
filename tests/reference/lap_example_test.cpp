// SPDX-License-Identifier: GPL-3.0-or-later
//
// A lap with every figure of its report, computed independently of this program and given to it as an
// example.
#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <string>

#include "core/study/asked.h"
#include "core/study/fitted.h"
#include "core/study/lap.h"
#include "core/study/lean.h"
#include "core/units.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

constexpr double kPrintedS = 1e-4, kPrintedKmh = 1e-3, kPrintedM = 1e-3, kPrintedRpm = 1e-2;

LapFigures lapOf(const Profile& profile, const Setup& setup) {
  const Ride ride = profile.ride.value_or(Ride{});
  const auto bike = std::make_shared<const PullBike>(pullBike(profile.bike, ride));
  const AllowedSpeed allowed(lapCourse(profile.bike, ride, profile.tracks.front()), *bike);
  const Rollout rollout = rolloutOf(setup);
  const RoadModel model(bike, roadOf(profile.bike, ride), setup, rollout, fitted(profile.stock, setup));
  return lap(allowed, model, crownShare(setup, rollout)).value();
}

void expectLap(const LapFigures& figures, const Json& expected) {
  const auto kmh = [](double mps) { return units::kmhFromMps(mps); };
  EXPECT_NEAR(figures.timeS, expected["time_s"].get<double>(), 1e-6);
  EXPECT_NEAR(kmh(figures.topMps), expected["top_speed_kmh"].get<double>(), 1e-5);
  EXPECT_EQ(figures.shifts, expected["shifts"].get<int>());
  EXPECT_NEAR(figures.limiterS, expected["limiter_s"].get<double>(), 1e-6);
  EXPECT_NEAR(figures.fullThrottleS, expected["full_throttle_s"].get<double>(), 1e-6);
  ASSERT_EQ(figures.segments.size(), expected["segments"].size());
  for (std::size_t i = 0; i < figures.segments.size(); ++i) {
    const LapSegment& segment = figures.segments[i];
    const Json& there = expected["segments"][i];
    SCOPED_TRACE(there["name"].get<std::string>());
    EXPECT_NEAR(segment.timeS, there["time_s"].get<double>(), kPrintedS);
    EXPECT_NEAR(kmh(segment.entryMps), there["entry_kmh"].get<double>(), kPrintedKmh);
    EXPECT_NEAR(kmh(segment.minMps), there["min_kmh"].get<double>(), kPrintedKmh);
    EXPECT_NEAR(kmh(segment.exitMps), there["exit_kmh"].get<double>(), kPrintedKmh);
    EXPECT_EQ(segment.gearAtMin.value(), there["gear_at_min"].get<int>());
    EXPECT_NEAR(segment.rpmAtMin.value(), there["rpm_at_min"].get<double>(), kPrintedRpm);
  }
  ASSERT_EQ(figures.pulls.size(), expected["pulls"].size());
  for (std::size_t i = 0; i < figures.pulls.size(); ++i) {
    const LapPullFigures& pull = figures.pulls[i];
    const Json& there = expected["pulls"][i];
    EXPECT_NEAR(pull.fromM, there["from_m"].get<double>(), kPrintedM);
    EXPECT_NEAR(pull.toM, there["to_m"].get<double>(), kPrintedM);
    EXPECT_NEAR(kmh(pull.fromMps), there["from_kmh"].get<double>(), kPrintedKmh);
    EXPECT_EQ(pull.firstGear, there["first_gear"].get<int>());
    EXPECT_EQ(pull.endGear, there["end_gear"].get<int>());
    EXPECT_NEAR(pull.endRpm, there["end_rpm"].get<double>(), kPrintedRpm);
  }
}

TEST(LapExample, AgreesInEveryFigure) {
  const auto data = sourceFolder() / "tests/reference/data";
  const Result<Profile> profile = loadProfile(data / "lap-club-600.bike.json");
  ASSERT_TRUE(profile) << testing::PrintToString(profile.problem());
  const Json expected = Json::parse(contentsOf(data / "lap-club-600.json"));
  {
    SCOPED_TRACE("stock");
    expectLap(lapOf(*profile, profile->stock), expected["stock"]["lap"]);
  }
  {
    SCOPED_TRACE("proposed");
    expectLap(lapOf(*profile, applied(profile->proposed, profile->stock)), expected["proposed"]["lap"]);
  }
}

}  // namespace
}  // namespace layshaft::test
