// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/profile_file/access.h"

#include "tests/core/key_list.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Profile bareBike() {
  return profileFrom(minimalProfile().dump());
}
Profile fullBike() {
  return profileFrom(everyKeyProfile().dump());
}

TEST(FieldAccess, ReadsWhatTheFileSays) {
  const Profile profile = fullBike();
  int seen = 0;
  for (const auto& [pointer, key] : keysWhereFilled()) {
    SCOPED_TRACE(pointer);
    const auto rule = fieldRule(keyPath(pointer));
    if (!rule || rule->type == FieldRule::Type::Block) continue;
    ++seen;
    const Json inFile = everyKeyProfile().at(Json::json_pointer(pointer));
    const FieldValue value = fieldValue(profile, keyPath(pointer));
    if (const auto* number = std::get_if<double>(&value))
      EXPECT_EQ(*number, inFile.get<double>());
    else if (const auto* flag = std::get_if<bool>(&value))
      EXPECT_EQ(*flag, inFile.get<bool>());
    else if (const auto* text = std::get_if<std::string>(&value))
      EXPECT_EQ(*text, inFile.get<std::string>());
    else if (const auto* list = std::get_if<std::vector<int>>(&value))
      EXPECT_EQ(*list, inFile.get<std::vector<int>>());
    else
      ADD_FAILURE() << "no value";
  }
  EXPECT_GE(seen, 100);
}

TEST(FieldAccess, PutsEveryValueWhereTheFilePutsIt) {
  // What a full file says, field by field into a bare bike, is the full bike but for its lists.
  const Profile full = fullBike();
  Profile built = bareBike();
  built.stock.gearRatios = full.stock.gearRatios;
  built.proposed.gearRatios = full.proposed.gearRatios;
  built.stock.options.primaryTeeth = full.stock.options.primaryTeeth;
  built.stock.options.gearTeeth = full.stock.options.gearTeeth;
  built.proposed.options.primaryTeeth = full.proposed.options.primaryTeeth;
  built.proposed.options.gearTeeth = full.proposed.options.gearTeeth;
  built.bike.engine.torqueCurve = full.bike.engine.torqueCurve;
  for (const auto& [pointer, key] : keysWhereFilled()) {
    const std::string path = keyPath(pointer);
    const auto rule = fieldRule(path);
    if (!rule || rule->type == FieldRule::Type::Block || path.find('[') != std::string::npos) continue;
    EXPECT_EQ(setField(built, path, fieldValue(full, path)), std::nullopt) << path;
  }
  built.pins = full.pins;
  built.aims = full.aims;
  built.sparesBox = full.sparesBox;
  built.tracks = full.tracks;
  built.wear->slackMm = full.wear->slackMm;
  built.wear->measurements = full.wear->measurements;
  built.records = full.records;
  built.prices = full.prices;
  built.typical = full.typical;
  EXPECT_EQ(Json::parse(writeProfile(built)), Json::parse(writeProfile(full)));
}

TEST(FieldAccess, LookingMakesNoBlock) {
  const Profile bare = bareBike();
  for (const auto& [pointer, key] : keysWhereFilled()) fieldValue(bare, keyPath(pointer));
  EXPECT_EQ(bare, bareBike());
}

TEST(FieldAccess, SettingMakesTheBlocksThatTheFieldLivesIn) {
  Profile profile = bareBike();
  EXPECT_EQ(setField(profile, "ride.drive.length_m", 400.0), std::nullopt);
  ASSERT_TRUE(profile.ride && profile.ride->drive);
  EXPECT_EQ(profile.ride->drive->lengthM, 400);
  EXPECT_EQ(setField(profile, "bike.engine.curve_air.pressure_hpa", 990.5), std::nullopt);
  EXPECT_EQ(profile.bike.engine.curveAir.value_or(Air{}).pressureHpa, 990.5);
  EXPECT_EQ(setField(profile, "ride.surfaces.wet_asphalt.grip", 0.6), std::nullopt);
  EXPECT_EQ(profile.ride->surfaces.at(Surface::WetAsphalt).grip, 0.6);
}

