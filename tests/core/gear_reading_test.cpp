// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gear_reading.h"

#include "core/study/gearing.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TEST(GearReading, GivesBackEveryGearOfTheWorkedExample) {
  layshaft::Setup stock = workedExample().stock;
  for (const double growth : {0.0, 2e-7}) {
    stock.options.growthPerKmh2 = growth;
    const Gearing geared = gearing(stock, {.revLimitRpm = 12000});
    for (const GearFigures& gear : geared.gears) {
      constexpr double kSpeedMps = 27.5;
      const double rpm = geared.rollout.rpm(kSpeedMps, gear.overallRatio);
      EXPECT_NEAR(gearRatioOf({rpm, kSpeedMps}, geared.rollout, stock.primaryRatio, geared.finalRatio),
                  gear.ratio, 1e-12);
    }
  }
}

/// Done by hand: 2 m of rollout at 120 km/h are 1000 turns of the wheel a minute, so 5000 rpm are 5 turns of
/// the engine for one; with 2 in the primary and 2 in the final drive, 1.25 is left.
TEST(GearReading, IsWhatIsLeftOfTheOverallRatio) {
  const Rollout rollout{.metres = 2.0, .source = RolloutSource::Measured};
  const GearReading reading{.rpm = 5000, .speedMps = 120 / 3.6};
  EXPECT_NEAR(gearRatioOf(reading, rollout, 2, 2), 1.25, 1e-12);
  EXPECT_NEAR(gearRatioOf(reading, rollout, 1, 2), 2.5, 1e-12) << "the primary ratio folded in";
}

}  // namespace
}  // namespace layshaft::test
