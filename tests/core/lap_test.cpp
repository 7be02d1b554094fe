// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/study/lap_search.h"
#include "core/units.h"
#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

Profile lapExample() {
  return loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
}

/// The same track as a recording would give it, in stretches of one length.
Track asRecorded(const Track& track, double spacingM, double lateralMps2) {
  TrackPath path;
  path.spacingM = spacingM;
  for (const TrackSegment& segment : track.segments) {
    double curvature = segment.radiusM ? 1.0 / *segment.radiusM : 0.0;
    if (segment.cornerSpeedKmh)
      curvature = lateralMps2 / std::pow(units::mpsFromKmh(*segment.cornerSpeedKmh), 2);
    const double length =
        segment.angleDeg ? *segment.radiusM * units::radiansFromDegrees(*segment.angleDeg) : *segment.lengthM;
    for (double at = 0.0; at < length - spacingM / 2.0; at += spacingM) {
      path.curvaturePerKm.push_back(-1000.0 * curvature);
      path.slopePercent.push_back(segment.slopePercent.value_or(0.0));
    }
  }
  Track recorded = track;
  recorded.segments.clear();
  recorded.path = SharedPath(std::move(path));
  return recorded;
}

TEST(Lap, PartsMakeTheWhole) {
  const Profile profile = lapExample();
  const LapFigures lap = OnTrack(profile, profile.tracks.front()).lapOf(profile).value();
  double seconds = 0.0;
  for (const LapSegment& segment : lap.segments) {
    seconds += segment.timeS;
    EXPECT_LE(segment.minMps, std::min(segment.entryMps, segment.exitMps));
  }
  EXPECT_NEAR(seconds, lap.timeS, 1e-9);
  EXPECT_NEAR(lap.points.back().timeS, lap.timeS, 1e-9);
  for (std::size_t i = 1; i < lap.points.size(); ++i) {
    EXPECT_GE(lap.points[i].distanceM, lap.points[i - 1].distanceM - 1e-9);
    EXPECT_GE(lap.points[i].timeS, lap.points[i - 1].timeS - 1e-12);
    EXPECT_LE(lap.points[i].speedMps, lap.topMps);
  }
  // A segment ends as fast as the next begins, round the lap.
  for (std::size_t i = 0; i < lap.segments.size(); ++i)
    EXPECT_NEAR(lap.segments[i].exitMps, lap.segments[(i + 1) % lap.segments.size()].entryMps, 1e-9);
}

TEST(Lap, RecordedPathIsTheSameLap) {
  const Profile profile = lapExample();
  Track track = profile.tracks.front();
  for (TrackSegment& segment : track.segments) {  // whole numbers of stretches
    if (!segment.angleDeg) continue;
    segment.lengthM = 5.0 * std::round(*segment.radiusM * units::radiansFromDegrees(*segment.angleDeg) / 5.0);
    segment.angleDeg.reset();
  }
  const double lateral =
      std::min(0.9 * 1.2, std::tan(units::radiansFromDegrees(52.0))) * units::kStandardGravityMps2;
  const LapFigures asSegments = OnTrack(profile, track).lapOf(profile).value();
  const LapFigures asPath = OnTrack(profile, asRecorded(track, 5.0, lateral)).lapOf(profile).value();
  EXPECT_NEAR(asPath.timeS, asSegments.timeS, 1e-7);
  EXPECT_EQ(asPath.shifts, asSegments.shifts);
  EXPECT_TRUE(asPath.segments.empty());
}

// Cutting a track into shorter pieces changes nothing: no mesh.
TEST(Lap, DoesNotDependOnHowATrackIsCut) {
  const Profile profile = lapExample();
  Track cut = profile.tracks.front();
  cut.segments.clear();
  for (TrackSegment segment : profile.tracks.front().segments) {
    if (segment.angleDeg)
      segment.angleDeg = *segment.angleDeg / 3.0;
    else
      segment.lengthM = *segment.lengthM / 3.0;
    cut.segments.insert(cut.segments.end(), 3, segment);
  }
  EXPECT_NEAR(OnTrack(profile, cut).lapOf(profile)->timeS,
              OnTrack(profile, profile.tracks.front()).lapOf(profile)->timeS, 1e-9);
}

TEST(Lap, DifferenceAlongTheLapEndsAtTheDifference) {
  const Profile profile = lapExample();
  const OnTrack on(profile, profile.tracks.front());
  const LapFigures stock = on.lapOf(profile).value();
  const LapFigures proposed = on.lapOf(profile, applied(profile.proposed, profile.stock)).value();
  const auto difference = lapDifference(stock, proposed);
  ASSERT_FALSE(difference.empty());
  EXPECT_EQ(difference.front().laterS, 0.0);
  EXPECT_NEAR(difference.back().laterS, proposed.timeS - stock.timeS, 1e-9);
  EXPECT_NEAR(difference.back().distanceM, on.allowed.lengthM(), 1e-9);
}

TEST(Lap, ClosedTrackWithoutABendIsRefused) {
  const Profile profile = evenBike(1400, 1.1);
  const OnTrack closed(profile, trackOf({straight(400), straight(300)}, true));
  ASSERT_TRUE(closed.allowed.refusal());
  EXPECT_EQ(closed.allowed.refusal()->why, LapRefusal::Why::NoBend);
  EXPECT_FALSE(closed.lapOf(profile));
  const OnTrack open(profile, trackOf({straight(400), straight(300)}, false));
  EXPECT_FALSE(open.allowed.refusal());
  // 700 m from rest at 5 m/s².
  EXPECT_NEAR(open.lapOf(profile)->timeS, std::sqrt(2.0 * 700.0 / 5.0), 1e-9);
}

