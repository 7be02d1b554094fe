// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/speed_sums.h"

#include <gtest/gtest.h>

#include <cmath>

namespace layshaft::test {
namespace {

TEST(SpeedOnWay, IsExactUnderASteadyAcceleration) {
  // v² = v₀² + 2ax.
  const double a = 4.0, wholeM = 50.0, from = 20.0;
  const double to = std::sqrt(from * from + 2.0 * a * wholeM);
  for (const double share : {0.0, 0.1, 0.5, 0.99, 1.0})
    EXPECT_NEAR(speedOnWay({from, a}, {to, a}, wholeM, share),
                std::sqrt(from * from + 2.0 * a * wholeM * share), 1e-12)
        << share;
}

TEST(SpeedOnWay, IsExactWhereTheSpeedFallsEvenlyAlongTheWay) {
  // A drag of k·v alone: v = v₀ − kx.
  const double k = 0.05, wholeM = 100.0, from = 30.0, to = from - k * wholeM;
  for (const double share : {0.0, 0.25, 0.8, 1.0})
    EXPECT_NEAR(speedOnWay({from, -k * from}, {to, -k * to}, wholeM, share), from - k * wholeM * share, 1e-12)
        << share;
}

TEST(SpeedOnWay, StaysBetweenTheSpeedsWhateverTheAccelerations) {
  for (const double wild : {-1e6, 1e6, std::nan("")})
    for (const double share : {-1.0, 0.2, 0.5, 0.9, 2.0}) {
      const double mps = speedOnWay({10.0, wild}, {12.0, -wild}, 100.0, share);
      EXPECT_GE(mps, 10.0) << wild << ' ' << share;
      EXPECT_LE(mps, 12.0) << wild << ' ' << share;
    }
}

}  // namespace
}  // namespace layshaft::test
