// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/road_model.h"

#include <gtest/gtest.h>

#include "core/study/run.h"
#include "core/traces.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Profile roadModelProfile() {
  return workedExample();
}

RoadModel roadModelOf(const Profile& profile) {
  const Ride ride = profile.ride.value_or(Ride{});
  return {std::make_shared<const PullBike>(pullBike(profile.bike, ride)), roadOf(profile.bike, ride),
          profile.stock, rolloutOf(profile.stock), Fitted{}};
}

TEST(RoadModel, ShiftsAsTypedElseBestElseNotAtAll) {
  Profile profile = roadModelProfile();
  const RoadModel best = roadModelOf(profile);
  EXPECT_FALSE(best.shifts().typed);
  EXPECT_EQ(best.shifts().rpm, bestShiftRpm(best));
  EXPECT_EQ(best.highestRpm(5), 15200) << "the last gear goes to the limit";
  profile.bike.engine.shiftRpm = 14000;
  const RoadModel typed = roadModelOf(profile);
  EXPECT_TRUE(typed.shifts().typed);
  EXPECT_EQ(typed.shifts().rpm, std::vector<double>(5, 14000));
  EXPECT_EQ(typed.highestRpm(0), 14000);
  profile.bike.engine.shiftRpm.reset();
  profile.bike.chassis->massKg.reset();
  EXPECT_TRUE(roadModelOf(profile).shifts().rpm.empty()) << "without masses the best are not known";
}

TEST(RoadModel, OnAnotherRoadIsAsIfMadeThere) {
  Profile profile = roadModelProfile();
  const RoadModel here = roadModelOf(profile);
  profile.bike.engine.shiftRpm = 14000;  // what is kept when the road changes
  const RoadModel flat = roadModelOf(profile);
  profile.ride->slopePercent = 7;
  profile.ride->headwindKmh = 25;
  profile.ride->altitudeM = 1800;
  profile.ride->surface = Surface::Loam;
  profile.ride->surfaces[Surface::Loam].slipPercent = 12;
  const RoadModel anew = roadModelOf(profile), moved = flat.onRoad(anew.road());
  EXPECT_EQ(moved.shifts().rpm, flat.shifts().rpm);
  EXPECT_EQ(moved.launchRpm(), flat.launchRpm());
  for (std::size_t g = 0; g <= moved.slipping(1); ++g)
    for (const double v : {1.0, 17.0, 44.0}) {
      EXPECT_EQ(moved.forceN(v, g), anew.forceN(v, g)) << g << " " << v;
      EXPECT_EQ(moved.accelerationMps2(v, g), anew.accelerationMps2(v, g)) << g << " " << v;
      EXPECT_EQ(moved.gripLimitN(v), anew.gripLimitN(v)) << v;
      EXPECT_NE(moved.accelerationMps2(v, g), flat.accelerationMps2(v, g)) << g << " " << v;
    }
  const auto quarterMile = [](const RoadModel& model) {
    return runFigures(model, {}, {}).quarterMileS.value();
  };
  EXPECT_EQ(quarterMile(moved), quarterMile(anew));
  // And back again.
  EXPECT_EQ(quarterMile(moved.onRoad(flat.road())), quarterMile(flat));
  EXPECT_EQ(here.onRoad(here.road()).launchRpm(), here.launchRpm());
}

TEST(RoadModel, WheelSlipIsNotInTheGearing) {
  Profile profile = roadModelProfile();
  const Plan held = plan(profile);
  profile.ride->surfaces[Surface::Asphalt].slipPercent = 10;
  const Plan slips = plan(profile);
  for (std::size_t g = 0; g < 6; ++g)
    EXPECT_EQ(slips.stock.gearing.gears[g].speedAtRevLimitMps,
              held.stock.gearing.gears[g].speedAtRevLimitMps);
  EXPECT_EQ(slips.stock.gearing.cruise->rpm, held.stock.gearing.cruise->rpm);
  EXPECT_EQ(slips.stock.cornerExitRpm.has_value(), held.stock.cornerExitRpm.has_value());
  EXPECT_GT(*slips.stock.road.run.quarterMileS, *held.stock.road.run.quarterMileS);
  EXPECT_LT(slips.stock.model->limitMps(5), held.stock.model->limitMps(5));
}

TEST(RoadModel, OnARoadWithoutGripNothingBoundsIt) {
  const RoadModel bound = roadModelOf(roadModelProfile());
  ASSERT_TRUE(bound.gripLimitN(10));
  Road open = bound.road();
  open.grip.reset();
  EXPECT_FALSE(bound.onRoad(open).gripLimitN(10));
}

TEST(Traces, AreEmptyWithoutTheirData) {
  const Plan bare = planFor(minimalProfile());
  EXPECT_FALSE(bare.stock.model);
  EXPECT_TRUE(pullCurves(bare.stock).gears.empty());
  EXPECT_TRUE(standingStartTrace(bare.stock).points.empty());
  EXPECT_TRUE(driveTrace(bare.stock, DriveRequest{10, 100, {}}).points.empty());
}

TEST(Traces, EndWhereTheFiguresDo) {
  const Plan result = plan(roadModelProfile());
  const RunTrace start = standingStartTrace(result.proposed),
                 drive = driveTrace(result.proposed, result.drive);
  EXPECT_NEAR(start.points.back().timeS, *result.proposed.road.run.quarterMileS, 1e-12);
  EXPECT_NEAR(start.points.back().distanceM, 402.336, 1e-9);
  EXPECT_NEAR(drive.points.back().timeS, result.proposed.road.run.drive->timeS, 1e-12);
  EXPECT_NEAR(drive.points.front().speedMps, 80 / 3.6, 1e-12);
  ASSERT_FALSE(start.shifts.empty());
  EXPECT_EQ(start.shifts.front().fromGear, 1);
  EXPECT_TRUE(driveTrace(result.proposed, {}).points.empty());
}

// F = m·a + resistance with the mass that the force was worked out for, sprockets included.
TEST(Traces, BoundsAreDividedByTheMassThatMoves) {
  Profile profile = profileFrom(contentsOf(sourceFolder() / "sample-profiles/motocross-450.bike.json"));
  profile.stock.options.rearSprocket->massKg = 12.0;
  profile.proposed.options.rearSprocket->massKg = 0.5;
  const SetupPlan lighter = plan(profile).proposed;
  ASSERT_NEAR(lighter.model->massKg(), *lighter.model->bike().massKg - 11.5, 1e-9);
  const PullCurves curves = pullCurves(lighter);
  ASSERT_FALSE(curves.lift.empty() || curves.grip.empty());
  for (const PullPoint& point : curves.lift)
    EXPECT_NEAR(point.accelerationMps2, lighter.model->liftMps2(point.speedMps), 1e-9) << point.speedMps;
  for (std::size_t i = 0; i < curves.grip.size(); ++i)
    EXPECT_NEAR(curves.grip[i].accelerationMps2,
                (curves.grip[i].forceN - curves.resistance[i].forceN) / lighter.model->massKg(), 1e-9);
}

}  // namespace
}  // namespace layshaft::test
