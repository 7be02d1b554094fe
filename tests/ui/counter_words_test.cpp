// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/counter_words.h"

#include "core/study/offers.h"
#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

using ui::CounterLine;
using ui::UnitsShown;
using ui::UnitSystem;
using ui::Worth;

/// What the customer reads of a bike with another pair.
std::vector<CounterLine> linesFor(Profile profile, int frontTeeth, int rearTeeth,
                                  UnitsShown units = UnitsShown()) {
  profile.proposed.frontTeeth = front(frontTeeth);
  profile.proposed.rearTeeth = rear(rearTeeth);
  return ui::counterLines(plan(profile), units);
}

constexpr std::size_t kPull = 0, kCruise = 1, kTop = 2, kFit = 3;

TEST(CounterWords, ShorterGainsPullAndCostsRevsAndTopSpeed) {
  const auto lines = linesFor(bike({{"/cruise_speed_kmh", 110}}), 15, 43);
  ASSERT_EQ(lines.size(), 4u);
  // 16/15: one front tooth fewer is 6.7 % more force and as many more revs.
  EXPECT_EQ(lines[kPull], (CounterLine{Worth::Gain, "6.7 % more pull in 1st gear"}));
  EXPECT_EQ(lines[kCruise].worth, Worth::Cost);
  EXPECT_TRUE(lines[kCruise].words.contains(" instead of ")) << lines[kCruise].words.toStdString();
  EXPECT_TRUE(lines[kCruise].words.endsWith("rpm at 110 km/h")) << lines[kCruise].words.toStdString();
  EXPECT_EQ(lines[kTop].worth, Worth::Cost);
  EXPECT_TRUE(lines[kTop].words.startsWith("Top gear reaches ")) << "without an engine curve";
  EXPECT_EQ(lines[kFit], (CounterLine{Worth::Same, "Whether it fits is not known"}));
}

TEST(CounterWords, TallerTheOtherWayRound) {
  const auto lines = linesFor(bike({{"/cruise_speed_kmh", 110}}), 17, 43);
  EXPECT_EQ(lines[kPull], (CounterLine{Worth::Cost, "5.9 % less pull in 1st gear"}));
  EXPECT_EQ(lines[kCruise].worth, Worth::Gain);
  EXPECT_EQ(lines[kTop].worth, Worth::Gain);
}

TEST(CounterWords, WithoutACruiseSpeedRevsAreCompared) {
  EXPECT_EQ(linesFor(bike(), 15, 43)[kCruise],
            (CounterLine{Worth::Cost, "6.7 % more revs at the same speed"}));
  EXPECT_EQ(linesFor(bike(), 16, 43)[kCruise], (CounterLine{Worth::Same, "As many revs at the same speed"}));
}

TEST(CounterWords, StockGainsAndCostsNothing) {
  const Profile profile = sampleBike("club-600");
  const auto lines = linesFor(profile, profile.stock.frontTeeth.count(), profile.stock.rearTeeth.count());
  EXPECT_EQ(lines[kPull].worth, Worth::Same);
  EXPECT_EQ(lines[kCruise].worth, Worth::Same);
  EXPECT_EQ(lines[kTop].worth, Worth::Same);
  EXPECT_EQ(lines[kFit], (CounterLine{Worth::Gain, "Fits, and your chain stays"}));
  Profile same = profile;
  same.proposed = {};
  EXPECT_EQ(ui::counterSentence(plan(same)), "Rides as your bike does now.");
}

TEST(CounterWords, TopSpeedIsThatOfThePlanInTheUnitsShown) {
  Profile profile = sampleBike("club-600");
  const Plan planned = plan(offerInput(profile, offers(profile, Wish::Shorter).back()));
  ASSERT_TRUE(planned.proposed.road.topSpeed);
  const UnitsShown miles(UnitSystem::Imperial);
  const QString mph = QString::number(std::round(planned.proposed.road.topSpeed->speedMps / 0.44704));
  const auto lines = ui::counterLines(planned, miles);
  EXPECT_TRUE(lines[kTop].words.contains(mph + " mph")) << lines[kTop].words.toStdString();
}

TEST(CounterWords, AChainThatMustBeOrderedIsNamedAndIsACost) {
  Profile profile = sampleBike("club-600");
  profile.proposed.options.links = *profile.stock.options.links + 2;
  profile.bike.chainRun->adjusterBackMm = 100;
  const auto line = ui::counterLines(plan(profile), UnitsShown())[kFit];
  EXPECT_EQ(line.worth, Worth::Cost);
  EXPECT_EQ(line.words, QString("Fits with a chain of %1 links").arg(*profile.proposed.options.links));
}

TEST(CounterWords, WhatDoesNotFitSaysSoAndWhatWould) {
  Profile profile = sampleBike("club-600");
  profile.bike.chainRun->largestRearTeeth = profile.stock.rearTeeth.count();
  const int front = profile.stock.frontTeeth.count(), rear = profile.stock.rearTeeth.count();
  EXPECT_EQ(linesFor(profile, front, rear + 1)[kFit], (CounterLine{Worth::Cost, "Does not fit"}));
  const auto other = linesFor(sampleBike("club-600"), 14, 40)[kFit];
  EXPECT_EQ(other.worth, Worth::Cost);
  EXPECT_TRUE(other.words.startsWith("Would fit with ")) << other.words.toStdString();
}

TEST(CounterWords, APulleyBikeHearsOfItsBelt) {
  Profile profile = sampleBike("tourer-belt");
  profile.proposed = {};
  const auto line = ui::counterLines(plan(profile), UnitsShown())[kFit];
  EXPECT_TRUE(line.words.contains("belt")) << line.words.toStdString();
}

TEST(CounterWords, WhereTheFrontWheelIsTheLimitShorterBringsNoPull) {
  Profile profile = sampleBike("motocross-450");
  profile.proposed = {};
  ASSERT_TRUE(plan(profile).stock.road.limits.front()) << "first gear of the sample is limited";
  const auto line =
      linesFor(profile, profile.stock.frontTeeth.count(), profile.stock.rearTeeth.count() + 2)[kPull];
  EXPECT_EQ(line.worth, Worth::Same) << line.words.toStdString();
  EXPECT_TRUE(line.words.startsWith("No more pull in 1st gear: ")) << line.words.toStdString();
}

TEST(CounterWords, ABikeOfWhichLittleIsKnownStillHasFourLines) {
  Json json = minimalProfile();
  json["bike"]["engine"].erase("rev_limit_rpm");
  json["stock"].erase("gear_ratios");
  const auto lines = linesFor(profileFrom(json.dump()), 15, 43);
  ASSERT_EQ(lines.size(), 4u);
  EXPECT_EQ(lines[kPull], (CounterLine{Worth::Gain, "6.7 % more pull in 1st gear"}));
  EXPECT_EQ(lines[kTop], (CounterLine{Worth::Same, "Top speed is not known"}));
}

TEST(CounterWords, EveryLineIsHeardWithItsWorth) {
  Profile profile = bike();
  profile.proposed.frontTeeth = front(15);
  const QString heard = ui::counterDescription(plan(profile), UnitsShown());
  EXPECT_TRUE(heard.startsWith("Clearly livelier and busier. Gain: 6.7 % more pull in 1st gear."))
      << heard.toStdString();
  EXPECT_TRUE(heard.contains("Cost: ")) << heard.toStdString();
  EXPECT_NE(ui::worthMark(Worth::Gain), ui::worthMark(Worth::Cost));
}

}  // namespace
}  // namespace layshaft::test
