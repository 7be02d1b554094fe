// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/track_line.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/bike/track_rules.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

using std::numbers::pi;

Track trackOf(std::vector<TrackSegment> segments, bool closed = true) {
  return {.name = "Pond", .closed = closed, .segments = std::move(segments)};
}
TrackSegment line(double lengthM) {
  return {.lengthM = lengthM};
}
TrackSegment bend(double radiusM, double angleDeg, Turn turn = Turn::Left) {
  return {.radiusM = radiusM, .angleDeg = angleDeg, .turn = turn};
}

TEST(TrackLine, AStadiumClosesWithItsLength) {
  const TrackLine map = trackLine(trackOf({line(400), bend(60, 180), line(400), bend(60, 180)}));
  EXPECT_NEAR(map.lengthM, 800 + 2 * pi * 60, 1e-9);
  EXPECT_NEAR(*map.closingGapM, 0, 1e-9);
  EXPECT_NEAR(*map.closingTurnRad, 0, 1e-9);
  ASSERT_EQ(map.begins.size(), 4U);
  const TrackPlace& second = map.places[map.begins[2]];
  EXPECT_NEAR(second.xM, 400, 1e-9);
  EXPECT_NEAR(second.yM, 120, 1e-9) << "to the left";
  EXPECT_NEAR(second.headingRad, pi, 1e-12);
}

TEST(TrackLine, ACircleKeepsToItsRadius) {
  const TrackLine map = trackLine(trackOf({bend(40, 360, Turn::Right)}));
  for (const TrackPlace& place : map.places) EXPECT_NEAR(std::hypot(place.xM, place.yM + 40), 40, 1e-9);
  // Between two places the straight piece stays within centimetres of the arc.
  for (double s = 0; s < map.lengthM; s += 0.37) {
    const TrackPlace place = placeAt(map, s);
    EXPECT_NEAR(std::hypot(place.xM, place.yM + 40), 40, 0.021);
    EXPECT_EQ(place.distanceM, s);
  }
}

TEST(TrackLine, TellsHowFarTheEndIsFromTheStart) {
  const TrackLine map = trackLine(trackOf({line(100), bend(50, 90), line(100)}));
  // East 150, north 150.
  EXPECT_NEAR(*map.closingGapM, std::hypot(150, 150), 1e-9);
  EXPECT_NEAR(*map.closingTurnRad, pi / 2, 1e-12);
  const TrackLine open = trackLine(trackOf({line(100), bend(50, 90), line(100)}, false));
  EXPECT_FALSE(open.closingGapM || open.closingTurnRad);
}

TEST(TrackLine, ABendIsGivenByItsLengthOrItsSpeedToo) {
  const TrackLine length = trackLine(trackOf({{.lengthM = 50 * pi, .radiusM = 100}}));
  EXPECT_NEAR(length.places.back().xM, 100, 1e-9);
  EXPECT_NEAR(length.places.back().yM, 100, 1e-9);
  // 72 km/h at 10 m/s²: 20²/10 = 40 m.
  const TrackLine speed = trackLine(trackOf({{.lengthM = 40 * pi, .cornerSpeedKmh = 72}}), 10.0);
  EXPECT_NEAR(speed.places.back().xM, 0, 1e-9);
  EXPECT_NEAR(speed.places.back().yM, 80, 1e-9);
}

TEST(TrackLine, SlopesShortenTheMapAndRise) {
  // 3-4-5: 75 % is 0.8 of the road along the ground and 0.6 up.
  const TrackLine up = trackLine(trackOf({{.lengthM = 100, .slopePercent = 75}}));
  EXPECT_NEAR(up.places.back().xM, 80, 1e-9);
  EXPECT_NEAR(up.places.back().heightM, 60, 1e-9);
  EXPECT_NEAR(up.lengthM, 100, 1e-12);
  // A round of a spiral staircase ends above its start.
  const TrackLine spiral = trackLine(trackOf({{.radiusM = 20, .angleDeg = 360, .slopePercent = 10}}));
  EXPECT_NEAR(*spiral.closingGapM, 0, 1e-9);
  EXPECT_NEAR(spiral.places.back().heightM, 2 * pi * 20 * 0.1 / std::hypot(1, 0.1), 1e-9);
}

