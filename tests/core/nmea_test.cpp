// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/nmea.h"

#include <cstdio>

#include "tests/core/recordings.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// The sentence with its checksum, and an end of line.
std::string summed(const std::string& body) {
  unsigned sum = 0;
  for (const char c : body) sum ^= static_cast<unsigned char>(c);
  char end[8];
  std::snprintf(end, sizeof end, "*%02X\r\n", sum);
  return "$" + body + end;
}

Problem nmeaProblem(const std::string& text) {
  const auto recording = readNmea(text);
  EXPECT_FALSE(recording.ok()) << text.substr(0, 200);
  return recording ? Problem{} : recording.problem();
}

// Sentences with checksums as receivers' handbooks print them; degrees and m/s worked out by hand from them:
// 48° + 7.038'/60, 22.4 kn × 1852/3600.
TEST(Nmea, SentencesOfHandbooks) {
  const std::string text =
      "$GPVTG,309.62,T,,M,0.13,N,0.2,K*6E\n"
      "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\n"
      "$GPRMC,161229.487,A,3723.2475,N,12158.3416,W,0.13,309.62,120598,,*10\n";
  ASSERT_TRUE(holdsNmea(text));
  const auto recording = readNmea(text);
  ASSERT_TRUE(recording.ok());
  EXPECT_EQ(recording->damaged, 0U) << "checksums are as printed";
  ASSERT_EQ(recording->fixes.size(), 2U);
  const Fix &first = recording->fixes[0], &second = recording->fixes[1];
  EXPECT_NEAR(first.north, 48.1173, 1e-9);
  EXPECT_NEAR(first.east, 11.516666667, 1e-9);
  EXPECT_NEAR(first.speedMps.value(), 11.523556, 1e-6);
  EXPECT_NEAR(second.north, 37.387458333, 1e-9);
  EXPECT_NEAR(second.east, -121.97236, 1e-9);
  // By GNU date: 1994-03-23T12:35:19Z and 1998-05-12T16:12:29Z.
  EXPECT_EQ(first.timeS, 764426119.0);
  EXPECT_NEAR(second.timeS.value(), 894989549.487, 1e-6);
}

TEST(Nmea, SentencesOfOneTimeMakeOneFix) {
  const auto recording = readNmea(summed("GNGGA,101112.20,4800.0,N,01100.0,E,1,09,0.9,512.5,M,47.0,M,,") +
                                  summed("GNRMC,101112.20,A,4800.0,N,01100.0,E,10.0,0.0,120526,,,A") +
                                  summed("GNRMC,101112.40,A,4800.1,N,01100.0,E,,0.0,120526,,,A"));
  ASSERT_TRUE(recording.ok());
  ASSERT_EQ(recording->fixes.size(), 2U);
  EXPECT_EQ(recording->fixes[0].heightM, 512.5);
  EXPECT_NEAR(recording->fixes[0].speedMps.value(), 18520.0 / 3600.0, 1e-12);
  EXPECT_FALSE(recording->fixes[1].heightM);
  EXPECT_FALSE(recording->fixes[1].speedMps);
  EXPECT_NEAR(*recording->fixes[1].timeS - *recording->fixes[0].timeS, 0.2, 1e-6);
}

TEST(Nmea, TimesWithoutADateGoOnOverMidnight) {
  const auto recording = readNmea(summed("GPGGA,235959,4800.0,N,01100.0,E,1,09,0.9,512.5,M,47.0,M,,") +
                                  summed("GPGGA,000001,4800.0,S,01100.0,W,1,09,0.9,512.5,M,47.0,M,,"));
  ASSERT_TRUE(recording.ok());
  EXPECT_EQ(*recording->fixes.at(1).timeS - *recording->fixes.at(0).timeS, 2.0);
  EXPECT_EQ(recording->fixes[1].north, -48.0);
  EXPECT_EQ(recording->fixes[1].east, -11.0);
}

