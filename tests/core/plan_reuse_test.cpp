// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a plan takes over from the one before: a setup that was not worked out again still holds the very same
// model.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/plan.h"
#include "core/report.h"
#include "core/traces.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Profile reuseProfile() {
  Profile profile = workedExample();
  profile.pins = {{"Short", {.rearTeeth = rear(47)}}, {"Tall", {.rearTeeth = rear(40)}}};
  return profile;
}

Plan after(const Profile& profile, const Plan& before) {
  Plan result = plan(planInput(profile), &before);
  EXPECT_EQ(reportJson(result), reportJson(plan(profile))) << "as if it were worked out anew";
  EXPECT_EQ(result.input, planInput(profile));
  return result;
}

TEST(PlanReuse, AStepOfTheProposalLeavesStockAndPins) {
  Profile profile = reuseProfile();
  const Plan before = plan(profile);
  profile.proposed.rearTeeth = rear(45);
  const Plan now = after(profile, before);
  EXPECT_EQ(now.stock.model, before.stock.model);
  EXPECT_EQ(now.pins[0].model, before.pins[0].model);
  EXPECT_EQ(now.pins[1].model, before.pins[1].model);
  EXPECT_NE(now.proposed.model, before.proposed.model);
  EXPECT_EQ(now.pullBike, before.pullBike);
}

TEST(PlanReuse, NamesNotesAndAimsCostNoStudy) {
  Profile profile = reuseProfile();
  const Plan before = plan(profile);
  profile.notes = "Tried on Saturday.";
  profile.aims.push_back({.want = Aim::Want::LeastDriveTime});
  EXPECT_EQ(planInput(profile), before.input);
  profile.name = "Another name";
  profile.pins[0].name = "Wet";
  std::swap(profile.pins[0], profile.pins[1]);
  const Plan now = after(profile, before);
  EXPECT_EQ(now.bikeName, "Another name");
  EXPECT_EQ(now.pins[0].name, "Tall");
  EXPECT_EQ(now.pins[1].name, "Wet");
  EXPECT_EQ(now.stock.model, before.stock.model);
  EXPECT_EQ(now.proposed.model, before.proposed.model);
  EXPECT_EQ(now.pins[0].model, before.pins[1].model);
  EXPECT_EQ(now.pins[1].model, before.pins[0].model);
}

TEST(PlanReuse, APinOfTheProposalIsTheProposal) {
  Profile profile = reuseProfile();
  const Plan before = plan(profile);
  profile.pins.push_back({"Kept", profile.proposed});
  const Plan now = after(profile, before);
  ASSERT_EQ(now.pins.size(), 3U);
  EXPECT_EQ(now.pins[2].model, before.proposed.model);
  EXPECT_EQ(now.pins[2].name, "Kept");
  EXPECT_EQ(now.proposed.name, "");
}

TEST(PlanReuse, OtherCircumstancesAskEverySetupAgain) {
  const Profile profile = reuseProfile();
  const Plan before = plan(profile);
  const auto allNew = [&](auto change) {
    Profile other = profile;
    change(other);
    const Plan now = after(other, before);
    return now.stock.model != before.stock.model && now.proposed.model != before.proposed.model &&
           now.pins[0].model != before.pins[0].model;
  };
  EXPECT_TRUE(allNew([](Profile& p) { p.bike.chassis->massKg = 180; }));
  EXPECT_TRUE(allNew([](Profile& p) { p.ride->slopePercent = 2; }));
  EXPECT_TRUE(allNew([](Profile& p) { p.ride->drive->lengthM = 300; }));
  EXPECT_TRUE(allNew([](Profile& p) { p.sparesBox->chains.clear(); }));
  EXPECT_TRUE(allNew([](Profile& p) { p.bike.speedometer->readsHighPercent = 2; }));
  EXPECT_TRUE(allNew([](Profile& p) { p.stock.rearTeeth = rear(42); })) << "all are compared with stock";
}

