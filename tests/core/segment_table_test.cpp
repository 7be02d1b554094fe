// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/segment_table.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <iterator>
#include <random>

#include "core/limits.h"
#include "core/track/track_csv.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

SegmentsRead segmentsIn(const std::string& text, const SegmentTableTerms& terms = {}) {
  auto read = readSegments(text, terms);
  if (const auto* refusal = std::get_if<SegmentTableRefusal>(&read))
    throw std::runtime_error("row " + std::to_string(refusal->row) + ", column " +
                             std::to_string(refusal->column) + ": " +
                             testing::PrintToString(refusal->problem));
  return std::get<SegmentsRead>(std::move(read));
}

SegmentTableRefusal refusalOf(const std::string& text, const SegmentTableTerms& terms = {}) {
  auto read = readSegments(text, terms);
  if (std::holds_alternative<SegmentsRead>(read)) throw std::runtime_error("not refused: " + text);
  return std::get<SegmentTableRefusal>(std::move(read));
}

TrackSegment straight(const std::string& name, double lengthM) {
  return {.name = name, .lengthM = lengthM};
}
TrackSegment arc(const std::string& name, double radiusM, double angleDeg) {
  return {.name = name, .radiusM = radiusM, .angleDeg = angleDeg};
}

const std::vector<TrackSegment>& pond() {
  static const std::vector<TrackSegment> segments{straight("Pit straight", 400), arc("Sluice", 60, 92.5),
                                                  straight("", 50.5)};
  return segments;
}

TEST(SegmentTable, TakesEverySeparatorAndDecimalMark) {
  for (const char* text : {
           "name,length_m,radius_m,angle_deg\nPit straight,400,,\nSluice,,60,92.5\n,50.5,,\n",
           "name,length_m,radius_m,angle_deg\nPit straight,400,,\nSluice,,60,\"92,5\"\n,\"50,5\",,\n",
           "name;length_m;radius_m;angle_deg\r\nPit straight;400;;\r\nSluice;;60;92,5\r\n;50,5;;\r\n",
           "name\tlength_m\tradius_m\tangle_deg\nPit straight\t400\nSluice\t\t60\t92,5\n\t50.5\t\n",
           "\xEF\xBB\xBF\n\nangle_deg;radius_m;length_m;name\n;;400;Pit straight\n\n92,5;60;;Sluice\n;;50,5",
       })
    EXPECT_EQ(segmentsIn(text).segments, pond()) << text;
}

TEST(SegmentTable, WithoutTitlesColumnsAreInTheOrderOfTheFile) {
  const auto segments =
      segmentsIn("Pit straight\t400\nSluice\t\t60\t90\t\t-2\tsand\tright\nGate\t50\t\t\t75\n").segments;
  ASSERT_EQ(segments.size(), 3U);
  EXPECT_EQ(segments[0], straight("Pit straight", 400));
  EXPECT_EQ(segments[1].slopePercent, -2);
  EXPECT_EQ(segments[1].surface, Surface::Sand);
  EXPECT_EQ(segments[1].turn, Turn::Right);
  EXPECT_EQ(segments[2].cornerSpeedKmh, 75);
  const auto pasted = segmentsIn("400\n\t60\t90\n", {.firstColumn = 1}).segments;
  EXPECT_THAT(pasted, ElementsAre(straight("", 400), arc("", 60, 90)));
}

TEST(SegmentTable, UnderstandsUsualTitlesUnitsAndWords) {
  const auto segments =
      segmentsIn(
          "Corner;Length (ft);Radius [m];Angle, deg;Speed mph;Gradient %;Ground;Left/Right\n"
          "One;1000;;;;;Wet;\nTwo;;30;90;;1.5;Tarmac;R\nThree;100;;;50;;wet asphalt;L\n")
          .segments;
  ASSERT_EQ(segments.size(), 3U);
  EXPECT_EQ(segments[0].lengthM, 304.8);
  EXPECT_EQ(segments[0].surface, Surface::WetAsphalt);
  EXPECT_EQ(segments[1].radiusM, 30);
  EXPECT_EQ(segments[1].surface, Surface::Asphalt);
  EXPECT_EQ(segments[1].turn, Turn::Right);
  EXPECT_EQ(segments[2].lengthM, 30.48);
  EXPECT_EQ(segments[2].cornerSpeedKmh, 80.4672);
  EXPECT_EQ(segments[2].turn, Turn::Left);
}

