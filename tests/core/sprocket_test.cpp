// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/sprocket.h"

#include <gtest/gtest.h>

#include <limits>

#include "core/parts/chain.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TEST(Teeth, TakesTheEndsOfItsPlace) {
  EXPECT_EQ(Teeth::front(6)->count(), 6);
  EXPECT_EQ(Teeth::front(48)->count(), 48);
  EXPECT_EQ(Teeth::rear(12)->count(), 12);
  EXPECT_EQ(Teeth::rear(120)->count(), 120);
}

TEST(Teeth, RefusesJustOutside) {
  EXPECT_EQ(Teeth::front(5).problem(),
            (Problem{.kind = Kind::OutOfRange, .given = "5", .low = 6, .high = 48}));
  EXPECT_EQ(Teeth::front(49).problem(),
            (Problem{.kind = Kind::OutOfRange, .given = "49", .low = 6, .high = 48}));
  EXPECT_EQ(Teeth::rear(11).problem(),
            (Problem{.kind = Kind::OutOfRange, .given = "11", .low = 12, .high = 120}));
  EXPECT_EQ(Teeth::rear(121).problem(),
            (Problem{.kind = Kind::OutOfRange, .given = "121", .low = 12, .high = 120}));
  for (const int teeth : {0, -16, std::numeric_limits<int>::min(), std::numeric_limits<int>::max()}) {
    EXPECT_FALSE(Teeth::front(teeth)) << teeth;
    EXPECT_FALSE(Teeth::rear(teeth)) << teeth;
  }
}

TEST(Teeth, CompareByCount) {
  EXPECT_TRUE(front(16) == rear(16));
  EXPECT_TRUE(front(15) < front(16));
}

TEST(FinalRatio, IsRearOverFront) {
  EXPECT_DOUBLE_EQ(finalRatio(front(16), rear(43)), 2.6875);
  EXPECT_DOUBLE_EQ(finalRatio(front(15), rear(45)), 3.0);
  EXPECT_DOUBLE_EQ(finalRatio(front(32), rear(24)), 0.75);
}

TEST(ChainSize, IsFoundByItsNumber) {
  ASSERT_TRUE(chainSize("520"));
  EXPECT_EQ(chainSize("520")->name, "520");
  EXPECT_EQ(chainSize("520")->pitchMm, 15.875);
  EXPECT_EQ(chainSize("428")->pitchMm, 12.7);
  EXPECT_GT(chainSize("530")->innerWidthMm, chainSize("525")->innerWidthMm);
  for (const char* other : {"", "5", "52", "5200", "521", " 520", "520 ", "#520"})
    EXPECT_FALSE(chainSize(other)) << other;
}

}  // namespace
}  // namespace layshaft::test
