// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laps of the worked example and of random bikes on random tracks beside a naive lap stepped through time by
// Boost.odeint, and whether two pairs differ by as much.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/study/fitted.h"
#include "core/study/lap.h"
#include "core/study/lean.h"
#include "core/study/shifting.h"
#include "tests/core/support.h"
#include "tests/reference/lap_second_opinion.h"
#include "tests/reference/random_bikes.h"

namespace layshaft::test {
namespace {

constexpr double kSameLapS = 1e-4;

/// The same lap in both hands.
struct BothLaps {
  std::optional<double> ours, theirs;
};

BothLaps bothLaps(const Profile& profile, const Setup& setup, const Track& track,
                  const AllowedSpeed& allowed) {
  const Ride ride = profile.ride.value_or(Ride{});
  const auto bike = std::make_shared<const PullBike>(pullBike(profile.bike, ride));
  const Rollout rollout = rolloutOf(setup);
  const Fitted changed = fitted(profile.stock, setup);
  const RoadModel model(bike, roadOf(profile.bike, ride), setup, rollout, changed);
  std::vector<double> best;
  for (std::size_t g = 0; g + 1 < model.gearCount(); ++g)
    best.push_back(std::min(model.rpm(bestShiftMps(model, g), g), model.torque().revLimitRpm()));
  LapOpinion opinion(profile, setup, changed.axleShiftM, track, model.shifts().rpm, best, model.launchRpm());
  return {lapTimeS(allowed, model, crownShare(setup, rollout)), opinion.seconds()};
}

void expectSameLaps(const Profile& profile, const std::vector<Setup>& setups, const Track& track,
                    int& compared) {
  const Ride ride = profile.ride.value_or(Ride{});
  const AllowedSpeed allowed(lapCourse(profile.bike, ride, track), pullBike(profile.bike, ride));
  ASSERT_TRUE(allowed.course().lacks.empty());
  if (allowed.refusal()) return;
  std::optional<BothLaps> before;
  for (const Setup& setup : setups) {
    const BothLaps laps = bothLaps(profile, setup, track, allowed);
    ASSERT_EQ(laps.ours.has_value(), laps.theirs.has_value());
    if (!laps.ours) return;
    const double scale = std::max(1.0, *laps.theirs / 100.0);
    EXPECT_NEAR(*laps.ours, *laps.theirs, kSameLapS * scale);
    if (before) {
      EXPECT_NEAR(*laps.ours - *before->ours, *laps.theirs - *before->theirs, kSameLapS * scale);
    }
    before = laps;
    ++compared;
  }
}

/// As a recording is cut: many short stretches whose bend and slope change little by little.
Json likeARecording(Draw& draw) {
  Json segments = Json::array();
  const int count = draw.whole(15, 70);
  const double length = draw.between(5, 15), waves = draw.whole(1, 3), slopes = draw.between(0, 6);
  const double tightest = draw.between(12, 60), shift = draw.between(0, 6);
  for (int i = 0; i < count; ++i) {
    const double wave = std::pow(std::sin(M_PI * waves * i / count + shift), 2);
    segments.push_back({{"length_m", length},
                        {"radius_m", tightest / (wave + draw.between(0.01, 0.03))},
                        {"slope_percent", slopes * std::sin(2 * M_PI * i / count)}});
  }
  return segments;
}

Json fewSegments(Draw& draw) {
  static constexpr const char* kSurfaces[] = {"asphalt", "wet_asphalt", "hardpack", "loam", "sand"};
  Json segments = Json::array();
  const int count = draw.whole(2, 9);
  for (int i = 0; i < count; ++i) {
    Json segment;
    if (draw.once(0.45)) {
      segment["length_m"] = draw.between(20, 500);
    } else if (draw.once(0.7)) {
      segment["radius_m"] = draw.once(0.2) ? draw.between(150, 600) : draw.between(8, 150);
      if (draw.once(0.7))
        segment["angle_deg"] = draw.between(20, 180);
      else
        segment["length_m"] = draw.between(10, 200);
    } else {
      segment["length_m"] = draw.between(20, 150);
      segment["corner_speed_kmh"] = draw.between(25, 180);
    }
    if (draw.once(0.4)) segment["slope_percent"] = draw.between(-8, 10);
    if (draw.once(0.15)) segment["surface"] = kSurfaces[draw.whole(0, 4)];
    segments.push_back(segment);
  }
  return segments;
}

Json randomTrack(Draw& draw) {
  const Json segments = draw.once(0.25) ? likeARecording(draw) : fewSegments(draw);
  Json track{{"name", "Random"}, {"segments", segments}};
  if (draw.once(0.6)) track["closed"] = true;
  if (draw.once(0.5)) track["corner_share_percent"] = draw.between(60, 100);
  if (draw.once(0.5)) track["brake_share_percent"] = draw.between(40, 100);
  if (draw.once(0.4)) track["max_lean_deg"] = draw.between(30, 60);
  if (!track.contains("closed") && draw.once(0.5)) track["start_speed_kmh"] = draw.between(0, 150);
  return track;
}

TEST(SecondOpinionOnLaps, SharesTheWorkedExample) {
  const auto profile = loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json");
  ASSERT_TRUE(profile);
  int compared = 0;
  expectSameLaps(*profile, {profile->stock, applied(profile->proposed, profile->stock)},
                 profile->tracks.front(), compared);
  EXPECT_EQ(compared, 2);
}

TEST(SecondOpinionOnLaps, SharesTheTracksOfTheSamples) {
  int compared = 0;
  for (const auto& file : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    SCOPED_TRACE(file.path().filename().string());
    const Result<Profile> profile = loadProfile(file.path());
    ASSERT_TRUE(profile);
    for (const Track& track : profile->tracks) {
      if (track.segments.empty()) continue;
      std::vector<layshaft::Setup> setups{profile->stock, applied(profile->proposed, profile->stock)};
      for (const int more : {-1, 1}) {
        setups.push_back(profile->stock);
        setups.back().rearTeeth = rear(profile->stock.rearTeeth.count() + more);
      }
      expectSameLaps(*profile, setups, track, compared);
    }
  }
  EXPECT_GE(compared, 8);
}

class RandomLaps : public testing::TestWithParam<std::uint32_t> {};

TEST_P(RandomLaps, AgreeInTimeAndDifference) {
  Draw draw(GetParam());
  int compared = 0;
  for (int i = 0; i < 50; ++i) {
    Json json = randomBike(draw);
    if (!json["bike"]["chassis"].contains("tyre_grip"))
      json["bike"]["chassis"]["tyre_grip"] = draw.between(0.8, 1.4);
    if (draw.once(0.2))
      json["bike"]["engine"]["shift_rpm"] =
          json["bike"]["engine"]["rev_limit_rpm"].get<double>() * draw.between(0.75, 1.0);
    json["tracks"] = Json::array({randomTrack(draw)});
    SCOPED_TRACE("bike " + std::to_string(i) + " " + json.dump());
    const Profile profile = profileFrom(json.dump());
    layshaft::Setup other = profile.stock;
    other.rearTeeth = rear(profile.stock.rearTeeth.count() + (draw.once(0.5) ? 1 : -1));
    expectSameLaps(profile, {profile.stock, other}, profile.tracks.front(), compared);
  }
  EXPECT_GE(compared, 60);
}

INSTANTIATE_TEST_SUITE_P(SecondOpinionOnLaps, RandomLaps, testing::Values(11U, 12U, 13U, 14U, 15U, 16U));

}  // namespace
}  // namespace layshaft::test