TEST(SegmentTable, TakesARowOfUnitsAndUnitsInCells) {
  const auto segments = segmentsIn(
                            "Name\tLength\tRadius\tAngle\tSpeed\n-\tyd\tm\t°\tkm/h\n"
                            "One\t100\nTwo\t\t30 m\t90°\nThree\t0.1 km\t\t\t20 m/s\n")
                            .segments;
  ASSERT_EQ(segments.size(), 3U);
  EXPECT_EQ(segments[0].lengthM, 91.44);
  EXPECT_EQ(segments[1], arc("Two", 30, 90));
  EXPECT_EQ(segments[2].lengthM, 100);
  EXPECT_EQ(segments[2].cornerSpeedKmh, 72);
}

TEST(SegmentTable, TakesTheUnitsAndWordsOfTheWindowWhereItNamesNone) {
  const SegmentTableTerms terms{
      .metresPerLength = 0.3048,
      .kmhPerSpeed = 1.609344,
      .words = {{"Länge", "length_m"}, {"Belag", "surface"}, {"Nasser Asphalt", "wet_asphalt"}}};
  const auto segments = segmentsIn("länge (m);Radius;Belag\n100;;nasser Asphalt\n50;100;\n", terms).segments;
  ASSERT_EQ(segments.size(), 2U);
  EXPECT_EQ(segments[0].lengthM, 100);
  EXPECT_EQ(segments[0].surface, Surface::WetAsphalt);
  EXPECT_EQ(segments[1].radiusM, 30.48);
}

TEST(SegmentTable, TellsOfColumnsThatItDoesNotKnow) {
  const SegmentsRead read = segmentsIn("Nr,length_m,Camber\n1,400,2\n2,,\n3,100,1\n");
  EXPECT_THAT(read.ignored, ElementsAre("Nr", "Camber"));
  EXPECT_EQ(read.segments.size(), 2U) << "a row of which nothing is known";
}

struct Wrong {
  const char* text;
  int row, column;
  Problem problem;
};

TEST(SegmentTable, SaysWhereAndWhatIsWrong) {
  const std::vector<std::string> lengths{"m",  "metre", "metres", "meter", "meters", "km",
                                         "ft", "feet",  "yd",     "mi",    "miles"};
  const std::vector<std::string> keys(kSegmentKeys.begin(), kSegmentKeys.end());
  const Wrong wrongs[] = {
      {"name,length_m\nOne,long\n",
       2,
       2,
       {.kind = Kind::WrongType, .path = "length_m", .given = "long", .allowed = {"number"}}},
      {"name,length_m\nOne,100\n\nTwo,30000\n",
       4,
       2,
       {.kind = Kind::OutOfRange,
        .path = "length_m",
        .given = "30000",
        .low = 0.1,
        .high = 20000,
        .unit = "m"}},
      {"One;100\nTwo;;-60;90\n",
       2,
       3,
       {.kind = Kind::OutOfRange, .path = "radius_m", .given = "-60", .low = 1, .high = 20000, .unit = "m"}},
      {"One;100\nTwo;1e999\n",
       2,
       2,
       {.kind = Kind::WrongType, .path = "length_m", .given = "1e999", .allowed = {"number"}}},
      {"One;100;;90\n", 1, 0, {.kind = Kind::NotASegment, .path = {}, .given = "length_m, angle_deg"}},
      {"name,length_m\nOne,100\nTwo,\n", 3, 0, {.kind = Kind::NotASegment, .path = {}, .given = ""}},
      {"length,name,length_m\n1,,\n",
       1,
       3,
       {.kind = Kind::DuplicateKey, .path = "length_m", .given = "length_m"}},
      {"length (furlongs)\n1\n",
       1,
       1,
       {.kind = Kind::NotOneOf, .path = "length_m", .given = "furlongs", .allowed = lengths}},
      {"name;length\n;m\nOne;5 kg\n",
       3,
       2,
       {.kind = Kind::NotOneOf, .path = "length_m", .given = "kg", .allowed = lengths}},
      {"length;radius\nm;inch\n1;2\n",
       2,
       2,
       {.kind = Kind::NotOneOf, .path = "radius_m", .given = "inch", .allowed = lengths}},
      {"One;100;;;;;ice\n",
       1,
       7,
       {.kind = Kind::NotOneOf,
        .path = "surface",
        .given = "ice",
        .allowed = {"asphalt", "wet_asphalt", "hardpack", "loam", "sand"}}},
      {"One;;60;90;;;;up\n",
       1,
       8,
       {.kind = Kind::NotOneOf, .path = "turn", .given = "up", .allowed = {"left", "right"}}},
      {"\nfoo,bar\n1,2\n", 2, 1, {.kind = Kind::NotOneOf, .path = {}, .given = "foo", .allowed = keys}},
      {"length,radius\n1,2,3\n", 2, 3, {.kind = Kind::WrongCount, .path = {}, .given = "3", .high = 2}},
      {"name,length\n\"One,1\nTwo,2\n", 2, 0, {.kind = Kind::QuoteLeftOpen}},
      {"One,1\n\xFFTwo,2\n", 0, 0, {.kind = Kind::NotUtf8, .path = {}, .given = "6"}},
      {"", 0, 0, {.kind = Kind::WrongCount, .path = "segments", .given = "0", .low = 1, .high = 500}},
      {"name,length\n\n",
       0,
       0,
       {.kind = Kind::WrongCount, .path = "segments", .given = "0", .low = 1, .high = 500}},
  };
  for (const Wrong& wrong : wrongs) {
    const SegmentTableRefusal refusal = refusalOf(wrong.text);
    EXPECT_EQ(refusal.row, wrong.row) << wrong.text;
    EXPECT_EQ(refusal.column, wrong.column) << wrong.text;
    EXPECT_EQ(refusal.problem, wrong.problem) << wrong.text;
  }
}

