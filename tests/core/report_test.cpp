// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report.h"

#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Plan everyKeyPlan() {
  return planFor(everyKeyProfile());
}

std::vector<std::string> linesOf(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

TEST(ReportJson, NamesItself) {
  const Json report = Json::parse(reportJson(everyKeyPlan()));
  EXPECT_EQ(report["format"], "layshaft-report");
  EXPECT_EQ(report["version"], 1);
  EXPECT_EQ(report["bike"], "Every key – half chain, half belt");
}

TEST(ReportJson, IsNullWhereTheProfileLacksTheData) {
  const Json report = Json::parse(reportJson(planFor(minimalProfile())));
  for (const char* setup : {"stock", "proposed"}) {
    for (const char* key : {"speed_mps", "gear", "rpm", "turns_per_km"})
      EXPECT_TRUE(report[setup]["cruise"].at(key).is_null()) << key;
    for (const char* key : {"indicated_over_true", "odometer_over_true", "at_100_kmh_indicated_kmh",
                            "corrector_percent", "within_un_r39"})
      EXPECT_TRUE(report[setup]["speedometer"].at(key).is_null()) << key;
    const Json& last = report[setup]["gears"].back();
    for (const char* key : {"shift_rpm", "shift_speed_mps", "rpm_after_shift"})
      EXPECT_TRUE(last.at(key).is_null()) << key;
  }
  EXPECT_FALSE(report.contains("pins"));
  EXPECT_EQ(report["change"]["direction"], "same");
  EXPECT_EQ(report["change"]["size"], "none");
}

TEST(ReportJson, ASpeedThatNoGearHoldsIsStillTheSpeedAsked) {
  Json profile = minimalProfile();
  profile["cruise_speed_kmh"] = 396;
  const Json cruise = Json::parse(reportJson(planFor(profile)))["stock"]["cruise"];
  EXPECT_NEAR(cruise["speed_mps"].get<double>(), 110, 1e-9);
  EXPECT_TRUE(cruise["gear"].is_null());
}

TEST(ReportJson, HasEveryFigureAtFullPrecision) {
  const Plan result = everyKeyPlan();
  const Json report = Json::parse(reportJson(result));
  const auto same = [](const Json& json, const SetupPlan& setup) {
    EXPECT_EQ(json["front_teeth"], setup.setup.frontTeeth.count());
    EXPECT_EQ(json["rear_teeth"], setup.setup.rearTeeth.count());
    EXPECT_EQ(json["final_ratio"], setup.gearing.finalRatio);
    EXPECT_EQ(json["rollout_m"], setup.gearing.rollout.metres);
    EXPECT_EQ(json["rolling_radius_m"], setup.gearing.rollout.radiusM());
    ASSERT_EQ(json["gears"].size(), setup.gearing.gears.size());
    for (std::size_t g = 0; g < setup.gearing.gears.size(); ++g) {
      const GearFigures& gear = setup.gearing.gears[g];
      EXPECT_EQ(json["gears"][g]["gear"], gear.gear);
      EXPECT_EQ(json["gears"][g]["ratio"], gear.ratio);
      EXPECT_EQ(json["gears"][g]["overall_ratio"], gear.overallRatio);
      EXPECT_EQ(json["gears"][g]["speed_at_rev_limit_mps"], *gear.speedAtRevLimitMps);
      EXPECT_EQ(json["gears"][g]["speed_per_1000_rpm_mps"], gear.speedPer1000RpmMps);
      if (gear.shiftRpm) {
        EXPECT_EQ(json["gears"][g]["shift_rpm"], *gear.shiftRpm);
        EXPECT_EQ(json["gears"][g]["shift_speed_mps"], *gear.shiftSpeedMps);
        EXPECT_EQ(json["gears"][g]["rpm_after_shift"], *gear.rpmAfterShift);
      }
    }
    EXPECT_EQ(json["cruise"]["rpm"], setup.gearing.cruise->rpm);
    EXPECT_EQ(json["cruise"]["turns_per_km"], setup.gearing.cruise->turnsPerKm);
    EXPECT_EQ(json["speedometer"]["indicated_over_true"], setup.speedometer->indicatedOverTrue);
    EXPECT_EQ(json["speedometer"]["odometer_over_true"], setup.speedometer->odometerOverTrue);
    EXPECT_EQ(json["speedometer"]["corrector_percent"], setup.speedometer->correctorPercent);
    const bool within = setup.speedometer->verdict == SpeedometerVerdict::Within;
    EXPECT_EQ(json["speedometer"]["within_un_r39"], within);
    EXPECT_EQ(json["speedometer"]["verdict"] == "within", within);
  };
  same(report["stock"], result.stock);
  same(report["proposed"], result.proposed);
  ASSERT_EQ(report["pins"].size(), 1U);
  same(report["pins"][0], result.pins[0]);
  EXPECT_EQ(report["pins"][0]["name"], "Wet, “long” circuit");
  EXPECT_EQ(report["pins"][0]["change"]["gearing_percent"], result.pins[0].change.gearingPercent);
  EXPECT_EQ(report["change"]["final_ratio_percent"], result.proposed.change.finalRatioPercent);
  EXPECT_EQ(report["change"]["rear_teeth_equivalent"], result.proposed.change.rearTeethEquivalent);
  EXPECT_EQ(report["stock"]["rollout_source"], "measured");
}

TEST(ReportJson, UsesTheWordsOfTheContract) {
  struct Row {
    int rearTeeth;
    const char* direction;
    const char* size;
  };
  for (const Row& row :
       {Row{43, "same", "none"}, Row{45, "shorter", "small"}, Row{41, "taller", "small"},
        Row{46, "shorter", "moderate"}, Row{50, "shorter", "large"}, Row{38, "taller", "large"}}) {
    Json profile = minimalProfile();
    profile["proposed"] = {{"rear_teeth", row.rearTeeth}};
    const Json report = Json::parse(reportJson(planFor(profile)));
    EXPECT_EQ(report["change"]["direction"], row.direction) << row.rearTeeth;
    EXPECT_EQ(report["change"]["size"], row.size) << row.rearTeeth;
    EXPECT_EQ(report["stock"]["rollout_source"], "tyre_size");
  }
}

TEST(ReportCsv, IsOneRowPerSetupAndGear) {
  const Plan result = everyKeyPlan();
  const std::vector<std::string> lines = linesOf(reportCsv(result));
  ASSERT_EQ(lines.size(), 1U + 6 + 5 + 4);
  EXPECT_TRUE(lines[0].starts_with("setup,front_teeth,rear_teeth,f")) << lines[0];
  EXPECT_TRUE(lines[1].starts_with("stock,16,43,")) << lines[1];
  EXPECT_TRUE(lines[7].starts_with("proposed,15,44,")) << lines[7];
  EXPECT_TRUE(lines[12].starts_with("\"Wet, “long” circuit\",17,4")) << lines[12];
}

TEST(ReportCsv, HasTheNumbersOfTheJson) {
  Json profile = minimalProfile();
  profile["proposed"] = {{"front_teeth", 15}};
  const Plan result = planFor(profile);
  const Json report = Json::parse(reportJson(result));
  const std::vector<std::string> lines = linesOf(reportCsv(result));
  std::vector<std::string> names;
  std::istringstream header(lines[0]);
  for (std::string name; std::getline(header, name, ',');) names.push_back(name);
  std::size_t row = 1;
  for (const char* setup : {"stock", "proposed"})
    for (const Json& gear : report[setup]["gears"]) {
      std::string line = lines.at(row++) + ',';
      for (const std::string& name : names) {
        const std::string field = line.substr(0, line.find(','));
        line.erase(0, field.size() + 1);
        const Json& expected = name == "setup"       ? Json(setup)
                               : gear.contains(name) ? gear[name]
                                                     : report[setup].at(name);
        if (expected.is_null())
          EXPECT_EQ(field, "") << name;
        else if (expected.is_string())
          EXPECT_EQ(field, expected.get<std::string>());
        else
          EXPECT_EQ(std::stod(field), expected.get<double>()) << name;
      }
      EXPECT_EQ(line, "") << "more fields than names";
    }
  EXPECT_EQ(row, lines.size());
}

TEST(CsvField, IsQuotedOnlyWhereItMustBe) {
  struct Row {
    const char* text;
    const char* field;
  };
  for (const Row& row : {Row{"", ""}, Row{"Wet", "Wet"}, Row{"16 × 43", "16 × 43"}, Row{"a,b", "\"a,b\""},
                         Row{"a\"b", "\"a\"\"b\""}, Row{"\"", "\"\"\"\""}, Row{"a\nb", "\"a\nb\""},
                         Row{"a\rb", "\"a\rb\""}, Row{" a ", " a "}})
    EXPECT_EQ(csvField(row.text), row.field);
}

TEST(CsvField, IsNeverAFormula) {
  struct Row {
    const char* text;
    const char* field;
  };
  for (const Row& row : {Row{"=1+1", "'=1+1"}, Row{"+1", "'+1"}, Row{"-1 tooth", "'-1 tooth"},
                         Row{"@SUM(A1)", "'@SUM(A1)"}, Row{"\t=1", "'\t=1"}, Row{"\r=1", "\"'\r=1\""},
                         Row{"=HYPERLINK(\"x\",1)", "\"'=HYPERLINK(\"\"x\"\",1)\""}, Row{"1=1", "1=1"}})
    EXPECT_EQ(csvField(row.text), row.field);
}

}  // namespace
}  // namespace layshaft::test
