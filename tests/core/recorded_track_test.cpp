// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/recorded_track.h"

#include <algorithm>
#include <numeric>

#include "core/limits.h"
#include "core/track/track_csv.h"
#include "core/track_report.h"
#include "tests/core/recordings.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

RecordedTrack trackOf(const Recording& recording, const TrackOptions& options = {}) {
  const auto track = recordedTrack(recording, options);
  if (!track) throw std::runtime_error("no track: " + track.problem().path);
  return *track;
}

double turnedDeg(const TrackPath& path) {
  return std::accumulate(path.curvaturePerKm.begin(), path.curvaturePerKm.end(), 0.0) * path.spacingM /
         1000.0 * 180.0 / units::kPi;
}

TEST(RecordedTrack, ALapTurnsOnceAndIsCutEvenly) {
  const RecordedTrack track = trackOf(ellipse(150, 100, {.turns = 2.4, .noiseM = 0.3}));
  EXPECT_TRUE(track.closed);
  EXPECT_EQ(track.laps, 2U);
  EXPECT_NEAR(turnedDeg(track.path), 360.0, 1e-6);
  const std::size_t stretches = track.path.curvaturePerKm.size();
  EXPECT_EQ(stretches, 159U);
  EXPECT_NEAR(static_cast<double>(stretches) * track.path.spacingM, track.lengthM, 1e-9);
  for (const auto* list : {&track.path.xM, &track.path.yM}) EXPECT_EQ(list->size(), stretches);
  EXPECT_TRUE(track.path.slopePercent.empty()) << "no heights";
  EXPECT_EQ(track.used + track.leftOut.total(), track.points);
  EXPECT_EQ(track.path.source, "ellipse");
}

TEST(RecordedTrack, BendsToTheRightAreNegative) {
  Recording recording = ellipse(150, 100);
  std::reverse(recording.fixes.begin(), recording.fixes.end());
  EXPECT_NEAR(turnedDeg(trackOf(recording).path), -360.0, 1e-6);
}

TEST(RecordedTrack, AnOpenLineStaysOpen) {
  const RecordedTrack track = trackOf(ellipse(100, 100, {.turns = 0.5}));
  EXPECT_FALSE(track.closed);
  EXPECT_EQ(track.laps, 0U);
  EXPECT_FALSE(track.lap || track.closingGapM);
  EXPECT_NEAR(track.lengthM, units::kPi * 100.0, 2.1);
  EXPECT_NEAR(track.path.xM.front(), 100.0, 0.05);
}

TEST(RecordedTrack, AnotherLapOnDemand) {
  Recording recording = ellipse(150, 100, {.turns = 3.2});
  for (std::size_t i = 0; i < recording.fixes.size(); ++i)
    recording.fixes[i].timeS = 0.1 * static_cast<double>(i);
  const RecordedTrack best = trackOf(recording), second = trackOf(recording, {.lap = 1});
  EXPECT_EQ(second.lap, 1U);
  EXPECT_NEAR(second.lapTimeS.value(), 39.66, 0.01) << "793.27 m at 20 m/s";
  EXPECT_LE(best.lapTimeS.value(), second.lapTimeS.value());
  const auto none = recordedTrack(recording, {.lap = 3});
  ASSERT_FALSE(none.ok());
  EXPECT_EQ(none.problem(),
            (Problem{.kind = Kind::OutOfRange, .path = "lap", .given = "4", .low = 1, .high = 3}));
}

TEST(RecordedTrack, SmoothingMakesACircleSmaller) {
  const Recording recording = ellipse(30, 30, {.stepM = 1});
  // A circle of radius R is left at 1/(1 + (L/R)⁴) of its size.
  for (const double smoothingM : {0.0, 10.0, 15.0}) {
    const RecordedTrack track = trackOf(recording, {.smoothingM = smoothingM});
    EXPECT_NEAR(track.lengthM / (2.0 * units::kPi), 30.0 / (1.0 + std::pow(smoothingM / 30.0, 4)), 0.02)
        << smoothingM;
    EXPECT_NEAR(track.smallestRadiusM.value(), track.lengthM / (2.0 * units::kPi), 0.2) << smoothingM;
    EXPECT_EQ(track.smoothingM, smoothingM);
  }
  const auto tooMuch = recordedTrack(recording, {.smoothingM = 201.0});
  ASSERT_FALSE(tooMuch.ok());
  EXPECT_EQ(tooMuch.problem().path, "smooth");
  EXPECT_FALSE(recordedTrack(recording, {.smoothingM = kNaN}).ok());
}

TEST(RecordedTrack, AGapIsSpreadOverTheLap) {
  // A receiver that drifts 3 m to the north on every lap.
  Recording recording = ellipse(150, 100, {.turns = 2.3});
  for (std::size_t i = 0; i < recording.fixes.size(); ++i)
    recording.fixes[i].north += 3.0 * static_cast<double>(i) / 396.6;
  const RecordedTrack track = trackOf(recording);
  EXPECT_NEAR(track.closingGapM.value(), 3.0, 0.35) << "across the line, which may run askew";
  EXPECT_NEAR(track.smallestRadiusM.value(), 66.67, 1.0) << "no kink where it closes";
}

