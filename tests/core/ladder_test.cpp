// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/ladder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/bike/pair.h"
#include "core/units.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Profile ladderBike() {
  return workedExample();
}

const LadderRow& pairIn(const std::vector<LadderRow>& rows, int frontTeeth, int rearTeeth) {
  for (const LadderRow& row : rows)
    if (row.frontTeeth == frontTeeth && row.rearTeeth == rearTeeth) return row;
  throw std::runtime_error("no such pair");
}

TEST(Ladder, ARowSaysWhatAPlanOfThatPairSays) {
  Profile profile = ladderBike();
  const Ladder ladder(ladderInput(profile));
  for (const auto& [frontTeeth, rearTeeth] : {std::pair{15, 43}, {16, 45}, {17, 41}, {14, 48}}) {
    const LadderRow row = ladder.row(frontTeeth, rearTeeth);
    profile.proposed.frontTeeth = front(frontTeeth);
    profile.proposed.rearTeeth = rear(rearTeeth);
    const SetupPlan wanted = plan(profile).proposed;
    EXPECT_DOUBLE_EQ(row.finalRatio, wanted.gearing.finalRatio);
    EXPECT_DOUBLE_EQ(row.change.rearTeethEquivalent, wanted.change.rearTeethEquivalent);
    EXPECT_DOUBLE_EQ(row.speedAtLimitMps.back(), *wanted.gearing.gears.back().speedAtRevLimitMps);
    EXPECT_EQ(row.topSpeedMps, wanted.road.topSpeed->speedMps);
    EXPECT_EQ(row.zeroTo100KmhS, wanted.road.run.zeroTo100KmhS);
    EXPECT_EQ(row.driveS(), wanted.road.run.drive->timeS);
    EXPECT_EQ(row.chainRun->axleShiftM, wanted.chainRun->axleShiftM);
    EXPECT_EQ(row.chainRun->fits, wanted.chainRun->fits);
  }
}

TEST(Ladder, IsOrderedByFinalRatioAndWhole) {
  const LadderRange range{14, 17, 40, 48};
  const auto rows = Ladder(ladderInput(ladderBike())).rows(range);
  EXPECT_EQ(rows.size(), range.pairs());
  EXPECT_TRUE(std::is_sorted(rows.begin(), rows.end(), [](const LadderRow& a, const LadderRow& b) {
    return a.finalRatio > b.finalRatio;
  }));
}

TEST(Ladder, StopsBetweenRowsWhenAsked) {
  const Ladder ladder(ladderInput(ladderBike()));
  const LadderRange range{14, 17, 40, 48};
  int asked = 0;
  EXPECT_TRUE(ladder.rows(range, [&] { return ++asked > 3; }).empty());
  EXPECT_EQ(asked, 4) << "no further row was begun";
  EXPECT_EQ(ladder.rows(range, [] { return false; }).size(), range.pairs());
  EXPECT_TRUE(range == (LadderRange{14, 17, 40, 48}));
  EXPECT_FALSE(range == (LadderRange{14, 17, 40, 49}));
}

// Up and down the ladder its input stays: the rows must not depend on which pair is proposed now.
TEST(Ladder, IsTheSameWhicheverPairIsProposed) {
  Profile profile = profileFrom(contentsOf(sourceFolder() / "sample-profiles/motocross-450.bike.json"));
  profile.proposed = {};
  const LadderRow wanted = Ladder(ladderInput(profile)).row(13, 51);
  for (const auto& [f, r] : {std::pair{13, 51}, {13, 52}, {14, 50}}) {
    Profile there = profile;
    there.proposed = proposalWithPair(profile, front(f), rear(r));
    const LadderRow row = Ladder(ladderInput(there)).row(13, 51);
    EXPECT_EQ(row.driveS(), wanted.driveS()) << f << "/" << r;
    EXPECT_EQ(row.zeroTo100KmhS, wanted.zeroTo100KmhS) << f << "/" << r;
    EXPECT_EQ(row.chainRun->misfits, wanted.chainRun->misfits) << f << "/" << r;
  }
}

TEST(Ladder, TakesTyreAndGearboxFromTheProposal) {
  Profile profile = ladderBike();
  profile.proposed.rearTyre = tyre("190/55ZR17");
  EXPECT_GT(Ladder(ladderInput(profile)).row(16, 43).speedAtLimitMps[0],
            Ladder(ladderInput(ladderBike())).row(16, 43).speedAtLimitMps[0]);
}

