// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/wear.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/input.h"
#include "core/plan.h"
#include "core/report.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

constexpr double kNew20Mm = 317.5;  // 20 pitches of 15.875 mm

WearMeasurement measured(const char* date, std::optional<double> at, std::vector<double> lengths) {
  WearMeasurement entry;
  entry.date = Date::parse(date).value();
  entry.at = at;
  entry.lengthsMm = std::move(lengths);
  return entry;
}

double lengthAt(double percent) {
  return kNew20Mm * (1 + percent / 100);
}

WearInput inputWith(const std::vector<WearMeasurement>& entries) {
  WearInput input{{}, chainSize("520"), ChainKind::Sealed};
  for (const WearMeasurement& entry : entries) input.wear.measurements.add(entry);
  return input;
}

Json wearReportOf(const Profile& profile) {
  return Json::parse(reportJson(plan(profile)));
}

TEST(Wear, GreatestPlaceCountsAndTheSpreadIsTold) {
  const WearFigures figures =
      wear(inputWith({measured("2026-03-01", 4, {lengthAt(0.3), lengthAt(0.8), lengthAt(0.5)})}));
  EXPECT_NEAR(*figures.elongationPercent, 0.8, 1e-9);
  EXPECT_NEAR(*figures.unevennessPercent, 0.5, 1e-9);
  EXPECT_EQ(figures.chain, WearVerdict::Watch);
  EXPECT_EQ(figures.set, WearVerdict::Watch);
  EXPECT_THAT(figures.reasons, testing::ElementsAre(WearReason::ChainNearLimit));
}

TEST(Wear, VerdictsChangeAtThreeQuartersOfTheLimitAndAtTheLimit) {
  const auto verdict = [](double percent) {
    return *wear(inputWith({measured("2026-03-01", 4, {lengthAt(percent)})})).chain;
  };
  EXPECT_EQ(verdict(0.749), WearVerdict::Good);
  EXPECT_EQ(verdict(0.751), WearVerdict::Watch);
  EXPECT_EQ(verdict(0.999), WearVerdict::Watch);
  EXPECT_EQ(verdict(1.001), WearVerdict::Replace);
}

TEST(Wear, LimitGoesByTheManualThenByTheKindOfChain) {
  WearInput input = inputWith({measured("2026-03-01", 4, {lengthAt(1.6)})});
  EXPECT_EQ(wear(input).limitPercent, 1.0);
  EXPECT_EQ(wear(input).limitSource, WearLimitSource::SealedChain);
  input.chainKind = ChainKind::Plain;
  EXPECT_EQ(wear(input).limitPercent, 2.0);
  EXPECT_EQ(wear(input).chain, WearVerdict::Watch);
  input.chainKind.reset();
  EXPECT_EQ(wear(input).limitPercent, 1.0);
  EXPECT_EQ(wear(input).limitSource, WearLimitSource::UnknownChain);
  input.wear.limitPercent = 1.4;
  EXPECT_EQ(wear(input).limitSource, WearLimitSource::Manual);
  EXPECT_EQ(wear(input).chain, WearVerdict::Replace);
}

TEST(Wear, AnyPartToReplaceReplacesTheSet) {
  WearMeasurement entry = measured("2026-03-01", 4, {lengthAt(0.1)});
  entry.front = TeethSeen::Good;
  entry.rear = TeethSeen::Hooked;
  WearFigures figures = wear(inputWith({entry}));
  EXPECT_EQ(figures.chain, WearVerdict::Good);
  EXPECT_EQ(figures.front, WearVerdict::Good);
  EXPECT_EQ(figures.rear, WearVerdict::Replace);
  EXPECT_EQ(figures.set, WearVerdict::Replace);
  entry.rear = TeethSeen::Worn;
  entry.liftsOffHalfTooth = true;
  figures = wear(inputWith({entry}));
  EXPECT_EQ(figures.rear, WearVerdict::Replace);
  EXPECT_THAT(figures.reasons, testing::ElementsAre(WearReason::ChainLiftsOff, WearReason::RearWorn));
}

TEST(Wear, NothingSeenNothingSaid) {
  const WearFigures figures = wear(inputWith({}));
  EXPECT_FALSE(figures.set || figures.chain || figures.elongationPercent || figures.endOfLife);
}

TEST(Wear, TrendReachesTheLimit) {
  const WearFigures figures = wear(
      inputWith({measured("2026-03-01", 4, {lengthAt(0.2)}), measured("2026-03-08", 8, {lengthAt(0.4)})}));
  EXPECT_NEAR(*figures.trendPercentPerUse, 0.05, 1e-12);
  EXPECT_NEAR(figures.endOfLife->at, 20.0, 1e-9);
  EXPECT_FALSE(figures.endOfLife->low) << "two points have no spread";
}

TEST(Wear, NoEndWhereNothingWears) {
  const WearFigures figures = wear(
      inputWith({measured("2026-03-01", 4, {lengthAt(0.4)}), measured("2026-03-08", 8, {lengthAt(0.4)})}));
  EXPECT_FALSE(figures.endOfLife);
  EXPECT_TRUE(figures.trendDoesNotRise);
}

