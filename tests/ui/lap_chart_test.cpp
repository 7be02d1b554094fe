// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/lap_chart.h"

#include "tests/ui/lap_bikes.h"

namespace layshaft::test {
namespace {

ui::LapBook axisBookOf(const Profile& profile) {
  return ui::lapBook(std::make_shared<const Plan>(plan(profile)));
}

TEST(LapChartAxis, EndsWhereTheLapEnds) {
  ui::LapChart chart;
  chart.resize(900, 500);
  chart.ensureLaidOut();
  const ui::LapBook book = axisBookOf(lapExampleBike());
  for (const auto system : {ui::UnitSystem::Metric, ui::UnitSystem::Imperial}) {
    const ui::UnitsShown units(system);
    chart.show(book, units);
    EXPECT_NEAR(chart.xRange().high, units.shown(ui::Quantity::Length, book.lengthM), 1e-9);
    const auto places = ui::ticks(chart.xRange());
    ASSERT_GT(places.size(), 3U);
    EXPECT_EQ(places[1], std::round(places[1])) << "round numbers still";
    EXPECT_LE(places.back(), chart.xRange().high);
  }
  // A track that is a little shorter ends there, too.
  Profile shorter = lapExampleBike();
  shorter.tracks.front().segments.front().lengthM = *shorter.tracks.front().segments.front().lengthM - 20.0;
  const ui::LapBook other = axisBookOf(shorter);
  chart.show(other, ui::UnitsShown());
  EXPECT_NEAR(chart.xRange().high, other.lengthM, 1e-9);
}

TEST(LapChartAxis, AStepOfTheTeethDoesNotMoveIt) {
  ui::LapChart chart;
  chart.resize(900, 500);
  chart.ensureLaidOut();
  Profile profile = lapExampleBike();
  chart.show(axisBookOf(profile), ui::UnitsShown());
  const ui::AxisRange before = chart.xRange();
  profile.proposed.rearTeeth = rear(48);
  chart.show(axisBookOf(profile), ui::UnitsShown());
  EXPECT_EQ(chart.xRange(), before);
}

}  // namespace
}  // namespace layshaft::test
