// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a field shows of the file's number, in every system of units.
#include <array>

#include "core/number_text.h"
#include "core/profile_file/access.h"
#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/editors/field_form.h"
#include "ui/editors/spares_editor.h"
#include "ui/pages/sawtooth_page.h"
#include "ui/words/field_rows.h"
#include "ui/words/field_table.h"
#include "ui/words/road_words.h"

namespace layshaft::test {
namespace {

using ui::UnitsShown;
using ui::UnitSystem;

/// The rule of a row of the table; none where it is no number.
std::optional<FieldRule> ruleOfNumber(const ui::Field& field) {
  std::string key(field.key);
  for (const auto& [part, place] : {std::pair{std::string("[]"), "[0]"}, {std::string("*"), "sand"}})
    if (const auto at = key.find(part); at != std::string::npos) key.replace(at, part.size(), place);
  auto rule = fieldRule(key);
  const bool number = rule && rule->type == FieldRule::Type::Number;
  return number ? rule : std::nullopt;
}

QString writtenAsTyped(double x) {
  return QLocale().toString(x, 'f', QLocale::FloatingPointShortest);
}

class FieldUnits : public testing::TestWithParam<UnitSystem> {
 protected:
  const UnitsShown units_{GetParam()};
};

TEST_P(FieldUnits, WhatIsTypedComesBackAsTyped) {
  int fields = 0, typed = 0;
  for (const auto& rows :
       {ui::field_rows::bike(), ui::field_rows::setup(), ui::field_rows::ride(), ui::field_rows::records()})
    for (const ui::Field& field : rows) {
      const auto rule = ruleOfNumber(field);
      if (!rule) continue;
      ++fields;
      const double low = ui::shownNumber(field, rule->limit.low, units_),
                   high = ui::shownNumber(field, rule->limit.high, units_);
      for (int decimals = 0; decimals <= ui::typedDecimals(field, units_); ++decimals)
        for (const double share : {0.0613, 0.2, 0.34567, 0.5, 0.777, 0.93}) {
          const double number = QString::number(low + share * (high - low), 'f', decimals).toDouble();
          const double inFile = ui::fileNumber(field, number, units_);
          if (!rule->limit.contains(inFile)) continue;
          ++typed;
          const double readAgain = *numberFromText(numberText(inFile));
          EXPECT_EQ(ui::shownText(field, readAgain, units_), writtenAsTyped(number)) << field.key;
        }
    }
  EXPECT_GT(fields, 60);
  EXPECT_GT(typed, 20 * fields / 2);
}

TEST_P(FieldUnits, AFormShowsWhatWasTypedAfterSavingAndOpening) {
  const struct {
    const char *key, *metric, *imperial;
  } entries[] = {{"bike.chassis.tyre_pressure_bar", "2.31", "33.5"},
                 {"bike.chassis.wheelbase_mm", "1401.5", "54.25"},
                 {"ride.air_temperature_c", "21.5", "71"},
                 {"bike.chassis.mass_kg", "379.3", "379.3"},
                 {"bike.chain_run.tensile_strength_kn", "28.55", "6400"},
                 {"ride.altitude_m", "1234", "1234"},
                 {"cruise_speed_kmh", "49.7", "49.7"},
                 {"bike.chassis.drag_area_m2", "0.345", "3.55"},
                 {"stock.growth_per_kmh2", "0.000000025", "0.000000025"},
                 {"ride.headwind_kmh", "-7.5", "-7.5"}};
  const auto typed = [&](const auto& entry) {
    return QString::fromUtf8(GetParam() == UnitSystem::Imperial ? entry.imperial : entry.metric);
  };
  ui::Document document(bike());
  ui::FieldForm form(document);
  for (const auto& entry : entries) form.addField(entry.key);
  showActive(form);
  form.refresh(units_);
  for (const auto& entry : entries) {
    auto& box = dynamic_cast<ui::DecimalBox&>(*form.editorOf(entry.key));
    typeInto(box, typed(entry));
    QTest::keyClick(&box, Qt::Key_Return);
  }
  ui::Document opened(profileFrom(writeProfile(document.profile())));
  ui::FieldForm again(opened);
  for (const auto& entry : entries) again.addField(entry.key);
  again.refresh(units_);
  for (const auto& entry : entries) {
    auto& box = dynamic_cast<ui::DecimalBox&>(*again.editorOf(entry.key));
    EXPECT_EQ(box.cleanText().remove(QLocale().groupSeparator()), typed(entry)) << entry.key;
  }
}

std::string nameOfSystem(const testing::TestParamInfo<UnitSystem>& system) {
  return std::array{"Metric", "Imperial", "Mixed"}[static_cast<std::size_t>(system.param)];
}

INSTANTIATE_TEST_SUITE_P(In, FieldUnits,
                         testing::Values(UnitSystem::Metric, UnitSystem::Imperial, UnitSystem::Mixed),
                         nameOfSystem);

QString inUnits(const char* key, UnitSystem system) {
  const UnitsShown units(system);
  const ui::Field& field = *ui::fieldRow(key);
  const auto value = fieldValue(workedExample(), key);
  return ui::shownText(field, std::get<double>(value), units) + ' ' +
         ui::shownUnit(field, *fieldRule(key), units);
}

// The numbers: GNU units 2.22, rounded.
TEST(FieldUnitsOfTheExample, ImperialIsImperial) {
  const struct {
    const char *key, *imperial, *mixed;
  } rows[] = {{"cruise_speed_kmh", "68 mph", "68 mph"},
              {"bike.chassis.mass_kg", "379 lb", "172 kg"},
              {"bike.chassis.rider_mass_kg", "176 lb", "80 kg"},
              {"bike.chassis.wheelbase_mm", "54.53 in", "1,385 mm"},
              {"bike.chassis.cg_height_mm", "25 in", "635 mm"},
              {"bike.chassis.drag_area_m2", "3.55 ft²", "0.33 m²"},
              {"bike.engine.rotating_inertia_kgm2", "0.237 lb·ft²", "0.01 kg·m²"},
              {"bike.chassis.front_wheel_inertia_kgm2", "10.68 lb·ft²", "0.45 kg·m²"},
              {"bike.chassis.front_rollout_mm", "73.62 in", "1,870 mm"},
              {"bike.chain_run.adjuster_forward_mm", "0.472 in", "12 mm"},
              {"ride.air_temperature_c", "59 °F", "15 °C"},
              {"ride.drive.exit_speed_kmh", "50 mph", "50 mph"},
              {"ride.drive.length_m", "1,312 ft", "400 m"},
              {"spares_box.rear[1].mass_kg", "0.904 lb", "0.41 kg"}};
  for (const auto& row : rows) {
    EXPECT_EQ(inUnits(row.key, UnitSystem::Imperial), row.imperial);
    EXPECT_EQ(inUnits(row.key, UnitSystem::Mixed), row.mixed);
  }
}

TEST(FieldUnitsOfTheExample, WhatIsUsualAndAssumedIsInTheUnitsShown) {
  const UnitsShown imperial(UnitSystem::Imperial);
  ui::Document document(bike());
  ui::FieldForm form(document);
  const std::pair<const char*, const char*> usual[] = {
      {"bike.chassis.rider_mass_kg", "165 lb (usual)"},
      {"bike.chassis.tyre_pressure_bar", "36.3 psi (usual)"},
      {"bike.engine.curve_air.pressure_hpa", "29.92 inHg (usual)"},
      {"ride.air_temperature_c", "59 °F (usual)"},
      {"ride.roll_on.from_speed_kmh", "50 mph (usual)"}};
  for (const auto& [key, words] : usual) form.addField(key);
  form.refresh(imperial);
  for (const auto& [key, words] : usual)
    EXPECT_EQ(dynamic_cast<QAbstractSpinBox&>(*form.editorOf(key)).text(), words) << key;

  Profile profile = workedExample();
  profile.bike.chassis->riderMassKg.reset();
  const QString assumed = ui::assumedWords(*plan(profile).pullBike, imperial);
  EXPECT_TRUE(assumed.contains("rider's mass 165 lb")) << assumed.toStdString();
}

TEST(FieldUnitsOfTheExample, ABarometerInInchesIsReadToAHundredth) {
  ui::Document document(bike());
  ui::FieldForm form(document);
  form.addField("ride.air_pressure_hpa");
  form.refresh(UnitsShown(UnitSystem::Imperial));
  showActive(form);
  auto& field = dynamic_cast<QAbstractSpinBox&>(*form.editorOf("ride.air_pressure_hpa"));
  typeInto(field, "1013 hPa");
  QTest::keyClick(&field, Qt::Key_Return);
  EXPECT_EQ(field.text(), "29.91 inHg");
}

TEST(FieldUnitsOfTheExample, StepsAreRoundInTheUnitsShown) {
  const auto step = [](const char* key, UnitSystem system) {
    return ui::shownStep(*ui::fieldRow(key), *fieldRule(key), UnitsShown(system));
  };
  const struct {
    const char* key;
    double metric, imperial;
  } rows[] = {{"cruise_speed_kmh", 5, 5},
              {"bike.chassis.wheelbase_mm", 5, 0.2},
              {"bike.chassis.tyre_pressure_bar", 0.01, 0.1},
              {"ride.air_temperature_c", 1, 2},
              {"bike.chassis.mass_kg", 5, 10},
              {"bike.chassis.drag_area_m2", 0.001, 0.01}};
  for (const auto& row : rows) {
    EXPECT_DOUBLE_EQ(step(row.key, UnitSystem::Metric), row.metric) << row.key;
    EXPECT_DOUBLE_EQ(step(row.key, UnitSystem::Imperial), row.imperial) << row.key;
  }
}

TEST(CruiseMarker, IsDraggedToWholeUnitsShown) {
  const FreshSettings fresh;
  for (const auto& [system, kmh] :
       {std::pair{UnitSystem::Metric, 120.0}, {UnitSystem::Imperial, 75 * 1.609344}}) {
    ui::preferences::setUnits(UnitsShown(system));
    Window window(workedExample());
    auto* page = window->findChild<ui::SawtoothPage*>();
    ASSERT_TRUE(page);
    emit page->cruiseDragged(33.4, 1);  // 120.24 km/h, 74.71 mph
    EXPECT_NEAR(*window.profile().cruiseSpeedKmh, kmh, 1e-9);
  }
}

TEST(SpareMasses, AreWeighedInTheUnitsShownAndKeepTheirDigits) {
  ui::Document document(workedExample());
  ui::SparesEditor editor(document);
  const UnitsShown imperial(UnitSystem::Imperial);
  editor.refresh(imperial);
  auto& table = control<QTableWidget>(editor, "Rear sprockets or pulleys");
  EXPECT_EQ(table.horizontalHeaderItem(3)->text(), "Mass, lb");
  EXPECT_EQ(table.item(1, 3)->text(), "0.904");
  const auto& box = [&]() -> const SparesBox& { return *document.profile().sparesBox; };
  table.item(2, 3)->setText("1.25");
  EXPECT_NEAR(*box().rear[2].massKg, 0.5669904625, 1e-12);
  EXPECT_EQ(box().rear[1].massKg, 0.41) << "untouched";
  table.item(1, 4)->setText("used");
  EXPECT_EQ(box().rear[1].massKg, 0.41);
  EXPECT_EQ(box().rear[1].state, SpareState::Used);
  table.item(0, 3)->setText("50");
  EXPECT_TRUE(editor.complaint().contains("a mass from 0.02205 to 44.09 lb"))
      << editor.complaint().toStdString();
  editor.refresh(UnitsShown(UnitSystem::Metric));
  EXPECT_EQ(table.horizontalHeaderItem(3)->text(), "Mass, lb") << "until it is mended";
  table.item(0, 3)->setText("1");
  editor.refresh(UnitsShown(UnitSystem::Metric));
  EXPECT_EQ(table.horizontalHeaderItem(3)->text(), "Mass, kg");
  EXPECT_EQ(table.item(0, 3)->text(), "0.454");
  EXPECT_EQ(table.item(1, 3)->text(), "0.41");
}

}  // namespace
}  // namespace layshaft::test
