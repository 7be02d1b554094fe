// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/positions.h"

#include "core/import/time_text.h"
#include "core/limits.h"
#include "core/units.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Recording positionsIn(const std::string& text) {
  const auto recording = readPositions(text);
  if (!recording)
    throw std::runtime_error("refused: " + recording.problem().path + " " + recording.problem().given +
                             " line " + std::to_string(recording.problem().line));
  return *recording;
}

Problem positionsProblem(const std::string& text) {
  const auto recording = readPositions(text);
  EXPECT_FALSE(recording.ok()) << text.substr(0, 200);
  return recording ? Problem{} : recording.problem();
}

const std::vector<Fix> kTwoOnEarth{{.east = 11.5, .north = 48.25}, {.east = -11.5, .north = -48.25}};

TEST(Positions, WhateverSeparatesTheCells) {
  for (const char* text : {
           "lat,lon\n48.25,11.5\n-48.25,-11.5\n",
           "Latitude;Longitude\r\n48,25;11,5\r\n-48,25;-11,5\r\n",
           "GPS_Latitude\tGPS_Longitude\n48.25\t11.5\n-48.25\t-11.5",
           "lon | lat\n11.5 | 48.25\n-11.5 | -48.25\n",
           "lat   lon\n48.25   11.5 \n -48.25 \t -11.5\n",
           "\xEF\xBB\xBF\"Lat\",\"Long\"\n\"48.25\",\"11.5\"\n\n\"-48.25\",\"-11.5\"\n,\n",
           "# made by hand\n# lat, lon\n48.25, 11.5\n# a remark\n-48.25, -11.5\n",
           "Breitengrad;Längengrad\n48,25;11,5\n-48,25;-11,5\n",
       }) {
    std::string plain = text;
    if (plain.starts_with("\xEF\xBB\xBF")) plain = plain.substr(3);
    EXPECT_EQ(positionsIn(plain).fixes, kTwoOnEarth) << text;
  }
}

TEST(Positions, UnitsStandInTitlesOrARowOfTheirOwn) {
  const std::vector<Fix> expected{
      {.east = 100, .north = -2000, .heightM = 100 * units::kMetresPerFoot, .timeS = 1.5},
      {.east = 101, .north = -2001, .heightM = 200 * units::kMetresPerFoot, .timeS = 62.25}};
  for (const char* text : {
           "time [ms],x [m],y (km),speed [km/h],Altitude [ft]\n1500,100,-2,50,100\n62250,101,-2.001,51,200\n",
           "Rider,46\nRecorded at;somewhere, some "
           "day\ntime;x;y;alt\nms;m;km;ft\n1500;100;-2;100\n62250;101;-2,001;200\n",
           "time,x_m,y_km,height_ft\n0:00:01.5,100,-2,100\n1:02.25,101,-2.001,200\n",
       })
    EXPECT_EQ(positionsIn(text).fixes, expected) << text;
  EXPECT_FALSE(positionsIn("x,y\n1,2\n3,4\n").onEarth);
}

TEST(Positions, AccelerationsAreNoPlaces) {
  const Recording recording =
      positionsIn("Lat G,Long G,Latitude,Longitude\n0.5,0.1,48.25,11.5\n0.6,0.2,-48.25,-11.5\n");
  EXPECT_EQ(recording.fixes, kTwoOnEarth);
}

TEST(Positions, TheHalfOfTheWorldMayHaveAColumn) {
  EXPECT_EQ(positionsIn("lat,N/S,lon,E/W\n48.25,N,11.5,E\n48.25,S,11.5,W\n").fixes, kTwoOnEarth);
  EXPECT_EQ(positionsProblem("lat,N/S,lon,E/W\n48.25,N,11.5,E\n48.25,S,11.5,O\n"),
            (Problem{.kind = Kind::NotOneOf,
                     .path = "E/W",
                     .given = "O",
                     .allowed = {"E", "W"},
                     .line = 3,
                     .column = 4}));
}

TEST(Positions, DecimalCommasAmongCommasAreNotTakenForCells) {
  const Problem problem = positionsProblem("lat,lon\n48,25,11,5\n48,25,11,6\n");
  EXPECT_EQ(problem.kind, Kind::WrongCount);
  EXPECT_EQ(problem.line, 2U);
}

TEST(Positions, RowsWithoutAPositionAreLeftOutAndCounted) {
  const Recording recording = positionsIn("time,lat,lon\n0,,\n1,48.25,11.5\n2,48.3,\n3,-48.25,-11.5\n4,48.2");
  EXPECT_EQ(recording.fixes.size(), 2U);
  EXPECT_EQ(recording.noFix, 2U);
  EXPECT_EQ(recording.damaged, 1U) << "the last row is cut short";
}

