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

// Closed forms of every mechanics handbook: a disc has ½·m·r², a thin hoop m·r²; a ring lies between.
TEST(SprocketBody, InertiaIsThatOfARing) {
  const double r = 0.1, inner = 0.4 * r, kg = 2.0;
  // A disc of the whole less one of the hole, of one thickness.
  const double disc = kg * r * r / (r * r - inner * inner), hole = disc - kg;
  EXPECT_NEAR(sprocketInertiaKgM2(r, kg), 0.5 * disc * r * r - 0.5 * hole * inner * inner, 1e-15);
  EXPECT_GT(sprocketInertiaKgM2(r, kg), 0.5 * kg * r * r);
  EXPECT_LT(sprocketInertiaKgM2(r, kg), kg * r * r);
}

TEST(SprocketBody, OutlineHasASeatForEveryToothAndStaysBetweenRootAndTip) {
  for (const ChainSize& size : kChainSizes)
    for (const int teeth : {6, 11, 15, 43, 70}) {
      const SprocketShape shape = sprocketShape(size, teeth);
      double least = 1, most = 0, back = 0;
      const auto outline = sprocketOutline(size, teeth);
      for (const ChainPoint& point : outline) {
        const double r = std::hypot(point.x, point.y);
        least = std::min(least, r);
        most = std::max(most, r);
      }
      EXPECT_NEAR(least, shape.rootRadiusM, 1e-9) << size.name << " " << teeth;
      EXPECT_NEAR(most, shape.tipRadiusM, 1e-9) << size.name << " " << teeth;
      // Round once: a seat's flanks lean back by less than a tooth.
      double round = 0;
      for (std::size_t i = 0; i < outline.size(); ++i) {
        const ChainPoint &from = outline[i], &to = outline[(i + 1) % outline.size()];
        const double step =
            std::remainder(std::atan2(to.y, to.x) - std::atan2(from.y, from.x), 2 * std::numbers::pi);
        round += step;
        back = std::min(back, step);
      }
      EXPECT_NEAR(round, 2 * std::numbers::pi, 1e-9);
      EXPECT_GT(back, -2 * std::numbers::pi / teeth);
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
