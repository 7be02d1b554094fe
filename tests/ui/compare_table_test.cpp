// SPDX-License-Identifier: GPL-3.0-or-later
//
// Setups side by side: which is best at what, and what cannot be known.
#include <QLocale>
#include <algorithm>
#include <array>
#include <tuple>

#include "tests/ui/support.h"
#include "ui/words/compare_table.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

using ui::CompareFigure;

Profile withPins(const std::vector<int>& rears, Profile profile = workedExample()) {
  profile.pins.clear();
  for (const int teeth : rears)
    profile.pins.push_back({"Rear of " + std::to_string(teeth), {.rearTeeth = rear(teeth)}});
  return profile;
}

ui::CompareRow rowFor(const Plan& plan, CompareFigure figure, int gear = 0,
                      const ui::UnitsShown& units = ui::UnitsShown()) {
  for (const ui::CompareRow& row : ui::compareTable(plan, units, {figure}).rows)
    if (row.gear == gear) return row;
  throw std::runtime_error("no such row");
}

/// Which setups are best: 0 is stock, 1 the proposal, then the pins.
std::vector<int> best(const ui::CompareRow& row) {
  std::vector<int> which;
  for (std::size_t s = 0; s < row.cells.size(); ++s)
    if (row.cells[s].best) which.push_back(static_cast<int>(s));
  return which;
}

using Which = std::vector<int>;

TEST(CompareTable, HasAColumnForEachSetupAndARowForEachGear) {
  const Plan planned = plan(withPins({41, 50}));
  const auto table = ui::compareTable(planned, ui::UnitsShown(), ui::allCompareFigures());
  EXPECT_EQ(table.setups, (QStringList{"Stock", "Proposed", "Rear of 41", "Rear of 50"}));
  EXPECT_EQ(table.pairs, (QStringList{"16/43", "15/43", "16/41", "16/50"}));
  std::array<int, ui::kCompareFigureCount> rows{};
  for (const ui::CompareRow& row : table.rows) {
    ++rows[static_cast<std::size_t>(row.figure)];
    ASSERT_EQ(row.cells.size(), 4U) << row.name.toStdString();
    ASSERT_EQ(row.values.size(), 4U) << row.name.toStdString();
    for (const ui::CompareCell& cell : row.cells) {
      EXPECT_FALSE(cell.text.isEmpty()) << row.name.toStdString();
      EXPECT_EQ(cell.text == "–", cell.text == "–" && !cell.why.isEmpty()) << row.name.toStdString();
    }
  }
  const int gears = static_cast<int>(planned.stock.gearing.gears.size());
  EXPECT_EQ(rows[static_cast<std::size_t>(CompareFigure::SpeedAtLimit)], gears);
  EXPECT_EQ(rows[static_cast<std::size_t>(CompareFigure::ShiftSpeed)], gears - 1);
  for (const int count : rows) EXPECT_GT(count, 0);
}

TEST(CompareTable, ShowsThePlansFiguresAndTheDifferenceOfWhatIsRead) {
  const Plan planned = plan(withPins({50}));
  const auto row = rowFor(planned, CompareFigure::CruiseRpm);
  const SetupPlan* setups[] = {&planned.stock, &planned.proposed, &planned.pins[0]};
  for (std::size_t s = 0; s < 3; ++s) {
    const double rpm = setups[s]->gearing.cruise->rpm;
    EXPECT_EQ(row.values[s], rpm);
    EXPECT_EQ(row.cells[s].text, QLocale().toString(std::round(rpm), 'f', 0));
  }
  EXPECT_EQ(row.cells[0].difference, "");
  const double more = std::round(setups[2]->gearing.cruise->rpm) - std::round(setups[0]->gearing.cruise->rpm);
  EXPECT_EQ(row.cells[2].difference, "+" + QLocale().toString(more, 'f', 0));
  const auto speed = rowFor(planned, CompareFigure::SpeedAtLimit, 1, ui::UnitsShown(ui::UnitSystem::Mixed));
  EXPECT_EQ(speed.name, "1st at the rev limit, mph");
  EXPECT_EQ(speed.cells[0].text,
            QLocale().toString(*planned.stock.gearing.gears[0].speedAtRevLimitMps * 3600 / 1609.344, 'f', 1));
}

