// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laps and parts of laps beside closed forms of the textbooks, and braking beside published measurements.
#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/units.h"
#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

constexpr double kG = 9.80665;

LapFigures lapOn(const Profile& profile, const Track& track) {
  return OnTrack(profile, track).lapOf(profile).value();
}

// v = √(μ·g·R): D. Karnopp, Vehicle Stability; here μ = 1.2, R = 100 m: 34.304490 m/s.
TEST(LapClosedForms, CircleIsRiddenAtItsOwnSpeed) {
  const LapFigures lap = lapOn(evenBike(1400, 1.2), trackOf({bend(100, 360)}, true));
  EXPECT_NEAR(lap.topMps, 34.304490, 1e-6);
  EXPECT_NEAR(lap.timeS, 2.0 * units::kPi * 100.0 / 34.304490, 1e-6);
  EXPECT_TRUE(lap.pulls.empty());
  EXPECT_EQ(lap.fullThrottleS, 0.0);
}

// tan φ = μ: 50.19443° at μ = 1.2 (published beside it: 45.6° at 10 m/s on 10 m). The engine turns faster by
// R/(R − rc·(1 − cos φ)).
TEST(LapClosedForms, LeanTurnsTheEngineFaster) {
  // The pull of the first bend from rest ends at its own speed, leaned over.
  Profile profile = evenBike(3000, 1.2);
  profile.stock.options.crownRadiusMm = 90.0;
  const LapFigures lap = lapOn(profile, trackOf({bend(100, 180)}, false));
  ASSERT_EQ(lap.pulls.size(), 1U);
  const LapPullFigures& pull = lap.pulls.front();
  EXPECT_NEAR(pull.endMps, 34.304490, 1e-6);
  const double upright = 60.0 * pull.endMps / 2.0 * 10.0;
  const double share = 0.09 / (1.0 / units::kPi);
  EXPECT_NEAR(pull.endRpm, upright / (1.0 - share * (1.0 - std::cos(units::radiansFromDegrees(50.19443)))),
              1e-3);
}

// 600 m between corners of 25 and 20 m/s with 5 m/s² of pull and 9 m/s² of brakes:
// v = √((2abL + b·v1² + a·v2²)/(a + b)).
TEST(LapClosedForms, StraightBetweenCorners) {
  Profile profile = evenBike(1400, 1.1);
  Track track = trackOf({straight(600), corner(10, 72)}, false);
  track.startSpeedKmh = 90.0;
  track.brakeSharePercent = 100.0 * 9.0 / (1.1 * kG);
  const LapFigures lap = lapOn(profile, track);
  EXPECT_NEAR(lap.topMps, 66.345955, 1e-6);
  EXPECT_NEAR(lap.segments.front().timeS, 13.418741, 1e-6);
  ASSERT_EQ(lap.pulls.size(), 1U);
  EXPECT_NEAR(lap.pulls.front().toM, 377.678571, 1e-6);
}

// Two straights of 400 m and two half circles of 60 m, μ = 1.1.
TEST(LapClosedForms, Stadium) {
  Track track = trackOf({straight(400), bend(60, 180), straight(400), bend(60, 180)}, true);
  track.brakeSharePercent = 100.0 * 9.0 / (1.1 * kG);
  const LapFigures lap = lapOn(evenBike(1400, 1.1), track);
  EXPECT_NEAR(lap.timeS, 34.289148, 1e-6);
  EXPECT_NEAR(lap.topMps, 56.733301, 1e-6);
  EXPECT_NEAR(lap.segments[1].minMps, 25.440890, 1e-6);
  EXPECT_NEAR(lap.segments[0].timeS, 9.735417, 1e-6);
  EXPECT_NEAR(lap.segments[1].timeS, 7.409157, 1e-6);
}

/// Grip that lets the rear wheel push with just μ·g, and so no more engine than that needed.
Profile frictionCircle() {
  Profile profile = evenBike(20000, 1.0);
  profile.bike.chassis->cgHeightMm = 600.0;
  profile.bike.chassis->cgAheadOfRearAxleMm = 600.0;
  profile.bike.chassis->wheelbaseMm = 1400.0;
  return profile;
}