// Against Fresnel's integrals, C(1) = 0.7798934, S(1) = 0.4382591 (Abramowitz and Stegun, table 7.7): a
// clothoid in many stretches.
TEST(TrackLine, StretchesOfAPathFollowItsCurvature) {
  constexpr int kStretches = 2000;
  TrackPath path{.spacingM = 1};
  // Heading is π/2·(s/L)² with L = 2000 m, curvature π·s/L² in the middle of each stretch.
  for (int i = 0; i < kStretches; ++i)
    path.curvaturePerKm.push_back(1000 * pi * (i + 0.5) / (double{kStretches} * kStretches));
  const TrackLine map = trackLine({.name = "Spiral", .path = SharedPath(path)});
  EXPECT_NEAR(map.places.back().xM / kStretches, 0.7798934, 1e-6);
  EXPECT_NEAR(map.places.back().yM / kStretches, 0.4382591, 1e-6);
  EXPECT_NEAR(map.lengthM, kStretches, 1e-9);
}

TEST(TrackLine, ARecordedPathHasItsOwnPlaces) {
  constexpr int kStretches = 90;
  constexpr double kRadiusM = 100;
  TrackPath path{.spacingM = 2 * pi * kRadiusM / kStretches};
  for (int i = 0; i < kStretches; ++i) {
    path.curvaturePerKm.push_back(1000 / kRadiusM);
    path.slopePercent.push_back(1);
    path.xM.push_back(5 + kRadiusM * std::cos(2 * pi * i / kStretches));
    path.yM.push_back(7 + kRadiusM * std::sin(2 * pi * i / kStretches));
  }
  const TrackLine map = trackLine({.name = "Round", .closed = true, .path = SharedPath(path)});
  ASSERT_EQ(map.places.size(), kStretches + 1U);
  EXPECT_EQ(map.places[10].xM, path.xM[10]);
  EXPECT_EQ(map.places[10].yM, path.yM[10]);
  EXPECT_NEAR(map.places[10].headingRad, pi / 2 + 2 * pi * 10 / kStretches, 1e-9);
  EXPECT_NEAR(*map.closingGapM, 0, 0.002) << "the last stretch is laid on behind";
  EXPECT_NEAR(*map.closingTurnRad, 0, 1e-6);
  EXPECT_NEAR(map.lengthM, 2 * pi * kRadiusM, 1e-9);
  EXPECT_NEAR(map.places.back().heightM, 2 * pi * kRadiusM * 0.01, 0.001);
}

TEST(TrackLine, IsThereForWhatIsHalfTyped) {
  EXPECT_TRUE(trackLine({.name = "Nothing"}).places.empty());
  const TrackLine half = trackLine(trackOf({line(10), {.angleDeg = 90}, line(10)}));
  EXPECT_EQ(half.begins.size(), 3U);
  EXPECT_NEAR(half.lengthM, 20, 1e-12);
  EXPECT_EQ(placeAt(half, -1), half.places.front());
  EXPECT_EQ(placeAt(half, 99), half.places.back());
}

TEST(TrackLine, TheSamplesCloseWithinTwoPercent) {
  int tracks = 0, closed = 0;
  for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    const auto profile = loadProfile(entry.path());
    if (!profile) continue;
    for (const Track& track : profile->tracks) {
      ++tracks;
      const TrackLine map = trackLine(track);
      EXPECT_GT(map.lengthM, 500) << track.name;
      if (!map.closingGapM) continue;
      ++closed;
      EXPECT_LT(*map.closingGapM, 0.02 * map.lengthM) << track.name;
      EXPECT_LT(std::abs(*map.closingTurnRad), 0.1) << track.name;
      EXPECT_LT(std::abs(map.places.back().heightM), 3.0) << track.name << " ends above or below its start";
    }
  }
  EXPECT_GE(tracks, 4);
  EXPECT_GE(closed, 3);
}

}  // namespace
}  // namespace layshaft::test
