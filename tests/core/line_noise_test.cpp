// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/line_noise.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <optional>
#include <vector>

#include "core/track/path_curve.h"
#include "core/track/recorded_track.h"
#include "core/track/stiffness.h"
#include "tests/core/recordings.h"

namespace layshaft::test {
namespace {

SplineKnots evenKnots(std::size_t count, double stepM, bool closed) {
  std::vector<double> at;
  for (std::size_t i = 0; i < count; ++i) at.push_back(stepM * static_cast<double>(i));
  return SplineKnots(at, closed ? std::optional(stepM * static_cast<double>(count)) : std::nullopt);
}

// A smoothing spline leaves 1/(1 + (L·k)⁴) of a ripple of wave number k (Silverman, Ann. Statist. 12 (1984),
// 898-916), so that white noise σ at steps h leaves a curvature of variance σ²·h·L⁻⁵·√2/16, by hand:
// ∫x⁴/(1+x⁴)²dx from 0 is π·√2/16.
TEST(LineNoise, AgreesWithTheClosedFormForLongSmoothing) {
  for (const double smoothingM : {15.0, 30.0})
    for (const bool closed : {false, true}) {
      const double stepM = 2.0, noiseM = 0.5;
      const SplineKnots knots = evenKnots(4000, stepM, closed);
      const double expected = noiseM * std::sqrt(stepM * std::sqrt(2.0) / 16.0 / std::pow(smoothingM, 5));
      EXPECT_NEAR(curvatureNoisePerM(knots, alphaOf(knots, smoothingM), 8000, noiseM), expected,
                  0.01 * expected)
          << smoothingM << ' ' << closed;
    }
}

/// Standard deviation of the curvature of a circle of 100 m over many noisy recordings.
double scatterPerKm(const RideOn& ride, double smoothingM, double spacingM) {
  constexpr int kRecordings = 20;
  double squares = 0.0;
  std::size_t count = 0;
  for (unsigned seed = 1; seed <= kRecordings; ++seed) {
    RideOn noisy = ride;
    noisy.seed = seed;
    const auto track =
        recordedTrack(ellipse(100, 100, noisy), {.smoothingM = smoothingM, .spacingM = spacingM}).value();
    const auto& curvature = track.path.curvaturePerKm;
    const double mean =
        std::accumulate(curvature.begin(), curvature.end(), 0.0) / static_cast<double>(curvature.size());
    for (const double perKm : curvature) squares += (perKm - mean) * (perKm - mean);
    count += curvature.size();
  }
  return std::sqrt(squares / static_cast<double>(count));
}

TEST(LineNoise, IsWhatManyRecordingsScatterBy) {
  struct Case {
    RideOn ride;
    double smoothingM, spacingM;
  };
  for (const Case& c : {Case{{.stepM = 2, .turns = 1.3, .noiseM = 0.3}, 8, 5},
                        Case{{.stepM = 2, .turns = 1.3, .noiseM = 0.3}, 3, 5},
                        Case{{.stepM = 6, .turns = 1.3, .noiseM = 0.5}, 12, 5}}) {
    const auto track =
        recordedTrack(ellipse(100, 100, c.ride), {.smoothingM = c.smoothingM, .spacingM = c.spacingM});
    ASSERT_TRUE(track.ok());
    const double scatter = scatterPerKm(c.ride, c.smoothingM, c.spacingM);
    EXPECT_NEAR(track->path.curvatureNoisePerKm.value(), scatter, 0.2 * scatter)
        << c.ride.stepM << ' ' << c.smoothingM;
  }
}

TrackPath noisyPath(double noisePerKm, double smoothingM) {
  TrackPath path;
  path.spacingM = 5.0;
  for (int i = 0; i < 200; ++i) path.curvaturePerKm.push_back(10.0 * std::sin(0.1 * i));
  path.curvatureNoisePerKm = noisePerKm;
  path.smoothingM = smoothingM;
  return path;
}

std::vector<double> differences(const TrackPath& a, const TrackPath& b) {
  std::vector<double> all;
  for (std::size_t i = 0; i < a.curvaturePerKm.size(); ++i)
    all.push_back(b.curvaturePerKm[i] - a.curvaturePerKm[i]);
  return all;
}

TEST(LineNoise, AnotherDayIsOffByTheNoise) {
  for (const bool closed : {false, true}) {
    const TrackPath path = noisyPath(1.5, 8.0);
    const auto off = differences(path, recordedAnotherDay(path, closed, 1));
    double squares = 0.0;
    for (const double perKm : off) squares += perKm * perKm;
    EXPECT_NEAR(std::sqrt(squares / static_cast<double>(off.size())), 1.5, 1e-9);
    if (closed) {
      EXPECT_NEAR(std::accumulate(off.begin(), off.end(), 0.0), 0.0, 1e-9) << "a lap turns as much as ever";
    }
  }
}

// What a spline leaves of noise comes in waves of its smoothing length, not from stretch to stretch.
TEST(LineNoise, StretchesNearerThanTheSmoothingAreOffTogether) {
  const auto off = [](double smoothingM) {
    const TrackPath path = noisyPath(1.0, smoothingM);
    return differences(path, recordedAnotherDay(path, true, 3));
  };
  const auto together = [](const std::vector<double>& perKm) {
    double sum = 0.0;
    for (std::size_t i = 1; i < perKm.size(); ++i) sum += perKm[i] * perKm[i - 1];
    return sum / static_cast<double>(perKm.size());
  };
  EXPECT_GT(together(off(20.0)), 0.6);
  EXPECT_LT(together(off(2.0)), 0.2);
}

TEST(LineNoise, TheSameDayIsTheSameLineAndAnotherIsNot) {
  const TrackPath path = noisyPath(1.0, 6.0);
  EXPECT_EQ(recordedAnotherDay(path, true, 2), recordedAnotherDay(path, true, 2));
  EXPECT_NE(recordedAnotherDay(path, true, 2), recordedAnotherDay(path, true, 3));
}

TEST(LineNoise, ALineOfUnknownOrNoNoiseStaysAsItIs) {
  TrackPath path = noisyPath(0.0, 6.0);
  EXPECT_EQ(recordedAnotherDay(path, true, 1), path);
  path.curvatureNoisePerKm.reset();
  EXPECT_EQ(recordedAnotherDay(path, true, 1), path);
  TrackPath tiny = noisyPath(1.0, 6.0);
  tiny.curvaturePerKm.resize(3);
  EXPECT_EQ(recordedAnotherDay(tiny, true, 1), tiny) << "too short for a spline that comes round";
}

}  // namespace
}  // namespace layshaft::test
