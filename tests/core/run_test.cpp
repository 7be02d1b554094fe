// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>
#include <utility>
#include <vector>

#include "core/study/run_search.h"
#include "core/study/shifting.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// Two metres per turn and an overall ratio of 6 per gear ratio: a gear of 1 turns 180 rpm per m/s.
Setup runSetup(std::vector<double> ratios) {
  Setup setup{.frontTeeth = front(15),
              .rearTeeth = rear(45),
              .rearTyre = tyre("180/55ZR17"),
              .primaryRatio = 2,
              .gearRatios = gears(std::move(ratios)),
              .options = {}};
  setup.options.rolloutMm = 2000;
  return setup;
}

/// 200 kg with rider, no losses, no bounds; flat torque unless another curve is given.
Bike runBike(std::vector<TorquePoint> curve = {{2000, 50}, {9000, 50}}) {
  Bike bike;
  bike.engine.revLimitRpm = 9000;
  bike.engine.idleRpm = 1000;
  bike.engine.torqueCurve = TorqueCurve::make(std::move(curve)).value();
  bike.chassis = Chassis{.massKg = 130,
                         .riderMassKg = 70,
                         .dragAreaM2 = 0.4,
                         .rollingResistance = 0.02,
                         .drivetrainEfficiency = 1.0,
                         .shiftTimeS = 0.1};
  return bike;
}

/// A bike ready to run.
struct Ready {
  RoadModel model;

  Ready(const Bike& b, std::vector<double> ratios, const Ride& ride = {})
      : Ready(b, runSetup(std::move(ratios)), ride) {}
  Ready(const Bike& b, const Setup& setup, const Ride& ride)
      : model(std::make_shared<const PullBike>(pullBike(b, ride)), roadOf(b, ride), setup, rolloutOf(setup),
              Fitted{}) {}

  /// From rest in first gear, every shift made.
  Run start(double untilM, double untilMps = 0.0) const {
    return Run(model, 0.0, {.gear = 0, .slips = true, .shifts = RunPlan::kEveryShift}, untilM, untilMps);
  }
  Run from(double mps, std::size_t gear, double untilM, double untilMps = 0.0) const {
    return Run(model, mps, {.gear = gear, .shifts = RunPlan::kEveryShift}, untilM, untilMps);
  }
};

double launchOf(const Bike& bike, std::vector<double> ratios, const Ride& ride = {}) {
  return Ready(bike, std::move(ratios), ride).model.launchRpm();
}

// ---- launch ----

TEST(Launch, IsTheLowestOfPeakShareOfTheLimitAndFirstShift) {
  EXPECT_EQ(launchOf(runBike({{2000, 30}, {4000, 50}, {9000, 40}}), {3, 2}), 4000);
  // Peak at 8000: 60 % of the limit of 9000 is less.
  EXPECT_DOUBLE_EQ(launchOf(runBike({{2000, 30}, {8000, 50}, {9000, 49}}), {3, 2}), 5400);
  // Typed shift point below both.
  Bike early = runBike({{2000, 30}, {4000, 50}, {9000, 40}});
  early.engine.shiftRpm = 3500;
  EXPECT_EQ(launchOf(early, {3, 2}), 3500);
  // One gear has no shift point.
  EXPECT_EQ(launchOf(early, {3}), 4000);
}

TEST(Launch, OfEqualTorquePeaksTheLowest) {
  EXPECT_EQ(launchOf(runBike({{2000, 30}, {3000, 50}, {4000, 40}, {5000, 50}, {9000, 30}}), {3, 2}), 3000);
}

TEST(Launch, ATypedEngineSpeedHolds) {
  const Bike bike = runBike({{2000, 30}, {4000, 50}, {9000, 40}});
  EXPECT_EQ(launchOf(bike, {3, 2}, {.launchRpm = 7000}), 7000);
  EXPECT_EQ(launchOf(bike, {3, 2}, {.launchRpm = 1500}), 1500);
}

TEST(Launch, IsNeverAboveTheShiftPointOfTheGearItBeginsIn) {
  Bike bike = runBike({{2000, 30}, {4000, 50}, {9000, 40}});
  bike.engine.shiftRpm = 6000;
  const Ready ready(bike, {3, 2}, {.launchRpm = 7000});
  EXPECT_EQ(ready.model.launchRpm(0), 6000);
  EXPECT_EQ(ready.model.launchRpm(1), 7000);  // the last gear goes to the limit
  EXPECT_EQ(ready.start(100).atSpeed(1.0)->rpm, 6000);
}

