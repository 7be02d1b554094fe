// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gearing.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// Numbers that can be followed in the head: 6000 rpm in third are 1000 wheel turns a minute, 120 km/h.
Setup plainSetup() {
  Setup setup{.frontTeeth = front(15),
              .rearTeeth = rear(45),
              .rearTyre = tyre("180/55ZR17"),
              .primaryRatio = 2,
              .gearRatios = gears({3, 2, 1}),
              .options = {}};
  setup.options.rolloutMm = 2000;
  return setup;
}

TEST(Gearing, FiguresByHand) {
  const Gearing figures = gearing(plainSetup(), {.revLimitRpm = 9000});
  EXPECT_DOUBLE_EQ(figures.finalRatio, 3);
  EXPECT_EQ(figures.rollout.source, RolloutSource::Measured);
  EXPECT_EQ(figures.revLimitRpm, 9000);
  ASSERT_EQ(figures.gears.size(), 3U);
  const double overall[] = {18, 12, 6};
  const double limitKmh[] = {60, 90, 180};
  for (std::size_t g = 0; g < 3; ++g) {
    EXPECT_EQ(figures.gears[g].gear, static_cast<int>(g) + 1);
    EXPECT_DOUBLE_EQ(figures.gears[g].ratio, 3.0 - static_cast<double>(g));
    EXPECT_DOUBLE_EQ(figures.gears[g].overallRatio, overall[g]);
    EXPECT_NEAR(*figures.gears[g].speedAtRevLimitMps * 3.6, limitKmh[g], 1e-12);
    EXPECT_NEAR(figures.gears[g].speedPer1000RpmMps * 3.6, limitKmh[g] / 9, 1e-12);
    EXPECT_NEAR(figures.speedMps(4500, g) * 3.6, limitKmh[g] / 2, 1e-12);
    EXPECT_NEAR(figures.rpm(limitKmh[g] / 3.6, g), 9000, 1e-9);
  }
}

TEST(Gearing, ShiftsAtTheRevLimitUnlessToldOtherwise) {
  const Gearing figures = gearing(plainSetup(), {.revLimitRpm = 9000});
  EXPECT_EQ(figures.gears[0].shiftRpm, 9000);
  EXPECT_NEAR(*figures.gears[0].shiftSpeedMps * 3.6, 60, 1e-12);
  EXPECT_NEAR(*figures.gears[0].rpmAfterShift, 6000, 1e-9);
  EXPECT_NEAR(*figures.gears[1].rpmAfterShift, 4500, 1e-9);
}

TEST(Gearing, ShiftsWhereItIsTold) {
  const Gearing figures = gearing(plainSetup(), {.revLimitRpm = 9000, .shiftRpm = {8400, 8000}});
  EXPECT_EQ(figures.gears[0].shiftRpm, 8400);
  EXPECT_NEAR(*figures.gears[0].shiftSpeedMps * 3.6, 56, 1e-12);
  EXPECT_NEAR(*figures.gears[0].rpmAfterShift, 5600, 1e-9);
  EXPECT_NEAR(*figures.gears[1].rpmAfterShift, 4000, 1e-9);
}

TEST(Gearing, TheLastGearHasNoShift) {
  auto setup = plainSetup();
  for (const auto& ratios : {std::vector<double>{3, 2, 1}, std::vector<double>{1}}) {
    setup.gearRatios = gears(ratios);
    const GearFigures last = gearing(setup, {.revLimitRpm = 9000, .shiftRpm = {8000, 8000}}).gears.back();
    EXPECT_FALSE(last.shiftRpm || last.shiftSpeedMps || last.rpmAfterShift);
  }
}

// The engine speed after a shift is what the next gear turns at that road speed, tyre growth or not.
TEST(Gearing, TheSawtoothFallsAtConstantRoadSpeed) {
  auto setup = plainSetup();
  setup.options.growthPerKmh2 = 5e-7;
  const Gearing figures = gearing(setup, {.revLimitRpm = 9000});
  for (std::size_t g = 0; g + 1 < figures.gears.size(); ++g)
    EXPECT_NEAR(figures.rpm(*figures.gears[g].shiftSpeedMps, g + 1), *figures.gears[g].rpmAfterShift, 1e-8);
}

TEST(Gearing, EngineTurnsAtCruiseAreThoseOfTheGrownTyre) {
  auto setup = plainSetup();
  setup.options.growthPerKmh2 = 5e-7;
  const Gearing figures = gearing(setup, {.revLimitRpm = 9000, .cruiseSpeedMps = 120 / 3.6});
  // 6 turns of the engine for one of the wheel, 2 m grown by 5e-7 · 120² = 0.72 %.
  EXPECT_NEAR(figures.cruise->turnsPerKm, 6 * 1000 / 2.0144, 1e-9);
  EXPECT_NEAR(figures.cruise->rpm, figures.cruise->turnsPerKm * 2, 1e-9) << "two kilometres a minute";
}

