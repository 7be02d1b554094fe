// SPDX-License-Identifier: GPL-3.0-or-later
//
// The schema states what the core checks: the same keys, the same limits, the same words.
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "core/defaults.h"
#include "core/profile_file/access.h"
#include "tests/core/key_list.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// What the schema says of every key, by JSON pointer, with 0 for the entries of a list.
using Schema = std::map<std::string, Json>;

void lay(Json& under, const Json& over) {
  for (const auto& item : over.items())
    if (item.value().is_object() && under.contains(item.key()))
      lay(under[item.key()], item.value());
    else
      under[item.key()] = item.value();
}

/// A schema with its references put in; what stands beside a reference holds as well.
Json resolved(const Json& root, const Json& node) {
  if (!node.contains("$ref")) return node;
  const auto reference = node["$ref"].get<std::string>();
  Json result = resolved(root, root.at(Json::json_pointer(reference.substr(1))));
  Json beside = node;
  beside.erase("$ref");
  lay(result, beside);
  return result;
}

void collect(const Json& root, const Json& node, const std::string& pointer, Schema& schema) {
  const Json here = resolved(root, node);
  if (!pointer.empty()) schema[pointer] = here;
  if (here.contains("properties"))
    for (const auto& property : here["properties"].items()) {
      const std::string at = pointer + "/" + property.key();
      collect(root, property.value(), at, schema);
      bool needed = false;
      for (const Json& name : here.value("required", Json::array()))
        needed = needed || name == property.key();
      schema[at]["needed"] = needed;
    }
  if (here.contains("items")) collect(root, here["items"], pointer + "/0", schema);
}

Schema schemaKeys() {
  const Json root = Json::parse(contentsOf(sourceFolder() / "resources/bike.schema.json"));
  Schema schema;
  collect(root, root, "", schema);
  return schema;
}

bool allows(const Json& node, const std::string& type) {
  const Json types = node.value("type", Json());
  if (types.is_string()) return types == type;
  for (const Json& one : types)
    if (one == type) return true;
  return false;
}
bool isNumber(const Json& node) {
  return allows(node, "number") || allows(node, "integer");
}

TEST(Schema, HasTheKeysOfTheCore) {
  const Schema schema = schemaKeys();
  const Keys keys = keysOfTheCore();
  for (const auto& [pointer, key] : keys)
    EXPECT_TRUE(schema.contains(pointer)) << pointer << " is not in the schema";
  for (const auto& [pointer, node] : schema)
    EXPECT_TRUE(keys.contains(pointer) || pointer == "/format" || pointer == "/version")
        << pointer << " is not known to the core";
}

TEST(Schema, HasTheRulesOfTheCore) {
  const Schema schema = schemaKeys();
  for (const auto& [pointer, key] : keysOfTheCore()) {
    SCOPED_TRACE(pointer);
    const auto found = schema.find(pointer);
    if (found == schema.end()) continue;
    const Json& node = found->second;
    const bool entry = pointer.ends_with("/0");
    EXPECT_EQ(node.value("needed", false), key.needed);
    const bool nullable = node.contains("enum") ? node["enum"].back().is_null() : allows(node, "null");
    EXPECT_EQ(nullable, entry ? key.mayBeNull : !key.needed);
    switch (key.type) {
      case Key::Type::Number:
      case Key::Type::Whole:
        EXPECT_TRUE(allows(node, key.type == Key::Type::Whole ? "integer" : "number"));
        EXPECT_EQ(node.value("minimum", std::nan("")), key.limit.low);
        EXPECT_EQ(node.value("maximum", std::nan("")), key.limit.high);
        break;
      case Key::Type::Word: {
        std::vector<std::string> words;
        for (const Json& word : node.value("enum", Json::array()))
          if (word.is_string()) words.push_back(word.get<std::string>());
        EXPECT_EQ(words, key.words);
        break;
      }
      case Key::Type::Text:
        EXPECT_TRUE(allows(node, "string"));
        EXPECT_EQ(node.value("minLength", 0), key.limit.low);
        EXPECT_EQ(node.value("maxLength", 0), key.limit.high);
        break;
      case Key::Type::List:
        EXPECT_TRUE(allows(node, "array"));
        EXPECT_EQ(node.value("minItems", 0), key.limit.low);
        EXPECT_EQ(node.value("maxItems", 0), key.limit.high);
        break;
      case Key::Type::TyreSize:
        EXPECT_TRUE(allows(node, "string"));
        break;
      case Key::Type::Flag:
        EXPECT_TRUE(allows(node, "boolean"));
        break;
      case Key::Type::Object:
        EXPECT_TRUE(allows(node, "object"));
        break;
    }
  }
}