TEST(Launch, TheClutchSlipsUntilTheRoadSpeedCatchesUp) {
  Bike bike = runBike();
  bike.chassis->dragAreaM2 = 0;
  bike.chassis->rollingResistance = 0;
  bike.engine.rotatingInertiaKgm2 = 0.5;
  const Ready ready(bike, {3}, {.launchRpm = 5400});
  const auto run = ready.start(100);
  // 50 N·m · 18 · π on 200 kg, the engine's inertia left out, to 5400 rpm at 10 m/s.
  const double a = 50 * 18 * std::numbers::pi / 200;
  const auto caught = run.atSpeed(10);
  ASSERT_TRUE(caught);
  EXPECT_NEAR(caught->timeS, 10 / a, 1e-12);
  EXPECT_NEAR(caught->distanceM, 50 / a, 1e-11);
  for (const double v : {0.5, 5.0, 9.9}) {
    EXPECT_EQ(run.atSpeed(v)->rpm, 5400) << v;
    EXPECT_EQ(run.atSpeed(v)->gear, 1) << v;
  }
  // Then the engine turns with the wheel, and its inertia counts.
  const double geared =
      50 * 18 * std::numbers::pi / (200 + 0.5 * 18 * 18 * std::numbers::pi * std::numbers::pi);
  EXPECT_NEAR(run.atSpeed(12)->timeS - caught->timeS, 2 / geared, 1e-11);
  EXPECT_NEAR(run.atSpeed(12)->rpm, 6480, 1e-9);
}

TEST(Launch, GripBoundsTheSlippingClutchToo) {
  Bike bike = runBike();
  bike.chassis->dragAreaM2 = 0;
  bike.chassis->rollingResistance = 0;
  bike.chassis->wheelbaseMm = 1400;
  bike.chassis->cgHeightMm = 600;
  bike.chassis->cgAheadOfRearAxleMm = 700;
  bike.chassis->tyreGrip = 0.7;
  const Ready ready(bike, {3, 2}, {.launchRpm = 5400});
  // μ·g·(l − b)/(l − μ·h) = 0.7 · 9.80665 · 0.7/0.98 (Cossalter and Foale, from memory).
  EXPECT_NEAR(ready.start(100).atSpeed(5)->timeS, 5 / (0.7 * 9.80665 * 0.7 / 0.98), 1e-11);
}

// ---- starts and ends ----

TEST(RunStarts, NothingMovesWhereItDoesNotPull) {
  const Ready ready(runBike(), {0.4, 0.3}, {.slopePercent = 40});
  const auto run = ready.start(100);
  EXPECT_FALSE(run.moves());
  EXPECT_FALSE(run.atSpeed(0.0) || run.atSpeed(1) || run.atDistance(10) || run.atTime(1));
  EXPECT_TRUE(run.trace().empty());
  EXPECT_TRUE(run.shifts().empty());
  const RunFigures figures = runFigures(ready.model, DriveRequest{0.0, 100.0, {}}, RollOnRequest{20, 25, 1});
  EXPECT_FALSE(figures.zeroTo60MphS || figures.zeroTo100KmhS || figures.hundredMetresS ||
               figures.eighthMileS || figures.eighthMileSpeedMps || figures.quarterMileS ||
               figures.quarterMileSpeedMps);
  EXPECT_FALSE(figures.rollOnTopS || figures.rollOnBestS || figures.askedRollOnS || figures.drive);
}

TEST(RunStarts, AtTimeAndDistanceZero) {
  const Ready ready(runBike(), {3, 2});
  const auto start = ready.start(100).atTime(0);
  ASSERT_TRUE(start);
  EXPECT_EQ(start->distanceM, 0);
  EXPECT_EQ(start->speedMps, 0);
  EXPECT_EQ(ready.from(12, 1, 100).atDistance(0)->timeS, 0);
  EXPECT_EQ(ready.from(12, 1, 100).atSpeed(12)->timeS, 0);
}

