// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/road_model.h"
#include "core/study/top_speed.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>
#include <string_view>
#include <vector>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

using KeyPaths = std::vector<std::string_view>;

/// Numbers that can be followed in the head: rolling radius 1/π m (2 m per turn), overall ratios 18, 12 and
/// 6; 10 m/s are 5400, 3600 and 1800 rpm.
Setup pullSetup() {
  Setup setup{.frontTeeth = front(15),
              .rearTeeth = rear(45),
              .rearTyre = tyre("180/55ZR17"),
              .primaryRatio = 2,
              .gearRatios = gears({3, 2, 1}),
              .options = {}};
  setup.options.rolloutMm = 2000;
  return setup;
}

/// Flat 50 N·m to 9000 rpm, 200 kg with rider, everything known.
Bike pullTestBike() {
  Bike bike;
  bike.engine.revLimitRpm = 9000;
  bike.engine.idleRpm = 1000;
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 50}, {9000, 50}}).value();
  bike.chassis = Chassis{.massKg = 130,
                         .riderMassKg = 70,
                         .wheelbaseMm = 1400,
                         .cgHeightMm = 600,
                         .cgAheadOfRearAxleMm = 650,
                         .dragAreaM2 = 0.4,
                         .rollingResistance = 0.02,
                         .drivetrainEfficiency = 0.9,
                         .tyreGrip = 1.2,
                         .shiftTimeS = 0.1};
  return bike;
}

RoadModel pullModel(const Bike& bike, const Ride& ride = {}, const Setup& setup = pullSetup(),
                    double axleShift = 0.0) {
  return RoadModel(std::make_shared<const PullBike>(pullBike(bike, ride)), roadOf(bike, ride), setup,
                   rolloutOf(setup), {.axleShiftM = axleShift});
}

std::optional<TopSpeed> topOf(const Bike& bike, const Ride& ride = {}, const Setup& setup = pullSetup()) {
  return topSpeed(pullModel(bike, ride, setup));
}

// ---- what a profile brings and lacks ----

TEST(PullBike, LacksNothingWhereAllIsGiven) {
  const PullBike bike = pullBike(pullTestBike(), {});
  EXPECT_EQ(bike.forceLacks, KeyPaths{});
  EXPECT_EQ(bike.resistanceLacks, KeyPaths{});
  EXPECT_EQ(bike.boundsLack, KeyPaths{});
  EXPECT_EQ(bike.assumed, std::vector<Assumed>{});
  EXPECT_TRUE(bike.accelerates());
  EXPECT_EQ(bike.massKg, 200);
  EXPECT_EQ(bike.dragHeightM, 0.6);  // of the centre of gravity
}

TEST(PullBike, NamesExactlyWhatItLacks) {
  Bike bare;
  bare.engine.revLimitRpm = 9000;
  const PullBike nothing = pullBike(bare, {});
  EXPECT_EQ(nothing.forceLacks, KeyPaths{"bike.engine.torque_curve"});
  EXPECT_EQ(nothing.resistanceLacks, (KeyPaths{"bike.chassis.mass_kg", "bike.chassis.drag_area_m2"}));
  EXPECT_EQ(nothing.boundsLack,
            (KeyPaths{"bike.chassis.cg_height_mm", "bike.chassis.cg_ahead_of_rear_axle_mm",
                      "bike.chassis.wheelbase_mm", "bike.chassis.tyre_grip"}));
  EXPECT_FALSE(nothing.hasForce() || nothing.hasResistance() || nothing.accelerates());

  Bike bike = pullTestBike();
  bike.chassis->massKg.reset();
  EXPECT_EQ(pullBike(bike, {}).resistanceLacks, KeyPaths{"bike.chassis.mass_kg"});
  EXPECT_TRUE(pullBike(bike, {}).hasForce());
  EXPECT_FALSE(pullBike(bike, {}).accelerates());
  bike = pullTestBike();
  bike.chassis->dragAreaM2.reset();
  EXPECT_EQ(pullBike(bike, {}).resistanceLacks, KeyPaths{"bike.chassis.drag_area_m2"});
  bike = pullTestBike();
  bike.chassis->tyreGrip.reset();
  EXPECT_EQ(pullBike(bike, {}).boundsLack, KeyPaths{"bike.chassis.tyre_grip"});
  // On sand the grip is the surface's.
  EXPECT_EQ(pullBike(bike, {.surface = Surface::Sand}).boundsLack, KeyPaths{});
}

