// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/recording.h"

#include <unistd.h>

#include <random>

#include "core/limits.h"
#include "core/track/recorded_track.h"
#include "tests/core/recordings.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

const std::string kNmeaLap =
    "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\n"
    "$GPRMC,161229.487,A,3723.2475,N,12158.3416,W,0.13,309.62,120598,,*10\n"
    "$GPRMC,161230.487,A,3723.2475,N,12158.3416,W,0.13,309.62,120598,,*18\n"
    "$GPRMC,161231.487,A,3723.2475,N,12158.3416,W,0.13,309.62,120598,,*19\n";

TEST(Recording, ItsKindShowsInItsContent) {
  const auto kindOf = [](const std::string& text) {
    const auto recording = readRecording(text, "a name");
    EXPECT_TRUE(recording.ok()) << text.substr(0, 100);
    EXPECT_EQ(recording->source, "a name");
    return recording->kind;
  };
  EXPECT_EQ(kindOf("\xEF\xBB\xBF" + gpxCircle(10)), Recording::Kind::Gpx);
  EXPECT_EQ(kindOf("\n" + gpxCircle(10).substr(gpxCircle(10).find("<gpx"))), Recording::Kind::Gpx);
  EXPECT_EQ(kindOf("$PVERS,1,2*00\n" + kNmeaLap), Recording::Kind::Nmea);
  EXPECT_EQ(kindOf("\xEF\xBB\xBFx;y\n0;0\n1;1\n2;2\n3;3\n"), Recording::Kind::Table);
}

TEST(Recording, WhatIsNoneIsRefused) {
  const std::string binary("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16);
  for (const std::string& text : {std::string(), std::string("\n\n"), std::string("hello"), binary}) {
    const auto recording = readRecording(text, "");
    ASSERT_FALSE(recording.ok());
    EXPECT_EQ(recording.problem().kind, Kind::NotARecording) << text;
    EXPECT_EQ(recording.problem().line, 1U);
  }
}

TEST(Recording, OnePointIsNoLine) {
  const auto recording = readRecording(gpxOf("<trkpt lat=\"1\" lon=\"2\"/>\n"), "");
  ASSERT_FALSE(recording.ok());
  EXPECT_EQ(recording.problem(), (Problem{.kind = Kind::WrongCount,
                                          .path = "points",
                                          .given = "1",
                                          .low = limits::kFewestFixes,
                                          .high = limits::kMostFixes,
                                          .line = 6,
                                          .column = 1}));
}

TEST(Recording, NowhereIsNoFix) {
  const auto recording = readRecording("lat,lon\n0,0\n48,11\n48,11.001\n0,0\n48,11.002\n48,11.003\n", "");
  ASSERT_TRUE(recording.ok());
  EXPECT_EQ(recording->noFix, 2U);
  EXPECT_EQ(recording->fixes.size(), 4U);
}

TEST(Recording, AMillionPointsAreRead) {
  constexpr int kCount = 1000000;
  const auto recording = readRecording(gpxCircle(kCount), "");
  ASSERT_TRUE(recording.ok());
  EXPECT_EQ(recording->fixes.size(), static_cast<std::size_t>(kCount));
}

TEST(Recording, AFileOfAGibibyteIsRefusedUnread) {
  const auto file = std::filesystem::temp_directory_path() / ("layshaft-large-" + std::to_string(::getpid()));
  std::ofstream(file) << "<gpx>";
  std::filesystem::resize_file(file, std::uintmax_t{1} << 30);
  const auto recording = loadRecording(file);
  std::filesystem::remove(file);
  ASSERT_FALSE(recording.ok());
  EXPECT_EQ(recording.problem().kind, Kind::FileTooLarge);
}

TEST(Recording, IsCalledByItsFileWithoutTheFolder) {
  const auto file =
      std::filesystem::temp_directory_path() / ("layshaft-lap-" + std::to_string(::getpid()) + ".gpx");
  std::ofstream(file) << gpxCircle(20);
  const auto recording = loadRecording(file);
  std::filesystem::remove(file);
  ASSERT_TRUE(recording.ok());
  EXPECT_EQ(recording->source, file.filename().string());
}

/// Changes a text as broken disks, cut lines and careless hands do.
std::string spoilt(std::string text, std::mt19937& random) {
  const auto below = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n)(random); };
  static const std::string kPieces[] = {"\"", "<",     ">",    "&",         ";",     ",",
                                        "\n", "$",     "*",    "-",         "1e308", "NaN",
                                        "90", "]]>",   "<!--", "<![CDATA[", "\0",    "9999999999999",
                                        "é",  "trkpt", " "};
  for (std::size_t k = 0, changes = 1 + below(6); k < changes; ++k) {
    if (text.empty()) return text;
    const std::size_t at = below(text.size() - 1), length = std::min(below(60), text.size() - at);
    switch (below(5)) {
      case 0:
        text[at] = static_cast<char>(below(255));
        break;
      case 1:
        text.erase(at, length);
        break;
      case 2:
        text.insert(at, text.substr(below(text.size() - 1), length));
        break;
      case 3:
        text.insert(at, kPieces[below(std::size(kPieces) - 1)]);
        break;
      case 4:
        if (text[at] >= '0' && text[at] <= '9') text[at] = static_cast<char>('0' + below(9));
        break;
      default:
        if (below(20) == 0) text.resize(at);
    }
  }
  return text;
}

TEST(Recording, NoSpoiltTextDoesHarm) {
  std::string table = "note;of;ride\ntime [s];lat;lon;alt\n", plane = "x,y,z\n";
  std::string nmea;
  for (int i = 0; i < 60; ++i) {
    const double t = 2.0 * units::kPi * i / 50.0;
    table += std::to_string(i) + ",5;" + std::to_string(48.0 + 0.001 * std::sin(t)) + ";" +
             std::to_string(11.0 + 0.001 * std::cos(t)) + ";500\n";
    plane += std::to_string(100.0 * std::cos(t)) + "," + std::to_string(80.0 * std::sin(t)) + "," +
             std::to_string(i) + "\n";
  }
  for (int i = 0; i < 15; ++i) nmea += kNmeaLap;
  std::mt19937 random(20261129);
  std::size_t read = 0, tracks = 0, refused = 0;
  for (const std::string& base : {gpxCircle(60), nmea, table, plane})
    for (int k = 0; k < 1500; ++k) {
      const auto recording = readRecording(spoilt(base, random), "");
      if (!recording) {
        ++refused;
        EXPECT_GT(recording.problem().line, 0U) << "every refusal has its place";
        continue;
      }
      ++read;
      const auto track = recordedTrack(*recording);
      if (!track) continue;
      ++tracks;
      for (const auto* list :
           {&track->path.curvaturePerKm, &track->path.slopePercent, &track->path.xM, &track->path.yM})
        for (const double x : *list) ASSERT_TRUE(std::isfinite(x));
    }
  EXPECT_GT(read, 500U) << "the texts are spoilt, not ground to dust";
  EXPECT_GT(tracks, 300U);
  EXPECT_GT(refused, 500U);
}

}  // namespace
}  // namespace layshaft::test
