// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/chain_run.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>

#include "core/parts/belt.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Setup chained(int frontTeeth, int rearTeeth, int links) {
  auto setup = bareSetup();
  setup.frontTeeth = front(frontTeeth);
  setup.rearTeeth = rear(rearTeeth);
  setup.options.chainSize = chainSize("520");
  setup.options.links = links;
  return setup;
}

Bike slotted(double forwardMm, double backMm) {
  Bike bike;
  bike.chainRun = ChainRun{.adjusterForwardMm = forwardMm, .adjusterBackMm = backMm};
  return bike;
}

ChainRunFigures run(const Bike& bike, const Setup& setup) {
  return chainRun(bike, chained(16, 43, 114), setup, nullptr).value();
}

bool has(const ChainRunFigures& figures, Misfit misfit) {
  return std::find(figures.misfits.begin(), figures.misfits.end(), misfit) != figures.misfits.end();
}

TEST(ChainRunVerdict, TheAxleStaysInItsSlotEndsIncluded) {
  const auto setup = chained(15, 43, 114);
  const double shiftMm = 1000 * run(slotted(10, 10), setup).axleShiftM.value();
  EXPECT_EQ(run(slotted(0, shiftMm), setup).fits, true);
  const auto tight = run(slotted(0, shiftMm - 1e-3), setup);
  EXPECT_EQ(tight.fits, false);
  EXPECT_TRUE(has(tight, Misfit::AxleTooFarBack));
  const auto forward = chained(16, 45, 114);
  const double shift = -1000 * run(slotted(10, 10), forward).axleShiftM.value();
  EXPECT_EQ(run(slotted(shift, 0), forward).fits, true);
  EXPECT_TRUE(has(run(slotted(shift - 1e-3, 0), forward), Misfit::AxleTooFarForward));
}

TEST(ChainRunVerdict, IsOpenWhereTheSlotIsNotKnown) {
  EXPECT_FALSE(run(Bike{}, chained(15, 43, 114)).fits.has_value());
  EXPECT_TRUE(run(Bike{}, chained(15, 43, 114)).lengthsThatFit.empty());
}

TEST(ChainRunVerdict, ClearancesCountWithoutASlot) {
  Bike bike;
  bike.chainRun = ChainRun{
      .largestFrontTeeth = 16, .smallestFrontTeeth = 14, .largestRearTeeth = 46, .smallestRearTeeth = 40};
  const auto one = [&](int f, int r, Misfit misfit) {
    const auto figures = run(bike, chained(f, r, 114));
    EXPECT_EQ(figures.fits, false) << f << "/" << r;
    EXPECT_EQ(figures.misfits, std::vector<Misfit>{misfit}) << f << "/" << r;
  };
  one(17, 43, Misfit::FrontTooLarge);
  one(13, 43, Misfit::FrontTooSmall);
  one(16, 47, Misfit::RearTooLarge);
  one(16, 39, Misfit::RearTooSmall);
  EXPECT_FALSE(run(bike, chained(16, 46, 114)).fits.has_value());
}

TEST(ChainRunVerdict, AShortChainDoesNotReach) {
  const auto figures = run(slotted(10, 10), chained(16, 43, 50));
  EXPECT_EQ(figures.fits, false);
  EXPECT_TRUE(has(figures, Misfit::ChainDoesNotReach));
  EXPECT_FALSE(figures.lengthsThatFit.empty()) << "another length would do";
  // Nothing is said of an axle that is nowhere.
  EXPECT_FALSE(figures.swingarm);
  EXPECT_FALSE(figures.axleShiftM || figures.centreDistanceM || figures.wheelbaseM || figures.frontWrapDeg);
}

TEST(ChainRunVerdict, SaysWhatTheTradeAdvisesAgainst) {
  EXPECT_TRUE(run(Bike{}, chained(16, 43, 113)).offsetLink);
  EXPECT_FALSE(run(Bike{}, chained(16, 43, 114)).offsetLink);
  EXPECT_FALSE(run(Bike{}, chained(16, 43, 114)).lowWrap);
  // 9 and 60 teeth close together.
  EXPECT_TRUE(run(Bike{}, chained(9, 60, 66)).lowWrap);
}