TEST(PullBike, SaysWhatItAssumes) {
  Bike bike = pullTestBike();
  bike.chassis = Chassis{.massKg = 150, .dragAreaM2 = 0.4};
  const PullBike result = pullBike(bike, {});
  EXPECT_EQ(result.assumed, (std::vector<Assumed>{{"bike.chassis.drivetrain_efficiency", 0.90},
                                                  {"bike.chassis.rider_mass_kg", 75},
                                                  {"bike.chassis.shift_time_s", 0.15},
                                                  {"bike.chassis.rolling_resistance", 0.015}}));
  EXPECT_EQ(result.massKg, 225);
  EXPECT_EQ(result.efficiency, 0.9);
  EXPECT_EQ(result.shiftTimeS, 0.15);
  EXPECT_EQ(roadOf(bike, {}).rolling.at(30), 0.015);
}

TEST(PullBike, AssumesOnlyWhatIsUsed) {
  Bike bike = pullTestBike();
  bike.chassis = Chassis{.massKg = 150, .riderMassKg = 80, .dragAreaM2 = 0.4, .shiftTimeS = 0.2};
  // A speed-dependent form asks for the pressure, not for a constant.
  bike.chassis->rollingResistanceForm = RollingResistanceForm::SpeedDependent;
  bike.engine.curveMeasuredAt = CurvePlace::RearWheel;
  EXPECT_EQ(pullBike(bike, {}).assumed, (std::vector<Assumed>{{"bike.chassis.tyre_pressure_bar", 2.5}}));
  bike.chassis->tyrePressureBar = 2.2;
  EXPECT_EQ(pullBike(bike, {}).assumed, std::vector<Assumed>{});
  // Sand has its own resistance; without a mass no rider is weighed.
  bike = pullTestBike();
  bike.chassis = Chassis{.drivetrainEfficiency = 0.9, .shiftTimeS = 0.2};
  EXPECT_EQ(pullBike(bike, {.surface = Surface::Sand}).assumed, std::vector<Assumed>{});
}

TEST(PullBike, AssumesTheTorqueBeyondTheCurvesLastPoint) {
  Bike bike = pullTestBike();
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 50}, {8500, 30}}).value();
  EXPECT_EQ(pullBike(bike, {}).assumed, (std::vector<Assumed>{{"bike.engine.torque_curve", 8500}}));
  bike.engine.revLimitRpm = 8500;
  EXPECT_EQ(pullBike(bike, {}).assumed, std::vector<Assumed>{});
}

TEST(PullBike, AtTheRearWheelTheLossesAreInTheCurve) {
  Bike bike = pullTestBike();
  bike.chassis->drivetrainEfficiency = 0.8;
  EXPECT_EQ(pullBike(bike, {}).efficiency, 0.8);
  bike.engine.curveMeasuredAt = CurvePlace::RearWheel;
  EXPECT_EQ(pullBike(bike, {}).efficiency, 1);
}

// ---- forces ----

TEST(PullModel, ForcesByHand) {
  const PullModel model = pullModel(pullTestBike());
  // 0.9 · 50 N·m · 18 · π per metre.
  EXPECT_NEAR(model.forceN(10, 0), 0.9 * 50 * 18 * std::numbers::pi, 1e-9);
  EXPECT_NEAR(model.forceN(10, 2), 0.9 * 50 * 6 * std::numbers::pi, 1e-9);
  EXPECT_NEAR(model.forceN(0, 0), 0.9 * 50 * 18 * std::numbers::pi, 1e-9);
  EXPECT_NEAR(model.rpm(10, 0), 5400, 1e-9);
  EXPECT_NEAR(model.limitMps(0), 9000 / 540.0, 1e-12);
  // 0.2 kg/m · 400 m²/s² · 1.225 and 200 kg on 0.02.
  EXPECT_NEAR(model.dragN(20), 98, 0.01);
  EXPECT_NEAR(model.resistanceN(20) - model.dragN(20), 39.2266, 1e-9);
  EXPECT_NEAR(model.freeAccelerationMps2(10, 2), (model.forceN(10, 2) - model.resistanceN(10)) / 200, 1e-12);
}

TEST(PullModel, NothingPullsBeyondTheLimit) {
  const PullModel model = pullModel(pullTestBike());
  const double limit = model.limitMps(1);
  EXPECT_GT(model.forceN(limit * (1 - 1e-12), 1), 1000);
  EXPECT_EQ(model.forceN(limit * (1 + 1e-9), 1), 0);
  EXPECT_GT(model.forceAtRpmN(9000, 1), 1000);
}

