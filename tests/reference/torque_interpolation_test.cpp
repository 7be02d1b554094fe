// SPDX-License-Identifier: GPL-3.0-or-later
//
// Torque between and beyond the points of a curve. Source: SciPy 1.10.1, scipy.interpolate.PchipInterpolator
// (x, y), its values and the derivative at its last point. What follows beyond that point is a straight line
// with this slope where it falls.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "core/parts/torque_spline.h"

namespace layshaft::test {
namespace {

struct SciPyCurve {
  const char* what;
  std::vector<TorquePoint> points;
  std::vector<TorquePoint> between;
  double endSlope;  ///< N·m per rpm
};

const std::vector<SciPyCurve> kSciPyCurves{
    {"two humps",
     {{3000, 40}, {4500, 52}, {5200, 51}, {6000, 46}, {7700, 58}, {9000, 60}, {11000, 44}},
     {{3450, 45.7735}, {4990, 51.4520091743119}, {9500, 58.791958041958}, {10800, 46.6805034965035}},
     -0.01378088578088578},
    {"one hump",
     {{2000, 62}, {2800, 70}, {3600, 76.5}, {8700, 74}, {9100, 66.5}},
     {{2240, 64.5623879310345}, {3360, 75.5478620689655}, {8800, 73.1309343122944}, {9060, 67.3558129510671}},
     -0.020077985739750455},
    {"first slope steep",
     {{1500, 10}, {2000, 30}, {2200, 29}, {6000, 18}, {6500, 5}},
     {{1650, 19.6225}, {2140, 29.3331739130435}, {6125, 16.1806062198443}, {6450, 6.49633847983258}},
     -0.028686658506731952},
    {"first slope cut back to three times the secant's",
     {{1000, 20}, {2000, 60}, {2200, 30}, {5000, 29}, {5200, 10}},
     {{1300, 46.28}, {2140, 36.5094043562009}, {5050, 26.9529674216536}, {5180, 12.1714184864144}},
     -0.10130952380952385},
    {"last slope levelled",
     {{1000, 50}, {3000, 50}, {5000, 20}, {7000, 19.5}},
     {{1600, 50}, {4400, 26.6245901639344}, {5500, 19.7835553278689}, {6800, 19.5051475409836}},
     0.0}};

TEST(TorqueInterpolation, GivesSciPysValuesBetweenThePoints) {
  for (const SciPyCurve& curve : kSciPyCurves) {
    SCOPED_TRACE(curve.what);
    const TorqueSpline spline(TorqueCurve::make(curve.points).value(), 20000);
    for (const TorquePoint& expected : curve.between)
      EXPECT_NEAR(spline.at(expected.rpm), expected.torqueNm, 1e-12) << expected.rpm;
  }
}

TEST(TorqueInterpolation, GoesOnWithSciPysSlopeAtTheLastPoint) {
  for (const SciPyCurve& curve : kSciPyCurves) {
    SCOPED_TRACE(curve.what);
    const TorqueSpline spline(TorqueCurve::make(curve.points).value(), 20000);
    const TorquePoint last = curve.points.back();
    EXPECT_NEAR(spline.at(last.rpm + 40), last.torqueNm + 40 * curve.endSlope, 1e-12);
    ASSERT_TRUE(spline.beyond());
    EXPECT_EQ(spline.beyond()->falls, curve.endSlope < 0.0);
  }
}

}  // namespace
}  // namespace layshaft::test
