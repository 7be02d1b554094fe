// SPDX-License-Identifier: GPL-3.0-or-later
//
// Every row of the tables beside the pictures of runs and chain, against the plan's figures.
#include <cmath>

#include "tests/ui/support.h"
#include "ui/words/chain_labels.h"
#include "ui/words/figure_rows.h"
#include "ui/words/road_words.h"

namespace layshaft::test {
namespace {

using Value = std::optional<double>;

constexpr double kMileM = 1609.344, kInchM = 0.0254, kFootM = 0.3048, kPoundKg = 0.45359237;
constexpr double kPoundForceN = 4.4482216152605;

/// What a unit system shows for one of the SI.
struct Factors {
  double speed, length, smallLength, mass, force;
  int smallDecimals;
};
Factors factorsOf(ui::UnitSystem system) {
  const bool imperial = system == ui::UnitSystem::Imperial;
  return {system == ui::UnitSystem::Metric ? 3.6 : 3600 / kMileM,
          imperial ? 1 / kFootM : 1.0,
          imperial ? 1 / kInchM : 1000.0,
          imperial ? 1 / kPoundKg : 1.0,
          imperial ? 1 / kPoundForceN : 1.0,
          imperial ? 2 : 1};
}

QString inFigures(const Value& value, int decimals) {
  if (!value) return "–";
  const QString text = QLocale().toString(std::abs(*value), 'f', decimals);
  return *value < 0 && text != QLocale().toString(0.0, 'f', decimals) ? "−" + text : text;
}
QString withPlusOrMinus(double value, int decimals) {
  const QString size = QLocale().toString(std::abs(value), 'f', decimals);
  return size == QLocale().toString(0.0, 'f', decimals) ? QString("±0") : (value < 0 ? "−" : "+") + size;
}

/// A row whose difference is that of the figures, and of the figures as they are read: with one more
/// decimal if that takes it.
QStringList rowOfFigures(const QString& name, const Value& stock, const Value& proposed, int decimals) {
  const auto cells = [&](int with) {
    QStringList row{name, inFigures(stock, with), inFigures(proposed, with), QString()};
    if (!stock || !proposed || row[1] == row[2]) return row;
    const double scale = std::pow(10.0, with);
    row[3] = withPlusOrMinus((std::round(*proposed * scale) - std::round(*stock * scale)) / scale, with);
    return row;
  };
  for (int with = decimals; stock && proposed && with < decimals + 1; ++with) {
    const QStringList row = cells(with);
    const QString exact = withPlusOrMinus(*proposed - *stock, with);
    if (row[3] == exact || (row[3].isEmpty() && exact == "±0")) return row;
  }
  return cells(stock && proposed ? decimals + 1 : decimals);
}

Value times(const Value& value, double factor) {
  return value ? Value(*value * factor) : std::nullopt;
}

void expectTable(const std::vector<QStringList>& is, const std::vector<QStringList>& wanted) {
  ASSERT_EQ(is.size(), wanted.size());
  for (std::size_t r = 0; r < is.size(); ++r)
    EXPECT_EQ(is[r].join(" | ").toStdString(), wanted[r].join(" | ").toStdString());
}

struct TableCase {
  const char* sample;
  ui::UnitSystem system;
};
class FigureTables : public testing::TestWithParam<TableCase> {
 protected:
  FigureTables() {
    Profile profile = sampleBike(GetParam().sample);
    profile.pins.clear();  // have a test of their own
    if (!profile.ride) profile.ride.emplace();
    profile.ride->rollOn = RollOn{.fromSpeedKmh = 60, .toSpeedKmh = 90, .gear = 3};
    plan_ = plan(profile);
  }
  Plan plan_{plan(bike())};
  const ui::UnitsShown units_{GetParam().system};
  const Factors factor_ = factorsOf(GetParam().system);
};

TEST_P(FigureTables, OfTheRuns) {
  const RunFigures &from = plan_.stock.road.run, &to = plan_.proposed.road.run;
  const RoadPlan& road = plan_.proposed.road;
  const auto row = [&](const QString& name, const Value& stock, const Value& proposed, int decimals,
                       const std::optional<Band>& band = {}, double unit = 1.0) {
    QStringList cells = rowOfFigures(name, times(stock, unit), times(proposed, unit), decimals);
    cells << (band ? "±" + QLocale().toString((band->high - band->low) / 2 * unit, 'f', decimals)
                   : QString());
    return cells;
  };
  const auto drive = [](const RunFigures& run, double DriveFigures::*member) {
    return run.drive ? Value((*run.drive).*member) : std::nullopt;
  };
  const auto top = [](const RoadPlan& r) { return r.topSpeed ? Value(r.topSpeed->speedMps) : std::nullopt; };
  const QString speed = GetParam().system == ui::UnitSystem::Metric ? "km/h" : "mph";
  const bool metric = GetParam().system == ui::UnitSystem::Metric;
  const QString rollOn = metric ? "60–90 km/h, gear 3, s" : "37.3–55.9 mph, gear 3, s";
  // Asked anew, of the model: from 50 to 75 mph is another figure than from 80 to 120 km/h.
  const auto usualRollOn = [&](const SetupPlan& setup) {
    if (metric) return RollOnFigures{setup.road.run.rollOnTopS, setup.road.run.rollOnBestS};
    const double mph = kMileM / 3600;
    const RunFigures asked =
        runFigures(*setup.model, std::nullopt, RollOnRequest{50 * mph, 75 * mph, std::nullopt});
    return RollOnFigures{asked.askedRollOnS, rollOnFigures(*setup.model, 50 * mph, 75 * mph).bestS};
  };
  const RollOnFigures was = usualRollOn(plan_.stock), is = usualRollOn(plan_.proposed);
  const QString speeds = metric ? "80–120 km/h" : "50–75 mph";
  expectTable(
      ui::runTable(plan_, units_),
      {{"", "Stock", "Proposed", "Difference", "± for 2 % of Rollout"},
       metric ? row("0–100 km/h, s", from.zeroTo100KmhS, to.zeroTo100KmhS, 2, road.zeroTo100BandS)
              : row("0–60 mph, s", from.zeroTo60MphS, to.zeroTo60MphS, 2, road.zeroTo60BandS),
       row("100 m, s", from.hundredMetresS, to.hundredMetresS, 2),
       row("1/8 mile, s", from.eighthMileS, to.eighthMileS, 2),
       row("1/4 mile, s", from.quarterMileS, to.quarterMileS, 2, road.quarterMileBandS),
       row("1/4 mile, " + speed, from.quarterMileSpeedMps, to.quarterMileSpeedMps, 1, {}, factor_.speed),
       row(speeds + ", top gear, s", was.topS, is.topS, 2),
       row(speeds + ", best gear, s", was.bestS, is.bestS, 2),
       row(rollOn, from.askedRollOnS, to.askedRollOnS, 2),
       row("Straight, s", drive(from, &DriveFigures::timeS), drive(to, &DriveFigures::timeS), 2,
           road.driveBandS),
       row("Straight, end speed, " + speed, drive(from, &DriveFigures::endSpeedMps),
           drive(to, &DriveFigures::endSpeedMps), 1, {}, factor_.speed),
       row("Top speed, " + speed, top(plan_.stock.road), top(road), 0, road.topSpeedBandMps, factor_.speed)});
}

TEST_P(FigureTables, OfTheChainRun) {
  ASSERT_TRUE(plan_.stock.chainRun && plan_.proposed.chainRun);
  const ChainRunFigures &was = *plan_.stock.chainRun, &is = *plan_.proposed.chainRun;
  const int small = factor_.smallDecimals;
  const bool imperial = GetParam().system == ui::UnitSystem::Imperial;
  const QString mm = imperial ? "in" : "mm", kg = imperial ? "lb" : "kg";
  const auto lengths = [&](const QString& name, const Value& a, const Value& b) {
    return rowOfFigures(name, times(a, factor_.smallLength), times(b, factor_.smallLength), small);
  };
  const auto weighed = [&](const std::optional<SprocketMass>& mass) {
    return mass ? (mass->estimated ? "≈ " : "") + inFigures(mass->kg * factor_.mass, 2) : QString("–");
  };
  const auto masses = [&](const QString& name, const std::optional<SprocketMass>& a,
                          const std::optional<SprocketMass>& b) {
    if (a && b && !a->estimated && !b->estimated)
      return rowOfFigures(name, a->kg * factor_.mass, b->kg * factor_.mass, 2);
    return QStringList{name, weighed(a), weighed(b), QString()};
  };
  const auto ripple = [](const ChainRunFigures& run, double percentage) {
    return run.belt ? std::nullopt : Value(percentage);
  };
  const auto antiSquat = [](const ChainRunFigures& run) {
    return run.swingarm ? run.swingarm->antiSquatPercent : std::nullopt;
  };
  const auto slack = [](const ChainRunFigures& run) {
    return run.swingarm && run.swingarm->tightSpot ? Value(run.swingarm->tightSpot->leastPlayM)
                                                   : std::nullopt;
  };
  std::vector<QStringList> wanted{
      {"", "Stock", "Proposed", "Difference"},
      rowOfFigures(is.belt ? "Belt, teeth" : "Links", was.links, is.links, 0),
      lengths("Centre distance, " + mm, was.centreDistanceM, is.centreDistanceM),
      {"Axle shift (+ is back), " + mm, inFigures(0.0, small),
       is.axleShiftM ? withPlusOrMinus(*is.axleShiftM * factor_.smallLength, small) : "–", ""},
      lengths("Wheelbase, " + mm, was.wheelbaseM, is.wheelbaseM),
      rowOfFigures("Front wrap, °", was.frontWrapDeg, is.frontWrapDeg, 1),
      rowOfFigures("Shared factor, front (1 is best)", was.commonFactorFront, is.commonFactorFront, 0),
      rowOfFigures("Shared factor, rear (1 is best)", was.commonFactorRear, is.commonFactorRear, 0)};
  if (!is.belt) {
    wanted.push_back(rowOfFigures("Speed ripple, front, %", ripple(was, was.chordalFrontPercent),
                                  ripple(is, is.chordalFrontPercent), 2));
    wanted.push_back(rowOfFigures("Speed ripple, rear, %", ripple(was, was.chordalRearPercent),
                                  ripple(is, is.chordalRearPercent), 2));
  }
  wanted.push_back(rowOfFigures(imperial ? "Speed at the rev limit, ft/s" : "Speed at the rev limit, m/s",
                                *was.topChainSpeedMps * factor_.length, *is.topChainSpeedMps * factor_.length,
                                1));
  wanted.push_back(rowOfFigures(
      imperial ? "Peak tension on dry level asphalt, lbf" : "Peak tension on dry level asphalt, N",
      times(was.peakTensionN, factor_.force), times(is.peakTensionN, factor_.force), 0));
  wanted.push_back(
      rowOfFigures("Strength ÷ peak tension (comparison only)", was.safetyFactor, is.safetyFactor, 1));
  const QString part = is.belt ? "pulley, " : "sprocket, ";
  wanted.push_back(masses("Front " + part + kg, plan_.stock.sprockets.front, plan_.proposed.sprockets.front));
  wanted.push_back(masses("Rear " + part + kg, plan_.stock.sprockets.rear, plan_.proposed.sprockets.rear));
  wanted.push_back(rowOfFigures("Anti-squat, %", antiSquat(was), antiSquat(is), 1));
  if (!is.belt)
    wanted.push_back(lengths("Slack limit, binds below, no setting, " + mm, slack(was), slack(is)));
  expectTable(ui::chainTable(plan_, units_), wanted);
}

INSTANTIATE_TEST_SUITE_P(Of, FigureTables,
                         testing::Values(TableCase{"club-600", ui::UnitSystem::Metric},
                                         TableCase{"club-600", ui::UnitSystem::Imperial},
                                         TableCase{"motocross-450", ui::UnitSystem::Metric},
                                         TableCase{"tourer-belt", ui::UnitSystem::Mixed},
                                         TableCase{"youth-85", ui::UnitSystem::Metric}),
                         [](const auto& one) {
                           QString name = one.param.sample;
                           name += '_' + QString::number(static_cast<int>(one.param.system));
                           return name.replace('-', '_').toStdString();
                         });

TEST(FigureTablesBare, ABikeWithoutDataHasDashesAndNoChainTable) {
  const Plan bare = plan(bike());
  EXPECT_TRUE(ui::chainTable(bare, ui::UnitsShown()).empty());
  const auto rows = ui::runTable(bare, ui::UnitsShown());
  for (std::size_t r = 1; r + 1 < rows.size(); ++r)
    EXPECT_EQ(rows[r].mid(1), (QStringList{"–", "–", "", ""})) << rows[r][0].toStdString();
  const QString atLimit = inFigures(*bare.stock.gearing.gears.back().speedAtRevLimitMps * 3.6, 0);
  EXPECT_EQ(rows.back(), (QStringList{"Top speed at the rev limit, km/h", atLimit, atLimit, "", ""}))
      << "the rev limit bounds it in any case";
}

TEST(FigureTablesBare, PinsStandBehindTheOthersInTheRunTable) {
  Profile profile = workedExample();
  profile.pins = {{"Long", {.rearTeeth = rear(39)}}, {"Short", {.rearTeeth = rear(50)}}};
  const Plan planned = plan(profile);
  const auto rows = ui::runTable(planned, ui::UnitsShown());
  EXPECT_EQ(rows.front().mid(5), (QStringList{"Long", "Short"}));
  for (const QStringList& row : rows) ASSERT_EQ(row.size(), 7) << row[0].toStdString();
  EXPECT_EQ(rows[1].mid(5), (QStringList{inFigures(*planned.pins[0].road.run.zeroTo100KmhS, 2),
                                         inFigures(*planned.pins[1].road.run.zeroTo100KmhS, 2)}));
  EXPECT_EQ(rows.back()[6], inFigures(planned.pins[1].road.topSpeed->speedMps * 3.6, 0));
}

TEST(FigureTablesBare, TheUsualRollOnIsNotListedTwice) {
  Profile profile = workedExample();
  const auto rollOns = [&] {
    int count = 0;
    for (const QStringList& row : ui::runTable(plan(profile), ui::UnitsShown()))
      count += row.front().startsWith("80–120 km/h") ? 1 : 0;
    return count;
  };
  profile.ride->rollOn = std::nullopt;
  EXPECT_EQ(rollOns(), 2) << "top gear and best gear";
  profile.ride->rollOn = RollOn{.fromSpeedKmh = 80, .toSpeedKmh = 120, .gear = 6};
  EXPECT_EQ(rollOns(), 2) << "sixth is top gear";
  profile.ride->rollOn = RollOn{.fromSpeedKmh = 80, .toSpeedKmh = 120, .gear = 5};
  EXPECT_EQ(rollOns(), 3);
}

TEST(FigureTablesBare, ARollOnIsNamedByTheSpeedsItIsWorkedOutFor) {
  Profile profile = workedExample();
  const auto names = [&](ui::UnitSystem system) {
    QStringList found;
    for (const QStringList& row : ui::runTable(plan(profile), ui::UnitsShown(system)))
      if (row.front().contains("gear")) found << row.front();
    return found;
  };
  const QStringList usual{"50–75 mph, top gear, s", "50–75 mph, best gear, s"};
  EXPECT_EQ(names(ui::UnitSystem::Imperial), usual);
  profile.ride->rollOn = RollOn{.fromSpeedKmh = 50 * 1.609344, .toSpeedKmh = 75 * 1.609344};
  EXPECT_EQ(names(ui::UnitSystem::Mixed), usual) << "the same, typed";
  EXPECT_EQ(names(ui::UnitSystem::Metric).back(), "80.5–120.7 km/h, top gear, s");
  profile.ride->rollOn = RollOn{.gear = 4};
  EXPECT_EQ(names(ui::UnitSystem::Imperial).back(), "49.7–74.6 mph, gear 4, s");
}

TEST(ComparedTexts, AgreeAndTellTheDifferenceAsItIs) {
  const auto texts = [](double a, double b, int decimals) {
    const ui::ComparedTexts t = ui::comparedTexts(a, b, decimals);
    return QStringList{t.stock, t.proposed, t.difference};
  };
  EXPECT_EQ(texts(254, 249, 0), (QStringList{"254", "249", "−5"}));
  EXPECT_EQ(texts(254.4, 248.6, 0), (QStringList{"254.4", "248.6", "−5.8"})) << "not 254 → 249, −5 or −6";
  EXPECT_EQ(texts(10.6708, 10.5451, 1), (QStringList{"10.67", "10.55", "−0.12"})) << "one decimal more";
  EXPECT_EQ(texts(100.1, 100.4, 0), (QStringList{"100", "100", ""})) << "read alike";
  EXPECT_EQ(texts(100.4, 100.6, 0), (QStringList{"100.4", "100.6", "+0.2"}));
  const ui::ComparedTexts half = ui::comparedTexts(std::nullopt, 3.0, 1);
  EXPECT_EQ((QStringList{half.stock, half.proposed, half.difference}), (QStringList{"–", "3.0", ""}));
  // Whatever the figures: the three that are shown agree.
  for (double a = -3.0; a < 3.0; a += 0.0137)
    for (const double b : {0.0, 1.0449, 2.5501, -1.3333}) {
      const auto value = [](QString text) { return text.replace("−", "-").remove("±").toDouble(); };
      const ui::ComparedTexts t = ui::comparedTexts(a, b, 1);
      EXPECT_NEAR(value(t.proposed) - value(t.stock), value(t.difference), 1e-9) << a << " " << b;
      EXPECT_NEAR(value(t.difference), b - a, 0.0501 + (t.difference.isEmpty() ? 0.05 : 0.0))
          << a << " " << b;
      EXPECT_LE(t.stock.section('.', 1).size(), 2) << "no more than one decimal more";
    }
}

TEST(FigureTablesBare, TheRollOnOfNoGearIsOfTheLast) {
  Profile profile = workedExample();
  profile.ride->rollOn = RollOn{.fromSpeedKmh = 60, .toSpeedKmh = 90};
  EXPECT_EQ(ui::runTable(plan(profile), ui::UnitsShown()).at(8).front(), "60–90 km/h, top gear, s");
}

}  // namespace
}  // namespace layshaft::test