TEST(Ladder, KnowsTheSparesBox) {
  const auto rows = Ladder(ladderInput(ladderBike())).rows({14, 17, 41, 48});
  EXPECT_TRUE(pairIn(rows, 15, 45).frontInSparesBox);
  EXPECT_TRUE(pairIn(rows, 15, 45).rearInSparesBox);
  EXPECT_FALSE(pairIn(rows, 15, 46).rearInSparesBox);
  Profile worn = ladderBike();
  for (SpareSprocket& spare : worn.sparesBox->front) spare.state = SpareState::Worn;
  EXPECT_FALSE(Ladder(ladderInput(worn)).row(15, 45).frontInSparesBox) << "a worn one is no spare";
}

TEST(Ladder, TheUsualRangeHoldsStockTheSparesAndTheClearances) {
  const LadderRange range = usualRange(ladderInput(ladderBike()));
  EXPECT_LE(range.fewestFront, 14);
  EXPECT_GE(range.mostFront, 17);
  EXPECT_LE(range.mostRear, 48) << "what the chain guard leaves room for";
}

TEST(Ladder, FindsPairsOfOneRatio) {
  const auto rows = Ladder(ladderInput(ladderBike())).rows({14, 16, 42, 48});
  const auto groups = sameRatios(rows);
  const auto holds = [&](int f1, int r1, int f2, int r2) {
    return std::any_of(groups.begin(), groups.end(), [&](const auto& group) {
      const auto in = [&](int f, int r) {
        return std::any_of(group.begin(), group.end(),
                           [&](std::size_t i) { return rows[i].frontTeeth == f && rows[i].rearTeeth == r; });
      };
      return in(f1, r1) && in(f2, r2);
    });
  };
  EXPECT_TRUE(holds(14, 42, 15, 45) && holds(15, 45, 16, 48));
  EXPECT_FALSE(holds(14, 42, 15, 44));
}

TEST(Ladder, OfTwinsTheOneWithFewerSharedMeetingsWearsBetter) {
  // On 114 links 15 and 45 teeth share a factor of 3 each; 16 shares 2 and 48 shares 6.
  const Ladder ladder(ladderInput(ladderBike()));
  EXPECT_LT(wearsBetter(ladder.row(15, 45), ladder.row(16, 48)), 0);
  EXPECT_GT(wearsBetter(ladder.row(16, 48), ladder.row(15, 45)), 0);
}

TEST(LadderAims, EachIsMeasuredInItsOwnTerms) {
  Profile profile = ladderBike();
  profile.aims = {{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 12800},
                  {.want = Aim::Want::CruiseBelow, .speedKmh = 110, .rpm = 6300},
                  {.want = Aim::Want::PullGain, .gear = 2, .percent = 5},
                  {.want = Aim::Want::LeastDriveTime},
                  {.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 240}};
  const Ladder ladder(ladderInput(profile));
  const LadderRow stock = ladder.row(16, 43), shorter = ladder.row(15, 43);
  // Last gear at 205 km/h: 56.944 m/s over 4.960 m/s per 1,000 rpm is 11,480 rpm with stock's pair.
  EXPECT_NEAR(*stock.aims[0].margin, -(12800 - 11480), 1);
  EXPECT_FALSE(stock.aims[0].reached);
  // 110 km/h is 6,160 rpm with stock's pair and 6,571 with a tooth less in front.
  EXPECT_TRUE(stock.aims[1].reached);
  EXPECT_FALSE(shorter.aims[1].reached);
  EXPECT_NEAR(*shorter.aims[1].margin, 6300 - 6571, 1);
  // One front tooth less of 16 is 16/15 of the pull.
  EXPECT_TRUE(shorter.aims[2].reached);
  EXPECT_NEAR(*shorter.aims[2].margin, 100.0 / 15 - 5, 1e-6);
  EXPECT_FALSE(stock.aims[2].reached);
  EXPECT_EQ(*stock.aims[3].margin, 0.0);
  EXPECT_TRUE(stock.aims[4].reached);
}

