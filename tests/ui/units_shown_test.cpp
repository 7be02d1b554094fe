// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/units_shown.h"

#include <array>

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

using ui::Quantity;
using ui::UnitsShown;
using ui::UnitSystem;

constexpr Quantity kAll[] = {
    Quantity::Speed,       Quantity::Length,      Quantity::SmallLength,  Quantity::Torque,
    Quantity::Mass,        Quantity::EngineSpeed, Quantity::Ratio,        Quantity::Percent,
    Quantity::Force,       Quantity::Power,       Quantity::Time,         Quantity::Plain,
    Quantity::Temperature, Quantity::AirPressure, Quantity::TyrePressure, Quantity::Area,
    Quantity::Inertia,     Quantity::Strength,    Quantity::SpeedGrowth};

class UnitsShownTest : public testing::TestWithParam<UnitSystem> {};

TEST_P(UnitsShownTest, ShownValuesReadBackAsTheyWere) {
  const UnitsShown units(GetParam());
  for (const Quantity quantity : kAll)
    for (const double si : {-3.0, 0.0, 0.0254, 1.0, 1.939, 80.0, 15200.0})
      EXPECT_NEAR(units.si(quantity, units.shown(quantity, si)), si,
                  quantity == Quantity::Temperature ? 1e-13 : 1e-12 * std::abs(si));
}

TEST_P(UnitsShownTest, EveryMeasureHasAUnitAndBareNumbersHaveNone) {
  const UnitsShown units(GetParam());
  for (const Quantity quantity : kAll) {
    const bool bare = quantity == Quantity::Ratio || quantity == Quantity::Plain;
    EXPECT_EQ(units.name(quantity).isEmpty(), bare) << static_cast<int>(quantity);
  }
}

std::string nameOf(const testing::TestParamInfo<UnitSystem>& system) {
  static const std::array<const char*, 3> names{"Metric", "Imperial", "Mixed"};
  return names[static_cast<std::size_t>(system.param)];
}

INSTANTIATE_TEST_SUITE_P(Systems, UnitsShownTest,
                         testing::Values(UnitSystem::Metric, UnitSystem::Imperial, UnitSystem::Mixed),
                         nameOf);

TEST(UnitsShown, ConvertsByTheExactDefinitions) {
  const UnitsShown metric(UnitSystem::Metric), imperial(UnitSystem::Imperial), mixed(UnitSystem::Mixed);
  EXPECT_DOUBLE_EQ(metric.shown(Quantity::Speed, 100 / 3.6), 100);
  EXPECT_DOUBLE_EQ(imperial.shown(Quantity::Speed, 26.8224), 60);
  EXPECT_DOUBLE_EQ(mixed.shown(Quantity::Speed, 26.8224), 60);
  EXPECT_DOUBLE_EQ(imperial.shown(Quantity::SmallLength, 1.0), 1 / 0.0254);
  EXPECT_DOUBLE_EQ(mixed.shown(Quantity::SmallLength, 1.0), 1000);
  EXPECT_DOUBLE_EQ(imperial.shown(Quantity::Length, 0.3048), 1);
  EXPECT_DOUBLE_EQ(imperial.shown(Quantity::Mass, 0.45359237), 1);
  EXPECT_NEAR(imperial.shown(Quantity::Torque, 1.3558179483314004), 1, 1e-12);
  EXPECT_NEAR(imperial.shown(Quantity::Force, 4.4482216152605), 1, 1e-12);
  // Mechanical horsepower: 550 ft·lbf/s (NIST SP 811).
  EXPECT_NEAR(imperial.shown(Quantity::Power, 550 * 0.3048 * 4.4482216152605), 1, 1e-12);
  EXPECT_EQ(imperial.name(Quantity::Power), "hp");
  for (const UnitsShown& units : {metric, mixed}) {
    EXPECT_DOUBLE_EQ(units.shown(Quantity::Power, 74570), 74.57);
    EXPECT_EQ(units.name(Quantity::Power), "kW");
  }
}

TEST(UnitsShown, FollowTheRegion) {
  EXPECT_EQ(UnitsShown::forLocale(QLocale(QLocale::German, QLocale::Germany)).system(), UnitSystem::Metric);
  EXPECT_EQ(UnitsShown::forLocale(QLocale(QLocale::English, QLocale::UnitedStates)).system(),
            UnitSystem::Imperial);
  EXPECT_EQ(UnitsShown::forLocale(QLocale(QLocale::English, QLocale::UnitedKingdom)).system(),
            UnitSystem::Mixed);
}

}  // namespace
}  // namespace layshaft::test
