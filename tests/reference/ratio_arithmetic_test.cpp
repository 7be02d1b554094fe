// SPDX-License-Identifier: GPL-3.0-or-later
//
// Ratio sums that others have published with their results, put through the program as whole setups.
#include <gtest/gtest.h>

#include "core/study/gearing.h"
#include "core/units.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// A bike that is nothing but its ratios; the rollout is measured, so the tyre does not count.
Gearing bikeWith(double primary, double gear, int frontTeeth, int rearTeeth, double rolloutMm) {
  Setup setup{.frontTeeth = front(frontTeeth),
              .rearTeeth = rear(rearTeeth),
              .rearTyre = tyre("130/80-17"),
              .primaryRatio = primary,
              .gearRatios = gears({gear}),
              .options = {}};
  setup.options.rolloutMm = rolloutMm;
  return gearing(setup, {.revLimitRpm = 8000});
}

/// Turns a minute behind all the ratios: with one metre of rollout, metres a minute.
double turnsBehind(double rpm, double primary, double gear, int frontTeeth, int rearTeeth) {
  return 60 * bikeWith(primary, gear, frontTeeth, rearTeeth, 1000).speedMps(rpm, 0);
}

// A riders' safety site, tip 94: primary 1.708, secondary 0.973, third 1.250, final 2.833 (34/12), 2000 rpm.
// It prints 1203 turns into the gearbox, 963 out of it and 340 at the wheel. Both reductions before the
// gearbox are the primary ratio here; 12/12 leaves the final drive out.
TEST(RatioArithmeticReference, FromCrankshaftToWheel) {
  EXPECT_NEAR(turnsBehind(2000, 1.708 * 0.973, 1, 12, 12), 1203, 0.5);
  EXPECT_NEAR(turnsBehind(2000, 1.708 * 0.973, 1.250, 12, 12), 963, 0.5);
  EXPECT_NEAR(turnsBehind(2000, 1.708 * 0.973, 1.250, 12, 34), 340, 0.5);
}

// An owner's published sum: primary 1.741, third 1.545, final 2.388 make 6.423 overall and 622.76 wheel turns
// at 4000 rpm (622.728 before its rounding). No pair of sprockets is 2.388 to four digits, so it stands with
// the primary ratio.
TEST(RatioArithmeticReference, OverallRatio) {
  EXPECT_NEAR(bikeWith(1.741 * 2.388, 1.545, 12, 12, 1000).gears[0].overallRatio, 6.423, 0.0005);
  EXPECT_NEAR(turnsBehind(4000, 1.741 * 2.388, 1.545, 12, 12), 622.76, 0.05);
  // The nearest pair a bike could wear, 43/18, is within the last digit but one.
  EXPECT_NEAR(bikeWith(1.741, 1.545, 18, 43, 1000).gears[0].overallRatio, 6.423, 0.005);
}

// A sum in an owners' forum (thread 9810): primary 48 to 73, top 21 to 25, final 16 to 43, 78 in round the
// tyre, 5000 rpm. It posts 75.6 mph, with factors rounded on the way; carried through by hand it is 75.901.
TEST(RatioArithmeticReference, SpeedInTopGear) {
  const double rolloutMm = 78 * 25.4;
  const double mph = units::mphFromMps(bikeWith(73.0 / 48, 25.0 / 21, 16, 43, rolloutMm).speedMps(5000, 0));
  EXPECT_NEAR(mph, 75.6, 0.005 * 75.6);
  EXPECT_NEAR(mph, 75.901, 0.0005);
}

}  // namespace
}  // namespace layshaft::test
