// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gearbox_search.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/bike/pair.h"
#include "core/plan.h"
#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

SpareGearPair gearPair(int gear, int driving, int driven) {
  return {.gear = gear, .driving = driving, .driven = driven, .note = {}, .extras = {}};
}

Profile exampleBike() {
  return loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
}

std::vector<double> ratiosOf(const Setup& stock, const GearsTaken& taken) {
  return applied(withGears({}, stock, taken).value(), stock).gearRatios.values();
}

TEST(GearboxChoices, EveryCombinationThatKeepsTheRatiosFallingAndNoOther) {
  const auto stock = exampleBike().stock;  // 2.71 2.06 1.72 1.49 1.34 1.24, primary 1.955
  const std::vector<SpareGearPair> onHand{gearPair(0, 22, 44), gearPair(1, 14, 35), gearPair(2, 17, 36),
                                          gearPair(2, 20, 33), gearPair(3, 20, 34), gearPair(6, 25, 30)};
  const GearboxChoices choices = gearboxChoices(stock, onHand);
  EXPECT_FALSE(choices.more);
  EXPECT_TRUE(choices.gearboxes.front().empty()) << "as it is";
  // 2 primaries, 2 first, 3 second and 2 third gears, 2 sixth; second 33/20 = 1.65 is below third 1.72 and
  // 34/20 = 1.7 alike, so that it falls out.
  std::size_t falling = 0;
  for (const double first : {2.71, 35.0 / 14})
    for (const double second : {2.06, 36.0 / 17, 33.0 / 20})
      for (const double third : {1.72, 34.0 / 20})
        for (const double sixth : {1.24, 30.0 / 25})
          if (first > second && second > third && third > 1.49 && 1.34 > sixth) falling += 2;
  EXPECT_EQ(choices.gearboxes.size(), falling);
  std::set<std::pair<double, std::vector<double>>> different;
  for (const GearsTaken& taken : choices.gearboxes) {
    const auto ratios = ratiosOf(stock, taken);
    EXPECT_TRUE(std::is_sorted(ratios.rbegin(), ratios.rend()));
    different.insert({applied(withGears({}, stock, taken).value(), stock).primaryRatio, ratios});
  }
  EXPECT_EQ(different.size(), falling);
}

TEST(GearboxChoices, GearsThatChangeNothingAreLeftOut) {
  const auto stock = exampleBike().stock;
  EXPECT_EQ(gearboxChoices(stock, {gearPair(9, 20, 20), gearPair(2, 50, 103), gearPair(0, 1, 999)})
                .gearboxes.size(),
            1U)
      << "a gear that it has not, its own second, a primary beyond what there is";
  EXPECT_EQ(gearboxChoices(stock, {gearPair(6, 25, 30), gearPair(6, 50, 60)}).gearboxes.size(), 2U);
}

TEST(GearboxChoices, SaysThatThereAreMoreThanItTakes) {
  std::vector<SpareGearPair> onHand;
  for (int gear = 1; gear <= 6; ++gear)
    for (int more = 1; more <= 5; ++more)
      onHand.push_back(gearPair(
          gear, 200,
          static_cast<int>(200 * exampleBike().stock.gearRatios[static_cast<std::size_t>(gear - 1)]) - more));
  const GearboxChoices choices = gearboxChoices(exampleBike().stock, onHand);
  EXPECT_TRUE(choices.more);
  EXPECT_EQ(choices.gearboxes.size(), 5000U);
  for (const SpareGearPair& pair : onHand)
    EXPECT_TRUE(std::count(choices.gearboxes.begin(), choices.gearboxes.end(), GearsTaken{pair}))
        << pair.gear;
  EXPECT_TRUE(std::is_sorted(choices.gearboxes.begin(), choices.gearboxes.end(),
                             [](const GearsTaken& a, const GearsTaken& b) { return a.size() < b.size(); }));
}

// Five hundred gears for each of the first five, and a sixth that none of them leaves room for.
TEST(GearboxChoices, ASearchThatLeadsNowhereEnds) {
  const auto stock = exampleBike().stock;
  std::vector<SpareGearPair> onHand;
  for (int gear = 1; gear <= 5; ++gear)
    for (int more = 0; more < 500; ++more)
      onHand.push_back(gearPair(gear, 2000, 3500 - 100 * gear - more % 90));
  const GearboxChoices choices = gearboxChoices(stock, onHand);
  EXPECT_TRUE(choices.gearboxes.front().empty());
  EXPECT_LE(choices.gearboxes.size(), 5000U);
}

TEST(GearboxSearch, TheProposalTakesTheGearsWithTheirTeeth) {
  const auto stock = exampleBike().stock;
  const auto taken = applied(withGears({}, stock, {gearPair(0, 22, 44), gearPair(2, 17, 36)}).value(), stock);
  EXPECT_EQ(taken.primaryRatio, 2.0);
  EXPECT_EQ(taken.options.primaryTeeth, (GearTeeth{22, 44}));
  EXPECT_EQ(taken.gearRatios[1], 36.0 / 17);
  EXPECT_EQ(taken.gearRatios[2], stock.gearRatios[2]);
  EXPECT_EQ(layshaft::teethOf(taken.options.gearTeeth, 1), (GearTeeth{17, 36}));
}

