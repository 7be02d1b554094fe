// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_ladder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <thread>
#include <vector>

#include "core/plan.h"
#include "core/report.h"
#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

Profile lapLadderExample() {
  return loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
}

LapLadder ladderOf(const Profile& profile) {
  const LadderInput input = ladderInput(profile);
  return {input, input.track.value()};
}

TEST(LapLadder, RowIsThePairsLap) {
  const Profile profile = lapLadderExample();
  const LapLadder ladder = ladderOf(profile);
  const OnTrack on(profile, profile.tracks.front());
  const LapRow stock = ladder.row(16, 43, LapLadder::Bands::All);
  EXPECT_EQ(stock.lapS, on.lapOf(profile)->timeS);
  EXPECT_EQ(stock.changeS, 0.0);
  EXPECT_EQ(stock.bandS, 0.0);
  const LapRow proposed = ladder.row(15, 43, LapLadder::Bands::All);
  EXPECT_NEAR(proposed.lapS.value(), 39.582319, 1e-6);
  EXPECT_NEAR(proposed.changeS.value(), 39.582319 - 39.619275, 2e-6);
  EXPECT_GT(proposed.bandS.value(), 0.0);
  EXPECT_FALSE(ladder.row(15, 43, LapLadder::Bands::None).bandS);
}

TEST(LapLadder, ThoseThatFitComeFirstAndTheQuickestOfThem) {
  const Profile profile = lapLadderExample();
  const LapLadder ladder = ladderOf(profile);
  const LadderRange range{14, 17, 38, 50};
  const auto rows = ladder.rows(range, LapLadder::Bands::None);
  ASSERT_EQ(rows.size(), range.pairs());
  const auto firstMisfit = std::find_if(rows.begin(), rows.end(), [](const LapRow& r) { return !r.fits; });
  EXPECT_NE(firstMisfit, rows.begin());
  EXPECT_NE(firstMisfit, rows.end());
  EXPECT_TRUE(std::none_of(firstMisfit, rows.end(), [](const LapRow& r) { return r.fits; }));
  const auto quicker = [](const LapRow& a, const LapRow& b) { return *a.lapS < *b.lapS; };
  EXPECT_TRUE(std::is_sorted(rows.begin(), firstMisfit, quicker));
  EXPECT_TRUE(std::is_sorted(firstMisfit, rows.end(), quicker));
}

TEST(LapLadder, StopsWhenItIsTold) {
  const LapLadder ladder = ladderOf(lapLadderExample());
  int asked = 0;
  EXPECT_TRUE(ladder.rows({14, 17, 38, 50}, LapLadder::Bands::None, [&] { return ++asked > 3; }).empty());
  EXPECT_EQ(asked, 4);
}

TEST(LapLadder, ThreadsGetTheSameRows) {
  const LapLadder ladder = ladderOf(lapLadderExample());
  const LadderRange range{15, 16, 41, 45};
  std::vector<LapRow> there;
  std::thread other([&] { there = ladder.rows(range, LapLadder::Bands::All); });
  const auto here = ladder.rows(range, LapLadder::Bands::All);
  other.join();
  ASSERT_EQ(here.size(), there.size());
  for (std::size_t i = 0; i < here.size(); ++i) {
    EXPECT_EQ(here[i].lapS, there[i].lapS);
    EXPECT_EQ(here[i].bandS, there[i].bandS);
  }
}

TEST(LapLadder, NoLapWithoutGrip) {
  Profile profile = lapLadderExample();
  profile.bike.chassis->tyreGrip.reset();
  const LapRow row = ladderOf(profile).row(15, 43, LapLadder::Bands::All);
  EXPECT_FALSE(row.lapS);
  EXPECT_FALSE(row.bandS);
}

/// The difference of a pair to stock, worked out anew with something otherwise.
double differenceOf(const Profile& profile) {
  const OnTrack on(profile, profile.tracks.front());
  return on.lapOf(profile, applied(profile.proposed, profile.stock))->timeS - on.lapOf(profile)->timeS;
}

