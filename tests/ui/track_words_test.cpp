// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/track_words.h"

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

const ui::UnitsShown kMetric, kImperial(ui::UnitSystem::Imperial);

/// A closed track of a straight, half a turn, a straight, and so much of a turn.
Track oval(double lastDeg, double lastStraightM = 100.0, Turn turn = Turn::Left) {
  Track track;
  track.name = "Oval";
  track.closed = true;
  track.segments = {{.lengthM = 100.0},
                    {.radiusM = 30.0, .angleDeg = 180.0, .turn = turn},
                    {.lengthM = lastStraightM},
                    {.radiusM = 30.0, .angleDeg = lastDeg, .turn = turn}};
  return track;
}

std::string shape(const Track& track, const ui::UnitsShown& units = kMetric) {
  return ui::trackShapeWords(track, trackLine(track), units).toStdString();
}

TEST(TrackWords, TellHowATrackCloses) {
  EXPECT_EQ(shape(oval(180.0)), "388 m; its end meets its start.");
  EXPECT_EQ(shape(oval(180.0, 88.0)), "376 m; ends 12 m from its start.");
  // The last bend ends 4° early: 30 m · 4° = 2.1 m before its end, both ways round.
  for (const Turn turn : {Turn::Left, Turn::Right}) {
    EXPECT_EQ(shape(oval(176.0, 100.0, turn)), "386 m; ends 2.1 m from its start, turned 4° too little.");
    EXPECT_EQ(shape(oval(184.0, 100.0, turn)), "391 m; ends 2.1 m from its start, turned 4° too far.");
  }
  Track open = oval(180.0);
  open.closed.reset();
  EXPECT_EQ(shape(open), "388 m, open.");
  EXPECT_EQ(shape(Track()), "Nothing to draw yet: type or paste segments.");
}

TEST(TrackWords, AFigureOfEightIsHeldAgainstItsOwnDirection) {
  Track eight;
  eight.closed = true;
  eight.segments = {{.radiusM = 40.0, .angleDeg = 360.0, .turn = Turn::Left},
                    {.radiusM = 40.0, .angleDeg = 360.0, .turn = Turn::Right}};
  EXPECT_EQ(shape(eight), "503 m; its end meets its start.");
  eight.segments[1].angleDeg = 340.0;
  EXPECT_TRUE(QString::fromStdString(shape(eight)).endsWith("heading 20° off.")) << shape(eight);
}

TEST(TrackWords, SlopesThatDoNotComeBackAreTold) {
  Track track = oval(180.0);
  track.segments[0].slopePercent = 5.0;
  // 100 m of road with 5 %: 100·sin(atan 0.05) = 4.99 m up.
  EXPECT_TRUE(QString::fromStdString(shape(track)).endsWith("By its slopes it ends 5.0 m above its start."))
      << shape(track);
}

TEST(TrackWords, LengthsAreInTheUnitsShown) {
  EXPECT_EQ(ui::trackLengthText(412.0, kMetric), "412 m");
  EXPECT_EQ(ui::trackLengthText(2413.0, kMetric), "2.41 km");
  EXPECT_EQ(ui::trackLengthText(2413.0, ui::UnitsShown(ui::UnitSystem::Mixed)), "2.41 km");
  EXPECT_EQ(ui::trackLengthText(1609.344, kImperial), "1.00 mi");
  EXPECT_EQ(ui::trackLengthText(100.0, kImperial), "328 ft");
  EXPECT_EQ(ui::shortDistanceText(1.23, kMetric), "1.2 m");
  EXPECT_EQ(ui::shortDistanceText(12.3, kMetric), "12 m");
  EXPECT_EQ(ui::shortDistanceText(1.23, kImperial), "4.0 ft");
}

TEST(TrackWords, ARecordingTellsWhatWasLeftOut) {
  RecordedTrack track;
  track.closed = true;
  track.lengthM = 1234.0;
  track.closingGapM = 1.5;
  track.noiseM = 0.4;
  track.smallestRadiusM = 18.2;
  track.leftOut = {.noFix = 1, .damaged = 2, .leaps = 1};
  track.heightsLeftOut = 7;
  const QString words = ui::recordedTrackWords(track, kMetric).join(' ');
  for (const char* part : {"1.23 km once around; its end was 1.5 m from its start",
                           "about 0.4 m beside the line", "Smallest radius: 18 m.",
                           "Left out: 1 without a position, 2 damaged lines, 1 leap.", "taken as level"})
    EXPECT_TRUE(words.contains(part)) << part << " in " << words.toStdString();
}

TEST(TrackWords, AFileNamesItsTrack) {
  EXPECT_EQ(ui::trackNameFromFile("/some/folder/Test  Day.2.gpx"), "Test Day.2");
  EXPECT_EQ(ui::trackNameFromFile("/folder/.gpx"), "Recorded track");
}

TEST(TrackWords, SayWherePointsAreTooFarApartForBends) {
  RecordedTrack track;
  track.lengthM = 2400.0;
  track.used = 100;
  const auto said = [&] { return ui::recordedTrackWords(track, kMetric).join(' ').toStdString(); };
  EXPECT_NE(said().find("They are about 24 m apart"), std::string::npos) << said();
  track.used = 400;
  EXPECT_EQ(said().find("apart"), std::string::npos) << said();
}

}  // namespace
}  // namespace layshaft::test
