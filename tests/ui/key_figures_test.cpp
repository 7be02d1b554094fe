// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/key_figures.h"

#include <map>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/words/gear_table.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {

void PrintTo(const KeyFigure& figure, std::ostream* out) {
  *out << (figure.label + ": " + figure.stock + " → " + figure.proposed + ' ' + figure.unit + " (" +
           figure.difference + ')')
              .toStdString();
}
bool operator==(const KeyFigure& a, const KeyFigure& b) {
  return a.label == b.label && a.stock == b.stock && a.proposed == b.proposed && a.unit == b.unit &&
         a.difference == b.difference;
}

}  // namespace layshaft::ui

namespace layshaft::test {
namespace {

using testing::Contains;
using testing::ElementsAre;
using ui::KeyFigure;
using ui::UnitsShown;
using ui::UnitSystem;

std::vector<KeyFigure> figuresOf(const Profile& profile, UnitSystem units = UnitSystem::Metric) {
  return ui::keyFigures(plan(profile), UnitsShown(units));
}

TEST(KeyFigures, OfTheWorkedExample) {
  EXPECT_THAT(figuresOf(workedExample()),
              ElementsAre(KeyFigure{"Top speed (6th, drag)", "254", "249", "km/h", "−5"},
                          KeyFigure{"1st gear at the rev limit", "124", "116", "km/h", "−8"},
                          KeyFigure{"110 km/h in 6th", "6,160", "6,571", "rpm", "+411"},
                          KeyFigure{"Pull in 1st", "2,750", "2,933", "N", "+183"},
                          KeyFigure{"0–100 km/h", "3.0", "2.8", "s", "−0.2"},
                          KeyFigure{"400 m straight from 80 km/h", "8.7", "8.7", "s", ""},
                          KeyFigure{"Speedometer at a true 100 km/h", "104", "111", "km/h", "+7"}));
}

TEST(KeyFigures, WithoutAnEngineCurve) {
  Profile profile = workedExample();
  profile.bike.engine.torqueCurve.reset();
  EXPECT_THAT(figuresOf(profile),
              ElementsAre(KeyFigure{"6th gear at the rev limit", "271", "254", "km/h", "−17"},
                          KeyFigure{"1st gear at the rev limit", "124", "116", "km/h", "−8"},
                          KeyFigure{"110 km/h in 6th", "6,160", "6,571", "rpm", "+411"},
                          KeyFigure{"Engine turns per km", "3,360", "3,584", "", "+224"},
                          KeyFigure{"Final ratio", "2.688", "2.867", "", "+0.179"},
                          KeyFigure{"Rollout", "1,939", "1,939", "mm", ""},
                          KeyFigure{"Speedometer at a true 100 km/h", "104", "111", "km/h", "+7"}));
}

TEST(KeyFigures, AreNamedByTheSpeedsThatWereChosen) {
  Profile profile = workedExample();
  profile.cruiseSpeedKmh = 80;
  const auto labels = [&](UnitSystem units) {
    QStringList all;
    for (const KeyFigure& figure : figuresOf(profile, units)) all << figure.label;
    return all;
  };
  // 80 km/h = 49.71 mph: a mile is 1,609.344 m (NIST SP 811).
  EXPECT_THAT(labels(UnitSystem::Mixed), Contains("49.7 mph in 6th"));
  EXPECT_THAT(labels(UnitSystem::Mixed), Contains("400 m straight from 49.7 mph"));
  EXPECT_THAT(labels(UnitSystem::Metric), Contains("80 km/h in 6th"));
  profile.cruiseSpeedKmh = 70 * 1.609344;
  EXPECT_THAT(labels(UnitSystem::Mixed), Contains("70 mph in 6th"));
}

TEST(KeyFigures, AreThoseThatWerePicked) {
  const Plan shown = plan(workedExample());
  const auto picked = ui::keyFigures(shown, UnitsShown(), {ui::Figure::QuarterMile, ui::Figure::CornerExit});
  EXPECT_THAT(picked, ElementsAre(KeyFigure{"1/4 mile", "10.7", "10.5", "s", "−0.2"},
                                  // 9,791 and 10,443 upright; 314.9 − 6.3 mm of radius lose 26.4 mm leaned.
                                  KeyFigure{"Corner exit, 45° lean", "10,705", "11,419", "rpm", "+714"}));
}

TEST(KeyFigures, ClaimNoMoreDigitsThanTheRolloutAllows) {
  Profile measured = workedExample();
  measured.stock.options.rolloutMm = 1939.0;
  const auto times = [](const Profile& profile) {
    return ui::keyFigures(plan(profile), UnitsShown(), {ui::Figure::StandingStart})[0].stock;
  };
  EXPECT_EQ(times(workedExample()), "3.0") << "an estimate";
  EXPECT_EQ(times(measured), "3.00");
}

TEST(KeyFigures, HaveTheDecimalsThatTheirQuantityIsReadWith) {
  // By their unit: whole turns and newtons, a tenth of a speed at most, times as good as the rollout.
  const std::map<QString, qsizetype> most{{"rpm", 0},  {"N", 0},   {"lbf", 0},
                                          {"km/h", 1}, {"mph", 1}, {"s", 1}};
  int seen = 0;
  for (int rear = 35; rear < 60; ++rear)
    for (const UnitSystem system : {UnitSystem::Metric, UnitSystem::Imperial}) {
      Profile profile = workedExample();
      profile.proposed.rearTeeth = *Teeth::rear(rear);
      for (const KeyFigure& figure : ui::everyFigure(plan(profile), UnitsShown(system))) {
        const auto limit = most.find(figure.unit);
        if (limit == most.end()) continue;
        ++seen;
        for (const QString& text : {figure.stock, figure.proposed, figure.difference})
          EXPECT_LE(text.section('.', 1).size(), limit->second) << testing::PrintToString(figure);
      }
    }
  EXPECT_GT(seen, 400);
}

TEST(KeyFigures, ACruiseSpeedOutOfReachStaysInItsPlace) {
  const auto figures = figuresOf(bike({{"/cruise_speed_kmh", 150}, {"/proposed/rear_teeth", 60}}));
  EXPECT_THAT(figures, Contains(testing::Field(&KeyFigure::proposed, "–")));
}

TEST(KeyFigures, WordsOfSettingsAreThereAndBack) {
  for (int i = 0; i < ui::kFigureCount; ++i) {
    const auto figure = static_cast<ui::Figure>(i);
    EXPECT_EQ(ui::figureOf(ui::figureWord(figure)), figure);
    EXPECT_FALSE(ui::figureName(figure).isEmpty());
  }
  EXPECT_EQ(ui::figureOf("shoe size"), std::nullopt);
}

TEST(KeyFigures, InMilesAndInches) {
  const auto figures = figuresOf(workedExample(), UnitSystem::Imperial);
  EXPECT_THAT(ui::keyFigures(plan(workedExample()), UnitsShown(UnitSystem::Imperial), {ui::Figure::Rollout}),
              ElementsAre(KeyFigure{"Rollout", "76.3", "76.3", "in", ""}));
  EXPECT_THAT(figures, Contains(KeyFigure{"Speedometer at a true 60 mph", "62.4", "66.6", "mph", "+4.2"}));
  for (const KeyFigure& figure : figures)
    EXPECT_FALSE(figure.label.contains("km") || figure.unit.contains("km")) << testing::PrintToString(figure);
}

TEST(KeyFigures, AreNeverMoreThanSevenAndNeverEmpty) {
  for (const char* name : {"club-600", "enduro-250", "tourer-belt", "two-stroke-125"}) {
    const auto figures = figuresOf(sampleBike(name));
    EXPECT_LE(figures.size(), 7u) << name;
    for (const KeyFigure& figure : figures)
      EXPECT_FALSE(figure.label.isEmpty() || figure.stock.isEmpty() || figure.proposed.isEmpty()) << name;
  }
  EXPECT_THAT(figuresOf(bike()), testing::SizeIs(4)) << "limit speeds, final ratio and rollout need no more";
}

TEST(KeyFigures, TheDifferenceIsThatOfTheNumbersShown) {
  for (int i = 1; i < 60; ++i)
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::Imperial})
      for (const KeyFigure& figure : figuresOf(bike({{"/cruise_speed_kmh", 110},
                                                     {"/bike/engine/idle_rpm", 1000},
                                                     {"/proposed/primary_ratio", 1.955 + i * 0.003}}),
                                               units)) {
        const auto value = [](QString text) { return text.replace("−", "-").remove(',').toDouble(); };
        if (figure.stock == figure.proposed) {
          EXPECT_EQ(figure.difference, "");
          continue;
        }
        ASSERT_NEAR(value(figure.difference), value(figure.proposed) - value(figure.stock), 1e-9)
            << testing::PrintToString(figure);
      }
}

TEST(Numbers, RoundingToNothingIsNothing) {
  EXPECT_EQ(ui::number(-0.04, 1), "0.0");
  EXPECT_EQ(ui::number(15200, 0), "15,200");
  EXPECT_EQ(ui::signedNumber(0.004, 2), "±0");
  EXPECT_EQ(ui::signedNumber(-17.3, 0), "−17");
  EXPECT_EQ(ui::signedNumber(0.179, 3), "+0.179");
  EXPECT_EQ(ui::percent(-6.66), "6.7");
  EXPECT_EQ(ui::percent(133.3), "133");
}

TEST(GearTable, HasARowPerGearOfEitherSetup) {
  const auto rows =
      ui::gearTable(plan(bike({{"/proposed/gear_ratios", {2.71, 2.06, 1.24, 1.1}}})), UnitsShown());
  ASSERT_EQ(rows.size(), 5u);
  for (const QStringList& row : rows) EXPECT_EQ(row.size(), rows[0].size());
  EXPECT_EQ(rows[4][0], "4");
  EXPECT_EQ(rows[4][1], "–") << "stock has no fourth gear";
  EXPECT_EQ(rows[4][2], "1.100");
}

}  // namespace
}  // namespace layshaft::test
