// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <random>
#include <set>
#include <string>

#include "core/bike/profile_change.h"
#include "core/bike/track_rules.h"
#include "core/input.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Json withSegment(const Json& segment) {
  Json profile = minimalProfile();
  profile["tracks"] = {{{"name", "Pond"}, {"segments", {{{"length_m", 100}}, segment}}}};
  return profile;
}

Json withPath(Json path) {
  Json profile = minimalProfile();
  profile["tracks"] = {{{"name", "Pond"}, {"path", std::move(path)}}};
  return profile;
}

const Json& goodPath() {
  static const Json path = {{"spacing_m", 5},
                            {"curvature_per_km", {0, 20, 0}},
                            {"slope_percent", {1, 1, 0}},
                            {"x_m", {0, 5, 10}},
                            {"y_m", {0, 0, 0.5}}};
  return path;
}

TEST(TrackFile, PutsEveryKeyInItsPlace) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  ASSERT_EQ(profile.tracks.size(), 2U);
  const Track& known = profile.tracks[0];
  EXPECT_EQ(known.name, "Reedmace, “short”");
  EXPECT_EQ(known.closed, true);
  EXPECT_EQ(known.startSpeedKmh, 12.5);
  EXPECT_EQ(known.cornerSharePercent, 88);
  EXPECT_EQ(known.brakeSharePercent, 75);
  EXPECT_EQ(known.maxLeanDeg, 51.5);
  ASSERT_EQ(known.segments.size(), 3U);
  EXPECT_EQ(known.segments[0].surface, Surface::Asphalt);
  EXPECT_EQ(known.segments[1].radiusM, 42);
  EXPECT_EQ(known.segments[1].angleDeg, 95.5);
  EXPECT_EQ(known.segments[1].turn, Turn::Right);
  EXPECT_EQ(known.segments[2].cornerSpeedKmh, 74);
  EXPECT_EQ(known.segments[2].slopePercent, std::nullopt);
  ASSERT_TRUE(profile.tracks[1].path);
  EXPECT_EQ(profile.tracks[1].path->curvaturePerKm, (std::vector<double>{0, 12.25, -3}));
  EXPECT_EQ(profile.tracks[1].path->yM[2], 0.31);
  EXPECT_EQ(profile.tracks[1].closed, std::nullopt);
  EXPECT_EQ(profile.ride->track, known.name);
  ASSERT_EQ(profile.sparesBox->gearPairs.size(), 1U);
  EXPECT_EQ(profile.sparesBox->gearPairs[0].gear, 2);
  EXPECT_EQ(profile.sparesBox->gearPairs[0].driven, 33);
}

TEST(TrackFile, ASegmentIsMeasuredInOneOfFourWays) {
  const std::map<std::string, double> values{
      {"length_m", 80}, {"radius_m", 40}, {"angle_deg", 90}, {"corner_speed_kmh", 70}};
  const std::set<std::string> good{"length_m, ", "length_m, radius_m, ", "radius_m, angle_deg, ",
                                   "length_m, corner_speed_kmh, "};
  int taken = 0;
  for (unsigned which = 0; which < 16; ++which) {
    Json segment = {{"name", "Gate"}};
    std::string given;
    unsigned bit = 1;
    for (const char* key : {"length_m", "radius_m", "angle_deg", "corner_speed_kmh"}) {
      if (which & bit) {
        segment[key] = values.at(key);
        given += std::string(key) + ", ";
      }
      bit *= 2;
    }
    const std::string text = withSegment(segment).dump();
    if (good.contains(given)) {
      ++taken;
      EXPECT_TRUE(readProfile(text)) << given;
      continue;
    }
    const std::string listed = given.substr(0, given.empty() ? 0 : given.size() - 2);
    EXPECT_EQ(problemOf(text),
              (Problem{.kind = Kind::NotASegment, .path = "tracks[0].segments[1]", .given = listed}));
  }
  EXPECT_EQ(taken, 4);
}