TEST(LadderAims, TopGearAtAnEngineSpeedAtTheEndOfTheStraight) {
  Profile profile = ladderBike();
  profile.ride->drive = Drive{.exitSpeedKmh = 90, .lengthM = 1500, .exitGear = {}, .extras = {}};
  profile.aims = {{.want = Aim::Want::RevAtDriveEnd, .rpm = 14000},
                  {.want = Aim::Want::RevAtDriveEnd, .gear = 5, .rpm = 14000}};
  const auto rows = Ladder(ladderInput(profile)).rows({14, 17, 38, 52});
  int reached = 0, inFifth = 0;
  for (const LadderRow& row : rows) {
    ASSERT_TRUE(row.drive);
    for (const std::size_t aim : {0U, 1U}) {
      const bool inGear = row.drive->endGear == (aim == 0 ? 6 : 5);
      EXPECT_EQ(row.aims[aim].margin.has_value(), inGear);
      if (inGear) {
        EXPECT_NEAR(*row.aims[aim].margin, -std::abs(row.drive->endRpm - 14000), 1e-9);
      }
      EXPECT_EQ(row.aims[aim].reached, inGear && std::abs(row.drive->endRpm - 14000) <= 0.015 * 14000);
    }
    reached += row.aims[0].reached;
    inFifth += row.aims[1].margin.has_value();
  }
  EXPECT_GT(reached, 0);
  EXPECT_LT(reached, static_cast<int>(rows.size()));
  EXPECT_GT(inFifth, 0);
  // The nearest comes first of those that reach it.
  profile.aims.pop_back();
  const auto aimed = Ladder(ladderInput(profile)).rows({14, 17, 38, 52});
  const LadderRow& best = aimed[rankedByAims(aimed, profile.aims).front()];
  for (const LadderRow& row : aimed)
    if (row.aims[0].reached && row.fits()) {
      EXPECT_LE(*row.aims[0].margin, *best.aims[0].margin);
    }
}

TEST(LadderAims, PairsWithinAHundredthOfASecondAreAsQuick) {
  Profile profile = ladderBike();
  profile.aims = {{.want = Aim::Want::LeastDriveTime}};
  const auto rows = Ladder(ladderInput(profile)).rows({14, 17, 38, 52});
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  ASSERT_TRUE(answer.best);
  const double best = *rows[*answer.best].driveS();
  std::size_t asQuick = 0;
  for (std::size_t i = 0; i < rows.size(); ++i)
    asQuick += i != *answer.best && rows[i].fits() && *rows[i].driveS() <= best + 0.01;
  EXPECT_EQ(answer.asQuick.size(), asQuick);
  EXPECT_GT(asQuick, 0U);
  for (const std::size_t i : answer.asQuick) EXPECT_LE(*rows[i].driveS(), best + 0.01);
  profile.aims = {{.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 100}};
  EXPECT_TRUE(aimAnswer(rows, profile.aims).asQuick.empty()) << "no time is aimed for";
}

TEST(LadderAims, RankThosePairsFirstThatReachAllAndFit) {
  Profile profile = ladderBike();
  profile.aims = {{.want = Aim::Want::PullGain, .percent = 4}, {.want = Aim::Want::LeastDriveTime}};
  const auto rows = Ladder(ladderInput(profile)).rows({14, 17, 38, 52});
  const auto order = rankedByAims(rows, profile.aims);
  ASSERT_EQ(order.size(), rows.size());
  bool reached = true, fits = true;
  double time = 0;
  for (const std::size_t i : order) {
    const LadderRow& row = rows[i];
    const bool rowFits = row.chainRun->fits.value_or(true);
    if (row.reachesAllAims() && rowFits && reached && fits) {
      EXPECT_GE(*row.driveS(), time);
      time = *row.driveS();
    }
    EXPECT_LE(row.reachesAllAims(), reached);
    reached = row.reachesAllAims();
    if (reached) {
      EXPECT_LE(rowFits, fits);
      fits = rowFits;
    }
  }
}

TEST(LadderAims, ABetterPairThatDoesNotFitIsNamed) {
  Profile profile = ladderBike();
  profile.aims = {{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 13384}};
  const auto rows = Ladder(ladderInput(profile)).rows({14, 17, 38, 52});
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  ASSERT_TRUE(answer.best);
  const LadderRow& best = rows[*answer.best];
  EXPECT_TRUE(best.reachesAllAims());
  EXPECT_TRUE(best.chainRun->fits.value());
  ASSERT_FALSE(answer.betterLeftOut.empty());
  for (const std::size_t i : answer.betterLeftOut) {
    EXPECT_FALSE(rows[i].chainRun->fits.value());
    EXPECT_FALSE(rows[i].chainRun->misfits.empty()) << "why is known";
    EXPECT_GE(*rows[i].aims[0].margin, *best.aims[0].margin) << "nearer to the engine speed";
  }
  // All of them: every row that is nearer and is not named does not reach the aim or is the best.
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool named =
        std::find(answer.betterLeftOut.begin(), answer.betterLeftOut.end(), i) != answer.betterLeftOut.end();
    if (!named && rows[i].reachesAllAims()) {
      EXPECT_LE(*rows[i].aims[0].margin, *best.aims[0].margin);
    }
  }
}