TEST(PullModel, WindCountsWithItsSign) {
  const PullModel still = pullModel(pullTestBike()), against = pullModel(pullTestBike(), {.headwindKmh = 36}),
                  behind = pullModel(pullTestBike(), {.headwindKmh = -36});
  EXPECT_NEAR(against.dragN(20), still.dragN(30), 1e-9);
  EXPECT_NEAR(behind.dragN(20), still.dragN(10), 1e-9);
  EXPECT_NEAR(behind.dragN(10), 0, 1e-12);
  EXPECT_NEAR(behind.dragN(4), -still.dragN(6), 1e-9);  // it pushes
}

TEST(PullModel, SlopeHoldsBackOrPushes) {
  Ride ride{.slopePercent = 50};
  const double theta = std::atan(0.5), weight = 200 * 9.80665;
  const double up = pullModel(pullTestBike(), ride).resistanceN(0);
  EXPECT_NEAR(up, weight * (std::sin(theta) + 0.02 * std::cos(theta)), 1e-9);
  ride.slopePercent = -50;
  const double down = pullModel(pullTestBike(), ride).resistanceN(0);
  EXPECT_NEAR(up + down, 2 * weight * 0.02 * std::cos(theta), 1e-9);
  EXPECT_LT(down, 0);
}

TEST(PullModel, InertiasWeighByTheirGearing) {
  Bike bike = pullTestBike();
  bike.engine.rotatingInertiaKgm2 = 0.01;
  bike.chassis->rearWheelInertiaKgm2 = 0.8;
  bike.chassis->frontWheelInertiaKgm2 = 0.5;
  const double pi2 = std::numbers::pi * std::numbers::pi;
  RoadModel model = pullModel(bike);
  // Without a front rollout the front wheel is taken for as big as the rear one.
  EXPECT_NEAR(model.coastingMassKg(), 200 + 1.3 * pi2, 1e-9);
  EXPECT_NEAR(model.equivalentMassKg(0), 200 + (1.3 + 0.01 * 18 * 18) * pi2, 1e-9);
  EXPECT_NEAR(model.equivalentMassKg(2), 200 + (1.3 + 0.01 * 6 * 6) * pi2, 1e-9);
  EXPECT_EQ(model.equivalentMassKg(model.slipping()), model.coastingMassKg());
  bike.chassis->frontRolloutMm = 1000;
  EXPECT_NEAR(pullModel(bike).coastingMassKg(), 200 + (0.8 + 4 * 0.5) * pi2, 1e-9);
}

TEST(PullModel, ASlippingClutchHoldsTheEnginesSpeedAndForce) {
  Bike bike = pullTestBike();
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 20}, {6000, 60}}).value();
  RoadModel model = pullModel(bike, {.launchRpm = 4000});
  for (const double v : {0.0, 3.0, 7.0}) {
    EXPECT_EQ(model.rpm(v, model.slipping()), 4000) << v;
    EXPECT_NEAR(model.forceN(v, model.slipping()), 0.9 * 40 * 18 * std::numbers::pi, 1e-9) << v;
  }
}

TEST(PullModel, StretchesCoverTheRangeWithoutAGap) {
  Bike bike = pullTestBike();
  bike.engine.torqueCurve =
      TorqueCurve::make({{1500, 30}, {3000, 52}, {4200, 40}, {5100, 60}, {7000, 55}, {8600, 30}}).value();
  bike.chassis->rollingResistanceForm = RollingResistanceForm::SpeedDependent;
  bike.chassis->tyreGrip = 0.9;
  const PullModel model = pullModel(bike, {.headwindKmh = -18});
  for (std::size_t g = 0; g < 3; ++g) {
    const auto stretches = model.stretches(g, 0.3, model.limitMps(g));
    ASSERT_FALSE(stretches.empty());
    EXPECT_EQ(stretches.back().toMps, model.limitMps(g));
    for (std::size_t i = 0; i < stretches.size(); ++i) {
      const auto& on = stretches[i];
      EXPECT_LT(on.fromMps, on.toMps);
      EXPECT_EQ(on.fromMps, i > 0 ? stretches[i - 1].toMps : 0.3);
      // Inside, each is what the model says, and one limit rules it.
      for (const double part : {0.01, 0.3, 0.7, 0.99}) {
        const double v = on.fromMps + part * (on.toMps - on.fromMps);
        EXPECT_NEAR(model.accelerationOn(on, v, g), model.accelerationMps2(v, g), 1e-11) << g << " " << v;
        EXPECT_EQ(model.limitOn(on, v, g), model.limitOn(on, (on.fromMps + on.toMps) / 2, g))
            << g << " " << v;
      }
    }
    // At every kink one ends: curve points, the tailwind, the jump at 165 km/h.
    std::vector<double> kinks{5.0, 165 / 3.6};
    for (const double rpm : {1500.0, 3000.0, 4200.0, 5100.0, 7000.0, 8600.0})
      kinks.push_back(model.speedMps(rpm, g));
    for (const double kink : kinks) {
      if (kink <= 0.3 || kink >= model.limitMps(g)) continue;
      bool found = false;
      for (const auto& on : stretches) found = found || std::abs(on.toMps - kink) < 1e-12;
      EXPECT_TRUE(found) << g << " " << kink;
    }
  }
  EXPECT_TRUE(model.stretches(0, 5, 5).empty());
  EXPECT_TRUE(model.stretches(0, 5, 4).empty());
}