// The band is the difference worked out anew with each doubt either way.
TEST(LapLadder, BandIsHowFarTheDifferenceMoves) {
  const Profile profile = lapLadderExample();
  const double difference = differenceOf(profile);
  const auto moved = [&](const auto& change) {
    double most = 0.0;
    for (const double sign : {-1.0, 1.0}) {
      Profile other = profile;
      change(other, sign);
      most = std::max(most, std::abs(differenceOf(other) - difference));
    }
    return most;
  };
  const double byRollout = moved([](Profile& other, double sign) {
    other.stock.options.rolloutMm = 1000.0 * rolloutOf(other.stock).metres * (1.0 + 0.02 * sign);
  });
  const double byGrip =
      moved([](Profile& other, double sign) { *other.bike.chassis->tyreGrip *= 1.0 + 0.05 * sign; });
  const double byShift =
      moved([](Profile& other, double sign) { *other.bike.chassis->shiftTimeS += 0.02 * sign; });
  const double band = ladderOf(profile).row(15, 43, LapLadder::Bands::All).bandS.value();
  EXPECT_NEAR(band, std::hypot(byRollout, byGrip, byShift), 1e-6);
}

TEST(LapLadder, MeasuredRolloutIsNoDoubt) {
  Profile profile = lapLadderExample();
  const double estimated = ladderOf(profile).row(15, 43, LapLadder::Bands::All).bandS.value();
  profile.stock.options.rolloutMm = 1000.0 * rolloutOf(profile.stock).metres;
  EXPECT_LT(ladderOf(profile).row(15, 43, LapLadder::Bands::All).bandS.value(), estimated);
}

TEST(LapLadder, PairsInsideTheBandAreEqual) {
  LapRow a{.frontTeeth = 15,
           .rearTeeth = 43,
           .finalRatio = 2.9,
           .lapS = 60.0,
           .changeS = 0.1,
           .bandS = 0.03,
           .fits = true,
           .links = {}};
  LapRow b = a;
  b.lapS = 60.02;
  EXPECT_TRUE(equalLaps(a, b));
  b.lapS = 60.04;
  EXPECT_FALSE(equalLaps(a, b));
  b.lapS.reset();
  EXPECT_FALSE(equalLaps(a, b));
}

LapRow rowWith(int front, int rear, double lapS, double bandS = 0.03, bool fits = true) {
  return {.frontTeeth = front,
          .rearTeeth = rear,
          .finalRatio = static_cast<double>(rear) / front,
          .lapS = lapS,
          .changeS = lapS - 60.0,
          .bandS = bandS,
          .fits = fits,
          .links = {}};
}

TEST(LapLadder, NobodyTellsAHundredthApart) {
  EXPECT_TRUE(equalLaps(rowWith(15, 43, 60.0, 0.001), rowWith(15, 44, 60.009, 0.001)));
  EXPECT_FALSE(equalLaps(rowWith(15, 43, 60.0, 0.001), rowWith(15, 44, 60.011, 0.001)));
}

TEST(LapPickTest, OfEqualPairsTheOneWithTheFewestSwaps) {
  const std::vector<LapRow> rows{rowWith(16, 43, 60.2), rowWith(14, 40, 59.98), rowWith(15, 43, 60.0),
                                 rowWith(16, 46, 60.01, 0.0), rowWith(14, 39, 59.5, 0.03, false)};
  const LapPick pick = lapPick(rows, 16, 43).value();
  EXPECT_EQ(pick.quickest, 1U);
  EXPECT_EQ(pick.equal, (std::vector<std::size_t>{2, 3})) << "of either one's band the wider counts";
  EXPECT_EQ(pick.taken, 2U) << "one swap, as 16/46, and the smaller change";
  EXPECT_EQ(pick.decidedBy, LapDecidedBy::SmallestChange);
  EXPECT_EQ(lapPick(rows, 15, 44)->taken, 2U);
  EXPECT_EQ(lapPick(rows, 15, 44)->decidedBy, LapDecidedBy::FewestSwaps);
  EXPECT_EQ(lapPick({rows[0], rows[4]}, 16, 43)->decidedBy, LapDecidedBy::Nothing);
  EXPECT_FALSE(lapPick({rows[4]}, 16, 43)) << "none that fits";
  const std::vector<LapRow> sameRatio{rowWith(15, 45, 60.0), rowWith(14, 42, 59.999)};
  EXPECT_EQ(lapPick(sameRatio, 16, 43)->taken, 1U);
  EXPECT_EQ(lapPick(sameRatio, 16, 43)->decidedBy, LapDecidedBy::LapTime);
}