/// Each row against the plan of a proposal that has the gears and the pair in it.
TEST(GearboxSearch, EveryRowIsTheLapOfThatProposalAndTheQuickestOfItsPairs) {
  Profile profile = exampleBike();
  const std::vector<SpareGearPair> onHand{gearPair(1, 14, 35), gearPair(2, 18, 36), gearPair(6, 25, 30)};
  const GearboxSearch search(ladderInput(profile), profile.tracks.front(), onHand);
  const std::vector<PairTeeth> pairs{{15, 43}, {15, 45}, {16, 43}, {16, 45}};
  const auto rows = search.rows(pairs);
  ASSERT_EQ(rows.size(), search.choices().gearboxes.size());
  EXPECT_TRUE(std::is_sorted(rows.begin(), rows.end(),
                             [](const GearboxRow& a, const GearboxRow& b) { return a.lapS < b.lapS; }));
  for (const GearboxRow& row : rows) {
    double least = 1e9;
    PairTeeth best{};
    for (const PairTeeth& pair : pairs) {
      Profile with = profile;
      with.proposed =
          proposalWithPair(profile, Teeth::front(pair.front).value(), Teeth::rear(pair.rear).value());
      with.proposed = withGears(with.proposed, with.stock, search.choices().gearboxes[row.gearbox]).value();
      const double lapS = plan(with).proposed.lap->timeS;
      if (lapS >= least) continue;
      least = lapS;
      best = pair;
    }
    EXPECT_NEAR(row.lapS, least, 1e-9);
    EXPECT_EQ(row.pair, best);
    EXPECT_NEAR(*row.changeS, least - plan(profile).stock.lap->timeS, 1e-9);
  }
  EXPECT_GT(search.bandS(rows.front()).value(), 0.0);
}

TEST(GearboxSearch, StopsBetweenTwoLaps) {
  const Profile profile = exampleBike();
  const GearboxSearch search(ladderInput(profile), profile.tracks.front(),
                             {gearPair(1, 14, 35), gearPair(2, 18, 36)});
  int asked = 0;
  EXPECT_TRUE(search.rows({{15, 43}, {16, 43}}, [&](std::size_t) { return ++asked > 3; }).empty());
  EXPECT_EQ(asked, 4);
}

TEST(GearsTaken, WhatCannotBeIsRefusedByItsKey) {
  const auto stock = exampleBike().stock;
  EXPECT_EQ(withGears({}, stock, {gearPair(7, 20, 22)}).problem().path, "gear_ratios");
  EXPECT_EQ(withGears({}, stock, {gearPair(0, 1, 999)}).problem().path, "primary_ratio");
  EXPECT_EQ(withGears({}, stock, {gearPair(3, 20, 50)}).problem().path, "gear_ratios[2]") << "above second";
  EXPECT_EQ(withGears({}, stock, {}).value(), SetupChange());
}

TEST(GearsTaken, AGearboxOfGearsOnHandIsStocksWithThem) {
  const auto stock = exampleBike().stock;
  const std::vector<SpareGearPair> onHand{gearPair(0, 22, 44), gearPair(2, 17, 36)};
  const SetupChange pair{.frontTeeth = front(15)};
  EXPECT_EQ(onStocksGearbox(withGears(pair, stock, onHand).value(), stock, onHand), pair);
  const SetupChange other = withGears(pair, stock, {gearPair(1, 14, 35)}).value();
  EXPECT_EQ(onStocksGearbox(other, stock, onHand), other) << "a first gear that is not on hand";
}

/// Going through the list of gearboxes, each proposed in turn, leaves the list as it is.
TEST(GearboxInput, ProposingAGearboxOnHandChangesNothingThatTheSearchDependsOn) {
  Profile profile = exampleBike();
  profile.sparesBox.emplace().gearPairs = {gearPair(1, 14, 35), gearPair(6, 25, 30)};
  profile.sparesBox->gearPairs.front().note = "second hand";
  const GearboxInput before = gearboxInput(profile);
  EXPECT_EQ(before.onHand.front().note, "");
  profile.proposed = withGears(profile.proposed, profile.stock, {gearPair(6, 25, 30)}).value();
  profile.proposed.rearTeeth = rear(47);
  EXPECT_EQ(gearboxInput(profile), before);
  profile.stock.primaryRatio = 1.9;
  EXPECT_NE(gearboxInput(profile), before);
}

TEST(GearboxSearch, OnlyPairsThatFitAreInReach) {
  const LadderInput input = ladderInput(exampleBike());
  const LadderRange range = usualRange(input);
  const auto pairs = pairsThatFit(input, range);
  const Ladder ladder(input);
  std::size_t fitting = 0;
  for (const LadderRow& row : ladder.rows(range)) fitting += row.fits() ? 1 : 0;
  EXPECT_EQ(pairs.size(), fitting);
  ASSERT_LT(pairs.size(), range.pairs());
  for (const PairTeeth& pair : pairs) EXPECT_TRUE(ladder.row(pair.front, pair.rear).fits());
}

}  // namespace
}  // namespace layshaft::test