/// A narrow dip of the curve between two places where grip rules, and a narrow peak between two where it does
/// not.
TEST(PullModel, StretchesFindLimitsThatRuleOnlyInTheMiddle) {
  Bike bike = pullTestBike();
  bike.engine.torqueCurve =
      TorqueCurve::make({{1000, 50}, {3000, 50}, {3300, 20}, {3600, 50}, {8000, 50}, {8200, 20}, {8600, 20}})
          .value();
  bike.chassis->tyreGrip = 0.9;
  const PullModel model = pullModel(bike);
  int changes = 0;
  LimitedBy before = LimitedBy::Grip;
  for (const auto& on : model.stretches(0, 0.0, model.limitMps(0))) {
    const LimitedBy now = model.limitOn(on, (on.fromMps + on.toMps) / 2, 0);
    if (now != before) ++changes;
    before = now;
  }
  EXPECT_EQ(changes, 3);  // into the dip, out of it, and at the end of the pull
}

// ---- bounds ----

TEST(PullModel, NoBoundsWithoutTheirData) {
  Bike bike = pullTestBike();
  bike.chassis->cgHeightMm.reset();
  EXPECT_FALSE(pullModel(bike).boundMps2(10));
  EXPECT_FALSE(pullModel(bike).greatestContactForceN(10));
  bike = pullTestBike();
  bike.chassis->cgAheadOfRearAxleMm.reset();
  EXPECT_FALSE(pullModel(bike).boundMps2(10));
  // Lift needs neither wheelbase nor grip.
  for (const bool wheelbase : {true, false}) {
    bike = pullTestBike();
    (wheelbase ? bike.chassis->wheelbaseMm : bike.chassis->tyreGrip).reset();
    EXPECT_FALSE(pullModel(bike).gripLimitN(10));
    ASSERT_TRUE(pullModel(bike).liftLimitN(10));
    EXPECT_NEAR(*pullModel(bike).boundMps2(0), 9.80665 * 650 / 600, 1e-9);
  }
}

TEST(PullModel, NoGripBoundWhereTheFrontLiftsAnyway) {
  // μ·h against l: 1.4 m over 0.6 m is 2.333.
  Bike bike = pullTestBike();
  bike.chassis->tyreGrip = 2.33;
  EXPECT_TRUE(pullModel(bike).gripLimitN(10));
  bike.chassis->tyreGrip = 2.34;
  EXPECT_FALSE(pullModel(bike).gripLimitN(10));
  EXPECT_EQ(*pullModel(bike).boundMps2(10), pullModel(bike).liftMps2(10));
}

TEST(PullModel, TheSmallerBoundRules) {
  Bike bike = pullTestBike();  // the two meet at about μ = b/h = 1.083
  bike.chassis->tyreGrip = 0.8;
  const PullModel slides = pullModel(bike);
  EXPECT_LT(*slides.gripLimitN(5), *slides.liftLimitN(5));
  EXPECT_EQ(*slides.greatestContactForceN(5), *slides.gripLimitN(5));
  EXPECT_LT(slides.accelerationMps2(5, 0), slides.freeAccelerationMps2(5, 0));
  bike.chassis->tyreGrip = 1.4;
  const PullModel lifts = pullModel(bike);
  EXPECT_GT(*lifts.gripLimitN(5), *lifts.liftLimitN(5));
  EXPECT_EQ(lifts.accelerationMps2(5, 0), lifts.liftMps2(5));
  EXPECT_EQ(lifts.accelerationMps2(5, 2), lifts.freeAccelerationMps2(5, 2));  // third cannot lift it
}