TEST(RunEnds, ATargetNeverReachedIsEmpty) {
  // Ends at the limit, 9000 rpm: 25 m/s in a gear of 2.
  const Ready ready(runBike(), {3, 2});
  const auto run = ready.start(1000, 60);
  EXPECT_TRUE(run.atSpeed(24.99));
  EXPECT_FALSE(run.atSpeed(25.01));
  const RunFigures figures = runFigures(ready.model, {}, {});
  EXPECT_FALSE(figures.zeroTo60MphS || figures.zeroTo100KmhS);
  EXPECT_TRUE(figures.hundredMetresS && figures.quarterMileS);
  EXPECT_NEAR(*figures.quarterMileSpeedMps, 25, 1e-12);
  // A speed below the start's is not reached either, nor one slower than where it began.
  EXPECT_FALSE(ready.from(12, 1, 100).atSpeed(11.9));
}

TEST(RunEnds, AtTheLimiterTheSpeedStaysAndTheSecondsCount) {
  const Ready ready(runBike(), {3, 2});
  const auto run = ready.start(1000);
  const auto limit = run.atSpeed(ready.model.limitMps(1));
  ASSERT_TRUE(limit);
  EXPECT_EQ(limit->limiterS, 0);
  const auto later = run.atDistance(limit->distanceM + 250);
  EXPECT_NEAR(later->timeS, limit->timeS + 10, 1e-9);
  EXPECT_NEAR(later->limiterS, 10, 1e-9);
  EXPECT_NEAR(later->speedMps, 25, 1e-12);
  EXPECT_EQ(later->rpm, 9000);
  EXPECT_EQ(later->gear, 2);
  EXPECT_NEAR(run.atTime(limit->timeS + 4)->distanceM, limit->distanceM + 100, 1e-9);
  const RunFigures figures = runFigures(ready.model, DriveRequest{0.0, limit->distanceM + 250, {}}, {});
  ASSERT_TRUE(figures.drive);
  EXPECT_NEAR(figures.drive->secondsOnLimiter, 10, 1e-9);
  EXPECT_EQ(figures.drive->revRangeLeftRpm, 0);
  EXPECT_EQ(figures.drive->endGear, 2);
}

TEST(RunEnds, WhereThePullRunsOutItStaysWithoutTheLimiter) {
  Bike bike = runBike();
  bike.chassis->rollingResistance = 0;
  const Ready ready(bike, {0.5});  // 150 N · π against 0.245 kg/m: 43.9 m/s, 3947 rpm
  const auto run = ready.from(30, 0, 30000);
  const auto end = run.atDistance(30000);
  ASSERT_TRUE(end);
  EXPECT_NEAR(end->speedMps, std::sqrt(150 * std::numbers::pi / (0.2 * 1.225)), 1e-3);
  EXPECT_EQ(end->limiterS, 0);
  EXPECT_LT(end->rpm, 4000);
  EXPECT_FALSE(run.atSpeed(44));
}

TEST(RunEnds, WhereAShiftEndsStandingStillNothingGoesOn) {
  // Three seconds of shift on a slope stop the bike, and second has no pull at a standstill.
  Bike bike = runBike({{2000, 10}, {3000, 60}, {9000, 60}});
  bike.engine.shiftRpm = 4000;
  bike.chassis->shiftTimeS = 3;
  const Ready ready(bike, {3, 2.5}, {.slopePercent = 30, .launchRpm = 3500});
  ASSERT_GT(ready.model.accelerationMps2(4000 / 540.0, 1), 0);
  ASSERT_LT(ready.model.accelerationMps2(0, 1), 0);
  const auto run = ready.start(400);
  ASSERT_EQ(run.shifts().size(), 1U);
  EXPECT_TRUE(run.atDistance(run.shifts()[0].distanceM + 5));
  EXPECT_FALSE(run.atDistance(100));
  EXPECT_EQ(run.atTime(60).value().speedMps, 0);
  // Such a shift is in no plan: first gear is held.
  const RunFigures figures = runFigures(ready.model, {}, {});
  ASSERT_TRUE(figures.quarterMileS);
  EXPECT_EQ(figures.quarterMilePlan->shifts, 0);
}