TEST(RecordedTrack, SlopesFromHeights) {
  Recording recording = ellipse(200, 200, {.stepM = 2});
  for (Fix& fix : recording.fixes) fix.heightM = 300.0 + 10.0 * fix.north / 200.0;  // a tilted plane: 5 %
  const RecordedTrack track = trackOf(recording);
  const auto& slopes = track.path.slopePercent;
  ASSERT_EQ(slopes.size(), track.path.curvaturePerKm.size());
  EXPECT_NEAR(*std::max_element(slopes.begin(), slopes.end()), 5.0, 0.02);
  EXPECT_NEAR(*std::min_element(slopes.begin(), slopes.end()), -5.0, 0.02);
  EXPECT_NEAR(slopes.front(), 5.0, 0.05) << "to the north";
  EXPECT_NEAR(std::accumulate(slopes.begin(), slopes.end(), 0.0), 0.0, 1e-9) << "a lap ends at its height";
}

TEST(RecordedTrack, HeightsInStepsOfAMetreStillMakeASlope) {
  Recording recording = ellipse(200, 200, {.stepM = 2, .noiseM = 0.2});
  for (Fix& fix : recording.fixes) fix.heightM = std::round(300.0 + 10.0 * fix.north / 200.0);
  const auto slopes = trackOf(recording).path.slopePercent;
  EXPECT_NEAR(*std::max_element(slopes.begin(), slopes.end()), 5.0, 1.5);
}

TEST(RecordedTrack, FewHeightsOrCliffsAreLeftOut) {
  Recording recording = ellipse(200, 200, {.stepM = 2});
  for (std::size_t i = 0; i < recording.fixes.size(); i += 3) recording.fixes[i].heightM = 300.0;
  RecordedTrack track = trackOf(recording);
  EXPECT_TRUE(track.path.slopePercent.empty());
  EXPECT_GT(track.heightsLeftOut, 200U);
  for (std::size_t i = 0; i < recording.fixes.size(); ++i)
    recording.fixes[i].heightM = i > 300 && i < 400 ? 900.0 : 300.0;
  track = trackOf(recording);
  EXPECT_TRUE(track.path.slopePercent.empty());
  EXPECT_EQ(track.heightsLeftOut, track.used);
}

TEST(RecordedTrack, TooLongALineIsRefused) {
  Recording recording{.kind = Recording::Kind::Table, .onEarth = false};
  for (int i = 0; i < 3000; ++i)
    recording.fixes.push_back({.east = 40.0 * i, .north = 9000.0 * std::sin(0.02 * i)});
  const auto track = recordedTrack(recording);
  ASSERT_FALSE(track.ok());
  EXPECT_EQ(track.problem().kind, Kind::OutOfRange);
}

TEST(RecordedTrack, KeepsToTheLimitsOfAProfile) {
  const RecordedTrack zigzag = trackOf(
      through({{0, 0}, {20, 0}, {20, 0.02}, {0, 0.02}, {0, 0.04}, {20, 0.04}, {40, 0}}), {.smoothingM = 0.0});
  for (const double curvature : zigzag.path.curvaturePerKm)
    EXPECT_TRUE(limits::kCurvaturePerKm.contains(curvature));
}

TEST(TrackReport, JsonHasTheKeysOfTheContract) {
  Recording recording = *readRecording(gpxCircle(700), "circle.gpx");
  const RecordedTrack track = trackOf(recording);
  const Json json = Json::parse(trackJson(track));
  for (const char* key : {"points", "laps", "length_m", "closing_gap_m", "noise_m", "smallest_radius_m",
                          "spacing_m", "curvature_per_km", "slope_percent", "left_out", "x_m", "y_m"})
    EXPECT_TRUE(json.contains(key)) << key;
  EXPECT_EQ(json["points"], 700);
  EXPECT_EQ(json["source"], "circle.gpx");
  EXPECT_EQ(json["length_m"].get<double>(), track.lengthM) << "full precision";
  EXPECT_EQ(json["curvature_per_km"].get<std::vector<double>>(), track.path.curvaturePerKm);
  const Json open = Json::parse(trackJson(trackOf(ellipse(100, 100, {.turns = 0.5}))));
  for (const char* key : {"lap", "lap_time_s", "closing_gap_m", "origin"})
    EXPECT_TRUE(open[key].is_null()) << key;
}

TEST(TrackReport, TheCsvIsARecordingAgain) {
  const RecordedTrack track = trackOf(ellipse(150, 100, {.noiseM = 0.3}));
  const auto again = readRecording(pathCsv(track.path), "");
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(again->fixes.size(), track.path.xM.size());
  const RecordedTrack second = trackOf(*again);
  EXPECT_NEAR(second.lengthM, track.lengthM, 0.05);
  EXPECT_LT(second.noiseM, 0.02) << "it is smooth already";
}

TEST(TrackReport, TheGpxIsARecordingAgain) {
  const Recording recording = *readRecording(gpxCircle(700), "circle & co");
  const RecordedTrack track = trackOf(recording);
  const auto again = readRecording(recordedTrackGpx(track), "");
  ASSERT_TRUE(again.ok());
  EXPECT_TRUE(again->onEarth);
  EXPECT_NEAR(again->fixes.front().north, recording.fixes.front().north, 1e-5);
  EXPECT_NEAR(again->fixes.front().east, recording.fixes.front().east, 1e-5);
  const RecordedTrack second = trackOf(*again);
  EXPECT_TRUE(second.closed);
  EXPECT_NEAR(second.lengthM, track.lengthM, 1.0);
}

}  // namespace
}  // namespace layshaft::test
