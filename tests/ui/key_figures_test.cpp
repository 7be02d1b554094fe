// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/support.h"
#include "ui/wording.h"

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
  EXPECT_THAT(figuresOf(sampleBike("club-600")),
              ElementsAre(KeyFigure{"gear 6 at the limit", "271", "254", "km/h", "−17"},
                          KeyFigure{"gear 1 at the limit", "124", "116", "km/h", "−8"},
                          KeyFigure{"110 km/h in gear 6", "6,160", "6,571", "rpm", "+411"},
                          KeyFigure{"engine turns per km", "3,360", "3,584", "", "+224"},
                          KeyFigure{"final ratio", "2.688", "2.867", "", "+0.179"},
                          KeyFigure{"rollout", "1,939", "1,939", "mm", ""},
                          KeyFigure{"speedometer at 100", "104", "111", "km/h", "+7"}));
}

TEST(KeyFigures, InMilesAndInches) {
  const auto figures = figuresOf(sampleBike("club-600"), UnitSystem::Imperial);
  EXPECT_THAT(figures, Contains(KeyFigure{"rollout", "76.3", "76.3", "in", ""}));
  EXPECT_THAT(figures, Contains(KeyFigure{"speedometer at 60", "62", "67", "mph", "+5"}));
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
