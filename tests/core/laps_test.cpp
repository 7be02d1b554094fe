// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/laps.h"

#include "tests/core/recordings.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

RecordedLine lineOf(const Recording& recording) {
  const auto line = recordedLine(recording);
  if (!line) throw std::runtime_error("no line: " + line.problem().path);
  return *line;
}

/// Circumference of the ellipse of halves 150 m and 100 m: Ramanujan's second formula gives 793.2719 (Quart.
/// J. Math. 45 (1914), 350-372), good to 1e-4 here.
constexpr double kAroundM = 793.272;

TEST(Laps, OnceAroundIsOne) {
  const auto laps = findLaps(lineOf(ellipse(150, 100)));
  ASSERT_EQ(laps.size(), 1U);
  EXPECT_NEAR(laps[0].lengthM, kAroundM, 0.1) << "a polygon in the ellipse is a little shorter";
  EXPECT_LE(laps[0].closingGapM, 2.01) << "a step";
}

TEST(Laps, EveryTimeAroundIsOne) {
  const auto laps = findLaps(lineOf(ellipse(150, 100, {.turns = 4.3, .noiseM = 0.2})));
  ASSERT_EQ(laps.size(), 4U);
  for (const RecordedLap& lap : laps) {
    EXPECT_NEAR(lap.lengthM, kAroundM, 10.0) << "noise makes it longer";
    EXPECT_LT(lap.closingGapM, 1.5);
  }
}

/// Where only the line's own beginning is passed once more than every other place.
TEST(Laps, OfASmallCircleThatEndsJustPastItsBeginning) {
  for (const double radiusM : {40.0, 60.0, 80.0, 100.0, 150.0})
    for (const double turns : {3.02, 5.05})
      EXPECT_GE(findLaps(lineOf(ellipse(radiusM, radiusM, {.turns = turns}))).size(),
                static_cast<std::size_t>(turns) - 1)
          << radiusM << ", " << turns;
}

// Half a minute in the paddock, out through its lane, laps of a poor receiver at ten fixes a second, and in
// again.
TEST(Laps, OfADayAtTheTrack) {
  for (unsigned seed = 1; seed <= 10; ++seed) {
    constexpr double kNoiseM = 1.5;
    std::mt19937 random(seed);
    std::normal_distribution<> noise(0.0, kNoiseM);
    Recording recording{.kind = Recording::Kind::Gpx, .onEarth = false};
    const auto at = [&](double x, double y) {
      recording.fixes.push_back({.east = x + noise(random), .north = y + noise(random)});
    };
    for (int i = 0; i < 300; ++i) at(110, -130);
    for (int i = 0; i < 60; ++i) at(110 + 40.0 * i / 60, -130 + 130.0 * i / 60);
    for (const Fix& fix :
         ellipse(150, 100, {.stepM = 1.5, .turns = 4.4, .noiseM = kNoiseM, .seed = seed}).fixes)
      recording.fixes.push_back(fix);
    for (std::size_t i = 0; i < recording.fixes.size(); ++i)
      recording.fixes[i].timeS = 0.1 * static_cast<double>(i);
    const RecordedLine line = lineOf(recording);
    const auto laps = findLaps(line);
    ASSERT_EQ(laps.size(), 4U) << seed;
    for (const RecordedLap& lap : laps) {
      EXPECT_NEAR(lap.timeS.value(), kAroundM / 15.0, 1.3) << seed;
      EXPECT_LT(lap.closingGapM, 5.0 * kNoiseM) << seed << ": it does not begin in the lane";
    }
  }
}

TEST(Laps, TheEndMayRunPastTheBeginning) {
  for (const double turns : {1.002, 1.006, 1.012, 1.03, 1.2}) {
    const auto laps = findLaps(lineOf(ellipse(150, 100, {.turns = turns})));
    ASSERT_EQ(laps.size(), 1U) << turns;
    EXPECT_NEAR(laps[0].lengthM, kAroundM, 0.2) << turns;
    EXPECT_LT(laps[0].closingGapM, 0.1) << turns;
  }
}

TEST(Laps, ALineThatDoesNotComeBackHasNone) {
  EXPECT_TRUE(findLaps(lineOf(ellipse(150, 100, {.turns = 0.9}))).empty());
  EXPECT_TRUE(findLaps(lineOf(through({{0, 0}, {50, 0}, {100, 10}, {150, 40}}))).empty());
}

TEST(Laps, ThereAndBackIsNone) {
  Recording recording{.kind = Recording::Kind::Table, .onEarth = false};
  for (int i = 0; i <= 100; ++i) recording.fixes.push_back({.east = 5.0 * i, .north = 0});
  for (int i = 100; i >= 0; --i) recording.fixes.push_back({.east = 5.0 * i, .north = 6});
  EXPECT_TRUE(findLaps(lineOf(recording)).empty()) << "the direction is another";
}