TEST(Lap, EmptyTrackIsRefused) {
  const Profile profile = evenBike(1400, 1.1);
  EXPECT_EQ(OnTrack(profile, trackOf({}, true)).allowed.refusal()->why, LapRefusal::Why::Empty);
}

TEST(Lap, BrakesThatCannotSlowTheBikeNameTheStretch) {
  Profile profile = evenBike(1400, 0.3);
  TrackSegment down = straight(200);
  down.slopePercent = -40.0;  // 0.37·g along the road, 0.28·g of brakes
  const OnTrack on(profile, trackOf({bend(50, 90), down}, true));
  ASSERT_TRUE(on.allowed.refusal());
  EXPECT_EQ(*on.allowed.refusal(), (LapRefusal{LapRefusal::Why::BrakesTooWeak, 1}));
}

TEST(Lap, LacksGrip) {
  Profile profile = evenBike(1400, 1.1);
  profile.bike.chassis->tyreGrip.reset();
  const OnTrack on(profile, trackOf({bend(50, 90)}, true));
  EXPECT_EQ(on.allowed.course().lacks, std::vector<std::string_view>{"bike.chassis.tyre_grip"});
  EXPECT_FALSE(on.lapOf(profile));
}

TEST(Lap, BikeThatStopsForGoodHasNone) {
  Profile profile = evenBike(200, 1.1);
  TrackSegment up = straight(500);
  up.slopePercent = 20.0;  // 539 N of slope
  EXPECT_FALSE(OnTrack(profile, trackOf({straight(10), up}, false)).lapOf(profile));
  EXPECT_TRUE(OnTrack(profile, trackOf({straight(10)}, false)).lapOf(profile));
}

// Up a hill that no gear holds the bike falls below the bend's speed: energy says how fast it is at the top.
TEST(Lap, FallsBelowABendThatItCannotHold) {
  Profile profile = evenBike(100, 1.1);
  TrackSegment up = bend(100, 90);
  up.slopePercent = 10.0;
  Track track = trackOf({up}, false);
  track.startSpeedKmh = 400.0;
  const OnTrack on(profile, track);
  const LapFigures lap = on.lapOf(profile).value();
  const double sine = std::sin(std::atan(0.1)), metres = 50.0 * units::kPi;
  const double start = on.allowed.stretches().front().here.limitMps;
  EXPECT_NEAR(lap.segments.front().entryMps, start, 1e-9);
  // Leaned over the engine pulls a little harder: as much as the wheel rolls on less.
  const double upright = std::sqrt(start * start + 2.0 * metres * (100.0 / 280.0 - 9.80665 * sine));
  const double leanedMost = std::sqrt(start * start + 2.0 * metres * (125.0 / 280.0 - 9.80665 * sine));
  EXPECT_GT(lap.segments.front().exitMps, upright);
  EXPECT_LT(lap.segments.front().exitMps, leanedMost);
}

// Of equal times the choice with fewer shifts and then the lower first gear.
TEST(Lap, EqualChoicesTakeTheLowestGear) {
  Profile profile = evenBike(1400, 1.1);
  profile.stock.gearRatios = gears({2.0, 1.999999999});
  const LapFigures lap =
      OnTrack(profile, trackOf({straight(300), bend(40, 180)}, true)).lapOf(profile).value();
  ASSERT_EQ(lap.pulls.size(), 1U);
  EXPECT_EQ(lap.pulls.front().firstGear, 1);
  EXPECT_EQ(lap.shifts, 0);
}

TEST(Lap, TimeAloneIsTheLapsTime) {
  const Profile profile = lapExample();
  const OnTrack on(profile, profile.tracks.front());
  const Rollout rollout = rolloutOf(profile.stock);
  const RoadModel model(on.bike, roadOf(profile.bike, *profile.ride), profile.stock, rollout, {});
  EXPECT_EQ(lapTimeS(on.allowed, model, crownShare(profile.stock, rollout)), on.lapOf(profile)->timeS);
}

/// 500 N push 280 kg up to 18 % for ever; over a rise of 40 % the bike has to carry its speed.
TEST(LapStop, IsOnTheHillThatNothingPasses) {
  const Profile bike = evenBike(500.0, 2.0);
  const auto hill = [](double metres, double slopePercent) {
    TrackSegment segment = straight(metres);
    segment.slopePercent = slopePercent;
    return segment;
  };
  const auto stopOn = [&](double lowM, double highM) {
    const Track track =
        trackOf({straight(200), hill(lowM, 15), straight(50), hill(highM, 40), straight(50)}, false);
    const OnTrack on(bike, track);
    EXPECT_EQ(on.lapOf(bike).has_value(), !on.stopOf(bike).has_value());
    return on.stopOf(bike);
  };
  // v² = 2·d·500/280 after 200 m: 714 m²/s²; the low hill leaves v² + 2·200·(500/280 − 9.81·0.148) = 846, and
  // the straight 1025: enough for 1025/2/(9.81·0.371 − 500/280) = 276 m.
  EXPECT_EQ(stopOn(200, 270), std::nullopt);
  EXPECT_EQ(stopOn(200, 285), 3U);
  EXPECT_EQ(stopOn(200, 2000), 3U);
}

TEST(LapStop, OfARecordedLineIsAStretch) {
  const Profile bike = evenBike(500.0, 2.0);
  TrackSegment steep = straight(400);
  steep.slopePercent = 60;
  const Track recorded = asRecorded(trackOf({straight(200), steep, straight(50)}, false), 10.0, 10.0);
  const auto stop = OnTrack(bike, recorded).stopOf(bike);
  ASSERT_TRUE(stop);
  EXPECT_GE(*stop, 20U);
  EXPECT_LT(*stop, 60U);
}

}  // namespace
}  // namespace layshaft::test