TEST(RunEnds, TimeDistanceAndSpeedAgree) {
  const Ready ready(runBike({{2000, 30}, {5000, 55}, {7500, 60}, {9000, 40}}), {3, 2.2, 1.7, 1.4});
  const auto run = ready.start(400, 40);
  double before = -1;
  for (double t = 0.05; t < 10; t += 0.37) {
    const auto there = run.atTime(t);
    ASSERT_TRUE(there);
    EXPECT_NEAR(there->timeS, t, 1e-9);
    EXPECT_GT(there->distanceM, before);
    before = there->distanceM;
    const auto again = run.atDistance(there->distanceM);
    EXPECT_NEAR(again->timeS, t, 1e-9) << t;
    EXPECT_NEAR(again->speedMps, there->speedMps, 1e-9) << t;
    EXPECT_EQ(again->gear, there->gear) << t;
    EXPECT_NEAR(again->rpm, there->rpm, 1e-6) << t;
  }
}

TEST(RunEnds, TheTraceRisesAndEndsAtTheDistance) {
  const Ready ready(runBike({{2000, 30}, {5000, 55}, {7500, 60}, {9000, 40}}), {3, 2.2, 1.7, 1.4});
  const auto trace = ready.start(150).trace();
  ASSERT_GT(trace.size(), 10U);
  EXPECT_EQ(trace.front().timeS, 0);
  EXPECT_NEAR(trace.back().distanceM, 150, 1e-9);
  for (std::size_t i = 1; i < trace.size(); ++i) {
    EXPECT_GE(trace[i].timeS, trace[i - 1].timeS) << i;
    EXPECT_GE(trace[i].distanceM, trace[i - 1].distanceM) << i;
    EXPECT_GE(trace[i].gear, trace[i - 1].gear) << i;
  }
}

// ---- shifts ----

TEST(RunShifts, WhereTheShiftPointsAre) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  const Ready ready(bike, {3, 2, 1.5});
  const auto run = ready.start(400, 30);
  ASSERT_EQ(run.shifts().size(), 2U);
  EXPECT_EQ(run.shifts()[0].fromGear, 1);
  EXPECT_EQ(run.shifts()[1].fromGear, 2);
  EXPECT_NEAR(run.shifts()[0].speedMps, 15, 1e-12);
  EXPECT_NEAR(run.shifts()[1].speedMps, 22.5, 1e-12);
  EXPECT_NEAR(run.atDistance(run.shifts()[0].distanceM)->timeS, run.shifts()[0].timeS, 1e-9);
}

TEST(RunShifts, APointInsideBelongsToTheGearLeft) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  bike.chassis->shiftTimeS = 0.4;
  const Ready ready(bike, {3, 2});
  const auto run = ready.start(400);
  const RunShift shift = run.shifts()[0];
  for (const double part : {0.1, 0.5, 0.9}) {
    const auto inside = run.atTime(shift.timeS + 0.4 * part);
    EXPECT_EQ(inside->gear, 1) << part;
    EXPECT_LT(inside->speedMps, 15) << part;  // on the flat it coasts
    EXPECT_NEAR(inside->rpm, inside->speedMps * 540, 1e-9) << part;
    EXPECT_NEAR(run.atDistance(inside->distanceM)->timeS, inside->timeS, 1e-9) << part;
    EXPECT_EQ(run.atDistance(inside->distanceM)->gear, 1) << part;
  }
  EXPECT_EQ(run.atTime(shift.timeS + 0.401)->gear, 2);
  // The shift's own speed is reached before it, once.
  EXPECT_NEAR(run.atSpeed(14.999)->timeS, shift.timeS, 1e-3);
}

TEST(RunShifts, TakesNoTimeWhereItIsZero) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  bike.chassis->shiftTimeS = 0;
  const Ready ready(bike, {3, 2});
  const auto run = ready.start(400);
  ASSERT_EQ(run.shifts().size(), 1U);
  EXPECT_EQ(run.atTime(run.shifts()[0].timeS + 1e-6)->gear, 2);
  EXPECT_GT(run.atTime(run.shifts()[0].timeS + 1e-6)->speedMps, 15);
}

TEST(RunShifts, DownhillTheBikeGainsSpeedInThem) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  bike.chassis->shiftTimeS = 0.4;
  const Ready ready(bike, {3, 2}, {.slopePercent = -20});
  const auto run = ready.start(400);
  const RunShift shift = run.shifts()[0];
  const auto inside = run.atTime(shift.timeS + 0.2);
  EXPECT_GT(inside->speedMps, 15.1);
  // A speed that is first reached inside the shift.
  const auto there = run.atSpeed(inside->speedMps);
  ASSERT_TRUE(there);
  EXPECT_NEAR(there->timeS, inside->timeS, 1e-9);
  EXPECT_NEAR(there->distanceM, inside->distanceM, 1e-8);
  EXPECT_EQ(there->gear, 1);
}