TEST(Wear, SlipsAreKeptAndLeftOutOfTheTrend) {
  const WearFigures figures = wear(inputWith(
      {measured("2026-03-01", 4, {lengthAt(0.2)}), measured("2026-03-05", 6, {lengthAt(-0.1), lengthAt(0.4)}),
       measured("2026-03-08", 8, {lengthAt(0.4)}), measured("2026-03-09", 5, {lengthAt(0.5)}),
       measured("2026-03-10", {}, {lengthAt(0.6)})}));
  ASSERT_EQ(figures.measured.size(), 5U);
  EXPECT_EQ(figures.measured[1].slip, MeasuringSlip::ShorterThanNew);
  EXPECT_EQ(figures.measured[3].slip, MeasuringSlip::UseGoesBack);
  EXPECT_EQ(figures.measured[4].slip, MeasuringSlip::UseNotGiven);
  EXPECT_NEAR(figures.endOfLife->at, 20.0, 1e-9);
  EXPECT_NEAR(*figures.elongationPercent, 0.6, 1e-9) << "its length is good all the same";
}

TEST(Wear, StruckEntriesAndEarlierChainsDoNotCount) {
  WearMeasurement wrong = measured("2026-03-10", 12, {lengthAt(1.4)});
  wrong.struck = Struck{.date = *Date::parse("2026-03-11"), .reason = "counted pins"};
  WearInput input = inputWith(
      {measured("2026-01-01", 2, {lengthAt(0.9)}), measured("2026-03-01", 10, {lengthAt(0.1)}), wrong});
  input.wear.chainFittedAt = 9;
  const WearFigures figures = wear(input);
  EXPECT_NEAR(*figures.elongationPercent, 0.1, 1e-9);
  EXPECT_FALSE(figures.trendPercentPerUse);
  EXPECT_EQ(figures.chain, WearVerdict::Good);
}

TEST(Wear, WhatIsMeasuredIsTheLengthOfTheChainInUse) {
  Profile profile = workedExample();
  profile.stock.options.chainElongationPercent.reset();
  profile.wear = Wear{};
  profile.wear->measurements.add(measured("2026-03-01", 4, {lengthAt(0.6)}));
  EXPECT_NEAR(*elongationInUse(profile), 0.6, 1e-9);
  const Plan worn = plan(profile);
  EXPECT_NEAR(*worn.stock.setup.options.chainElongationPercent, 0.6, 1e-9);
  Profile typed = profile;
  typed.wear.reset();
  typed.stock.options.chainElongationPercent = worn.stock.setup.options.chainElongationPercent;
  EXPECT_EQ(*worn.proposed.chainRun->axleShiftM, *plan(typed).proposed.chainRun->axleShiftM);
  EXPECT_EQ(ladderInput(profile).stock, ladderInput(typed).stock) << "the ladder's fit sees it too";
  profile.stock.options.chainElongationPercent = 0.2;
  EXPECT_EQ(*elongationInUse(profile), 0.2) << "what is typed counts";
}

TEST(Wear, RecordsChangeNoPlan) {
  Profile profile = workedExample();
  const PlanInput before = planInput(profile);
  profile.records = Records{};
  profile.records->services.add(Service{});
  profile.prices = Prices{.currency = "EUR", .parts = {}, .extras = {}};
  EXPECT_EQ(planInput(profile), before);
}

TEST(WearMixes, BothWaysAndTheFrontLeftOld) {
  WearFigures figures = wear(inputWith({measured("2026-03-01", 4, {lengthAt(1.2)})}));
  EXPECT_THAT(wearMixes(figures, {.rear = true}), testing::ElementsAre(WearMix::NewSprocketUnderWornChain));
  EXPECT_THAT(wearMixes(figures, {.chain = true, .front = true, .rear = true}), testing::IsEmpty());
  EXPECT_THAT(wearMixes(figures, {.chain = true, .rear = true}),
              testing::ElementsAre(WearMix::FrontSprocketLeftOld));
  figures.front = WearVerdict::Watch;
  EXPECT_THAT(wearMixes(figures, {.chain = true, .rear = true}),
              testing::ElementsAre(WearMix::NewChainOverWornSprockets));
}

TEST(Report, HasTheWear) {
  Profile profile = workedExample();
  EXPECT_FALSE(wearReportOf(profile).contains("wear"));
  profile.wear = Wear{};
  for (const double at : {4.0, 8.0, 12.0})
    profile.wear->measurements.add(
        measured("2026-03-01", at, {lengthAt(at * 0.05 + (at == 8.0 ? 0.01 : 0.0))}));
  const Json wear = wearReportOf(profile)["wear"];
  EXPECT_NEAR(wear["elongation_percent"].get<double>(), 0.6, 1e-9);
  EXPECT_EQ(wear["set"], "good");
  EXPECT_TRUE(wear["front"].is_null());
  EXPECT_EQ(wear["use_unit"], "hours");
  EXPECT_LT(wear["end_of_life_low"].get<double>(), wear["end_of_life_at"].get<double>());
  EXPECT_GT(wear["end_of_life_high"].get<double>(), wear["end_of_life_at"].get<double>());
}

}  // namespace
}  // namespace layshaft::test