TEST(PullModel, TheAxleShiftMovesTheAxleUnderTheBike) {
  Bike bike = pullTestBike();
  bike.chassis->rollingResistance = 0;
  const PullModel stock = pullModel(bike), back = pullModel(bike, {}, pullSetup(), 0.02);
  EXPECT_NEAR(back.liftMps2(0) - stock.liftMps2(0), 9.80665 * 0.02 / 0.6, 1e-9);
  // μ·m·g·(l − b)/(l − μ·h): both l and b are longer (Cossalter and Foale, from memory).
  EXPECT_NEAR(*stock.gripLimitN(0), 1.2 * 200 * 9.80665 * 0.75 / (1.40 - 0.72), 1e-9);
  EXPECT_NEAR(*back.gripLimitN(0), 1.2 * 200 * 9.80665 * 0.75 / (1.42 - 0.72), 1e-9);
  // A chain that could never be fitted moves nothing.
  EXPECT_EQ(pullModel(bike, {}, pullSetup(), -0.65).liftMps2(0), stock.liftMps2(0));
}

// ---- coasting ----

TEST(Coasting, GainsSpeedDownhill) {
  const PullModel model = pullModel(pullTestBike(), {.slopePercent = -12});
  const auto end = model.coast(15, 0.3);
  EXPECT_GT(end.speedMps, 15);
  EXPECT_GT(end.distanceM, 15 * 0.3);
  EXPECT_GT(model.coast(0, 0.3).speedMps, 0);
  EXPECT_LT(pullModel(pullTestBike()).coast(15, 0.3).speedMps, 15);
}

TEST(Coasting, StopsAndNeverRollsBack) {
  const PullModel model = pullModel(pullTestBike(), {.slopePercent = 20});
  // From 1 m/s at g·sin θ + … ≈ 2.1 m/s² it takes half a second and a quarter of a metre.
  const auto end = model.coast(1, 3);
  EXPECT_EQ(end.speedMps, 0);
  EXPECT_NEAR(end.distanceM, 1 / (2 * 9.80665 * (std::sin(std::atan(0.2)) + 0.02 * std::cos(std::atan(0.2)))),
              0.002);
  EXPECT_EQ(model.coast(0, 1).speedMps, 0);
  EXPECT_EQ(model.coast(0, 1).distanceM, 0);
}

TEST(Coasting, TimeZeroChangesNothing) {
  const auto end = pullModel(pullTestBike()).coast(22, 0);
  EXPECT_EQ(end.speedMps, 22);
  EXPECT_EQ(end.distanceM, 0);
}

TEST(Coasting, CrossesTheJumpOfTheRollingResistance) {
  Bike bike = pullTestBike();
  bike.chassis->rollingResistanceForm = RollingResistanceForm::SpeedDependent;
  const PullModel model = pullModel(bike);
  // In two parts with the end of the first at the jump it is the same as in one.
  constexpr double kJump = 165 / 3.6;
  const double from = kJump + 0.3;
  const auto whole = model.coast(from, 1.0);
  EXPECT_LT(whole.speedMps, kJump);
  double low = 0, high = 1;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (model.coast(from, middle).speedMps > kJump ? low : high) = middle;
  }
  ASSERT_GT(low, 0.05);
  const auto first = model.coast(from, low);
  const auto second = model.coast(kJump, 1.0 - low);
  EXPECT_NEAR(second.speedMps, whole.speedMps, 1e-9);
  EXPECT_NEAR(first.distanceM + second.distanceM, whole.distanceM, 1e-9);
  // Just above it loses more than just below, by the jump of 0.00587 at 2.5 bar: 0.1 ms either side.
  const double above = kJump + 1e-3 - model.coast(kJump + 1e-3, 1e-4).speedMps;
  const double below = kJump - 1e-3 - model.coast(kJump - 1e-3, 1e-4).speedMps;
  EXPECT_NEAR((above - below) / 1e-4, 0.00587 * 9.80665, 4e-4);
}