TEST(TrackFile, HasSegmentsOrAPath) {
  Json both = withPath(goodPath());
  EXPECT_TRUE(readProfile(both.dump()));
  both["tracks"][0]["segments"] = Json::array();
  EXPECT_TRUE(readProfile(both.dump()));
  both["tracks"][0]["segments"] = {{{"length_m", 100}}};
  EXPECT_EQ(
      problemOf(both.dump()),
      (Problem{
          .kind = Kind::OnlyOneOf, .path = "tracks[0].path", .given = {}, .below = "tracks[0].segments"}));
}

TEST(TrackFile, ListsOfAPathAreEquallyLong) {
  for (const char* key : {"slope_percent", "x_m", "y_m"})
    for (const Json& other : {Json{0, 1}, Json{0, 1, 2, 3}}) {
      Json path = goodPath();
      path[key] = other;
      EXPECT_EQ(problemOf(withPath(path).dump()), (Problem{.kind = Kind::WrongCount,
                                                           .path = std::string("tracks[0].path.") + key,
                                                           .given = std::to_string(other.size()),
                                                           .low = 3,
                                                           .high = 3,
                                                           .below = "tracks[0].path.curvature_per_km"}));
    }
  Json path = goodPath();
  path.erase("slope_percent");
  EXPECT_TRUE(readProfile(withPath(path).dump())) << "no height was recorded";
  path.erase("y_m");
  EXPECT_EQ(problemOf(withPath(path).dump()).path, "tracks[0].path.y_m") << "x alone is no place";
  path.erase("x_m");
  EXPECT_TRUE(readProfile(withPath(path).dump())) << "its curvature draws it";
  path["curvature_per_km"] = {1};
  EXPECT_EQ(problemOf(withPath(path).dump()).kind, Kind::WrongCount);
}

TEST(TrackFile, NamesAreThereAndDiffer) {
  Json profile = minimalProfile();
  profile["tracks"] = {{{"name", "Pond"}}, {{"name", "Quarry"}}, {{"name", "Pond"}}};
  EXPECT_EQ(problemOf(profile.dump()),
            (Problem{.kind = Kind::NameTaken, .path = "tracks[2].name", .given = "Pond"}));
  profile["tracks"][2]["name"] = "pond";
  EXPECT_TRUE(readProfile(profile.dump()));
  profile["tracks"][2]["name"] = "";
  EXPECT_EQ(problemOf(profile.dump()).path, "tracks[2].name");
}

TEST(TrackFile, TheRideIsOnOneOfTheTracks) {
  Json profile = minimalProfile();
  profile["tracks"] = {{{"name", "Pond"}}, {{"name", "Quarry"}}};
  EXPECT_EQ(trackOfTheRide(profileFrom(profile.dump()))->name, "Pond");
  profile["ride"]["track"] = "Quarry";
  EXPECT_EQ(trackOfTheRide(profileFrom(profile.dump()))->name, "Quarry");
  profile["ride"]["track"] = "Quary";
  EXPECT_EQ(
      problemOf(profile.dump()),
      (Problem{
          .kind = Kind::NotOneOf, .path = "ride.track", .given = "Quary", .allowed = {"Pond", "Quarry"}}));
  profile.erase("tracks");
  EXPECT_EQ(problemOf(profile.dump()), (Problem{.kind = Kind::MissingKey, .path = "tracks"}));
  profile.erase("ride");
  EXPECT_EQ(trackOfTheRide(profileFrom(profile.dump())), nullptr);
}

void dropNulls(nlohmann::json& value) {
  for (auto it = value.begin(); value.is_object() && it != value.end();)
    it = it->is_null() ? value.erase(it) : std::next(it);
  if (value.is_structured())
    for (auto& entry : value) dropNulls(entry);
}

