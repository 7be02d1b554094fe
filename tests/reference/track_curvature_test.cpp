// SPDX-License-Identifier: GPL-3.0-or-later
//
// Curvature of recorded lines beside closed forms: κ of an ellipse with halves a and b is a/b² at the ends of
// the long axis and b/a² at those of the short one; the curvature of a circle through three points is 4·area
// over the product of the sides (Menger); and of three points at distance d, each off by σ in each direction,
// it is off by √6·σ/d² (the second difference 1, −2, 1 of independent errors).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include "core/track/recorded_track.h"
#include "tests/core/recordings.h"

namespace layshaft::test {
namespace {

RecordedTrack smoothed(const Recording& recording, const TrackOptions& options = {}) {
  const auto track = recordedTrack(recording, options);
  if (!track) throw std::runtime_error("no track: " + track.problem().path);
  return *track;
}

double menger(const Fix& a, const Fix& b, const Fix& c) {
  const double abX = b.east - a.east, abY = b.north - a.north, acX = c.east - a.east, acY = c.north - a.north;
  return 2.0 * (abX * acY - abY * acX) /
         (std::hypot(abX, abY) * std::hypot(acX, acY) * std::hypot(c.east - b.east, c.north - b.north));
}

struct Spread {
  double mean, deviation;
};
Spread spreadOf(const std::vector<double>& values) {
  const double count = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / count;
  double squares = 0.0;
  for (const double x : values) squares += (x - mean) * (x - mean);
  return {mean, std::sqrt(squares / count)};
}

TEST(TrackCurvature, ExtremesOfAnEllipse) {
  for (const double stepM : {1.0, 2.0, 5.0}) {
    const RecordedTrack track = smoothed(ellipse(150, 100, {.stepM = stepM}), {.spacingM = 1.0});
    const auto& curvature = track.path.curvaturePerKm;
    EXPECT_NEAR(*std::max_element(curvature.begin(), curvature.end()), 15.0, 0.02) << stepM;
    EXPECT_NEAR(*std::min_element(curvature.begin(), curvature.end()), 4.44444, 0.003) << stepM;
    EXPECT_NEAR(track.smallestRadiusM.value(), 66.6667, 0.1) << stepM;
    EXPECT_LT(track.noiseM, 1e-3) << stepM;
  }
}

// Stretches of 5 m are as good as 1 m on such bends: 0.04 % at the peak, from κ″.
TEST(TrackCurvature, ExtremesOfAnEllipseInUsualStretches) {
  const auto& curvature = smoothed(ellipse(150, 100)).path.curvaturePerKm;
  EXPECT_NEAR(*std::max_element(curvature.begin(), curvature.end()), 15.0, 0.015);
}

TEST(TrackCurvature, ACircleIsThatOfItsRadius) {
  for (const double radiusM : {10.0, 50.0, 500.0}) {
    const RecordedTrack track = smoothed(ellipse(radiusM, radiusM, {.stepM = radiusM / 40.0}));
    for (const double perKm : track.path.curvaturePerKm)
      EXPECT_NEAR(perKm, 1000.0 / radiusM, 0.002 * 1000.0 / radiusM);
    EXPECT_NEAR(track.lengthM, 2.0 * units::kPi * radiusM, 2e-4 * radiusM);
  }
}

// What must not be done, and what smoothing of position makes of the same fixes.
TEST(TrackCurvature, NoiseOfThreePointsAndOfTheSpline) {
  constexpr double kRadiusM = 50.0, kStepM = 5.0, kNoiseM = 0.05;
  std::vector<double> ofThree, ofSpline;
  double noise = 0.0;
  constexpr unsigned kRides = 20;
  for (unsigned seed = 1; seed <= kRides; ++seed) {
    const Recording recording =
        ellipse(kRadiusM, kRadiusM, {.stepM = kStepM, .noiseM = kNoiseM, .seed = seed});
    const auto& fixes = recording.fixes;
    for (std::size_t i = 1; i + 1 < fixes.size(); ++i)
      ofThree.push_back(menger(fixes[i - 1], fixes[i], fixes[i + 1]));
    const RecordedTrack track = smoothed(recording, {.smoothingM = 10.0});
    for (const double perKm : track.path.curvaturePerKm) ofSpline.push_back(perKm / 1000.0);
    noise += track.noiseM / kRides;
  }
  const double expected = std::sqrt(6.0) * kNoiseM / (kStepM * kStepM);  // 0.0049 1/m: a radius of 204 m
  EXPECT_NEAR(spreadOf(ofThree).deviation, expected, 0.1 * expected);
  EXPECT_LT(spreadOf(ofSpline).deviation, 0.15 * expected);
  EXPECT_NEAR(spreadOf(ofSpline).mean, 1.0 / kRadiusM, 0.01 / kRadiusM);
  EXPECT_NEAR(noise, kNoiseM, 0.1 * kNoiseM) << "and the noise is told";
}

// With the stiffness that the fixes ask for: the middle radius to 2 %, single stretches to 15 % in nine of
// ten.
TEST(TrackCurvature, TheRadiusOfANoisyCircleIsRecovered) {
  for (const double radiusM : {30.0, 50.0, 100.0})
    for (const double noiseM : {0.05, 0.3, 0.5}) {
      std::vector<double> perKm;
      double noise = 0.0;
      constexpr unsigned kRides = 10;
      for (unsigned seed = 1; seed <= kRides; ++seed) {
        const RecordedTrack track =
            smoothed(ellipse(radiusM, radiusM, {.stepM = 1.0, .noiseM = noiseM, .seed = seed}));
        perKm.insert(perKm.end(), track.path.curvaturePerKm.begin(), track.path.curvaturePerKm.end());
        noise += track.noiseM / kRides;
      }
      const double expected = 1000.0 / radiusM;
      EXPECT_NEAR(spreadOf(perKm).mean, expected, 0.02 * expected) << radiusM << " m, " << noiseM;
      const auto near = std::count_if(perKm.begin(), perKm.end(),
                                      [&](double x) { return std::abs(x - expected) < 0.2 * expected; });
      EXPECT_GT(static_cast<double>(near), 0.9 * static_cast<double>(perKm.size()))
          << radiusM << " m, " << noiseM;
      EXPECT_NEAR(noise, noiseM, 0.1 * noiseM) << radiusM;
    }
}

// The length of a noisy line is that of the line, not of the zigzag, which is some per cent longer.
TEST(TrackCurvature, LengthOfANoisyEllipse) {
  const Recording recording = ellipse(150, 100, {.stepM = 1.0, .noiseM = 0.5});
  EXPECT_NEAR(smoothed(recording).lengthM, 793.272, 2.0);
}

}  // namespace
}  // namespace layshaft::test