TEST(RunShifts, NotMadeWhereTheNextGearDoesNotPull) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  // 20 % up: 425 N; first pulls 50 · 18 · π, second 50 · 0.6 · π.
  const Ready ready(bike, {3, 0.1}, {.slopePercent = 20});
  const auto run = RunSearch(ready.model, 0.0, standingStarts(ready.model)).toDistance(400);
  ASSERT_TRUE(run);
  EXPECT_EQ(run->plan.shifts, 0);
  EXPECT_NEAR(run->end.speedMps, 9000 / 540.0, 1e-12);
  EXPECT_EQ(run->end.gear, 1);
  EXPECT_GT(run->end.limiterS, 5);  // first is held
}

TEST(RunShifts, ATypedPointOutOfReachGivesWayToTheBestOne) {
  // First gear stops pulling on this slope before the typed 8800 rpm; second pulls on.
  Bike bike = runBike({{2000, 50}, {7000, 50}, {8000, 10}, {9000, 2}});
  bike.chassis->rollingResistance = 0;
  const Ride steep{.slopePercent = 30};
  bike.engine.shiftRpm = 8800;
  const Ready typed(bike, {3, 2.4}, steep);
  ASSERT_LT(typed.model.freeAccelerationMps2(typed.model.speedMps(8800, 0), 0), 0);
  const auto run = typed.start(400);
  ASSERT_EQ(run.shifts().size(), 1U);
  EXPECT_NEAR(run.shifts()[0].speedMps, bestShiftMps(typed.model, 0), 1e-12);
  EXPECT_EQ(run.atDistance(400)->gear, 2);
  // Where the typed one is in reach it holds, though it is not the best.
  bike.engine.shiftRpm = 6000;
  const Ready early(bike, {3, 2.4}, steep);
  EXPECT_NEAR(early.start(400).shifts()[0].speedMps, 6000 / 540.0, 1e-12);
}

TEST(RunShifts, WhereTheBestOneIsOutOfReachTooTheSpeedTendsToWherePullEnds) {
  // Grip ends on this slope far below any shift point.
  Bike bike = runBike();
  bike.engine.shiftRpm = 8800;
  bike.chassis->wheelbaseMm = 1400;
  bike.chassis->cgHeightMm = 600;
  bike.chassis->cgAheadOfRearAxleMm = 700;
  bike.chassis->tyreGrip = 0.5;
  bike.chassis->dragAreaM2 = 2.5;
  const Ready ready(bike, {3, 2.4}, {.slopePercent = 18, .headwindKmh = 20});
  const auto run = ready.start(20000);
  ASSERT_TRUE(run.moves());
  EXPECT_TRUE(run.shifts().empty());
  const auto end = run.atDistance(20000);
  ASSERT_TRUE(end);
  EXPECT_NEAR(ready.model.accelerationMps2(end->speedMps, 0), 0, 1e-6);
  EXPECT_EQ(end->gear, 1);
  EXPECT_EQ(end->limiterS, 0);
  EXPECT_LT(end->rpm, 7000);
}

// ---- how a run begins, the straight and roll-ons ----

std::vector<RunPlan> inGears(std::vector<std::size_t> gears, bool slipsToo = false) {
  std::vector<RunPlan> starts;
  if (slipsToo) starts.push_back({.gear = 0, .slips = true});
  for (const std::size_t gear : gears) starts.push_back({.gear = gear});
  return starts;
}

TEST(RunStarts, InEveryGearBetweenIdleAndShiftPoint) {
  Bike bike = runBike({{1500, 50}, {9000, 50}});
  bike.engine.shiftRpm = 8100;
  const Ready ready(bike, {3, 2, 1}, {.launchRpm = 2700});
  // Second turns 1440 at 4 m/s: below the first point of the curve.
  EXPECT_EQ(startsAt(ready.model, 4.0), inGears({0}, true));
  EXPECT_EQ(startsAt(ready.model, 5.0), inGears({0, 1}));  // 2700: caught up
  EXPECT_EQ(startsAt(ready.model, 14.9), inGears({0, 1, 2}));
  EXPECT_EQ(startsAt(ready.model, 15.1), inGears({1, 2}));
  EXPECT_EQ(startsAt(ready.model, 49.0), inGears({2}));  // the last gear goes to the limit
  EXPECT_EQ(startsAt(ready.model, 50.1), inGears({}));
  EXPECT_EQ(startsAt(ready.model, 0.0), standingStarts(ready.model));
  EXPECT_FALSE(runFigures(ready.model, DriveRequest{50.1, 100, {}}, {}).drive);
}

