// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/sprocket_tooth.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/units.h"

namespace layshaft::test {
namespace {

const ChainSize k520 = *chainSize("520");

double areaOf(const std::vector<ChainPoint>& outline) {
  double twice = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const ChainPoint &a = outline[i], &b = outline[(i + 1) % outline.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2.0;
}

TEST(SprocketTooth, AnElongatedLinkSpansOneToothWhereItRides) {
  for (const int teeth : {13, 43, 60})
    for (const double percent : {0.0, 1.0, 3.0}) {
      const double chord =
          2.0 * ridingRadiusM(k520, teeth, percent) * std::sin(units::kPi / teeth);  // of one tooth's angle
      EXPECT_NEAR(chord, 0.015875 * (1.0 + percent / 100.0), 1e-12);
    }
}

// Pitch diameters for 1 inch pitch, as tables of ASME B29.1 print them (from memory): 13 teeth 4.1786,
// 45 teeth 14.3356. For another pitch they are multiplied by it.
TEST(SprocketTooth, ANewChainRidesOnTheTabledPitchDiameter) {
  EXPECT_NEAR(2.0 * ridingRadiusM(k520, 13, 0.0) / 0.015875, 4.1786, 1e-4);
  EXPECT_NEAR(2.0 * ridingRadiusM(k520, 45, 0.0) / 0.015875, 14.3356, 1e-4);
}

TEST(SprocketTooth, TheSameElongationClimbsFurtherOnMoreTeeth) {
  EXPECT_EQ(rideOutM(k520, 43, 0.0), 0.0);
  EXPECT_NEAR(rideOutM(k520, 43, 2.0), 0.02 * ridingRadiusM(k520, 43, 0.0), 1e-12);
  EXPECT_GT(rideOutM(k520, 50, 2.0), rideOutM(k520, 14, 2.0));
  EXPECT_GT(flankLossM(k520, 43, 2.0), flankLossM(k520, 43, 1.0));
}

TEST(SprocketTooth, WithoutLossItIsTheSprocketsOwnShape) {
  EXPECT_NEAR(areaOf(wornSprocketOutline(k520, 43, 0.0)), areaOf(sprocketOutline(k520, 43)), 1e-12);
}

TEST(SprocketTooth, WearOnlyTakesMaterialAway) {
  double before = areaOf(sprocketOutline(k520, 43));
  for (const double lossMm : {0.3, 0.8, 1.6}) {
    const double area = areaOf(wornSprocketOutline(k520, 43, lossMm / 1000.0));
    EXPECT_LT(area, before);
    before = area;
  }
  EXPECT_EQ(areaOf(wornSprocketOutline(k520, 43, 1.0)),
            areaOf(wornSprocketOutline(k520, 43, 0.25 * 0.015875)))
      << "a tooth does not wear through";
}

TEST(SprocketTooth, TheLoadedFlankIsHookedAndTheOtherStays) {
  const double loss = 0.001;
  const auto whole = sprocketOutline(k520, 43), worn = wornSprocketOutline(k520, 43, loss);
  // The first seat lies on the x axis: the far end of its pocket has moved on by the loss, the near end not.
  EXPECT_EQ(worn.front().y, whole.front().y);
  const double radius = ridingRadiusM(k520, 43, 0.0);
  const auto angle = [](const ChainPoint& p) { return std::atan2(p.y, p.x); };
  const ChainPoint pocketEnd = worn[5], hook = worn[6], tip = worn[7];
  EXPECT_NEAR((angle(pocketEnd) - angle(whole[4])) * radius, loss, 1e-9);
  const double hookLoss = angle(hook) - angle(whole[5]), tipLoss = angle(tip) - angle(whole[5]);
  EXPECT_GT(tipLoss, 0.0);
  EXPECT_GT(angle(pocketEnd), 0.0);
  EXPECT_LT(tipLoss, loss / radius);
  EXPECT_LT(hookLoss, angle(whole[6]) - angle(whole[5])) << "some tooth is left";
}

}  // namespace
}  // namespace layshaft::test