TEST(Laps, AFigureOfEightIsOneLapNotTwo) {
  Recording recording{.kind = Recording::Kind::Table, .onEarth = false};
  for (int i = 0; i < 500; ++i) {
    const double t = 2.0 * units::kPi * i / 500.0 * 1.1;
    recording.fixes.push_back({.east = 200.0 * std::sin(t), .north = 100.0 * std::sin(2.0 * t)});
  }
  const auto laps = findLaps(lineOf(recording));
  ASSERT_EQ(laps.size(), 1U);
  // Arc length of (200 sin t, 100 sin 2t) by Simpson's rule.
  double aroundM = 0.0;
  constexpr int kParts = 20000;
  for (int i = 0; i <= kParts; ++i) {
    const double t = 2.0 * units::kPi * i / kParts;
    const double weight = i == 0 || i == kParts ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
    aroundM +=
        weight * std::hypot(200.0 * std::cos(t), 200.0 * std::cos(2.0 * t)) * 2.0 * units::kPi / kParts / 3.0;
  }
  EXPECT_NEAR(laps[0].lengthM, aroundM, 0.5);
}

TEST(Laps, TheFastestIsTakenAndNoShortCut) {
  std::vector<RecordedLap> laps(4);
  const double lengths[] = {1000, 1001, 700, 999}, times[] = {70, 65, 40, 66}, gaps[] = {3, 2, 0, 1};
  for (std::size_t k = 0; k < laps.size(); ++k) {
    laps[k].lengthM = lengths[k];
    laps[k].timeS = times[k];
    laps[k].closingGapM = gaps[k];
  }
  EXPECT_EQ(bestLap(laps), 1U);
  laps[0].timeS.reset();
  EXPECT_EQ(bestLap(laps), 3U) << "without times the one that closes best";
}

TEST(RecordedLine, WhatSaysNothingIsLeftOut) {
  Recording recording{.kind = Recording::Kind::Gpx, .onEarth = false};
  double time = 0.0;
  const auto at = [&](double x, double y) {
    recording.fixes.push_back({.east = x, .north = y, .timeS = time += 0.1});
  };
  std::mt19937 random(3);
  std::normal_distribution<> wander(0.0, 0.1);
  for (int i = 0; i < 100; ++i) at(2.0 * i, 0);
  at(600, 600);                            // nothing rides 600 m in 0.1 s
  for (int i = 0; i < 5; ++i) at(200, 0);  // a logger faster than its receiver
  for (int i = 0; i < 300; ++i) at(202 + wander(random), wander(random));  // half a minute on the spot
  for (int i = 0; i < 100; ++i) at(204 + 2.0 * i, 0);
  const RecordedLine line = lineOf(recording);
  EXPECT_EQ(line.leftOut.leaps, 1U);
  EXPECT_GE(line.leftOut.standing, 280U);
  EXPECT_EQ(line.leftOut.repeated, 4U);
  EXPECT_EQ(line.points.size() + line.leftOut.total(), recording.fixes.size()) << "nothing is lost unsaid";
  EXPECT_NEAR(line.distanceM.back(), 402.0, 10.0) << "standing adds no length";
}

TEST(RecordedLine, SpikesWithoutTimesAreLeftOut) {
  Recording recording = ellipse(150, 100, {.stepM = 5});
  recording.fixes[40].east += 200;
  const RecordedLine line = lineOf(recording);
  EXPECT_EQ(line.leftOut.leaps, 1U);
}

TEST(RecordedLine, RefusesWhatIsNoLine) {
  const auto tooShort = recordedLine(through({{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}}));
  ASSERT_FALSE(tooShort.ok());
  EXPECT_EQ(tooShort.problem(), (Problem{.kind = Kind::OutOfRange,
                                         .path = "length_m",
                                         .given = "4",
                                         .low = 20,
                                         .high = 100000,
                                         .unit = "m"}));
  const auto apart = recordedLine(through({{0, 0}, {10, 0}, {20, 0}, {500000, 0}, {999999, 0}}));
  ASSERT_FALSE(apart.ok());
  EXPECT_EQ(apart.problem().path, "points");
  const auto same = recordedLine(through({{7, 7}, {7, 7}, {7, 7}, {7, 7}, {7, 7}}));
  ASSERT_FALSE(same.ok());
  EXPECT_EQ(same.problem().kind, Kind::WrongCount);
}

}  // namespace
}  // namespace layshaft::test