// Every pair against every other one, by the words of the rule.
TEST(LapPickTest, NoOtherPairIsBetterByTheRule) {
  const Profile profile = lapLadderExample();
  const auto rows = ladderOf(profile).rows({14, 17, 38, 50}, LapLadder::Bands::All);
  const LapPick pick = lapPick(rows, 16, 43).value();
  EXPECT_GE(pick.equal.size(), 1U) << "or nothing is decided";
  const LapRow &quickest = rows[pick.quickest], &taken = rows[pick.taken];
  const auto trouble = [](const LapRow& row) {
    return std::pair(swapsFromStock(row, 16, 43), std::abs(std::log(row.finalRatio * 16.0 / 43.0)));
  };
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (!rows[i].fits || !rows[i].lapS) continue;
    EXPECT_GE(*rows[i].lapS, *quickest.lapS);
    const double band = std::max({0.01, *rows[i].bandS, *quickest.bandS});
    const bool equal = *rows[i].lapS - *quickest.lapS <= band;
    const bool told =
        i == pick.quickest || std::find(pick.equal.begin(), pick.equal.end(), i) != pick.equal.end();
    EXPECT_EQ(equal, told) << rows[i].frontTeeth << '/' << rows[i].rearTeeth;
    if (equal) {
      EXPECT_LE(trouble(taken), trouble(rows[i]));
    }
  }
}

TEST(LapPlan, HoldsTheLapsOfItsSetups) {
  const Profile profile = lapLadderExample();
  const Plan made = plan(profile);
  ASSERT_TRUE(made.stock.lap && made.proposed.lap);
  EXPECT_NEAR(made.stock.lap->timeS, 39.619275, 1e-6);
  EXPECT_NEAR(made.proposed.lap->timeS, 39.582319, 1e-6);
  const LapChange change = lapChange(made, made.proposed).value();
  EXPECT_NEAR(change.seconds, 39.582319 - 39.619275, 2e-6);
  EXPECT_EQ(change.bandS, ladderOf(profile).row(15, 43, LapLadder::Bands::All).bandS);
  EXPECT_TRUE(lapLacks(made).empty());
}

// What of the difference is due to the axle: the same pair on an axle that stays where it is.
TEST(LapPlan, SaysWhatTheAxleIsWorth) {
  Profile profile = lapLadderExample();
  profile.bike.chassis->cgHeightMm = 900.0;  // the front wheel rules
  const Plan made = plan(profile);
  const double axle = lapChange(made, made.proposed)->axleS;
  EXPECT_NE(axle, 0.0);
  profile.stock.options.links.reset();  // without a chain nobody knows where the axle goes
  const Plan without = plan(profile);
  EXPECT_NEAR(made.proposed.lap->timeS - axle, without.proposed.lap->timeS, 1e-9);
  EXPECT_EQ(lapChange(without, without.proposed)->axleS, 0.0);
}