TEST(CompareTable, MarksWhoDecidesForWhat) {
  const Plan planned = plan(withPins({39, 50}));
  const auto bestOf = [&](auto value, bool more) {
    const double values[] = {value(planned.stock), value(planned.proposed), value(planned.pins[0]),
                             value(planned.pins[1])};
    const auto at = more ? std::max_element(values, values + 4) : std::min_element(values, values + 4);
    return Which{static_cast<int>(at - values)};
  };
  // The tallest turns slowest at a cruise; the shortest pulls hardest where neither grip nor lift rules.
  EXPECT_EQ(best(rowFor(planned, CompareFigure::CruiseRpm)), Which{2});
  EXPECT_EQ(best(rowFor(planned, CompareFigure::Pull, 6)), Which{3});
  EXPECT_EQ(best(rowFor(planned, CompareFigure::RollOnTop)),
            bestOf([](const SetupPlan& s) { return *s.road.run.rollOnTopS; }, false));
  EXPECT_EQ(best(rowFor(planned, CompareFigure::TopSpeed)),
            bestOf([](const SetupPlan& s) { return s.road.topSpeed->speedMps; }, true));
}

TEST(CompareTable, MarksNoneWhereThereIsNothingToDecide) {
  const Plan planned = plan(withPins({39, 50}));
  for (const CompareFigure figure : {CompareFigure::FinalRatio, CompareFigure::RevRangeLeft,
                                     CompareFigure::AxleShift, CompareFigure::CornerExit})
    EXPECT_EQ(best(rowFor(planned, figure)), Which{}) << ui::compareName(figure).toStdString();
  EXPECT_EQ(best(rowFor(planned, CompareFigure::SpeedAtLimit, 1)), Which{}) << "tall or short is a choice";
  Profile alike = withPins({});
  alike.proposed = {};
  EXPECT_EQ(best(rowFor(plan(alike), CompareFigure::CruiseRpm)), Which{}) << "all are alike";
  const Profile bare = withPins({30, 60}, bike());
  EXPECT_EQ(best(rowFor(plan(bare), CompareFigure::TopSpeed)), Which{})
      << "without a curve it is the gearing's";
}

TEST(CompareTable, TiesShareTheMark) {
  Profile profile = withPins({50, 50});
  profile.pins[1].name = "The same again";
  const Plan planned = plan(profile);
  EXPECT_EQ(best(rowFor(planned, CompareFigure::RollOnTop)), (Which{2, 3}));
  EXPECT_EQ(best(rowFor(planned, CompareFigure::Pull, 6)), (Which{2, 3}));
}

TEST(CompareTable, NobodyIsBestByATimeThatCannotBeToldApart) {
  Plan planned = plan(withPins({50, 41}));
  planned.stock.road.run.zeroTo100KmhS = 3.506;
  planned.proposed.road.run.zeroTo100KmhS = 3.514;
  planned.pins[0].road.run.zeroTo100KmhS = 3.530;
  planned.pins[1].road.run.zeroTo100KmhS = 3.5165;
  const auto row = rowFor(planned, CompareFigure::StandingStart);
  EXPECT_EQ(best(row), (Which{0, 1})) << "8 ms are nothing, 10.5 are told apart";
  // Down the straight, what estimated rollouts leave open is nothing either.
  for (SetupPlan* setup : {&planned.stock, &planned.proposed, &planned.pins[0], &planned.pins[1]}) {
    ASSERT_TRUE(setup->road.run.drive);
    const double time = setup == &planned.stock ? 20.00 : setup == &planned.proposed ? 20.04 : 20.30;
    setup->road.run.drive->timeS = time;
    setup->road.driveAtLeastRolloutS = time - (setup == &planned.stock ? 0.0 : 0.05);
    setup->road.driveAtMostRolloutS = time;
  }
  EXPECT_EQ(best(rowFor(planned, CompareFigure::StraightTime)), (Which{0, 1}));
}

TEST(CompareTable, ASpeedometerThatReadsLowIsNeverBest) {
  Plan planned = plan(withPins({41, 50}));
  ASSERT_TRUE(planned.stock.speedometer);
  const double ratios[] = {1.05, 0.999, 1.02, 1.10};
  SetupPlan* setups[] = {&planned.stock, &planned.proposed, &planned.pins[0], &planned.pins[1]};
  for (std::size_t s = 0; s < 4; ++s) setups[s]->speedometer->indicatedOverTrue = ratios[s];
  const auto row = rowFor(planned, CompareFigure::SpeedometerShows);
  EXPECT_EQ(best(row), Which{2});
  EXPECT_EQ(row.cells[1].text, "99.9");
}

