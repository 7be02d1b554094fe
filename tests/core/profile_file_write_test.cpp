// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <filesystem>
#include <string>

#include "core/profile_file.h"
#include "tests/core/key_list.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

void expectRoundTrip(const std::string& text) {
  const Profile first = profileFrom(text);
  const std::string written = writeProfile(first);
  const Profile second = profileFrom(written);
  EXPECT_EQ(second, first);
  EXPECT_EQ(writeProfile(second), written);
}

/// Unknown keys in every object of the profile, those inside lists too.
void addUnknownKeys(Json& value) {
  if (!value.is_structured()) return;
  for (auto& entry : value) addUnknownKeys(entry);
  if (!value.is_object()) return;
  value["kept"] = {{"deep", {1, {{"null", nullptr}}, "ü\n\"", 0.1, 12345678901234567890ULL, -3, true}}};
  value["kept too"] = nullptr;
}

TEST(EveryKeyProfile, HasEveryKeyOfTheCore) {
  const Json full = everyKeyProfile();
  for (const auto& [pointer, key] : keysWhereFilled())
    EXPECT_TRUE(full.contains(Json::json_pointer(pointer)))
        << pointer << " is missing in every-key.bike.json";
}

TEST(WriteProfile, RoundTripsTheRequiredKeysAlone) {
  expectRoundTrip(minimalProfile().dump());
  EXPECT_EQ(Json::parse(writeProfile(profileFrom(minimalProfile().dump()))), minimalProfile());
}

// Equal as ordered JSON: the values, and the keys in the order of the format.
TEST(WriteProfile, RoundTripsEveryKey) {
  const Json full = everyKeyProfile();
  expectRoundTrip(full.dump());
  EXPECT_EQ(Json::parse(writeProfile(profileFrom(full.dump()))), full);
}

TEST(WriteProfile, PutsTheKeysInTheOrderOfTheFormat) {
  const nlohmann::json sorted = nlohmann::json::parse(everyKeyProfile().dump());
  const std::string canonical = writeProfile(profileFrom(everyKeyProfile().dump()));
  EXPECT_NE(Json::parse(sorted.dump()), everyKeyProfile());  // this order is another one
  EXPECT_EQ(writeProfile(profileFrom(sorted.dump())), canonical);
}

TEST(WriteProfile, KeepsUnknownKeysOnEveryLevel) {
  Json full = everyKeyProfile();
  addUnknownKeys(full);
  expectRoundTrip(full.dump());
  EXPECT_EQ(Json::parse(writeProfile(profileFrom(full.dump()))), full);
}

TEST(WriteProfile, KeepsUnknownKeysWithOddNames) {
  Json profile = minimalProfile();
  for (const char* key : {"", "a.b", "[0]", "name ", "Name", "\u0001", "ünder", "__proto__"})
    profile[key] = key;
  expectRoundTrip(profile.dump());
  const Json written = Json::parse(writeProfile(profileFrom(profile.dump())));
  for (const auto& item : profile.items()) EXPECT_EQ(written.at(item.key()), item.value()) << item.key();
}

TEST(WriteProfile, KeepsUnknownSurfaces) {
  Json full = everyKeyProfile();
  full["ride"]["surfaces"]["ice"] = {{"grip", 0.1}};
  EXPECT_EQ(Json::parse(writeProfile(profileFrom(full.dump()))), full);
  const std::string alone = with("/ride/surfaces/ice", {{"grip", 0.1}});
  EXPECT_EQ(Json::parse(writeProfile(profileFrom(alone))), Json::parse(alone));
}

TEST(WriteProfile, LeavesOutWhatIsNotGiven) {
  for (const char* key :
       {"notes", "proposed", "pins", "aims", "cruise_speed_kmh", "ride", "spares_box", "tracks"}) {
    Json full = everyKeyProfile();
    full["ride"].erase("track");  // it names one of the tracks
    const Json written = Json::parse(writeProfile(profileFrom(with(std::string("/") + key, nullptr, full))));
    EXPECT_FALSE(written.contains(key)) << key;
  }
}

TEST(WriteProfile, KeepsUnknownKeysOfAnEmptyProposal) {
  const std::string text = with("/proposed", {{"colour", "red"}});
  EXPECT_EQ(Json::parse(writeProfile(profileFrom(text))), Json::parse(text));
}

TEST(WriteProfile, KeepsTheDigitsThatWereTyped) {
  for (const char* number :
       {"1.955", "1.9550000000000001", "0.3", "2", "19.999999999999996", "1.3333333333333333"}) {
    const std::string written = writeProfile(profileFrom(withRaw("/stock/primary_ratio", number)));
    EXPECT_EQ(Json::parse(written)["stock"]["primary_ratio"].get<double>(), std::stod(number));
    EXPECT_NE(written.find("\"primary_ratio\": "), std::string::npos);
  }
  const std::string written = writeProfile(profileFrom(everyKeyProfile().dump()));
  for (const char* line :
       {"\"rev_limit_rpm\": 13500,", "\"shift_rpm\": 12800.5,", "\"primary_ratio\": 1.604,",
        "\"gear_ratios\": [2.583, 2, 1.667, 1.444, 1.286, 1.15],", "{ \"rpm\": 2500, \"torque_nm\": 55.25 },",
        "\"rear_tyre\": \"190/55 ZR 17 M/C (75W)\","})
    EXPECT_NE(written.find(line), std::string::npos) << line << " is not in:\n" << written;
}

TEST(WriteProfile, EndsWithALineFeedAndIsUtf8) {
  const std::string written = writeProfile(profileFrom(everyKeyProfile().dump()));
  EXPECT_EQ(written.back(), '\n');
  EXPECT_EQ(written.find('\r'), std::string::npos);
  EXPECT_NE(written.find("“long”"), std::string::npos);
}

TEST(WriteProfile, RoundTripsTextsThatNeedCare) {
  for (const char* text :
       {"\"quoted\"", "back\\slash", "line\nfeed", "tab\t", "\u0001", "\u2028", "🏍", "</script>"}) {
    const std::string written = writeProfile(profileFrom(with("/name", text)));
    EXPECT_EQ(profileFrom(written).name, text);
  }
}

TEST(WriteProfile, RoundTripsEverySampleProfile) {
  int samples = 0;
  for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    if (entry.path().extension() != ".json") continue;
    SCOPED_TRACE(entry.path().filename().string());
    ++samples;
    const Result<Profile> loaded = loadProfile(entry.path());
    ASSERT_TRUE(loaded) << testing::PrintToString(loaded.problem());
    expectRoundTrip(contentsOf(entry.path()));
    EXPECT_TRUE(loaded->extras.empty());
  }
  EXPECT_GE(samples, 1);
}

}  // namespace
}  // namespace layshaft::test