TEST(Coasting, StandsAtTheJumpWhereItHoldsTheSpeed) {
  Bike bike = pullTestBike();
  bike.chassis->rollingResistanceForm = RollingResistanceForm::SpeedDependent;
  // At 165 km/h drag is 514.6 N and rolling 64.8 N below and 76.3 N above the jump: 588.4 N of slope are too
  // much for one and too little for the other.
  const double slope = std::asin(585.0 / (200 * 9.80665));
  const PullModel model = pullModel(bike, {.slopePercent = 100 * std::tan(-slope)});
  ASSERT_LT(model.resistanceN(165 / 3.6 - 1e-9), 0);
  ASSERT_GT(model.resistanceN(165 / 3.6 + 1e-9), 0);
  EXPECT_DOUBLE_EQ(model.coast(165 / 3.6, 0.4).speedMps, 165 / 3.6);
  EXPECT_NEAR(model.coast(165 / 3.6 + 0.001, 2).speedMps, 165 / 3.6, 1e-12);
  EXPECT_NEAR(model.coast(165 / 3.6 - 0.001, 2).speedMps, 165 / 3.6, 1e-12);
}

// ---- wheel slip ----

/// The test bike's ride on loam with that much slip.
Ride slippingRide(double percent) {
  Ride ride{.surface = Surface::Loam};
  ride.surfaces[Surface::Loam].slipPercent = percent;
  return ride;
}

TEST(WheelSlip, TurnsTheEngineFasterAtARoadSpeed) {
  auto setup = pullSetup();
  setup.options.growthPerKmh2 = 2e-7;
  const RoadModel held = pullModel(pullTestBike(), slippingRide(0), setup),
                  slips = pullModel(pullTestBike(), slippingRide(20), setup);
  for (std::size_t g = 0; g < 3; ++g)
    for (const double v : {3.0, 14.0}) {
      EXPECT_NEAR(slips.rpm(v, g), held.rpm(v, g) / 0.8, 1e-9) << g;
      EXPECT_NEAR(slips.speedMps(slips.rpm(v, g), g), v, 1e-12) << g;
    }
  EXPECT_NEAR(slips.rpm(slips.limitMps(1), 1), 9000, 1e-9);
}

TEST(WheelSlip, LeavesForceAndMassAtAnEngineSpeed) {
  Bike bike = pullTestBike();
  bike.engine.rotatingInertiaKgm2 = 0.05;
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 40}, {5400, 60}, {9000, 50}}).value();
  const RoadModel held = pullModel(bike, slippingRide(0)), slips = pullModel(bike, slippingRide(25));
  for (std::size_t g = 0; g < 3; ++g) {
    EXPECT_EQ(slips.equivalentMassKg(g), held.equivalentMassKg(g));
    for (const double rpm : {2500.0, 5400.0, 8000.0})
      EXPECT_NEAR(slips.forceN(slips.speedMps(rpm, g), g), held.forceN(held.speedMps(rpm, g), g), 1e-9);
  }
  EXPECT_NEAR(peakPull(slips)[0].peakForceSpeedMps, 7.5, 1e-9) << "10 m/s without slip";
}

TEST(WheelSlip, LetsTheClutchSlipUpToALowerSpeed) {
  const RoadModel slips = pullModel(pullTestBike(), slippingRide(10));
  EXPECT_EQ(slips.rpm(0.0, slips.slipping()), slips.launchRpm());
  EXPECT_EQ(slips.rpm(7.0, slips.slipping()), slips.launchRpm());
}

TEST(WheelSlip, IsNoneOnAnotherSurfaceOrWhereNotGiven) {
  Ride ride = slippingRide(10);
  EXPECT_NEAR(roadOf(pullTestBike(), ride).slip, 0.1, 1e-15);
  ride.surface = Surface::Sand;
  EXPECT_EQ(roadOf(pullTestBike(), ride).slip, 0.0);
}

// ---- peak pull and top speed ----

TEST(PeakPull, IsTheGreatestForceAndTheLowestSpeedOfIt) {
  Bike bike = pullTestBike();
  bike.chassis.reset();  // the force needs none of it
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 40}, {5400, 60}, {8000, 50}}).value();
  const auto pull = peakPull(pullModel(bike));
  ASSERT_EQ(pull.size(), 3U);
  EXPECT_EQ(pull[1].gear, 2);
  EXPECT_NEAR(pull[0].peakForceN, 0.9 * 60 * 18 * std::numbers::pi, 1e-9);
  EXPECT_NEAR(pull[0].peakForceSpeedMps, 10, 1e-9);
  EXPECT_NEAR(pull[2].peakForceN, pull[0].peakForceN / 3, 1e-9);
  EXPECT_NEAR(pull[2].peakForceSpeedMps, 30, 1e-9);
  // Flat from 2000 to 9000: its lowest point.
  const auto flat = peakPull(pullModel(pullTestBike()));
  EXPECT_NEAR(flat[0].peakForceSpeedMps, 2000 / 540.0, 1e-9);
}