TEST(ChainRunVerdict, AWornChainIsCutWornAndBoughtNew) {
  auto worn = chained(16, 43, 114);
  worn.options.chainElongationPercent = 1.0;
  const auto figures =
      chainRun(slotted(12, 12), worn, worn, nullptr, {{.size = *chainSize("520"), .links = 114}}).value();
  ASSERT_EQ(figures.axleShiftM, 0.0);
  bool present = false, bought = false;
  for (const FittingLength& length : figures.lengthsThatFit) {
    if (length.links != 114) continue;
    if (length.shortenBy == 0) {
      present = true;
      EXPECT_NEAR(length.axleShiftM, 0.0, 1e-12);
      EXPECT_FALSE(length.spare);
    } else {
      bought = true;
      EXPECT_NEAR(length.axleShiftM * 1000, -6.67228, 1e-4) << "one per cent of the centre distance nearer";
      EXPECT_EQ(length.spare->links, 114);
    }
  }
  EXPECT_TRUE(present && bought);
}

TEST(ChainRunLacks, NamesWhatIsMissing) {
  auto none = chained(16, 43, 114);
  none.options.links.reset();
  EXPECT_EQ(chainRunLacks(none, none), std::vector<std::string_view>{"stock.links"});
  EXPECT_TRUE(chainRunLacks(chained(16, 43, 114), chained(15, 43, 114)).empty());
  EXPECT_EQ(chainRunLacks(chained(16, 43, 30), chained(16, 43, 30)),
            std::vector<std::string_view>{"stock.links"})
      << "it does not reach round";
  auto belt = chained(16, 43, 114);
  belt.options.finalDrive = FinalDrive::Belt;
  EXPECT_EQ(chainRunLacks(chained(16, 43, 114), belt),
            (std::vector<std::string_view>{"proposed.belt_pitch_mm", "proposed.belt_teeth"}));
}

TEST(ChainRunVerdict, LengthsThatFitAreEvenAndInsideTheSlot) {
  const auto figures = run(slotted(20, 20), chained(14, 46, 113));
  ASSERT_FALSE(figures.lengthsThatFit.empty());
  for (const FittingLength& length : figures.lengthsThatFit) {
    EXPECT_EQ(length.links % 2, 0) << "an odd count needs an offset link";
    EXPECT_LE(std::abs(length.axleShiftM), 0.020 + 1e-9);
    const auto with = run(slotted(20, 20), chained(14, 46, length.links));
    EXPECT_EQ(with.fits, true) << length.links;
    EXPECT_NEAR(with.axleShiftM.value(), length.axleShiftM, 1e-12);
  }
  // All of them: one more or less on either side is outside.
  const auto outside = [&](int links) { return run(slotted(20, 20), chained(14, 46, links)).fits == false; };
  const auto [fewest, most] =
      std::minmax_element(figures.lengthsThatFit.begin(), figures.lengthsThatFit.end(),
                          [](const FittingLength& a, const FittingLength& b) { return a.links < b.links; });
  EXPECT_TRUE(outside(fewest->links - 2));
  EXPECT_TRUE(outside(most->links + 2));
}

TEST(ChainRunCentre, AMeasuredOneGetsTheShiftAdded) {
  Bike bike = slotted(20, 20);
  bike.chainRun->centreDistanceMm = 665;
  const auto figures = run(bike, chained(15, 43, 114));
  EXPECT_NEAR(*figures.centreDistanceM * 1000, 665 + 3.726, 2e-3);
  EXPECT_FALSE(figures.measuredCentreOffLinks);
}

TEST(ChainRunCentre, AContradictionOfMoreThanHalfAPitchIsPointedOut) {
  Bike bike;
  bike.chainRun = ChainRun{.centreDistanceMm = 667.228 + 15.875 / 2 - 0.1};
  EXPECT_FALSE(run(bike, chained(16, 43, 114)).measuredCentreOffLinks);
  bike.chainRun->centreDistanceMm = 667.228 + 15.875 / 2 + 0.1;
  // Both runs grow: half a pitch of centre is about a link.
  ASSERT_TRUE(run(bike, chained(16, 43, 114)).measuredCentreOffLinks);
  EXPECT_NEAR(*run(bike, chained(16, 43, 114)).measuredCentreOffLinks, 1.01, 0.02);
  bike.chainRun->centreDistanceMm = 667.228 - 15.875 / 2 - 0.1;
  EXPECT_LT(run(bike, chained(16, 43, 114)).measuredCentreOffLinks.value(), 0.0);
}