TEST(PlanBands, AreThePlansOfARolloutTwoPerCentOff) {
  Profile profile = reuseProfile();
  const RoadPlan& road = plan(profile).proposed.road;
  const double metres = plan(profile).proposed.gearing.rollout.metres;
  const auto typed = [&](double factor) {
    profile.proposed.options.rolloutMm = 1000.0 * metres * factor;
    return plan(profile).proposed.road;
  };
  const RoadPlan low = typed(0.98), high = typed(1.02);
  EXPECT_FALSE(low.topSpeedBandMps || low.zeroTo60BandS || low.zeroTo100BandS || low.quarterMileBandS ||
               low.driveBandS)
      << "a measured rollout has none";
  const auto spans = [](const std::optional<Band>& band, double a, double b) {
    ASSERT_TRUE(band);
    EXPECT_NE(a, b);
    EXPECT_NEAR(band->low, std::min(a, b), 1e-9);
    EXPECT_NEAR(band->high, std::max(a, b), 1e-9);
  };
  spans(road.topSpeedBandMps, low.topSpeed->speedMps, high.topSpeed->speedMps);
  spans(road.zeroTo60BandS, *low.run.zeroTo60MphS, *high.run.zeroTo60MphS);
  spans(road.zeroTo100BandS, *low.run.zeroTo100KmhS, *high.run.zeroTo100KmhS);
  spans(road.quarterMileBandS, *low.run.quarterMileS, *high.run.quarterMileS);
  spans(road.driveBandS, low.run.drive->timeS, high.run.drive->timeS);
}

TEST(DriveChange, IsSaidToBeEqualWithinAHundredthOrItsBand) {
  const auto times = [](double seconds, double low, double high) {
    RoadPlan road{};
    road.run.drive = DriveFigures{.timeS = seconds,
                                  .endSpeedMps = 50,
                                  .endGear = 5,
                                  .endRpm = 9000,
                                  .revRangeLeftRpm = 0,
                                  .secondsOnLimiter = 0,
                                  .plan = {}};
    road.driveAtLeastRolloutS = low;
    road.driveAtMostRolloutS = high;
    return road;
  };
  const auto change = [](const RoadPlan& from, const RoadPlan& to) { return driveChange(from, to).value(); };
  EXPECT_TRUE(change(times(8.0, 8, 8), times(8.01, 8.01, 8.01)).equal());
  EXPECT_FALSE(change(times(8.0, 8, 8), times(7.989, 7.989, 7.989)).equal());
  // Both are off alike, by a tenth: the difference is not.
  const DriveChange sure = change(times(8.0, 7.9, 8.1), times(7.95, 7.85, 8.05));
  EXPECT_NEAR(sure.seconds, -0.05, 1e-12);
  EXPECT_NEAR(sure.bandS, 0.0, 1e-12);
  EXPECT_FALSE(sure.equal());
  // One is off the other way: it may be the slower one.
  EXPECT_TRUE(change(times(8.0, 7.9, 8.1), times(7.95, 7.92, 7.98)).equal());
  EXPECT_FALSE(driveChange(RoadPlan{}, times(8, 8, 8)));
}

// r(φ) = R − rc·(1 − cos φ) leaned over, in the gear that gets down the straight soonest.
TEST(PlanCornerExit, TurnsFasterLeanedOver) {
  Profile profile = reuseProfile();
  profile.stock.options.rolloutMm = 1950;
  profile.stock.options.crownRadiusMm = 90;
  profile.proposed = {};
  const Plan result = plan(profile);
  ASSERT_TRUE(result.stock.cornerExitRpm);
  const int gear = result.stock.road.run.drive->startGear();
  const double overall = 1.955 * profile.stock.gearRatios[static_cast<std::size_t>(gear - 1)] * 43 / 16;
  const double radius = 1.950 / (2 * std::numbers::pi);
  const double leaned = radius - 0.090 * (1 - std::cos(std::numbers::pi / 4));
  EXPECT_NEAR(*result.stock.cornerExitRpm, 60 * (80 / 3.6) * overall / 1.950 * radius / leaned, 1e-6);
  EXPECT_EQ(driveTrace(result.stock, result.drive).points.front().gear, gear);
  profile.ride->leanDeg.reset();
  EXPECT_FALSE(plan(profile).stock.cornerExitRpm);
  profile.ride->leanDeg = 45;
  profile.ride->drive.reset();
  EXPECT_FALSE(plan(profile).stock.cornerExitRpm);
}

}  // namespace
}  // namespace layshaft::test