TEST(RunStarts, FromRestInFirstOrSecondWithTheClutchSlipping) {
  const Ready two(runBike(), {3, 2, 1}), one(runBike(), {3});
  EXPECT_EQ(standingStarts(two.model),
            (std::vector<RunPlan>{{.gear = 0, .slips = true}, {.gear = 1, .slips = true}}));
  EXPECT_EQ(standingStarts(one.model), (std::vector<RunPlan>{{.gear = 0, .slips = true}}));
}

TEST(RunStarts, IfThereIsNoOtherInTheHighestGearAboveIdle) {
  // At 10 m/s first is beyond its shift point, second and third turn below the first point of the curve.
  Bike bike = runBike({{4000, 50}, {9000, 50}});
  bike.engine.shiftRpm = 5000;
  const Ready ready(bike, {3, 1.5, 1}, {.launchRpm = 1000});
  EXPECT_EQ(startsAt(ready.model, 10.0), inGears({2}));
  const Ready idles(runBike(), {3, 2}, {.launchRpm = 500});
  // 500 rpm at 0.93 m/s, idle of 1000 at 1.85 m/s: between them neither clutch nor gear.
  EXPECT_TRUE(startsAt(idles.model, 1.2).empty());
}

TEST(RunStarts, InAGearThatSomebodyChose) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  const Ready ready(bike, {3, 2, 1});
  EXPECT_EQ(startsIn(ready.model, 0, 14.0), inGears({0}));
  EXPECT_EQ(startsIn(ready.model, 0, 16.0), inGears({0}));       // beyond its shift point: it comes at once
  EXPECT_EQ(startsIn(ready.model, 0, 2.0), inGears({0}, true));  // below the launch engine speed it may slip
  EXPECT_EQ(startsIn(ready.model, 1, 5.0), inGears({1}));
  EXPECT_TRUE(startsIn(ready.model, 0, 16.8).empty());  // beyond the limit
  EXPECT_TRUE(startsIn(ready.model, 2, 5.0).empty());   // below idle
  EXPECT_TRUE(startsIn(ready.model, 3, 20.0).empty());  // there is none
}

TEST(Drives, TakeTheLeastTimeOfAllPlans) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  const Ready ready(bike, {3, 2, 1}, {.launchRpm = 2700});
  const RunFigures figures = runFigures(ready.model, DriveRequest{14.0, 200.0, {}}, {});
  ASSERT_TRUE(figures.drive);
  double least = 1e9;
  for (const std::size_t gear : {0U, 1U, 2U})
    for (int shifts = 0; gear + static_cast<std::size_t>(shifts) < 3; ++shifts)
      least = std::min(least, layshaft::Run(ready.model, 14.0, {.gear = gear, .shifts = shifts}, 200.0, 0.0)
                                  .atDistance(200.0)
                                  ->timeS);
  EXPECT_NEAR(figures.drive->timeS, least, 1e-6);
  const auto by = layshaft::Run(ready.model, 14.0, figures.drive->plan, 200.0, 0.0).atDistance(200);
  EXPECT_NEAR(figures.drive->timeS, by->timeS, 1e-11);
  EXPECT_NEAR(figures.drive->endSpeedMps, by->speedMps, 1e-10);
  EXPECT_EQ(figures.drive->endGear, by->gear);
  EXPECT_EQ(figures.drive->shifts(), by->gear - figures.drive->startGear());
  EXPECT_NEAR(figures.drive->revRangeLeftRpm, 9000 - figures.drive->endRpm, 1e-9);
}

TEST(Drives, BeginInTheExitGearThatWasGiven) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 8100;
  const Ready ready(bike, {3, 2, 1});
  const auto drive = [&](std::optional<int> gear, double mps = 14.0) {
    return runFigures(ready.model, DriveRequest{mps, 200.0, gear}, {}).drive;
  };
  for (const int gear : {1, 2, 3}) EXPECT_EQ(drive(gear)->startGear(), gear);
  EXPECT_GT(drive(3)->timeS, drive({})->timeS + 0.1);
  EXPECT_FALSE(drive(4));
  EXPECT_FALSE(drive(3, 5.0));   // below idle
  EXPECT_FALSE(drive(1, 16.8));  // above the limit
}