TEST(Gearing, CruisesInTheHighestGearThatHoldsTheSpeed) {
  const auto cruise = [](double kmh, double idle) {
    return gearing(plainSetup(), {.revLimitRpm = 9000, .idleRpm = idle, .cruiseSpeedMps = kmh / 3.6});
  };
  const Gearing top = cruise(120, 1000);
  ASSERT_TRUE(top.cruise);
  EXPECT_EQ(top.cruise->gear, 3);
  EXPECT_NEAR(top.cruise->rpm, 6000, 1e-9);
  EXPECT_NEAR(top.cruise->turnsPerKm, 3000, 1e-9);  // 500 wheel turns, six engine turns each
  EXPECT_EQ(cruise(15, 1000).cruise->gear, 2);      // third would turn 750
  EXPECT_EQ(cruise(15, 0).cruise->gear, 3);
  EXPECT_EQ(cruise(7, 1000).cruise->gear, 1);
  EXPECT_FALSE(cruise(6, 1000).cruise);    // below idle in every gear
  EXPECT_FALSE(cruise(181, 1000).cruise);  // above the rev limit in every gear
  EXPECT_TRUE(cruise(181, 1000).cruiseSpeedMps);
}

TEST(Gearing, CruisesAtIdleAndAtTheRevLimitToo) {
  // 10 m/s are 1800, 3600 and 5400 rpm from third down, without rounding.
  const GearingConditions conditions{.revLimitRpm = 1800, .idleRpm = 1800, .cruiseSpeedMps = 10};
  ASSERT_TRUE(gearing(plainSetup(), conditions).cruise);
  EXPECT_EQ(gearing(plainSetup(), conditions).cruise->gear, 3);
}

TEST(Gearing, NoCruiseSpeedNoCruise) {
  const Gearing figures = gearing(plainSetup(), {.revLimitRpm = 9000});
  EXPECT_FALSE(figures.cruise || figures.cruiseSpeedMps);
}

TEST(StepSize, ChangesAtItsLimits) {
  struct Row {
    double percentLog;
    StepSize size;
  };
  for (const Row& row :
       {Row{0, StepSize::None}, Row{0.0499, StepSize::None}, Row{0.0501, StepSize::Small},
        Row{5.499, StepSize::Small}, Row{5.501, StepSize::Moderate}, Row{9.999, StepSize::Moderate},
        Row{10.001, StepSize::Large}, Row{70, StepSize::Large}}) {
    EXPECT_EQ(stepSize(std::exp(row.percentLog / 100)), row.size) << row.percentLog;
    EXPECT_EQ(stepSize(std::exp(-row.percentLog / 100)), row.size) << -row.percentLog;
  }
}

GearingChange changeTo(const Setup& other) {
  const GearingConditions conditions{.revLimitRpm = 9000};
  return gearingChange(plainSetup(), gearing(plainSetup(), conditions), gearing(other, conditions));
}

TEST(GearingChange, OfNothingIsNothing) {
  const GearingChange change = changeTo(plainSetup());
  EXPECT_EQ(change.finalRatioPercent, 0);
  EXPECT_EQ(change.gearingPercent, 0);
  EXPECT_EQ(change.direction, Direction::Same);
  EXPECT_EQ(change.size, StepSize::None);
  EXPECT_EQ(change.rearTeethEquivalent, 0);
}

TEST(GearingChange, OneFrontToothFewerIsShorter) {
  auto other = plainSetup();
  other.frontTeeth = front(14);
  const GearingChange change = changeTo(other);
  EXPECT_NEAR(change.finalRatioPercent, 100.0 / 14, 1e-9);
  EXPECT_NEAR(change.gearingPercent, 100.0 / 14, 1e-9);
  EXPECT_EQ(change.direction, Direction::Shorter);
  EXPECT_EQ(change.size, StepSize::Moderate);
  EXPECT_NEAR(change.rearTeethEquivalent, 45.0 / 14, 1e-9);
}

TEST(GearingChange, RearTeethAreTheirOwnEquivalent) {
  for (const int teeth : {40, 43, 44, 46, 50}) {
    auto other = plainSetup();
    other.rearTeeth = rear(teeth);
    EXPECT_NEAR(changeTo(other).rearTeethEquivalent, teeth - 45, 1e-12);
    EXPECT_EQ(changeTo(other).direction, teeth > 45 ? Direction::Shorter : Direction::Taller);
  }
}

TEST(GearingChange, SeesTheTyre) {
  auto other = plainSetup();
  other.options.rolloutMm = 2100;
  const GearingChange change = changeTo(other);
  EXPECT_EQ(change.finalRatioPercent, 0);
  EXPECT_NEAR(change.gearingPercent, 100 * (2000.0 / 2100 - 1), 1e-9);
  EXPECT_EQ(change.direction, Direction::Taller);
  EXPECT_EQ(change.rearTeethEquivalent, 0);
}

TEST(GearingChange, SeesTheLastGearOfAnotherBox) {
  auto other = plainSetup();
  other.gearRatios = gears({3, 2, 1.5, 1.1});
  EXPECT_NEAR(changeTo(other).gearingPercent, 10, 1e-9);
  EXPECT_EQ(changeTo(other).direction, Direction::Shorter);
  other.gearRatios = gears({4, 2, 1});  // only the lower gears differ
  EXPECT_EQ(changeTo(other).size, StepSize::None);
}

TEST(GearingChange, TooLittleToNoticeIsTheSame) {
  auto other = plainSetup();
  other.options.rolloutMm = 2000.9;
  EXPECT_EQ(changeTo(other).direction, Direction::Same);
  EXPECT_EQ(changeTo(other).size, StepSize::None);
  EXPECT_LT(changeTo(other).gearingPercent, 0);
}

}  // namespace
}  // namespace layshaft::test