// T = b·n on a tyre that grows by k·v²: F = N·b·c·v/(1 + k·v²)², greatest where k·v² = 1/3.
TEST(PeakPull, OfAGrowingTyreLiesWhereTorqueAndTyreGrowAlike) {
  Bike bike = pullTestBike();
  bike.engine.revLimitRpm = 24000;
  bike.engine.torqueCurve = TorqueCurve::make({{0, 0}, {24000, 240}}).value();
  auto setup = pullSetup();
  setup.options.growthPerKmh2 = 1e-6;
  const auto pull = peakPull(pullModel(bike, {}, setup));
  const double speed = 1 / std::sqrt(3 * 1e-6 * 3.6 * 3.6), rpm = 180 * speed / (4.0 / 3.0);
  EXPECT_NEAR(pull[2].peakForceSpeedMps, speed, 1e-6);
  EXPECT_NEAR(pull[2].peakForceN, 0.9 * 6 * std::numbers::pi * 0.01 * rpm / (4.0 / 3.0), 1e-9);
  // In first the limit comes before.
  EXPECT_NEAR(pull[0].peakForceSpeedMps, pullModel(bike, {}, setup).limitMps(0), 1e-9);
}

TEST(PeakPull, OfAGrowingTyreIsTheGreatestOfAllSpeeds) {
  Bike bike = pullTestBike();
  bike.engine.torqueCurve =
      TorqueCurve::make({{1500, 30}, {3000, 52}, {5000, 55}, {7000, 56.5}, {9000, 57}}).value();
  auto setup = pullSetup();
  setup.options.growthPerKmh2 = 8e-7;
  const RoadModel model = pullModel(bike, {}, setup);
  const auto pull = peakPull(model);
  for (std::size_t g = 0; g < 3; ++g) {
    double most = 0.0, at = 0.0;
    for (double v = 1.0; v < model.limitMps(g); v += 1e-3)
      if (const double force = model.forceN(v, g); force > most) {
        most = force;
        at = v;
      }
    EXPECT_NEAR(pull[g].peakForceN, most, 1e-6 * most) << g;
    EXPECT_GE(pull[g].peakForceN, most) << g;
    EXPECT_NEAR(pull[g].peakForceSpeedMps, at, 2e-3) << g;
  }
  EXPECT_LT(pull[2].peakForceSpeedMps, model.limitMps(2) * 0.9) << "before the torque's peak at the limit";
}

TEST(PeakPull, IsNotBounded) {
  Bike bike = pullTestBike();
  bike.chassis->tyreGrip = 0.3;
  EXPECT_EQ(peakPull(pullModel(bike))[0].peakForceN, peakPull(pullModel(pullTestBike()))[0].peakForceN);
}

TEST(TopSpeed, AtTheRevLimitWhereItStillPulls) {
  const auto top = topOf(pullTestBike());
  ASSERT_TRUE(top);
  EXPECT_NEAR(top->speedMps, 50, 1e-12);
  EXPECT_EQ(top->gear, 3);
  EXPECT_EQ(top->limitedBy, LimitedBy::RevLimit);
}

TEST(TopSpeed, WhereDragTakesAllThePull) {
  Bike bike = pullTestBike();
  bike.chassis->rollingResistance = 0;
  auto setup = pullSetup();
  setup.gearRatios = gears({3, 2, 0.5});
  // 0.9 · 50 · 3 · π = 424.1 N against 0.245 kg/m: 41.6 m/s; second ends at 25 m/s.
  const auto top = topOf(bike, {}, setup);
  ASSERT_TRUE(top);
  EXPECT_NEAR(top->speedMps, std::sqrt(0.9 * 50 * 3 * std::numbers::pi / (0.5 * 1.225 * 0.4)), 2e-4);
  EXPECT_EQ(top->gear, 3);
  EXPECT_EQ(top->limitedBy, LimitedBy::Drag);
}

TEST(TopSpeed, InALowerGearWhereTheHighestIsTooTall) {
  Bike bike = pullTestBike();
  auto setup = pullSetup();
  setup.gearRatios = gears({2, 1, 0.3});
  const auto top = topOf(bike, {}, setup);
  ASSERT_TRUE(top);
  EXPECT_EQ(top->gear, 2);
  EXPECT_NEAR(top->speedMps, 50, 1e-12);
}

