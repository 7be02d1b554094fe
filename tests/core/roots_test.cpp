// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/roots.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

double rootOf(double (*f)(double), double a, double b) {
  return polishedRoot(f, a, b, f(a), f(b));
}

std::array<double, 4> atThirds(double (*f)(double), double a, double b) {
  const double third = (b - a) / 3.0;
  return {f(a), f(a + third), f(b - third), f(b)};
}

TEST(CubicKeepsSign, IsOnlySaidWhereNoSignChangeCanHide) {
  const auto dip = [](double x) { return (x - 0.4) * (x - 0.45) * (x + 1.0); };  // negative from 0.4 to 0.45
  EXPECT_GT(atThirds(dip, 0.0, 1.0)[1], 0.0) << "all four values are positive";
  EXPECT_FALSE(cubicKeepsSign(atThirds(dip, 0.0, 1.0)));
  EXPECT_TRUE(cubicKeepsSign(atThirds([](double x) { return x * x * x + 1.0; }, 0.0, 2.0)));
  EXPECT_TRUE(cubicKeepsSign(atThirds([](double x) { return -x * x - 3.0; }, -1.0, 2.0)));
  EXPECT_FALSE(cubicKeepsSign(atThirds([](double x) { return x; }, 0.0, 1.0))) << "zero at an end";
}

TEST(PolishedRoot, IsGoodToTheLastDigits) {
  EXPECT_DOUBLE_EQ(rootOf([](double x) { return x * x - 2.0; }, 0.0, 2.0), std::sqrt(2.0));
  EXPECT_DOUBLE_EQ(rootOf([](double x) { return x * x - 2.0; }, 2.0, 0.0), std::sqrt(2.0)) << "ends turned";
  EXPECT_EQ(rootOf([](double x) { return x - 1.0; }, 1.0, 5.0), 1.0) << "it begins there";
  EXPECT_EQ(rootOf([](double x) { return x - 5.0; }, 1.0, 5.0), 5.0) << "it ends there";
}

TEST(PolishedRoot, OfEqualEndsIsThatPlace) {
  EXPECT_EQ(rootOf([](double x) { return x + 1.0; }, 3.0, 3.0), 3.0);
  EXPECT_EQ(polishedRoot([](double x) { return x; }, 3.0, 3.0, -1.0, 1.0), 3.0);
}

TEST(PolishedRoot, WithoutAChangeOfSignIsTheEndWithTheSmallerValue) {
  EXPECT_EQ(rootOf([](double x) { return x; }, 1.0, 4.0), 1.0);
  EXPECT_EQ(rootOf([](double x) { return x; }, -4.0, -1.0), -1.0);
  EXPECT_EQ(rootOf([](double x) { return x; }, 4.0, 1.0), 1.0);
}

TEST(PolishedRoot, TakesNoNumberForAnEnd) {
  const auto line = [](double x) { return x; };
  EXPECT_EQ(polishedRoot(line, -1.0, 1.0, kNaN, 1.0), 1.0);
  EXPECT_EQ(polishedRoot(line, -1.0, 1.0, -1.0, kNaN), -1.0);
  EXPECT_TRUE(std::isnan(polishedRoot(line, kNaN, 1.0, -1.0, 1.0)));
  const auto hole = [](double x) { return x == -1.0 || x == 1.0 ? x : kNaN; };
  const double inside = polishedRoot(hole, -1.0, 1.0, -1.0, 1.0);
  EXPECT_TRUE(inside >= -1.0 && inside <= 1.0) << inside;
}

TEST(PolishedRoot, EndsAtInfinity) {
  const auto line = [](double x) { return x; };
  EXPECT_EQ(polishedRoot(line, -kInfinity, 1.0, -kInfinity, 1.0), 1.0);
  EXPECT_EQ(polishedRoot(line, -1.0, kInfinity, -1.0, kInfinity), -1.0);
  const double steep = polishedRoot([](double x) { return x < 0.5 ? -kInfinity : kInfinity; }, 0.0, 1.0,
                                    -kInfinity, kInfinity);
  EXPECT_TRUE(steep >= 0.0 && steep <= 1.0) << steep;
  constexpr double kHuge = std::numeric_limits<double>::max();
  const double far = polishedRoot(line, -kHuge, kHuge, -kHuge, kHuge);
  EXPECT_TRUE(far >= -kHuge && far <= kHuge) << far;
}

}  // namespace
}  // namespace layshaft::test