TEST(LadderAims, APairThatDoesNotFitAndIsNoBetterIsNotNamed) {
  Profile profile = ladderBike();
  profile.aims = {{.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 150}};
  const auto rows = Ladder(ladderInput(profile)).rows({14, 17, 38, 52});
  ASSERT_TRUE(std::any_of(rows.begin(), rows.end(), [](const LadderRow& row) {
    return row.reachesAllAims() && !row.chainRun->fits.value();
  }));
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  ASSERT_TRUE(answer.best);
  EXPECT_EQ(rows[*answer.best].finalRatio, 43.0 / 16.0)
      << "stock reaches it, with the smallest change of all";
  EXPECT_TRUE(answer.betterLeftOut.empty());
}

TEST(LadderAims, WithoutAimsThereIsNoAnswer) {
  const auto rows = Ladder(ladderInput(ladderBike())).rows({15, 16, 42, 44});
  EXPECT_FALSE(aimAnswer(rows, {}).best);
  EXPECT_TRUE(aimAnswer(rows, {}).betterLeftOut.empty());
}

TEST(LadderAims, OutOfReachThereIsNoBest) {
  Profile profile = ladderBike();
  profile.aims = {{.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 400}};
  const auto rows = Ladder(ladderInput(profile)).rows({15, 16, 42, 44});
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  EXPECT_FALSE(answer.best);
  ASSERT_TRUE(answer.nearestThatFits);
  for (const LadderRow& row : rows) {
    EXPECT_LE(*row.topSpeedMps, *rows[*answer.nearest].topSpeedMps) << "the fastest is nearest";
    if (row.fits()) {
      EXPECT_LE(*row.topSpeedMps, *rows[*answer.nearestThatFits].topSpeedMps);
    }
  }
}

/// A row of that pair which answers the aims so.
LadderRow answering(int rearTeeth, std::vector<AimOutcome> outcomes) {
  LadderRow row = Ladder(ladderInput(ladderBike())).row(16, rearTeeth);
  row.chainRun.reset();  // nothing speaks against it
  row.aims = std::move(outcomes);
  return row;
}

TEST(LadderAims, MissesOfAllAimsAddUpAsSharesOfTheirValues) {
  const std::vector<Aim> aims{{.want = Aim::Want::RevAtSpeed, .speedKmh = 200, .rpm = 10000},
                              {.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 180},
                              {.want = Aim::Want::PullGain, .percent = 25},
                              {.want = Aim::Want::CruiseBelow, .speedKmh = 100, .rpm = 5000}};
  const AimOutcome met{true, 0.0};
  EXPECT_EQ(missOfAims(answering(43, {met, met, met, met}), aims), 0.0);
  // 400 of 10,000 rpm, of which 1.5 % count as reached.
  EXPECT_NEAR(missOfAims(answering(43, {{false, -400.0}, met, met, met}), aims), 0.025, 1e-12);
  // 5 of 50 m/s.
  EXPECT_NEAR(missOfAims(answering(43, {met, {false, -5.0}, met, met}), aims), 0.1, 1e-12);
  // 112.5 instead of 125 % of stock's pull.
  EXPECT_NEAR(missOfAims(answering(43, {met, met, {false, -12.5}, met}), aims), 0.1, 1e-12);
  EXPECT_NEAR(missOfAims(answering(43, {met, met, met, {false, -250.0}}), aims), 0.05, 1e-12);
  EXPECT_NEAR(missOfAims(answering(43, {{false, -400.0}, {false, -5.0}, met, {false, -250.0}}), aims), 0.175,
              1e-12);
  EXPECT_NEAR(missOfAims(answering(43, {met, {false, {}}, met, met}), aims), 1.0, 1e-12) << "cannot be told";
}