TEST(Nmea, WhatIsDamagedOrWithoutAFixIsLeftOutAndCounted) {
  const std::string good = summed("GPRMC,101113,A,4800.0,N,01100.0,E,10.0,0.0,120526,,,A");
  std::string flipped = summed("GPRMC,101114,A,4801.0,N,01100.0,E,10.0,0.0,120526,,,A");
  flipped[20] = '9';
  const auto recording = readNmea("boot 1.2\n12:00 " + good + flipped + "$GPRMC,1011\n" +
                                  summed("GPRMC,101115,V,,,,,,,120526,,,N") +
                                  summed("GPGGA,101116,,,,,0,00,,,M,,M,,") + summed("GPRMC,,V,,,,,,,,,,N"));
  ASSERT_TRUE(recording.ok());
  EXPECT_EQ(recording->fixes.size(), 1U);
  EXPECT_EQ(recording->damaged, 2U);
  EXPECT_EQ(recording->noFix, 3U);
}

TEST(Nmea, WhatIsWrongIsNamedWithItsPlace) {
  EXPECT_EQ(nmeaProblem("$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6B\n"),
            (Problem{.kind = Kind::BadChecksum, .given = "6B", .allowed = {"6A"}, .line = 1, .column = 67}));
  EXPECT_EQ(nmeaProblem("\n$GPRMC,123519,A,4807.038,N"),
            (Problem{.kind = Kind::BadChecksum, .allowed = {"57"}, .line = 2, .column = 27}));
  const auto rmc = [](const std::string& time, const std::string& place, const std::string& rest) {
    return "\n" + summed("GPRMC," + time + ",A," + place + "," + rest);
  };
  const std::string place = "4807.038,N,01131.000,E", rest = "022.4,084.4,230394,003.1,W";
  EXPECT_EQ(nmeaProblem(rmc("123519", "9107.038,N,01131.000,E", rest)), (Problem{.kind = Kind::OutOfRange,
                                                                                 .path = "latitude",
                                                                                 .given = "9107.038",
                                                                                 .high = 9000,
                                                                                 .unit = "ddmm",
                                                                                 .line = 2,
                                                                                 .column = 17}));
  EXPECT_EQ(nmeaProblem(rmc("123519", "4860.5,N,01131.000,E", rest)).kind, Kind::OutOfRange) << "minutes";
  EXPECT_EQ(nmeaProblem(rmc("123519", "4807.038,X,01131.000,E", rest)), (Problem{.kind = Kind::NotOneOf,
                                                                                 .path = "latitude",
                                                                                 .given = "X",
                                                                                 .allowed = {"N", "S"},
                                                                                 .line = 2,
                                                                                 .column = 26}));
  EXPECT_EQ(nmeaProblem(rmc("123519", "4807.038,N,nan,E", rest)),
            (Problem{.kind = Kind::NotFinite, .path = "longitude", .given = "nan", .line = 2, .column = 28}));
  EXPECT_EQ(nmeaProblem(rmc("123519", ",,,", rest)).kind, Kind::WrongType);
  EXPECT_EQ(nmeaProblem(rmc("129919", place, rest)), (Problem{.kind = Kind::NotATime,
                                                              .path = "time",
                                                              .given = "129919",
                                                              .allowed = {"hhmmss.sss"},
                                                              .line = 2,
                                                              .column = 8}));
  EXPECT_EQ(nmeaProblem(rmc("123519", place, "022.4,084.4,320394,003.1,W")), (Problem{.kind = Kind::NotATime,
                                                                                      .path = "date",
                                                                                      .given = "320394",
                                                                                      .allowed = {"ddmmyy"},
                                                                                      .line = 2,
                                                                                      .column = 52}));
  EXPECT_EQ(nmeaProblem(rmc("123519", place, "fast,084.4,230394,003.1,W")).path, "speed");
}

}  // namespace
}  // namespace layshaft::test