TEST(Positions, WhatIsWrongIsNamedWithLineAndCell) {
  const std::string titles = "note\ntime,lat,lon\n0,48.1,11.1\n";
  EXPECT_EQ(positionsProblem(titles + "1,95,11\n2,48,11\n"), (Problem{.kind = Kind::OutOfRange,
                                                                      .path = "lat",
                                                                      .given = "95",
                                                                      .low = -90,
                                                                      .high = 90,
                                                                      .unit = "°",
                                                                      .line = 4,
                                                                      .column = 2}));
  EXPECT_EQ(positionsProblem(titles + "1,48,11\n\n2,48,NaN\n"),
            (Problem{.kind = Kind::NotFinite, .path = "lon", .given = "NaN", .line = 6, .column = 3}));
  EXPECT_EQ(positionsProblem(titles + "1,48,east\n"), (Problem{.kind = Kind::WrongType,
                                                               .path = "lon",
                                                               .given = "east",
                                                               .allowed = {"number"},
                                                               .line = 4,
                                                               .column = 3}));
  EXPECT_EQ(positionsProblem(titles + "noon,48,11\n"),
            (Problem{.kind = Kind::NotATime,
                     .path = "time",
                     .given = "noon",
                     .allowed = {"12.5", "0:00:12.5", "2026-05-12T10:11:12.5Z"},
                     .line = 4,
                     .column = 1}));
  const Problem shortRow = positionsProblem(titles + "1,48\n2,48,11\n");
  EXPECT_EQ(shortRow.kind, Kind::WrongCount);
  EXPECT_EQ(shortRow.line, 4U);
  EXPECT_EQ(shortRow.given, "2");
  EXPECT_EQ(positionsProblem("time,lat\n1,48\n2,48\n"),
            (Problem{.kind = Kind::MissingColumn, .allowed = {"longitude"}, .line = 1, .column = 1}));
  EXPECT_EQ(positionsProblem("time,speed\n1,48\n2,48\n"),
            (Problem{.kind = Kind::MissingColumn,
                     .allowed = {"latitude", "longitude", "x", "y"},
                     .line = 1,
                     .column = 1}));
  EXPECT_EQ(positionsProblem("1,48\n2,48\n"), (Problem{.kind = Kind::MissingColumn,
                                                       .allowed = {"latitude", "longitude", "x", "y"},
                                                       .line = 1,
                                                       .column = 1}));
  EXPECT_EQ(positionsProblem("\nx,y,X\n1,48,3\n2,48,3\n"),
            (Problem{.kind = Kind::ColumnTwice, .path = "X", .line = 2, .column = 3}));
  EXPECT_EQ(positionsProblem("x [furlong],y\n1,48\n2,48\n"),
            (Problem{.kind = Kind::NotOneOf,
                     .path = "x [furlong]",
                     .given = "furlong",
                     .allowed = {"m", "km", "ft", "metres", "meters"},
                     .line = 1,
                     .column = 1}));
  EXPECT_EQ(positionsProblem("x,y\n1,48\n2,\"48\n3,7\n"),
            (Problem{.kind = Kind::QuoteLeftOpen, .line = 3, .column = 1}));
  EXPECT_EQ(positionsProblem("Dear all,\nthis is a letter, no table,\nyours").kind, Kind::NotARecording);
  EXPECT_EQ(positionsProblem("").kind, Kind::NotARecording);
}

TEST(Positions, ARowOfMillionsOfCellsIsRefused) {
  const std::string many(5000000, ',');
  const Problem problem = positionsProblem("x,y\n1,2\n3,4\n5,6\n" + many + "1\n");
  EXPECT_EQ(problem.kind, Kind::WrongCount);
  EXPECT_EQ(problem.line, 5U);
}

TEST(TimeText, Moments) {
  // Seconds by GNU date.
  EXPECT_EQ(secondsFromMoment("1970-01-01T00:00:00Z"), 0.0);
  EXPECT_EQ(secondsFromMoment("2024-02-29T23:59:59.25Z"), 1709251199.25);
  EXPECT_EQ(secondsFromMoment("2024-02-29 23:59:59-05:30"), 1709270999.0);
  EXPECT_EQ(secondsFromMoment("1969-12-31T23:59:50"), -10.0);
  for (const char* wrong : {"", "2024-02-30T00:00:00Z", "2024-02-29T24:00:00Z", "2024-02-29T00:60:00Z",
                            "2024-02-29T00:00Z", "2024-02-29", "2024-02-29T00:00:00+2",
                            "2024-02-29T00:00:00Zx", "2024-02-29T00:00:-1Z", "2024-02-29T0:00:000Z"})
    EXPECT_FALSE(secondsFromMoment(wrong)) << wrong;
}

TEST(TimeText, Clocks) {
  EXPECT_EQ(secondsFromClock("1:02:03.5"), 3723.5);
  EXPECT_EQ(secondsFromClock("75:00"), 4500.0);
  for (const char* wrong :
       {"", ":", "1:", "1:2", "a:00", "1:60:00", "1:00:99", "1:00:00.", "-1:00", "1:00:00:00"})
    EXPECT_FALSE(secondsFromClock(wrong)) << wrong;
}

}  // namespace
}  // namespace layshaft::test