// On an arc the friction circle leaves u(s) = μgR·sin(2s/R + asin(u0/μgR)) for u = v²: from rest the bend's
// speed is reached after 45° of arc whatever the grip; μ = 1, R = 50 m.
TEST(LapClosedForms, FrictionCircleOnAnArc) {
  const Profile profile = frictionCircle();
  Track track = trackOf({bend(50, 120)}, false);
  const LapFigures fromRest = lapOn(profile, track);
  ASSERT_EQ(fromRest.pulls.size(), 1U);
  EXPECT_NEAR(fromRest.pulls.front().toM, 39.269908, 1e-6);
  EXPECT_NEAR(fromRest.topMps, 22.143453, 1e-6);
  track.startSpeedKmh = 36.0;
  EXPECT_NEAR(lapOn(profile, track).pulls.front().toM, 34.135305, 1e-6);
  track.segments.front().angleDeg.reset();
  track.segments.front().lengthM = 20.0;
  EXPECT_NEAR(lapOn(profile, track).segments.front().exitMps, 20.347506, 1e-6);
}

// The same backwards under full brakes: down to 10 m/s at the end of 20 m of the arc.
TEST(LapClosedForms, FrictionCircleUnderBrakes) {
  TrackSegment arc = bend(50, 0);
  arc.angleDeg.reset();
  arc.lengthM = 20.0;
  const Profile profile = frictionCircle();
  Track track = trackOf({arc, corner(10, 36)}, false);
  track.startSpeedKmh = 200.0;
  EXPECT_NEAR(lapOn(profile, track).segments.front().entryMps, 20.347506, 1e-6);
}

// s = (v0² − v1²)/2b and t = (v0 − v1)/b on a straight.
TEST(LapClosedForms, BrakingDistance) {
  Track track = trackOf({straight(500), corner(10, 72)}, false);
  track.brakeSharePercent = 80.0;
  const OnTrack on(evenBike(1400, 1.0), track);
  const double b = 0.8 * kG;
  const ToTheEnd left = on.allowed.braking(0, 50.0);
  EXPECT_NEAR(left.distanceM, (2500.0 - 400.0) / (2.0 * b), 1e-9);
  EXPECT_NEAR(left.timeS, 30.0 / b, 1e-9);
}

// Braking of racing motorcycles as the maker of their brakes publishes it (brembo.com, seasons of MotoGP):
// speeds, seconds and metres of each corner. Means over the whole of it, so a plausibility to 15 %. The bike
// is an estimate: 240 kg with rider, centre of gravity 0.62 m high and half way along 1.45 m.
TEST(LapPublished, BrakingIsThatOfRacingMotorcycles) {
  struct Row {
    const char* corner;
    double fromKmh, toKmh, seconds, metres;
  };
  constexpr Row kRows[] = {{"Valencia 1", 324, 129, 4.2, 251}, {"Motegi 11", 308, 86, 5.1, 250},
                           {"Motegi 3", 277, 93, 4.2, 202},    {"Motegi 5", 271, 77, 4.8, 216},
                           {"Aragon 16", 344, 148, 4.1, 253},  {"Aragon 1", 289, 91, 4.5, 219},
                           {"Aragon 12", 274, 95, 4.5, 208}};
  Profile profile = evenBike(5000, 1.5);
  profile.bike.chassis->massKg = 160.0;
  profile.bike.chassis->dragAreaM2 = 0.35;
  profile.bike.chassis->rollingResistance = 0.02;
  profile.bike.chassis->cgHeightMm = 620.0;
  profile.bike.chassis->cgAheadOfRearAxleMm = 725.0;
  profile.bike.chassis->wheelbaseMm = 1450.0;
  for (const Row& row : kRows) {
    SCOPED_TRACE(row.corner);
    Track track = trackOf({straight(800), corner(10, row.toKmh)}, false);
    track.brakeSharePercent = 85.0;
    const OnTrack on(profile, track);
    const ToTheEnd left = on.allowed.braking(0, units::mpsFromKmh(row.fromKmh));
    EXPECT_NEAR(left.timeS, row.seconds, 0.15 * row.seconds);
    EXPECT_NEAR(left.distanceM, row.metres, 0.15 * row.metres);
  }
}

}  // namespace
}  // namespace layshaft::test
