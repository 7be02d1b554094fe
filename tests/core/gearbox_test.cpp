// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/gearbox.h"

#include <gtest/gtest.h>

#include <vector>

#include "core/limits.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TEST(GearRatios, KeepsWhatItIsGiven) {
  const Result<GearRatios> ratios = GearRatios::make({2.71, 2.06, 1.24});
  ASSERT_TRUE(ratios);
  EXPECT_EQ(ratios->count(), 3U);
  EXPECT_EQ((*ratios)[0], 2.71);
  EXPECT_EQ((*ratios)[2], 1.24);
  EXPECT_EQ(ratios->values(), (std::vector<double>{2.71, 2.06, 1.24}));
}

TEST(GearRatios, TakesOneToTenGears) {
  EXPECT_TRUE(GearRatios::make({1.0}));
  EXPECT_TRUE(GearRatios::make({10, 9, 8, 7, 6, 5, 4, 3, 2, 1}));
}

TEST(GearRatios, RefusesNoneAndEleven) {
  EXPECT_EQ(GearRatios::make({}).problem(),
            (Problem{.kind = Kind::WrongCount, .given = "0", .low = 1, .high = 10}));
  EXPECT_EQ(GearRatios::make({11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1}).problem(),
            (Problem{.kind = Kind::WrongCount, .given = "11", .low = 1, .high = 10}));
}

TEST(GearRatios, TakesTheEndsOfTheLimit) {
  EXPECT_TRUE(GearRatios::make({20, 0.1}));
}

TEST(GearRatios, RefusesJustOutside) {
  EXPECT_EQ(GearRatios::make({20.5, 1}).problem(),
            (Problem{.kind = Kind::OutOfRange, .path = "[0]", .given = "20.5", .low = 0.1, .high = 20}));
  EXPECT_EQ(GearRatios::make({2, 0.09}).problem(),
            (Problem{.kind = Kind::OutOfRange, .path = "[1]", .given = "0.09", .low = 0.1, .high = 20}));
  EXPECT_FALSE(GearRatios::make({std::nextafter(20, 21)}));
  EXPECT_FALSE(GearRatios::make({std::nextafter(0.1, 0)}));
  EXPECT_FALSE(GearRatios::make({0.0}));
  EXPECT_FALSE(GearRatios::make({-1.0}));
}

TEST(GearRatios, RefusesWhatIsNotFinite) {
  for (const double bad : {kNaN, kInfinity, -kInfinity}) {
    const Problem problem = GearRatios::make({2, bad, 1}).problem();
    EXPECT_EQ(problem.kind, Kind::NotFinite);
    EXPECT_EQ(problem.path, "[1]");
  }
}

TEST(GearRatios, RefusesGearsThatDoNotFall) {
  const Problem equal = GearRatios::make({2.5, 2, 2, 1}).problem();
  EXPECT_EQ(equal.kind, Kind::NotFalling);
  EXPECT_EQ(equal.path, "[2]");
  EXPECT_EQ(equal.given, "2");
  EXPECT_EQ(equal.high, 2);
  const Problem rising = GearRatios::make({2.5, 2.6}).problem();
  EXPECT_EQ(rising.kind, Kind::NotFalling);
  EXPECT_EQ(rising.path, "[1]");
  EXPECT_EQ(rising.high, 2.5);
  EXPECT_TRUE(GearRatios::make({2, std::nextafter(2, 0)}));
}

}  // namespace
}  // namespace layshaft::test
