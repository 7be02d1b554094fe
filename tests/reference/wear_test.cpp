// SPDX-License-Identifier: GPL-3.0-or-later
//
// Wear against figures that nobody here worked out.
#include "core/study/wear.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

#include "core/study/straight_line.h"

namespace layshaft::test {
namespace {

// Source: NIST Statistical Reference Datasets, linear regression, "Norris" (lower difficulty): y and x, and
// certified values.
const std::vector<LinePoint>& norris() {
  static const std::vector<LinePoint> points{
      {0.2, 0.1},     {337.4, 338.8}, {118.2, 118.1}, {884.6, 888.0}, {10.1, 9.2},    {226.5, 228.1},
      {666.3, 668.5}, {996.3, 998.5}, {448.6, 449.1}, {777.0, 778.9}, {558.2, 559.2}, {0.4, 0.3},
      {0.6, 0.1},     {775.5, 778.1}, {666.9, 668.8}, {338.0, 339.3}, {447.5, 448.9}, {11.6, 10.8},
      {556.0, 557.7}, {228.1, 228.3}, {995.8, 998.0}, {887.6, 888.8}, {120.2, 119.6}, {0.3, 0.3},
      {0.3, 0.6},     {556.8, 557.6}, {339.1, 339.3}, {887.2, 888.0}, {999.0, 998.5}, {779.0, 778.9},
      {11.1, 10.2},   {118.3, 117.6}, {229.2, 228.9}, {669.1, 668.4}, {448.9, 449.2}, {0.5, 0.2}};
  return points;
}

TEST(StraightLineReference, NorrisOfNist) {
  const auto line = straightLine(norris());
  ASSERT_TRUE(line);
  EXPECT_NEAR(line->intercept, -0.262323073774029, 1e-9);
  EXPECT_NEAR(line->slope, 1.00211681802045, 1e-12);
  EXPECT_NEAR(*line->residualSd, 0.884796396144373, 1e-9);
  EXPECT_NEAR(*line->interceptError(), 0.232818234301152, 1e-9);
  EXPECT_NEAR(*line->slopeError(), 0.429796848199937e-3, 1e-12);
}

TEST(StraightLineReference, GslFindsTheSameLineThroughRandomPoints) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> noise(-0.05, 0.05);
  for (int round = 0; round < 100; ++round) {
    std::vector<LinePoint> points;
    std::vector<double> x, y;
    for (int i = 0; i < 3 + round % 9; ++i) {
      points.push_back({i * 3.0 + noise(random), 0.1 + 0.05 * i + noise(random)});
      x.push_back(points.back().x);
      y.push_back(points.back().y);
    }
    double c0 = 0, c1 = 0, v00 = 0, v01 = 0, v11 = 0, squares = 0;
    gsl_fit_linear(x.data(), 1, y.data(), 1, x.size(), &c0, &c1, &v00, &v01, &v11, &squares);
    const auto line = straightLine(points);
    ASSERT_TRUE(line);
    EXPECT_NEAR(line->intercept, c0, 1e-10);
    EXPECT_NEAR(line->slope, c1, 1e-10);
    EXPECT_NEAR(*line->slopeError(), std::sqrt(v11), 1e-10);
    // The interval by GSL's t quantile and its covariance: where c0 + c1·x is the limit, to first order.
    const auto reached = reaches(*line, 1.0, 0.90);
    if (c1 <= 0) {
      EXPECT_FALSE(reached);
      continue;
    }
    const double t = gsl_cdf_tdist_Pinv(0.95, static_cast<double>(x.size()) - 2);
    const double at = (1.0 - c0) / c1;
    const double half = t * std::sqrt(v00 + 2 * at * v01 + at * at * v11) / c1;
    EXPECT_NEAR(reached->x, at, 1e-6 * std::abs(at) + 1e-9);
    EXPECT_NEAR(*reached->high - reached->x, half, 1e-6 * half + 1e-9);
    EXPECT_NEAR(reached->x - *reached->low, half, 1e-6 * half + 1e-9);
  }
}

TEST(WearReference, LengthsOfTwentyPitches) {
  // Trade tables: twenty pitches of new chains measure 254.0, 317.5 mm.
  EXPECT_NEAR(newLengthMm(*chainSize("428"), 20), 254.0, 1e-9);
  EXPECT_NEAR(newLengthMm(*chainSize("520"), 20), 317.5, 1e-9);
}

TEST(WearReference, LimitsThatAChainMakerPrintsAreTheUsualOnes) {
  // A chain maker's instructions: at 12.70 mm pitch 23 links may measure 298 mm plain and 295.0 mm sealed,
  // at 15.875 mm 16 links 259 and 256.5 mm.
  EXPECT_NEAR(elongationPercent(*chainSize("420"), 23, 298.0), 2.0, 0.05);
  EXPECT_NEAR(elongationPercent(*chainSize("420"), 23, 295.0), 1.0, 0.05);
  EXPECT_NEAR(elongationPercent(*chainSize("520"), 16, 259.0), 2.0, 0.05);
  EXPECT_NEAR(elongationPercent(*chainSize("520"), 16, 256.5), 1.0, 0.05);
}

TEST(WearReference, LimitOfAWorkshopManual) {
  // The manuals of a litre-class sports bike and of a 250 motocross bike: 20 links, new 317.5 to 318.2 mm,
  // limit 323 mm; the latter's text calls that 1.7 %.
  EXPECT_NEAR(elongationPercent(*chainSize("520"), 20, 323.0), 1.73, 0.005);
  EXPECT_LT(elongationPercent(*chainSize("520"), 20, 318.2), 0.25);
}

}  // namespace
}  // namespace layshaft::test