TEST(CompareTable, SaysWhatAFigureNeeds) {
  const Plan bare = plan(bike());
  for (const auto& [figure, gear, need] : std::vector<std::tuple<CompareFigure, int, const char*>>{
           {CompareFigure::Pull, 1, "torque"},
           {CompareFigure::StandingStart, 0, "drag"},
           {CompareFigure::CruiseRpm, 0, "cruise"},
           {CompareFigure::CornerExit, 0, "lean"},
           {CompareFigure::SpeedometerShows, 0, "sensor"},
           {CompareFigure::AxleShift, 0, "chain"}}) {
    const auto row = rowFor(bare, figure, gear);
    EXPECT_EQ(row.cells[0].text, "–") << row.name.toStdString();
    EXPECT_TRUE(row.cells[0].why.contains(need, Qt::CaseInsensitive)) << row.cells[0].why.toStdString();
    EXPECT_EQ(best(row), Which{});
  }
  Profile slow = workedExample();
  slow.ride->drive->exitGear = 1;
  slow.ride->drive->exitSpeedKmh = 190;
  const auto row = rowFor(plan(slow), CompareFigure::StraightTime);
  EXPECT_TRUE(row.cells[0].why.contains("1st")) << row.cells[0].why.toStdString();
}

TEST(CompareTable, PartsOnHandNeedNotBeBought) {
  const Plan planned = plan(withPins({41, 50}));
  const ui::PartsOnHand onHand{.fronts = {}, .rears = {SpareSprocket{.teeth = 50}}};
  const auto row =
      ui::compareTable(planned, ui::UnitsShown(), {CompareFigure::RearSprocket}, onHand).rows.at(0);
  EXPECT_EQ(row.cells[0].text, "none");
  EXPECT_EQ(row.cells[2].text, "41 teeth");
  EXPECT_EQ(row.cells[3].text, "none: 50 teeth on hand");
}

TEST(CompareRows, NameTheBestInAColumnOfTheirOwn) {
  const Plan planned = plan(withPins({39, 50}));
  const auto rows = ui::compareRows(
      ui::compareTable(planned, ui::UnitsShown(), {CompareFigure::FinalRatio, CompareFigure::CruiseRpm}));
  ASSERT_EQ(rows.size(), 5U);
  EXPECT_EQ(rows[0], (QStringList{"", "Stock, 16/43", "Proposed, 15/43", "Rear of 39, 16/39",
                                  "Rear of 50, 16/50", "Best"}));
  EXPECT_EQ(rows[1].join("|"), "Gearing|||||");
  EXPECT_EQ(rows[2].back(), "");
  EXPECT_EQ(rows[4].back(), "Rear of 39");
}

TEST(CompareRows, AreInTheTextReportOnceThereArePins) {
  const QString with = ui::textReport(plan(withPins({39})), ui::UnitsShown());
  EXPECT_TRUE(with.contains("Rear of 39, 16/39")) << with.toStdString();
  EXPECT_TRUE(with.contains(ui::compareGroupName(ui::CompareGroup::Parts)));
  const QString without = ui::textReport(plan(withPins({})), ui::UnitsShown());
  EXPECT_FALSE(without.contains(ui::compareGroupName(ui::CompareGroup::Parts)));
}

TEST(CompareRows, WordsOfSettingsComeBack) {
  for (const CompareFigure figure : ui::allCompareFigures())
    EXPECT_EQ(ui::compareFigureOf(ui::compareWord(figure)), figure);
  EXPECT_EQ(ui::compareFigureOf("no_such_row"), std::nullopt);
}

TEST(CompareTable, StartsAndRollOnsGoByTheUnitOfSpeed) {
  const Plan planned = plan(workedExample());
  const RunFigures& run = planned.stock.road.run;
  for (const auto system : {ui::UnitSystem::Metric, ui::UnitSystem::Imperial, ui::UnitSystem::Mixed}) {
    const ui::UnitsShown units(system);
    const bool miles = system != ui::UnitSystem::Metric;
    const auto start = rowFor(planned, CompareFigure::StandingStart, 0, units),
               rollOn = rowFor(planned, CompareFigure::RollOnTop, 0, units);
    EXPECT_TRUE(start.name.startsWith(miles ? "0–60 mph" : "0–100 km/h")) << start.name.toStdString();
    EXPECT_TRUE(rollOn.name.startsWith(miles ? "50–75 mph" : "80–120 km/h")) << rollOn.name.toStdString();
    EXPECT_EQ(start.values[0], miles ? run.zeroTo60MphS : run.zeroTo100KmhS);
    EXPECT_EQ(rollOn.values[0], miles ? rollOnInMiles(planned.stock).topS : run.rollOnTopS);
    const QString csv =
        ui::compareCsv(ui::compareTable(planned, units, ui::allCompareFigures()), planned, units);
    EXPECT_EQ(csv.contains("zero_to_60_mph_s"), miles);
    EXPECT_EQ(csv.contains("zero_to_100_kmh_s"), !miles);
    EXPECT_EQ(csv.contains("roll_on_50_75_mph_top_gear_s"), miles);
    EXPECT_EQ(csv.contains("top_speed_mph"), miles);
    EXPECT_FALSE(csv.contains("top_speed_mps") || csv.contains("rev_limit_mps"));
  }
}

}  // namespace
}  // namespace layshaft::test
