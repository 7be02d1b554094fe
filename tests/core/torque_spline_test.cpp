// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/torque_spline.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <boost/math/interpolators/pchip.hpp>
#include <cmath>
#include <random>
#include <vector>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TorqueSpline splineOf(std::vector<TorquePoint> points, double revLimitRpm) {
  return TorqueSpline(TorqueCurve::make(std::move(points)).value(), revLimitRpm);
}

/// Two humps and a dip, last point below the limit of 12 000.
std::vector<TorquePoint> wavyCurve() {
  return {{3000, 40}, {4500, 52}, {5200, 51}, {6000, 46}, {7700, 58}, {9000, 60}, {11000, 44}};
}

TEST(TorqueSpline, GoesThroughItsPoints) {
  const TorqueSpline spline = splineOf(wavyCurve(), 12000);
  for (const auto& point : wavyCurve()) EXPECT_NEAR(spline.at(point.rpm), point.torqueNm, 1e-12) << point.rpm;
}

TEST(TorqueSpline, NeverLeavesTheRangeOfItsNeighbours) {
  const TorqueSpline spline = splineOf(wavyCurve(), 12000);
  const auto points = wavyCurve();
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto [low, high] = std::minmax(points[i - 1].torqueNm, points[i].torqueNm);
    for (double rpm = points[i - 1].rpm; rpm <= points[i].rpm; rpm += 10) {
      EXPECT_GE(spline.at(rpm), low - 1e-12) << rpm;
      EXPECT_LE(spline.at(rpm), high + 1e-12) << rpm;
    }
  }
}

// Boost.Math's monotone interpolation, given the end slopes of SciPy's PchipInterpolator.
TEST(TorqueSpline, AgreesWithBoostsPchip) {
  std::mt19937 random(7);
  const auto draw = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  int cutBack = 0;
  for (int curve = 0; curve < 300; ++curve) {
    std::vector<TorquePoint> points;
    double rpm = 1000;
    for (int i = 4 + curve % 11; i > 0; --i) points.push_back({rpm += draw(50, 1500), draw(5, 90)});
    std::vector<double> x, y;
    for (const auto& p : points) {
      x.push_back(p.rpm);
      y.push_back(p.torqueNm);
    }
    const auto endSlopeOfScipy = [&](std::size_t a, std::size_t b, std::size_t c) {
      const double h0 = x[b] - x[a], h1 = x[c] - x[b], d0 = (y[b] - y[a]) / h0, d1 = (y[c] - y[b]) / h1;
      const double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
      if (std::signbit(slope) != std::signbit(d0)) return 0.0;
      if (std::signbit(d0) != std::signbit(d1) && std::abs(slope) > 3 * std::abs(d0)) {
        ++cutBack;
        return 3 * d0;
      }
      return slope;
    };
    const std::size_t n = x.size();
    const double left = endSlopeOfScipy(0, 1, 2), right = endSlopeOfScipy(n - 1, n - 2, n - 3);
    const double first = x.front(), last = x.back();
    const boost::math::interpolators::pchip<std::vector<double>> theirs(std::move(x), std::move(y), left,
                                                                        right);
    const TorqueSpline ours = splineOf(points, 40000);
    for (int i = 0; i <= 500; ++i) {
      const double at = std::min(last, first + (last - first) * i / 500);
      ASSERT_NEAR(ours.at(at), theirs(at), 1e-11) << "curve " << curve << " at " << at;
    }
  }
  EXPECT_GT(cutBack, 20);
}

TEST(TorqueSpline, TwoOrThreePointsAreJoinedByStraightLines) {
  const TorqueSpline two = splineOf({{2000, 30}, {6000, 50}}, 8000);
  EXPECT_NEAR(two.at(3000), 35, 1e-12);
  EXPECT_NEAR(two.at(5500), 47.5, 1e-12);
  const TorqueSpline three = splineOf({{2000, 30}, {6000, 50}, {7000, 20}}, 8000);
  EXPECT_NEAR(three.at(5900), 49.5, 1e-12);
  EXPECT_NEAR(three.at(6500), 35, 1e-12);
  // Four points are a curve: above the line up to a peak.
  EXPECT_GT(splineOf({{2000, 30}, {6000, 50}, {7000, 20}, {7500, 10}}, 8000).at(4000), 40.5);
}

TEST(TorqueSpline, IsFlatBelowItsFirstPointAndNothingAboveTheLimit) {
  const TorqueSpline spline = splineOf(wavyCurve(), 12000);
  for (const double rpm : {0.0, 500.0, 2999.9, 3000.0}) EXPECT_EQ(spline.at(rpm), 40) << rpm;
  EXPECT_GT(spline.at(12000), 0);
  EXPECT_EQ(spline.at(12000.001), 0);
  EXPECT_EQ(spline.at(30000), 0);
}

// wavyCurve() ends 1300 rpm +2 N·m, 2000 rpm −16 N·m: by the three-point rule
// ((2·2000 + 1300)·(−0.008) − 2000·(2/1300)) / 3300, its size below the 0.024 that it is cut back to.
TEST(TorqueSpline, GoesOnFallingAlongItsEndSlopeAsFarAsTheLimit) {
  const TorqueSpline spline = splineOf(wavyCurve(), 12000);
  const double slope = (5300 * -0.008 - 2000 * (2.0 / 1300)) / 3300;
  for (const double rpm : {11000.0, 11000.1, 11500.0, 12000.0})
    EXPECT_NEAR(spline.at(rpm), 44 + slope * (rpm - 11000), 1e-12) << rpm;
  ASSERT_TRUE(spline.beyond());
  EXPECT_EQ(spline.beyond()->lastPointRpm, 11000);
  EXPECT_TRUE(spline.beyond()->falls);
}