TEST(LapPlan, KeepsLapsThatStayTheSame) {
  Profile profile = lapLadderExample();
  const Plan before = plan(planInput(profile));
  profile.proposed.rearTeeth = rear(45);
  const Plan after = plan(planInput(profile), &before);
  EXPECT_EQ(after.laps, before.laps);
  EXPECT_EQ(after.stock.lap, before.stock.lap);
  EXPECT_NE(after.proposed.lap, before.proposed.lap);
  profile.tracks.front().cornerSharePercent = 80.0;
  const Plan slower = plan(planInput(profile), &after);
  EXPECT_GT(slower.stock.lap->timeS, after.stock.lap->timeS);
  EXPECT_EQ(slower.stock.model, after.stock.model);
  profile.tracks.clear();
  const Plan none = plan(planInput(profile), &slower);
  EXPECT_FALSE(none.laps || none.stock.lap || none.proposed.lap);
  EXPECT_EQ(lapLacks(none), std::vector<std::string_view>{"tracks"});
}

TEST(LapPlan, RidesTheTrackThatTheRideNames) {
  Profile profile = lapLadderExample();
  Track other = profile.tracks.front();
  other.name = "Other";
  other.segments.front().lengthM = 800.0;
  profile.tracks.push_back(other);
  profile.ride->track = "Other";
  EXPECT_GT(plan(profile).stock.lap->timeS, 45.0);
  profile.ride->track.clear();
  EXPECT_LT(plan(profile).stock.lap->timeS, 40.0);
}

TEST(LapReport, HasEveryFigureOfTheExample) {
  const Json report = Json::parse(reportJson(plan(lapLadderExample())));
  const Json expected = Json::parse(contentsOf(sourceFolder() / "tests/reference/data/lap-club-600.json"));
  for (const char* setup : {"stock", "proposed"}) {
    const Json &ours = report[setup]["lap"], &theirs = expected[setup]["lap"];
    for (const auto& item : theirs.items()) {
      SCOPED_TRACE(item.key());
      ASSERT_TRUE(ours.contains(item.key()));
      if (item.value().is_number()) {
        EXPECT_NEAR(ours[item.key()].get<double>(), item.value().get<double>(), 1e-3);
      } else if (item.value().is_string()) {
        EXPECT_EQ(ours[item.key()], item.value());
      }
    }
    ASSERT_EQ(ours["segments"].size(), theirs["segments"].size());
    for (std::size_t i = 0; i < theirs["segments"].size(); ++i)
      for (const auto& item : theirs["segments"][i].items()) {
        const Json& value = ours["segments"][i].at(item.key());
        if (item.value().is_number()) {
          EXPECT_NEAR(value.get<double>(), item.value().get<double>(), 1e-2) << item.key();
        } else {
          EXPECT_EQ(value, item.value());
        }
      }
    ASSERT_EQ(ours["pulls"].size(), theirs["pulls"].size());
  }
  EXPECT_NEAR(report["lap_change"]["time_s"].get<double>(), -0.036956, 2e-6);
  EXPECT_TRUE(report["lap_change"]["band_s"].is_number());
  EXPECT_TRUE(report["lap_change"]["of_which_axle_s"].is_number());
  EXPECT_TRUE(report["lap_refusal"].is_null());
}

TEST(LapReport, NamesWhyATrackIsRefused) {
  Profile profile = lapLadderExample();
  for (TrackSegment& segment : profile.tracks.front().segments) segment = straight(100.0);
  const Json report = Json::parse(reportJson(plan(profile)));
  EXPECT_EQ(report["lap_refusal"]["reason"], "no_bend");
  EXPECT_TRUE(report["stock"]["lap"]["time_s"].is_null());
  EXPECT_TRUE(report["lap_change"]["time_s"].is_null());
}

TEST(LapLadder, ABandToStocksPairIsThatOfTheRowAndNothingIsOffBetweenAPairAndItself) {
  Profile profile = loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
  profile.proposed = {};
  const LapLadder ladder(ladderInput(profile), profile.tracks.front());
  const LapRow stock =
      ladder.row(profile.stock.frontTeeth.count(), profile.stock.rearTeeth.count(), LapLadder::Bands::All);
  const LapRow other = ladder.row(15, 45, LapLadder::Bands::All);
  EXPECT_EQ(ladder.bandS(stock, other), other.bandS);
  EXPECT_EQ(ladder.bandS(other, other), 0.0);
}

}  // namespace
}  // namespace layshaft::test