TEST(FieldAccess, ClearingMakesNoBlock) {
  Profile profile = bareBike();
  for (const char* key : {"ride.drive.length_m", "bike.chassis.mass_kg", "proposed.rear_sprocket.mass_kg",
                          "ride.surfaces.sand.grip", "bike.engine.torque_follows_air", "stock.links"})
    EXPECT_EQ(setField(profile, key, {}), std::nullopt) << key;
  EXPECT_EQ(profile, bareBike());
}

TEST(FieldAccess, AnEmptiedBlockStaysUnlessNothingMeansSomethingElse) {
  Profile profile = bareBike();
  for (const char* key :
       {"bike.chassis.mass_kg", "proposed.rear_sprocket.mass_kg", "ride.surfaces.sand.grip"}) {
    EXPECT_EQ(setField(profile, key, key == std::string("bike.chassis.mass_kg") ? 170.0 : 0.5), std::nullopt);
    EXPECT_EQ(setField(profile, key, {}), std::nullopt);
  }
  EXPECT_TRUE(profile.bike.chassis) << "as when a file with an empty one is opened";
  EXPECT_FALSE(profile.proposed.options.rearSprocket) << "follows stock again";
  EXPECT_TRUE(profile.ride->surfaces.empty()) << "the usual figures again";
}

TEST(FieldAccess, WhatTheFormatDoesNotKnowStaysInItsBlock) {
  Profile profile = profileFrom(with("/proposed/rear_sprocket", {{"mass_kg", 0.6}, {"shelf", 7}}));
  EXPECT_EQ(setField(profile, "proposed.rear_sprocket.mass_kg", {}), std::nullopt);
  ASSERT_TRUE(profile.proposed.options.rearSprocket);
  EXPECT_EQ(profile.proposed.options.rearSprocket->extras.at("shelf"), "7");
}

TEST(FieldAccess, RefusesWhatTheReaderRefusesAndLeavesTheProfile) {
  const struct {
    const char* key;
    FieldValue value;
    Kind kind;
  } wrongs[] = {
      {"bike.chassis.mass_kg", 1.0, Kind::OutOfRange},
      {"bike.chassis.mass_kg", kNaN, Kind::OutOfRange},
      {"bike.chassis.mass_kg", std::string("heavy"), Kind::WrongType},
      {"stock.links", 112.5, Kind::NotWhole},
      {"stock.front_teeth", 5.0, Kind::OutOfRange},
      {"stock.front_teeth", {}, Kind::MissingKey},
      {"stock.rear_tyre", std::string("round"), Kind::BadTyreSize},
      {"stock.final_drive", std::string("rope"), Kind::NotOneOf},
      {"stock.chain_size", std::string("521"), Kind::NotOneOf},
      {"bike.chain_run.belt_lengths_teeth", std::vector<int>{139, 9}, Kind::OutOfRange},
      {"bike.chain_run.belt_lengths_teeth", std::vector<int>(51, 139), Kind::WrongCount},
      {"name", std::string(), Kind::OutOfRange},
      {"bike.chassis", 1.0, Kind::WrongType},
      {"bike.no_such_key", 1.0, Kind::MissingKey},
      {"pins[0].links", 112.0, Kind::MissingKey},
  };
  for (const auto& wrong : wrongs) {
    Profile profile = bareBike();
    const auto problem = setField(profile, wrong.key, wrong.value);
    ASSERT_TRUE(problem) << wrong.key;
    EXPECT_EQ(problem->kind, wrong.kind) << wrong.key;
    EXPECT_EQ(problem->path, wrong.key);
    EXPECT_EQ(profile, bareBike()) << wrong.key;
  }
}

TEST(FieldAccess, ReachesIntoLists) {
  Profile profile = profileFrom(with("/pins", {{{"name", "short"}, {"links", 110}}}));
  EXPECT_EQ(fieldValue(profile, "pins[0].links"), FieldValue(110.0));
  EXPECT_EQ(fieldValue(profile, "pins[1].links"), FieldValue());
  EXPECT_EQ(setField(profile, "pins[0].links", 112.0), std::nullopt);
  EXPECT_EQ(profile.pins[0].change.options.links, 112);
}

TEST(FieldAccess, KnowsNoFieldThatTheFormatDoesNotHave) {
  for (const char* key :
       {"", "bike.", "bike.chassis.", "bike.chassis.mass", "pins[x].links", "pins[0]", "stock.links.x"})
    EXPECT_FALSE(fieldRule(key)) << key;
}

}  // namespace
}  // namespace layshaft::test