TEST(TorqueSpline, NeverFallsBelowZeroBeyondItsLastPoint) {
  // Straight lines, 0.02 N·m per rpm down to 5 N·m at 8000: nothing is left at 8250.
  const TorqueSpline spline = splineOf({{2000, 30}, {7000, 25}, {8000, 5}}, 9000);
  EXPECT_NEAR(spline.at(8100), 3, 1e-12);
  EXPECT_NEAR(spline.at(8250), 0, 1e-12);
  EXPECT_EQ(spline.at(8250.1), 0);
  EXPECT_EQ(spline.at(9000), 0);
  EXPECT_EQ(spline.knotsRpm(), (std::vector<double>{2000, 7000, 8000, 8250})) << "forms change there";
  const TorqueSpline endsAtZero = splineOf({{2000, 30}, {8000, 0}}, 9000);
  EXPECT_EQ(endsAtZero.at(8500), 0);
  EXPECT_EQ(endsAtZero.knotsRpm(), (std::vector<double>{2000, 8000}));
}

TEST(TorqueSpline, StaysLevelWhereItsEndDoesNotFall) {
  const TorqueSpline rising = splineOf({{2000, 30}, {6000, 50}}, 8000);
  EXPECT_NEAR(rising.at(6500), 50, 1e-12);
  EXPECT_NEAR(rising.at(8000), 50, 1e-12);
  ASSERT_TRUE(rising.beyond());
  EXPECT_FALSE(rising.beyond()->falls);
  // The last points fall so little, after falling so much, that the three-point rule gives a level end.
  const TorqueSpline levelling = splineOf({{2000, 30}, {4000, 50}, {5000, 20}, {6000, 19.9}}, 8000);
  EXPECT_NEAR(levelling.at(7000), 19.9, 1e-12);
  EXPECT_FALSE(levelling.beyond()->falls);
}

TEST(TorqueSpline, AssumesNothingWhereTheCurveReachesTheLimit) {
  EXPECT_FALSE(splineOf(wavyCurve(), 11000).beyond());
  EXPECT_FALSE(splineOf(wavyCurve(), 8000).beyond());
}

TEST(TorqueSpline, ALimitInsideTheCurveCutsIt) {
  const TorqueSpline whole = splineOf(wavyCurve(), 12000), cut = splineOf(wavyCurve(), 8000);
  for (const double rpm : {3500.0, 6000.0, 7900.0, 8000.0}) EXPECT_EQ(cut.at(rpm), whole.at(rpm)) << rpm;
  EXPECT_EQ(cut.at(8000.001), 0);
  EXPECT_EQ(cut.knotsRpm(), (std::vector<double>{3000, 4500, 5200, 6000, 7700}));
  EXPECT_EQ(whole.knotsRpm(), (std::vector<double>{3000, 4500, 5200, 6000, 7700, 9000, 11000}));
}

TEST(TorqueSpline, ACurveThatBeginsAboveTheLimitIsFlat) {
  const TorqueSpline spline = splineOf({{5000, 12}, {9000, 30}}, 4000);
  EXPECT_TRUE(spline.knotsRpm().empty());
  EXPECT_EQ(spline.at(1000), 12);
  EXPECT_EQ(spline.at(4000), 12);
  EXPECT_EQ(spline.at(4001), 0);
  EXPECT_EQ(spline.peak(), (TorquePoint{4000, 12}));
}

TEST(TorqueSpline, PiecesHoldTheirEngineSpeeds) {
  const TorqueSpline spline = splineOf(wavyCurve(), 12000);
  EXPECT_EQ(spline.pieceAt(2999), 0U);
  EXPECT_EQ(spline.pieceAt(3000), 1U);
  EXPECT_EQ(spline.pieceAt(8999), 5U);
  EXPECT_EQ(spline.pieceAt(11800), 7U);
  // Pieces meet at the knots.
  for (std::size_t i = 0; i < spline.knotsRpm().size(); ++i)
    EXPECT_NEAR(spline.onPiece(i, spline.knotsRpm()[i]), spline.onPiece(i + 1, spline.knotsRpm()[i]), 1e-12)
        << i;
}

TEST(TorqueSpline, FindsThePeak) {
  EXPECT_EQ(splineOf(wavyCurve(), 12000).peak(), (TorquePoint{9000, 60}));
  // Of equal peaks the lowest.
  EXPECT_EQ(splineOf({{2000, 30}, {4000, 50}, {5000, 45}, {6000, 50}, {8000, 50}}, 9000).peak(),
            (TorquePoint{4000, 50}));
  EXPECT_EQ(splineOf({{2000, 50}, {4000, 50}}, 9000).peak(), (TorquePoint{2000, 50}));
  // A curve that still rises at the limit has it there.
  const TorquePoint atLimit = splineOf({{2000, 30}, {8000, 60}}, 6000).peak();
  EXPECT_EQ(atLimit.rpm, 6000);
  EXPECT_NEAR(atLimit.torqueNm, 50, 1e-12);
  EXPECT_EQ(splineOf({{2000, 30}, {6000, 10}}, 9000).peak(), (TorquePoint{2000, 30}));
}

}  // namespace
}  // namespace layshaft::test
