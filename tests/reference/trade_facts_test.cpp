// SPDX-License-Identifier: GPL-3.0-or-later
//
// What everyone in the trade knows (common practice, no source): if the program says otherwise, the program
// is wrong.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "core/study/gearing.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

struct Pair {
  int front, rear;
};

/// Pairs that road, race and off-road bikes leave the works with.
constexpr Pair kCommonPairs[] = {{13, 48}, {13, 50}, {14, 42}, {15, 43},
                                 {15, 45}, {16, 43}, {16, 47}, {17, 42}};

Gearing gearingOf(int frontTeeth, int rearTeeth, const char* size = "180/55ZR17") {
  Setup setup = bareSetup();
  setup.frontTeeth = front(frontTeeth);
  setup.rearTeeth = rear(rearTeeth);
  setup.rearTyre = tyre(size);
  return gearing(setup, {.revLimitRpm = 10000});
}
GearingChange change(Pair from, Pair to) {
  Setup stock = bareSetup();
  stock.frontTeeth = front(from.front);
  stock.rearTeeth = rear(from.rear);
  return gearingChange(stock, gearingOf(from.front, from.rear), gearingOf(to.front, to.rear));
}

TEST(TradeFacts, OneFrontToothIsAboutThreeRearTeeth) {
  for (const Pair pair : kCommonPairs) {
    const double ratio = static_cast<double>(pair.rear) / pair.front;
    const double teeth = change(pair, {pair.front - 1, pair.rear}).rearTeethEquivalent;
    if (std::abs(ratio - 3) < 0.2) {
      EXPECT_NEAR(teeth, 3, 0.3) << pair.front << '/' << pair.rear;
    }
    EXPECT_GT(teeth, 2.5) << pair.front << '/' << pair.rear;
    EXPECT_LT(teeth, 4.4) << pair.front << '/' << pair.rear;
  }
}

TEST(TradeFacts, TwoRearTeethAreASmallChange) {
  for (const Pair pair : kCommonPairs)
    for (const int step : {-2, -1, 1, 2})
      EXPECT_EQ(change(pair, {pair.front, pair.rear + step}).size, StepSize::Small)
          << pair.front << '/' << pair.rear << " by " << step;
}

TEST(TradeFacts, OneFrontToothIsTheNextSizeUp) {
  for (const Pair pair : kCommonPairs)
    for (const int step : {-1, 1})
      EXPECT_EQ(change(pair, {pair.front + step, pair.rear}).size, StepSize::Moderate)
          << pair.front << '/' << pair.rear << " by " << step;
}

TEST(TradeFacts, OneFewerInFrontAndThreeMoreBehindIsALot) {
  for (const Pair pair : kCommonPairs)
    EXPECT_EQ(change(pair, {pair.front - 1, pair.rear + 3}).size, StepSize::Large)
        << pair.front << '/' << pair.rear;
}

TEST(TradeFacts, SmallerInFrontOrBiggerBehindIsShorter) {
  for (const Pair pair : kCommonPairs) {
    EXPECT_EQ(change(pair, {pair.front - 1, pair.rear}).direction, Direction::Shorter);
    EXPECT_EQ(change(pair, {pair.front, pair.rear + 1}).direction, Direction::Shorter);
    EXPECT_EQ(change(pair, {pair.front + 1, pair.rear}).direction, Direction::Taller);
    EXPECT_EQ(change(pair, {pair.front, pair.rear - 1}).direction, Direction::Taller);
  }
}

TEST(TradeFacts, ABiggerRearSprocketShortensEveryGearAlike) {
  const Gearing stock = gearingOf(15, 45), bigger = gearingOf(15, 50);
  for (std::size_t g = 0; g < stock.gears.size(); ++g) {
    // 45 to 50: nine tenths of the speed in every gear, at the limit and at any other engine speed.
    EXPECT_NEAR(*bigger.gears[g].speedAtRevLimitMps / *stock.gears[g].speedAtRevLimitMps, 0.9, 1e-12);
    EXPECT_NEAR(bigger.gears[g].speedPer1000RpmMps / stock.gears[g].speedPer1000RpmMps, 0.9, 1e-12);
    EXPECT_NEAR(bigger.rpm(20, g) / stock.rpm(20, g), 1 / 0.9, 1e-12);
  }
}

TEST(TradeFacts, SprocketsDoNotChangeTheStepsBetweenGears) {
  const Gearing stock = gearingOf(16, 43), other = gearingOf(14, 47);
  for (std::size_t g = 0; g + 1 < stock.gears.size(); ++g)
    EXPECT_NEAR(*other.gears[g].rpmAfterShift, *stock.gears[g].rpmAfterShift, 1e-9);
}

TEST(TradeFacts, EqualRatiosAreEqualGearing) {
  for (const Pair pair : {Pair{14, 42}, Pair{16, 48}, Pair{17, 51}}) {
    EXPECT_EQ(change({15, 45}, pair).direction, Direction::Same);
    EXPECT_NEAR(change({15, 45}, pair).rearTeethEquivalent, 0, 1e-12);
  }
}

TEST(TradeFacts, ATallerTyreIsTallerGearing) {
  const Gearing low = gearingOf(16, 43, "180/55ZR17"), high = gearingOf(16, 43, "180/60ZR17");
  EXPECT_EQ(gearingChange(bareSetup(), low, high).direction, Direction::Taller);
  EXPECT_GT(high.gears.back().speedAtRevLimitMps, low.gears.back().speedAtRevLimitMps);
}

}  // namespace
}  // namespace layshaft::test