TEST(LadderAims, TheNearestMissesAllTogetherByLeast) {
  const std::vector<Aim> aims{{.want = Aim::Want::CruiseBelow, .speedKmh = 100, .rpm = 5000},
                              {.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 180}};
  // 100 rpm are 2 %; 0.5 m/s are 1 %: the figures alone would say otherwise.
  std::vector<LadderRow> rows{answering(42, {{false, -100.0}, {true, 1.0}}),
                              answering(44, {{true, 10.0}, {false, -0.5}}),
                              answering(46, {{false, -50.0}, {false, -0.25}})};
  EXPECT_EQ(aimAnswer(rows, aims).nearest, 1u);
  rows[1].chainRun = Ladder(ladderInput(ladderBike())).row(16, 44).chainRun;
  rows[1].chainRun->fits = false;
  const AimAnswer answer = aimAnswer(rows, aims);
  EXPECT_EQ(answer.nearest, 1u);
  EXPECT_EQ(answer.nearestThatFits, 2u) << "1 % and half a per cent";
}

TEST(LadderAims, WhatABetterPairIsBetterInIsTheAimThatDecides) {
  const Aim quick{.want = Aim::Want::LeastDriveTime},
      rev{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 13384};
  std::vector<LadderRow> rows{answering(45, {{true, -10.0}, {true, 0.1}}),
                              answering(44, {{true, -5.0}, {true, 0.1}})};
  rows[1].chainRun = Ladder(ladderInput(ladderBike())).row(16, 44).chainRun;
  rows[1].chainRun->fits = false;
  for (LadderRow& row : rows) row.drive->timeS = 8.7;
  EXPECT_EQ(aimAnswer(rows, {rev, quick}).betterBy, std::vector{BetterBy::EngineSpeed})
      << "as quick, but nearer";
  rows[1].drive->timeS = 8.6;
  EXPECT_EQ(aimAnswer(rows, {rev, quick}).betterBy, std::vector{BetterBy::DriveTime});
  rows[1].aims = rows[0].aims;
  EXPECT_EQ(aimAnswer(rows, {rev}).betterBy, std::vector{BetterBy::SmallerChange});
  rows[0].chainRun = rows[1].chainRun;
  EXPECT_EQ(aimAnswer(rows, {rev}).betterLeftOut.size(), 2u);
  EXPECT_TRUE(aimAnswer(rows, {rev}).betterBy.empty()) << "nothing to be better than";
}

TEST(Ladder, NamesTheSpareChainThatFitsWithLeastCut) {
  LadderRow row = Ladder(ladderInput(ladderBike())).row(15, 45);
  row.chainRun->lengthsThatFit = {{114, 0.0, 0, {}},
                                  {112, 0.001, {}, SpareCut{116, 4}},
                                  {116, 0.002, {}, SpareCut{118, 2}},
                                  {118, 0.003, {}, {}}};
  ASSERT_TRUE(row.fitsFromSparesBox());
  EXPECT_EQ(row.fitsFromSparesBox()->links, 116);
  row.chainRun->lengthsThatFit.resize(1);
  EXPECT_FALSE(row.fitsFromSparesBox());
}

TEST(Ladder, OfTwinsTheOneSitsBetterWhoseAxleStaysNearer) {
  const Ladder ladder(ladderInput(ladderBike()));
  const LadderRow a = ladder.row(15, 45), b = ladder.row(14, 42);
  ASSERT_LT(std::abs(*a.chainRun->axleShiftM), std::abs(*b.chainRun->axleShiftM));
  EXPECT_LT(sitsBetter(a, b), 0);
  EXPECT_GT(sitsBetter(b, a), 0);
  EXPECT_EQ(sitsBetter(a, a), 0);
  EXPECT_LT(sitsBetter(b, ladder.row(16, 48)), 0) << "one that fits before one that does not";
}

TEST(Ladder, ARowWeighsTheSprocketsOfTheBox) {
  Profile profile = profileFrom(contentsOf(sourceFolder() / "sample-profiles/motocross-450.bike.json"));
  const double light = *Ladder(ladderInput(profile)).row(13, 52).driveS();
  for (SpareSprocket& spare : profile.sparesBox->rear)
    if (spare.teeth == 52) spare.massKg = 3.0;
  EXPECT_GT(*Ladder(ladderInput(profile)).row(13, 52).driveS(), light);
}

}  // namespace
}  // namespace layshaft::test
