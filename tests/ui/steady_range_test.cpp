// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/steady_range.h"

#include <cmath>

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

using ui::AxisRange;
using ui::roundRange;
using ui::steadyRange;

TEST(RoundRange, EndsOnRoundNumbersThatHoldTheData) {
  EXPECT_EQ(roundRange(0, 288, 14), (AxisRange{0, 300, 50}));
  EXPECT_EQ(roundRange(0, 16.1, 9), (AxisRange{0, 18, 2}));
  EXPECT_EQ(roundRange(9.3, 16.1, 9), (AxisRange{9, 17, 1}));
  EXPECT_EQ(roundRange(0, 0.31, 7), (AxisRange{0, 0.35000000000000003, 0.05}));
}

TEST(RoundRange, DataOnARoundNumberNeedNoStepMore) {
  EXPECT_EQ(roundRange(0, 300, 6), (AxisRange{0, 300, 50}));
  EXPECT_EQ(roundRange(0, 0.3, 3), (AxisRange{0, 0.30000000000000004, 0.1}));
}

TEST(RoundRange, TheStepIsOneTwoOrFiveTimesAPowerOfTen) {
  for (double span = 0.013; span < 1e5; span *= 1.17) {
    const AxisRange range = roundRange(0, span, 9);
    const double mantissa = range.step / std::pow(10.0, std::floor(std::log10(range.step) + 1e-9));
    EXPECT_TRUE(std::abs(mantissa - 1) < 1e-6 || std::abs(mantissa - 2) < 1e-6 ||
                std::abs(mantissa - 5) < 1e-6)
        << span << " gives a step of " << range.step;
    EXPECT_GE(range.high, span * (1 - 1e-9));
    EXPECT_LE((range.high - range.low) / range.step, 10 + 1e-6) << "too many ticks for " << span;
  }
}

TEST(Ticks, StandOnBothRoundEndsAndNotBeyondAnotherEnd) {
  EXPECT_EQ(ui::ticks({0, 1400, 200}).size(), 8U);
  EXPECT_EQ(ui::ticks({0, 1400, 200}).back(), 1400);
  EXPECT_EQ(ui::ticks(roundRange(0, 0.3, 3)).size(), 4U) << "in tenths, too";
  EXPECT_EQ(ui::ticks({0, 1380, 200}).back(), 1200);
}

TEST(RoundRange, NoSpanStillGivesAnAxis) {
  const AxisRange range = roundRange(5, 5, 9);
  EXPECT_GT(range.high, range.low);
  EXPECT_LE(range.low, 5);
  EXPECT_GE(range.high, 5);
}

TEST(CloseRange, TakesTicksThatStandCloserWhereThatLeavesLessEmpty) {
  EXPECT_EQ(roundRange(0, 15.2, 6), (AxisRange{0, 20, 5}));
  EXPECT_EQ(ui::closeRange(0, 15.2, 6), (AxisRange{0, 16, 2}));
  EXPECT_EQ(ui::closeRange(0, 14.9, 6), (AxisRange{0, 15, 5})) << "not where next to nothing is won";
}

TEST(SteadyRange, GoesToTheRangeThatItIsGiven) {
  const AxisRange home{0, 300, 50}, other{0, 160, 20};
  EXPECT_EQ(steadyRange(home, 0, 280, other), home);
  EXPECT_EQ(steadyRange(home, 0, 150, other), other);
}

TEST(SteadyRange, StaysWhileTheDataStayInsideAndFillIt) {
  const AxisRange current{0, 300, 20};
  for (const double fastest : {299.9, 290.0, 260.0, 220.0})
    EXPECT_EQ(steadyRange(current, 0, fastest, 14), current) << fastest;
}

TEST(SteadyRange, MovesWhenDataLeave) {
  EXPECT_EQ(steadyRange({0, 300, 20}, 0, 301, 14), roundRange(0, 301, 14));
  EXPECT_EQ(steadyRange({2, 10, 1}, 1.9, 10, 9), roundRange(1.9, 10, 9));
}

TEST(SteadyRange, MovesWhenTheDataAreFarFromFillingIt) {
  EXPECT_EQ(steadyRange({0, 300, 20}, 0, 180, 14), roundRange(0, 180, 14));
}

TEST(SteadyRange, TurningAValueOverAnEndAndBackMovesTheAxisOnce) {
  AxisRange range = roundRange(0, 250, 14);
  int moves = 0;
  const auto turnTo = [&](double fastest) {
    const AxisRange next = steadyRange(range, 0, fastest, 14);
    moves += next == range ? 0 : 1;
    range = next;
  };
  for (int i = 0; i < 5; ++i) {
    for (int v = 250; v <= 270; ++v) turnTo(v);
    for (int v = 270; v >= 250; --v) turnTo(v);
  }
  EXPECT_EQ(moves, 1);
}

}  // namespace
}  // namespace layshaft::test