TEST(SegmentTable, HasAsManyRowsAsATrackHasSegments) {
  std::string text = "length_m\n";
  for (int i = 0; i < limits::kMostSegments; ++i) text += "10\n";
  EXPECT_EQ(segmentsIn(text).segments.size(), 500U);
  const SegmentTableRefusal refusal = refusalOf(text + "10\n");
  EXPECT_EQ(refusal.row, 502);
  EXPECT_EQ(refusal.problem.kind, Kind::WrongCount);
  EXPECT_EQ(
      refusalOf(std::string(static_cast<std::size_t>(limits::kLargestTableBytes) + 1, '1')).problem.kind,
      Kind::FileTooLarge);
}

TEST(SegmentTable, WhatWasWrittenIsReadAgain) {
  std::vector<TrackSegment> segments = profileFrom(everyKeyProfile().dump()).tracks[0].segments;
  segments[2].name = "=1+1, \"the\" last";
  const SegmentsRead read = segmentsIn(segmentsCsv(segments));
  EXPECT_EQ(read.segments, segments);
  EXPECT_THAT(read.ignored, IsEmpty());
}

TEST(TrackCsv, WritesWhatTheTrackIsMadeOf) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  EXPECT_EQ(trackCsv(profile.tracks[0]),
            "name,length_m,radius_m,angle_deg,corner_speed_kmh,slope_percent,surface,turn\n"
            "Pit straight,412.5,,,,-1.25,asphalt,left\n"
            "Sluice,,42,95.5,,,,right\n"
            ",51,,,74,,wet_asphalt,\n");
  EXPECT_EQ(trackCsv(profile.tracks[1]),
            "distance_m,curvature_per_km,slope_percent,x_m,y_m\n"
            "0,0,0.5,0,0\n5,12.25,0,5,0\n10,-3,-1.75,9.99,0.31\n");
}

// Whatever is pasted is read or refused at a place inside it.
TEST(SegmentTable, TakesOrRefusesWhateverIsPasted) {
  std::mt19937 random(20260513);
  const std::string pieces[] = {"name", "length_m", "Radius (ft)", "angle", "400",   "60,5", "-3",  "1e300",
                                "nan",  "°",        "90°",         "sand",  "right", "\"",   "\n",  "\n",
                                "\t",   ";",        ",",           ",",     " ",     "ü",    "'=1", "\r\n"};
  std::uniform_int_distribution<std::size_t> which(0, std::size(pieces) - 1), length(1, 40);
  int taken = 0;
  for (int round = 0; round < 20000; ++round) {
    std::string text;
    for (std::size_t i = length(random); i > 0; --i) text += pieces[which(random)];
    const auto read = readSegments(text);
    const int lines = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 1;
    if (const auto* refusal = std::get_if<SegmentTableRefusal>(&read)) {
      EXPECT_GE(refusal->row, 0);
      EXPECT_LE(refusal->row, lines) << text;
    } else {
      ++taken;
      const auto& segments = std::get<SegmentsRead>(read).segments;
      EXPECT_EQ(segmentsIn(segmentsCsv(segments)).segments, segments) << text;
    }
  }
  EXPECT_GT(taken, 5);
}

}  // namespace
}  // namespace layshaft::test