TEST(TopSpeed, WhereGripOrLiftIsUsedUpFirst) {
  Bike bike = pullTestBike();
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 500}, {8000, 500}}).value();
  auto setup = pullSetup();
  setup.gearRatios = gears({0.5});
  bike.chassis->tyreGrip = 0.1;
  bike.chassis->rollingResistance = 0.05;
  auto top = topOf(bike, {}, setup);
  ASSERT_TRUE(top);
  EXPECT_EQ(top->limitedBy, LimitedBy::Grip);
  EXPECT_GT(top->speedMps, 1);
  const PullModel slides = pullModel(bike, {}, setup);
  EXPECT_NEAR(*slides.gripLimitN(top->speedMps), slides.resistanceN(top->speedMps), 1e-9);
  // A sail as high as a mast: the wind lifts the front.
  bike = pullTestBike();
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 500}, {8000, 500}}).value();
  bike.chassis->dragHeightMm = 2000;
  bike.chassis->dragAreaM2 = 1.5;
  top = topOf(bike, {}, setup);
  ASSERT_TRUE(top);
  EXPECT_EQ(top->limitedBy, LimitedBy::Lift);
  // Drag moment at it: m·g·b.
  EXPECT_NEAR(pullModel(bike, {}, setup).dragN(top->speedMps) * 2.0, 200 * 9.80665 * 0.65, 1e-6);
}

TEST(TopSpeed, NoneWhereNoGearPulls) {
  EXPECT_FALSE(topOf(pullTestBike(), {.slopePercent = 50, .headwindKmh = 150}, [] {
    auto setup = pullSetup();
    setup.gearRatios = gears({0.3, 0.2});
    return setup;
  }()));
}

TEST(TopSpeed, StandsAtTheJumpOfTheRollingResistance) {
  Bike bike = pullTestBike();
  bike.chassis->rollingResistanceForm = RollingResistanceForm::SpeedDependent;
  auto setup = pullSetup();
  setup.gearRatios = gears({0.8});
  // 585 N of pull, as above: too much below 165 km/h, too little beyond it.
  const double torque = 585 / (0.9 * 4.8 * std::numbers::pi);
  bike.engine.torqueCurve = TorqueCurve::make({{2000, torque}, {8000, torque}}).value();
  const auto top = topOf(bike, {}, setup);
  ASSERT_TRUE(top);
  EXPECT_NEAR(top->speedMps * 3.6, 165, 1e-9);
  EXPECT_EQ(top->limitedBy, LimitedBy::Drag);
}

/// A curve that dips below the resistance and climbs out of it again: the greatest speed counts, not the
/// first stop.
TEST(TopSpeed, IsBeyondAHoleInTheCurve) {
  Bike bike = pullTestBike();
  auto setup = pullSetup();
  setup.gearRatios = gears({1});
  bike.engine.torqueCurve =
      TorqueCurve::make({{2000, 50}, {4000, 50}, {4500, 1}, {5000, 50}, {9000, 50}}).value();
  const auto top = topOf(bike, {}, setup);
  ASSERT_TRUE(top);
  EXPECT_EQ(top->limitedBy, LimitedBy::RevLimit);
}

TEST(TopSpeed, OfThePlanIsTheLastGearsWithoutTheData) {
  Json profile = minimalProfile();
  const Plan bare = planFor(profile);
  ASSERT_TRUE(bare.stock.road.topSpeed);
  EXPECT_EQ(bare.stock.road.topSpeed->gear, 3);
  EXPECT_EQ(bare.stock.road.topSpeed->speedMps, bare.stock.gearing.gears.back().speedAtRevLimitMps);
  EXPECT_FALSE(bare.stock.road.topSpeed->limitedBy);
  EXPECT_TRUE(bare.stock.road.pull.empty());
  profile["bike"]["engine"]["torque_curve"] = {{{"rpm", 3000}, {"torque_nm", 5}},
                                               {{"rpm", 9000}, {"torque_nm", 5}}};
  const Plan force = planFor(profile);
  EXPECT_EQ(force.stock.road.pull.size(), 3U);
  EXPECT_FALSE(force.stock.road.topSpeed->limitedBy);
  profile["bike"]["chassis"] = {{"mass_kg", 180}, {"drag_area_m2", 0.6}};
  const Plan all = planFor(profile);
  ASSERT_TRUE(all.stock.road.topSpeed);
  EXPECT_EQ(all.stock.road.topSpeed->limitedBy, LimitedBy::Drag);
}

}  // namespace
}  // namespace layshaft::test