TEST(ChainRunFigures, WheelbaseGrowsWithTheShift) {
  Bike bike;
  bike.chassis = Chassis{.wheelbaseMm = 1400};
  EXPECT_NEAR(*run(bike, chained(15, 43, 114)).wheelbaseM * 1000, 1403.726, 2e-3);
  EXPECT_FALSE(run(Bike{}, chained(15, 43, 114)).wheelbaseM);
}

TEST(ChainRunFigures, MeetingPattern) {
  const auto figures = run(Bike{}, chained(16, 45, 114));
  EXPECT_EQ(figures.commonFactorFront, 2);
  EXPECT_EQ(figures.commonFactorRear, 3);
  EXPECT_EQ(run(Bike{}, chained(17, 43, 114)).commonFactorFront, 1);
}

TEST(ChainRunFigures, WrapOfTheFrontIsItsOwnAlsoWhereItIsTheLarger) {
  EXPECT_LT(run(Bike{}, chained(16, 43, 114)).frontWrapDeg.value(), 180);
  EXPECT_GT(run(Bike{}, chained(45, 14, 114)).frontWrapDeg.value(), 180);
}

// 50 N·m · 0.9 · 18 at the wheel in first gear are 810 N·m, on the pitch polygon's circle of 45 · 15.875 mm
// round: 7124.2 N. The front lifts at m·g·b/h at the contact patch before.
TEST(ChainRunStrength, OverThePeakTension) {
  Bike bike;
  bike.engine.revLimitRpm = 9000;
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 50}, {8000, 50}}).value();
  bike.chassis = Chassis{.drivetrainEfficiency = 0.9};
  auto setup = chained(15, 45, 114);
  setup.primaryRatio = 2;
  setup.gearRatios = gears({3, 2, 1});
  setup.options.rolloutMm = 2000;
  const auto figuresOf = [&](const Bike& of) {
    const PullModel model(std::make_shared<const PullBike>(pullBike(of, {})), roadOf(of, {}), setup,
                          rolloutOf(setup), Fitted{});
    return chainRun(of, setup, setup, &model).value();
  };
  const double tension = 810 / (45 * 0.015875 / (2 * std::numbers::pi));
  EXPECT_NEAR(*figuresOf(bike).peakTensionN, tension, 1e-6);
  EXPECT_NEAR(*figuresOf(bike).safetyFactor, 26400 / 7124.24, 1e-5) << "the least that 520 must hold";
  EXPECT_TRUE(figuresOf(bike).strengthAssumed);
  bike.chainRun = ChainRun{.tensileStrengthKn = 35};
  EXPECT_NEAR(*figuresOf(bike).safetyFactor, 35000 / 7124.24, 1e-5);
  EXPECT_FALSE(figuresOf(bike).strengthAssumed);
  bike.chassis = Chassis{.massKg = 130,
                         .riderMassKg = 70,
                         .wheelbaseMm = 1400,
                         .cgHeightMm = 600,
                         .cgAheadOfRearAxleMm = 650,
                         .dragAreaM2 = 0.4,
                         .rollingResistance = 0,
                         .drivetrainEfficiency = 0.9};
  const double lifting =
      200 * 9.80665 * 0.65 / 0.6 / std::numbers::pi / (45 * 0.015875 / (2 * std::numbers::pi));
  EXPECT_NEAR(*figuresOf(bike).peakTensionN, lifting, 1e-6);
}

/// A bike whose tension grip and front lift keep below what the engine makes.
Bike strongBike() {
  Bike bike;
  bike.engine.revLimitRpm = 9000;
  bike.engine.torqueCurve = TorqueCurve::make({{2000, 90}, {9000, 90}}).value();
  bike.chassis = Chassis{.massKg = 130,
                         .riderMassKg = 70,
                         .wheelbaseMm = 1400,
                         .cgHeightMm = 600,
                         .cgAheadOfRearAxleMm = 650,
                         .dragAreaM2 = 0.4,
                         .rollingResistance = 0.02,
                         .drivetrainEfficiency = 0.9,
                         .tyreGrip = 0.8};
  return bike;
}

