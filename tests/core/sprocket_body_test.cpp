// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/sprocket_body.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/parts/chain_geometry.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TEST(SprocketBody, ShapeFollowsTheChainSize) {
  const SprocketShape shape = sprocketShape(*chainSize("520"), 45);
  EXPECT_NEAR(shape.pitchRadiusM * 2000, 227.577, 1e-3);
  EXPECT_NEAR(shape.tipRadiusM * 2000, 236.55, 0.01);
  EXPECT_NEAR((shape.pitchRadiusM - shape.rootRadiusM) * 1000, 5.08, 1e-9);
  EXPECT_LT(shape.boreRadiusM, shape.rootRadiusM);
  EXPECT_GT(sprocketShape(*chainSize("530"), 45).thicknessM, shape.thicknessM);
}

TEST(SprocketBody, MassIsARingTimesItsFill) {
  const SprocketShape shape{
      .pitchRadiusM = 0.1, .tipRadiusM = 0.1, .rootRadiusM = 0.09, .boreRadiusM = 0.04, .thicknessM = 0.006};
  const double solid = std::numbers::pi * (0.01 - 0.0016) * 0.006 * 7850;
  EXPECT_NEAR(estimatedMassKg(shape, SprocketPlace::Front, SprocketMaterial::Steel), solid, 1e-12);
  EXPECT_NEAR(estimatedMassKg(shape, SprocketPlace::Rear, SprocketMaterial::Steel), solid / 2, 1e-12);
  EXPECT_NEAR(estimatedMassKg(shape, SprocketPlace::Rear, SprocketMaterial::Aluminium),
              solid / 2 * 2810 / 7850, 1e-12);
}

// Closed forms of every mechanics handbook: a thin hoop m·r², a disc ½·m·r².
TEST(SprocketBody, InertiaLiesBetweenDiscAndHoop) {
  SprocketShape shape{
      .pitchRadiusM = 0.1, .tipRadiusM = 0.1, .rootRadiusM = 0.09, .boreRadiusM = 0.0, .thicknessM = 0.006};
  EXPECT_NEAR(sprocketInertiaKgM2(shape, 2.0), 0.5 * 2.0 * 0.01, 1e-15);
  shape.boreRadiusM = shape.pitchRadiusM;
  EXPECT_NEAR(sprocketInertiaKgM2(shape, 2.0), 2.0 * 0.01, 1e-15);
}

TEST(SprocketBody, OutlineHasASeatForEveryToothAndStaysBetweenRootAndTip) {
  for (const ChainSize& size : kChainSizes)
    for (const int teeth : {6, 11, 15, 43, 70}) {
      const SprocketShape shape = sprocketShape(size, teeth);
      double least = 1, most = 0, seam = 0, last = -4;
      const auto outline = sprocketOutline(size, teeth);
      for (const ChainPoint& point : outline) {
        const double r = std::hypot(point.x, point.y);
        least = std::min(least, r);
        most = std::max(most, r);
        // Round once, never backwards by more than the width of a seat.
        double angle = std::atan2(point.y, point.x);
        if (angle < last - 3) seam += 2 * std::numbers::pi;
        last = angle;
      }
      EXPECT_NEAR(least, shape.rootRadiusM, 1e-9) << size.name << " " << teeth;
      EXPECT_NEAR(most, shape.tipRadiusM, 1e-9) << size.name << " " << teeth;
      EXPECT_GE(seam, 0);
      // A roller in every seat touches the outline and nothing of it reaches into the roller.
      const double roller = size.rollerDiameterMm / 2000;
      for (int seat = 0; seat < teeth; ++seat) {
        const double at = 2 * std::numbers::pi * seat / teeth;
        double nearest = 1;
        for (const ChainPoint& point : outline)
          nearest = std::min(nearest, std::hypot(point.x - shape.pitchRadiusM * std::cos(at),
                                                 point.y - shape.pitchRadiusM * std::sin(at)));
        EXPECT_NEAR(nearest, roller, 1e-6) << size.name << " " << teeth << " seat " << seat;
      }
    }
}

}  // namespace
}  // namespace layshaft::test