TEST(RollOns, StayInTheirGear) {
  Bike bike = runBike();
  bike.engine.shiftRpm = 3000;  // a roll-on does not care
  bike.chassis->dragAreaM2 = 0;
  bike.chassis->rollingResistance = 0;
  const Ready ready(bike, {3, 2, 1});
  const auto asked = [&](double from, double to, std::optional<int> gear) {
    return runFigures(ready.model, {}, RollOnRequest{from, to, gear}).askedRollOnS;
  };
  // 200 kg, nothing in the way: 50 N·m · 12 · π and half of it.
  EXPECT_NEAR(asked(10, 20, 2).value(), 10 * 200 / (50 * 12 * std::numbers::pi), 1e-12);
  EXPECT_NEAR(asked(10, 20, 3).value(), 10 * 200 / (50 * 6 * std::numbers::pi), 1e-12);
  EXPECT_EQ(asked(10, 20, {}), asked(10, 20, 3));  // top gear where none is given
}

TEST(RollOns, EmptyOutsideTheGearsRange) {
  const Ready ready(runBike(), {3, 2, 1});
  const auto asked = [&](double from, double to, std::optional<int> gear) {
    return runFigures(ready.model, {}, RollOnRequest{from, to, gear}).askedRollOnS;
  };
  // Third: idle 1000 at 5.56 m/s, limit at 50; second: limit at 25.
  EXPECT_TRUE(asked(5.6, 20, 3));
  EXPECT_FALSE(asked(5.5, 20, 3));
  EXPECT_TRUE(asked(10, 24.9, 2));
  EXPECT_FALSE(asked(10, 25.1, 2));
  EXPECT_FALSE(asked(10, 20, 4));  // there is none
  EXPECT_FALSE(asked(20, 20, 3));
  EXPECT_FALSE(asked(20, 10, 3));
}

TEST(RollOns, TopGearAndBestGear) {
  const Ready ready(runBike(), {2, 1.2, 1});
  const RunFigures figures = runFigures(ready.model, {}, {});
  ASSERT_TRUE(figures.rollOnTopS && figures.rollOnBestS);
  // In the best gear: second from 80 km/h (first ends at 25 m/s), no shift to 120.
  EXPECT_LT(*figures.rollOnBestS, *figures.rollOnTopS);
  EXPECT_DOUBLE_EQ(*figures.rollOnTopS, ready.from(80 / 3.6, 2, 0, 120 / 3.6).atSpeed(120 / 3.6)->timeS);
  EXPECT_FALSE(figures.askedRollOnS);
  const RollOnFigures miles = rollOnFigures(ready.model, 50 * 0.44704, 75 * 0.44704);
  ASSERT_TRUE(miles.topS && miles.bestS);
  EXPECT_DOUBLE_EQ(*miles.topS, ready.from(22.352, 2, 0, 33.528).atSpeed(33.528)->timeS);
  EXPECT_LT(*miles.bestS, *miles.topS);
  // Top ends below 120 km/h.
  const Ready slow(runBike(), {3, 1.6});
  EXPECT_FALSE(runFigures(slow.model, {}, {}).rollOnTopS);
  EXPECT_FALSE(runFigures(slow.model, {}, {}).rollOnBestS);
}

TEST(RunFigures, OfThePlanAreEmptyWithoutTheData) {
  Json profile = minimalProfile();
  profile["ride"] = {{"drive", {{"exit_speed_kmh", 40}, {"length_m", 200}}}};
  profile["bike"]["engine"]["torque_curve"] = {{{"rpm", 3000}, {"torque_nm", 50}},
                                               {{"rpm", 9000}, {"torque_nm", 50}}};
  const Plan force = planFor(profile);
  EXPECT_FALSE(force.stock.road.run.quarterMileS || force.stock.road.run.drive);
  profile["bike"]["chassis"] = {{"mass_kg", 180}, {"drag_area_m2", 0.4}};
  const Plan all = planFor(profile);
  EXPECT_TRUE(all.stock.road.run.quarterMileS && all.stock.road.run.drive);
}

}  // namespace
}  // namespace layshaft::test