/// Every key, with room around those that others limit.
Json roomyProfile() {
  Json profile = everyKeyProfile();
  Json& engine = profile["bike"]["engine"];
  engine["rev_limit_rpm"] = 30000;
  engine["idle_rpm"] = 0;
  engine["shift_rpm"] = 500;
  engine["torque_curve"] = {{{"rpm", 1000}, {"torque_nm", 50}}, {{"rpm", 2000}, {"torque_nm", 60}}};
  profile["bike"]["chassis"]["wheelbase_mm"] = 3000;
  profile["bike"]["chassis"]["cg_ahead_of_rear_axle_mm"] = 0;
  Json& run = profile["bike"]["chain_run"];
  run["smallest_front_teeth"] = 6;
  run["largest_front_teeth"] = 48;
  run["smallest_rear_teeth"] = 12;
  run["largest_rear_teeth"] = 120;
  profile["ride"]["launch_rpm"] = 500;
  profile["wear"]["slack_mm"] = {0, 300};
  for (Json* setup : {&profile["stock"], &profile["proposed"], &profile["pins"][0],
                      &profile["records"]["track_notes"][0]["setup"]}) {
    (*setup)["gear_ratios"] = {2, 1};
    (*setup)["gear_teeth"] = {{10, 20}};
  }
  return profile;
}

/// The lists rise or fall, so only one of their ends can be the lowest value and the other the highest.
std::string atTheEnd(std::string pointer, bool low) {
  const bool falling = pointer.ends_with("/gear_ratios/0");
  const std::string curve = "/torque_curve/0/";
  if (const auto at = pointer.find(curve); at != std::string::npos && !low)
    pointer.replace(at, curve.size(), "/torque_curve/1/");
  if (falling && low) pointer.back() = '1';
  return pointer;
}

TEST(Schema, SaysWhatTheCoreTakes) {
  const Json roomy = roomyProfile();
  ASSERT_TRUE(readProfile(roomy.dump())) << testing::PrintToString(problemOf(roomy.dump()));
  int numbers = 0;
  for (const auto& [pointer, node] : schemaKeys()) {
    if (!isNumber(node)) continue;
    ++numbers;
    SCOPED_TRACE(pointer);
    ASSERT_TRUE(roomy.contains(Json::json_pointer(whereFilled(pointer)))) << "not in every-key.bike.json";
    ASSERT_TRUE(node.contains("minimum") && node.contains("maximum")) << "no limits in the schema";
    for (const bool low : {true, false}) {
      const double end = node[low ? "minimum" : "maximum"];
      const double step = low ? -1 : 1;
      const double outside = allows(node, "integer") ? end + step : std::nextafter(end, step * 1e9);
      const std::string at = atTheEnd(whereFilled(pointer), low);
      const auto taken = readProfile(with(at, end, roomy));
      // Such teeth are allowed, and make another ratio.
      EXPECT_TRUE(taken || taken.problem().kind == Kind::OtherRatio) << end << " is refused";
      const Problem problem = problemOf(with(at, outside, roomy));
      EXPECT_EQ(problem.kind, Kind::OutOfRange);
      EXPECT_EQ(problem.path, keyPath(at));
      EXPECT_EQ(problem.low, node["minimum"].get<double>());
      EXPECT_EQ(problem.high, node["maximum"].get<double>());
    }
  }
  EXPECT_GE(numbers, 90);
}