double tensionOn(const Bike& bike, const Ride& ride, const std::optional<double>& growth = {}) {
  auto setup = chained(15, 45, 114);
  setup.primaryRatio = 2;
  setup.gearRatios = gears({3, 2, 1});
  setup.options.rolloutMm = 2000;
  setup.options.growthPerKmh2 = growth;
  const PullModel model(std::make_shared<const PullBike>(pullBike(bike, ride)), roadOf(bike, ride), setup,
                        rolloutOf(setup), Fitted{});
  return *chainRun(bike, setup, setup, &model)->peakTensionN;
}

// μ·m·g·(l − b)/l / (1 − μ·h/l) at walking pace on the tyre's grip, and what the tread's resistance adds.
TEST(ChainRunTension, IsThatOfDryLevelAsphaltWithoutWind) {
  const double weight = 200 * 9.80665, mu = 0.8, resistance = 0.02 * weight;
  const double transfer = mu * 600.0 / 1400.0;
  // The contact force F = m·a + Fr with m·a + Fr ≤ μ·(weight·(l − b) + m·a·h)/l.
  const double push = (mu * weight * 750.0 / 1400.0 - resistance) / (1 - transfer) + resistance;
  const double dry = tensionOn(strongBike(), {});
  EXPECT_NEAR(dry, push / std::numbers::pi / (45 * 0.015875 / (2 * std::numbers::pi)), dry * 0.03)
      << "a little more with drag, which loads the rear";
  Ride loose{.slopePercent = 12, .headwindKmh = 30, .surface = Surface::Sand};
  loose.surfaces[Surface::Sand] = {.grip = 0.3, .rollingResistance = 0.2, .slipPercent = 20, .extras = {}};
  EXPECT_NEAR(tensionOn(strongBike(), loose), dry, 1e-9);
  EXPECT_NEAR(tensionOn(strongBike(), {.surface = Surface::WetAsphalt}), dry, 1e-9);
}

TEST(ChainRunTension, HasNoGrowthOfTheTyre) {
  Bike weak = strongBike();
  weak.engine.torqueCurve = TorqueCurve::make({{2000, 10}, {9000, 20}}).value();
  EXPECT_NEAR(tensionOn(weak, {}, 1e-6), tensionOn(weak, {}), 1e-9);
  EXPECT_NEAR(tensionOn(strongBike(), {}, 1e-6), tensionOn(strongBike(), {}), 1e-9);
}

TEST(ChainRunTension, IsThatOfTodaysAir) {
  Bike weak = strongBike();
  weak.engine.torqueCurve = TorqueCurve::make({{2000, 10}, {9000, 20}}).value();
  EXPECT_LT(tensionOn(weak, {.altitudeM = 2000}), tensionOn(weak, {}) * 0.85);
}

TEST(ChainRunBelt, OnlyListedLengthsExist) {
  auto belt = chained(33, 71, 0);
  belt.options.finalDrive = FinalDrive::Belt;
  belt.options.beltPitchMm = 14;
  belt.options.beltTeeth = 146;
  auto other = belt;
  other.frontTeeth = front(30);
  Bike bike = slotted(12, 12);
  bike.chainRun->beltLengthsTeeth = {144, 145, 150};
  const auto figures = chainRun(bike, belt, other, nullptr).value();
  for (const FittingLength& length : figures.lengthsThatFit) {
    EXPECT_TRUE(length.links == 144 || length.links == 145 || length.links == 146);
    EXPECT_FALSE(length.shortenBy) << "a belt cannot be cut";
  }
  EXPECT_FALSE(figures.lengthsThatFit.empty());
}

TEST(BeltLengths, AreRisingWithTheOneThatIsThere) {
  EXPECT_EQ(beltLengths({144, 130, 144}, 138), (std::vector<int>{130, 138, 144}));
  EXPECT_EQ(beltLengths({}, 138), std::vector<int>{138});
}

TEST(AdjusterMarks, AreTheShiftInMarks) {
  Profile profile = workedExample();
  ChainRunFigures run = *plan(profile).proposed.chainRun;
  run.axleShiftM = -0.005;
  ChainRun room = *profile.bike.chainRun;
  room.adjusterMarkMm.reset();
  EXPECT_FALSE(adjusterMarks(room, run));
  room.adjusterMarkMm = 2.0;
  EXPECT_NEAR(*adjusterMarks(room, run), -2.5, 1e-12);
  run.axleShiftM.reset();
  EXPECT_FALSE(adjusterMarks(room, run));
}

}  // namespace
}  // namespace layshaft::test