TEST(TrackFile, TheShortCircuitOpensAndIsSavedAsItIs) {
  const std::string text = contentsOf(sourceFolder() / "tests/reference/data/lap-club-600.bike.json");
  const Profile profile = profileFrom(text);
  ASSERT_EQ(profile.tracks.size(), 1U);
  EXPECT_EQ(trackOfTheRide(profile), profile.tracks.data());
  EXPECT_EQ(profile.tracks[0].segments.size(), 8U);
  EXPECT_TRUE(profile.tracks[0].extras.empty() && profile.ride->extras.empty() && profile.extras.empty());
  nlohmann::json asked = nlohmann::json::parse(text);
  dropNulls(asked);
  EXPECT_EQ(nlohmann::json::parse(writeProfile(profile)), asked);
}

// Whatever stands where a value of a track should be: it is refused by its key path, or kept.
TEST(TrackFile, TakesOrRefusesWhateverStandsThere) {
  std::mt19937 random(20260512);
  const auto below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  const std::vector<Json> anything{nullptr,
                                   true,
                                   -1,
                                   0,
                                   0.5,
                                   90,
                                   1e9,
                                   1e300,
                                   "",
                                   "left",
                                   "sand",
                                   "7",
                                   "\u0001",
                                   Json::array(),
                                   {1, 2},
                                   Json::object(),
                                   {{"length_m", 5}}};
  int taken = 0, refused = 0;
  for (int round = 0; round < 2000; ++round) {
    Json full = everyKeyProfile();
    for (std::size_t changes = 1 + below(3); changes > 0; --changes) {
      Json* place = &full["tracks"];
      while (place->is_structured() && !place->empty() && (place == &full["tracks"] || below(4) != 0)) {
        auto item = place->begin();
        std::advance(item, static_cast<std::ptrdiff_t>(below(place->size())));
        place = &*item;
      }
      *place = anything[below(anything.size())];
    }
    const Result<Profile> read = readProfile(full.dump());
    if (!read) {
      ++refused;
      const std::string& path = read.problem().path;
      EXPECT_TRUE(path.starts_with("tracks") || path == "ride.track") << path << '\n'
                                                                      << full["tracks"].dump();
      continue;
    }
    ++taken;
    EXPECT_EQ(profileFrom(writeProfile(*read)), *read);
  }
  EXPECT_GT(taken, 40);
  EXPECT_GT(refused, 100);
}

TEST(TrackFile, AnUndoStepTakesTracksBack) {
  const Profile before = profileFrom(everyKeyProfile().dump());
  Profile after = before;
  after.tracks[0].segments[1].radiusM = 60;
  after.sparesBox->gearPairs.clear();
  const ProfileChange change(before, after);
  EXPECT_FALSE(change.changesNothing());
  Profile profile = after;
  change.undo(profile);
  EXPECT_EQ(profile, before);
  EXPECT_TRUE(profile.tracks[1].path == before.tracks[1].path);
}

TEST(TrackFile, APathIsSharedBetweenCopies) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  const Profile copy = profile;
  EXPECT_EQ(&*copy.tracks[1].path, &*profile.tracks[1].path);
  EXPECT_EQ(copy, profileFrom(everyKeyProfile().dump())) << "and the same when read twice";
}

// Laps ask for the track on their own: nothing else is worked out anew for another one.
TEST(TrackFile, OnlyLapsDependOnATrack) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  Profile other = profile;
  other.tracks.clear();
  other.ride->track.clear();
  other.sparesBox->gearPairs.clear();
  PlanInput withATrack = planInput(profile);
  EXPECT_TRUE(withATrack.track);
  EXPECT_NE(planInput(other), withATrack);
  withATrack.track.reset();
  EXPECT_EQ(planInput(other), withATrack);
  LadderInput ladder = ladderInput(profile);
  EXPECT_NE(ladderInput(other), ladder);
  ladder.track.reset();
  EXPECT_EQ(ladderInput(other), ladder);
}

}  // namespace
}  // namespace layshaft::test