TEST(Schema, HasTheRulesOfTheAccessToSingleFields) {
  const Schema schema = schemaKeys();
  int fields = 0;
  for (const auto& [pointer, key] : keysOfTheCore()) {
    SCOPED_TRACE(pointer);
    // An entry of a list is no field, and a curve is checked as a whole.
    if (pointer.ends_with("/0") || pointer.find("/torque_curve/") != std::string::npos) continue;
    const auto rule = fieldRule(keyPath(pointer));
    ASSERT_TRUE(rule) << "no single field";
    if (rule->type == FieldRule::Type::Block) continue;
    ++fields;
    EXPECT_EQ(rule->needed, key.needed);
    const Json& node = schema.at(pointer);
    switch (rule->type) {
      case FieldRule::Type::Number:
      case FieldRule::Type::Whole:
        EXPECT_TRUE(allows(node, rule->type == FieldRule::Type::Whole ? "integer" : "number"));
        EXPECT_EQ(node.value("minimum", std::nan("")), rule->limit.low);
        EXPECT_EQ(node.value("maximum", std::nan("")), rule->limit.high);
        break;
      case FieldRule::Type::Wholes:
        EXPECT_EQ(node["items"].value("minimum", std::nan("")), rule->limit.low);
        EXPECT_EQ(node["items"].value("maximum", std::nan("")), rule->limit.high);
        EXPECT_EQ(node.value("maxItems", 0), rule->most);
        break;
      case FieldRule::Type::Word:
        EXPECT_EQ(std::vector<std::string>(rule->words.begin(), rule->words.end()), key.words);
        break;
      case FieldRule::Type::Text:
        EXPECT_EQ(node.value("maxLength", 0), rule->limit.high);
        break;
      case FieldRule::Type::Flag:
        EXPECT_TRUE(allows(node, "boolean"));
        break;
      case FieldRule::Type::TyreSize:
        EXPECT_EQ(key.type, Key::Type::TyreSize);
        break;
      case FieldRule::Type::Block:
        break;
    }
  }
  EXPECT_GE(fields, 100);
}

TEST(Schema, HasTheDefaults) {
  const Schema schema = schemaKeys();
  const std::pair<const char*, double> usual[] = {
      {"/bike/chassis/drivetrain_efficiency", defaults::kDrivetrainEfficiency},
      {"/bike/chassis/rider_mass_kg", defaults::kRiderMassKg},
      {"/bike/chassis/shift_time_s", defaults::kShiftTimeS},
      {"/bike/chassis/rolling_resistance", defaults::kRollingResistance},
      {"/bike/chassis/tyre_pressure_bar", defaults::kTyrePressureBar},
      {"/stock/rolling_allowance_percent", defaults::kRollingAllowancePercent},
      {"/ride/roll_on/from_speed_kmh", defaults::kRollOnFromKmh},
      {"/ride/roll_on/to_speed_kmh", defaults::kRollOnToKmh},
      {"/ride/air_temperature_c", defaults::kAirTemperatureC},
      {"/bike/engine/curve_air/temperature_c", defaults::kAirTemperatureC},
      {"/bike/engine/curve_air/pressure_hpa", defaults::kAirPressureHpa},
      {"/bike/engine/curve_air/humidity_percent", defaults::kHumidityPercent},
      {"/ride/humidity_percent", defaults::kHumidityPercent},
      {"/ride/surfaces/sand/slip_percent", defaults::kSlipPercent},
  };
  for (const auto& [pointer, value] : usual)
    EXPECT_EQ(schema.at(pointer).value("default", std::nan("")), value) << pointer;
}

TEST(Schema, NamesFormatAndVersion) {
  const Schema schema = schemaKeys();
  EXPECT_EQ(schema.at("/format")["const"], std::string(kProfileFormat));
  EXPECT_EQ(schema.at("/version")["const"], kProfileVersion);
  EXPECT_EQ(schema.at("/format")["needed"], true);
  EXPECT_EQ(schema.at("/version")["needed"], true);
}

}  // namespace
}  // namespace layshaft::test
