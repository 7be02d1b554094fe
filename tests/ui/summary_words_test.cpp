// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/support.h"
#include "ui/words/summary.h"

namespace layshaft::test {
namespace {

using ui::Summary;
using ui::UnitsShown;
using ui::UnitSystem;

using Values = std::vector<std::pair<std::string, Json>>;

Summary wordsFor(const Values& values, UnitSystem units = UnitSystem::Metric) {
  return ui::summary(plan(bike(values)), UnitsShown(units));
}

const QString kEstimated = "Rollout is estimated from the tyre size, good to about ±2 %.";

TEST(SummaryWords, NothingProposed) {
  const Summary words = wordsFor({});
  EXPECT_EQ(words.headline, "The proposal is the same as stock.");
  EXPECT_EQ(words.detail, kEstimated);
}

TEST(SummaryWords, Shorter) {
  const Summary words = wordsFor({{"/proposed/front_teeth", 15}});
  EXPECT_EQ(words.headline,
            "Shorter (geared down) by 6.7 %, a moderate step: about as much as 2.9 more teeth at the rear.");
  EXPECT_EQ(words.detail,
            "Front 16 → 15. Every gear tops out 6.3 % lower and pulls 6.7 % harder; at the same road speed "
            "the engine turns 6.7 % faster. " +
                kEstimated);
}

TEST(SummaryWords, Taller) {
  const Summary words = wordsFor({{"/proposed/rear_teeth", 39}});
  EXPECT_EQ(words.headline,
            "Taller (geared up) by 9.3 %, a moderate step: about as much as 4 teeth fewer at the rear.");
  EXPECT_EQ(words.detail,
            "Rear 43 → 39. Every gear tops out 10.3 % higher and pulls 9.3 % less; at the same road speed "
            "the engine turns 9.3 % slower. " +
                kEstimated);
}

TEST(SummaryWords, OneToothAndLargeSteps) {
  EXPECT_EQ(wordsFor({{"/proposed/rear_teeth", 44}}).headline,
            "Shorter (geared down) by 2.3 %, a small step: about as much as one more tooth at the rear.");
  EXPECT_EQ(wordsFor({{"/proposed/rear_teeth", 42}}).headline,
            "Taller (geared up) by 2.3 %, a small step: about as much as one tooth fewer at the rear.");
  EXPECT_EQ(wordsFor({{"/proposed/front_teeth", 14}}).headline,
            "Shorter (geared down) by 14.3 %, a large step: about as much as 6.1 more teeth at the rear.");
}

TEST(SummaryWords, TyreOnly) {
  const Summary words = wordsFor({{"/proposed/rear_tyre", "190/55ZR17"}});
  EXPECT_EQ(words.headline,
            "Taller (geared up) by 1.7 %, a small step: about as much as 0.7 teeth fewer at the rear.");
  EXPECT_EQ(words.detail,
            "Tyre 180/55ZR17 → 190/55ZR17, rollout 1,939 → 1,973 mm. Every gear tops out 1.7 % higher and "
            "pulls 1.7 % less; at the same road speed the engine turns 1.7 % slower. " +
                kEstimated);
}

TEST(SummaryWords, TyreOnlyInInches) {
  const Summary words = wordsFor({{"/proposed/rear_tyre", "190/55ZR17"}}, UnitSystem::Imperial);
  EXPECT_THAT(words.detail.toStdString(), testing::HasSubstr("rollout 76.3 → 77.7 in."));
}

TEST(SummaryWords, GearboxOnlyAllGearsAlike) {
  const Summary words = wordsFor({{"/proposed/primary_ratio", 2.0}});
  EXPECT_EQ(words.headline,
            "Shorter (geared down) by 2.3 %, a small step: about as much as one more tooth at the rear.");
  EXPECT_TRUE(words.detail.startsWith("Primary 1.955 → 2.000. Every gear tops out 2.3 % lower"))
      << words.detail.toStdString();
}

TEST(SummaryWords, GearboxOnlySomeGears) {
  EXPECT_EQ(wordsFor({{"/proposed/gear_ratios", {2.6, 2.06, 1.24}}}).headline,
            "Taller (geared up), but not equally in every gear. Gear 1 is 4.1 % taller, gears 2 to 3 are as "
            "stock.");
  EXPECT_EQ(wordsFor({{"/proposed/gear_ratios", {2.6, 2.06, 1.24}}}).detail,
            "Gear ratios changed. " + kEstimated);
  EXPECT_EQ(wordsFor({{"/proposed/gear_ratios", {2.71, 2.06, 1.3}}}).headline,
            "Shorter (geared down), but not equally in every gear. Gears 1 to 2 are as stock, gear 3 is 4.8 "
            "% shorter.");
}

TEST(SummaryWords, SomeGearsShorterAndSomeTaller) {
  const Summary words = wordsFor({{"/proposed/gear_ratios", {2.6, 2.06, 1.3}}});
  EXPECT_EQ(words.headline,
            "Some gears shorter (geared down), some taller (geared up). Gear 1 is 4.1 % taller, gear 2 is as "
            "stock, gear 3 is 4.8 % shorter.");
}

TEST(SummaryWords, MixedPartsAreToldAsOneChange) {
  const Summary words = wordsFor({{"/proposed/front_teeth", 15}, {"/proposed/rear_tyre", "190/55ZR17"}});
  EXPECT_EQ(words.headline,
            "Shorter (geared down) by 4.8 %, a small step: about as much as 2.1 more teeth at the rear.");
  EXPECT_TRUE(
      words.detail.startsWith("Front 16 → 15, tyre 180/55ZR17 → 190/55ZR17, rollout 1,939 → 1,973 mm. Every "
                              "gear tops out 4.6 % lower"))
      << words.detail.toStdString();
}

TEST(SummaryWords, OtherPartsWithTheSameGearing) {
  const Summary words = wordsFor({{"/proposed/front_teeth", 32}, {"/proposed/rear_teeth", 86}});
  EXPECT_EQ(words.headline, "Different parts, same gearing as stock.");
  EXPECT_EQ(words.detail, "Front 16 → 32, rear 43 → 86. " + kEstimated);
}

TEST(SummaryWords, AnotherNumberOfGears) {
  EXPECT_EQ(wordsFor({{"/proposed/gear_ratios", {2.71, 2.06, 1.24, 1.1}}}).headline,
            "4 gears instead of 3. Gears 1 to 3 are as stock.");
  EXPECT_EQ(wordsFor({{"/proposed/gear_ratios", {2.71, 2.06}}}).headline,
            "2 gears instead of 3. Gears 1 to 2 are as stock.");
  EXPECT_EQ(wordsFor({{"/proposed/gear_ratios", Json::array({2.71})}}).headline,
            "1 gear instead of 3. Gear 1 is as stock.");
}

TEST(SummaryWords, WarnsWhereOnlyOneRolloutIsMeasured) {
  EXPECT_EQ(wordsFor({{"/stock/rollout_mm", 1930}}).detail, "") << "both measured, nothing changed";
  EXPECT_TRUE(wordsFor({{"/stock/rollout_mm", 1930}, {"/proposed/rear_tyre", "190/55ZR17"}})
                  .detail.endsWith("One rollout is measured, the other estimated to about ±2 %: measure both "
                                   "before you trust the difference."));
}

/// Both names of a direction, each once however long the text: "shorter (geared down)".
TEST(SummaryWords, SayBothNamesOfADirectionOnce) {
  const Json shorterFirst = {2.8, 2.06, 1.24}, tallerFirst = {2.6, 2.06, 1.24}, mixed = {2.6, 2.06, 1.3};
  const Json fourGears = {2.71, 2.06, 1.24, 1.1};
  struct Row {
    Values values;
    int down, up;
  };
  const Row cases[] = {
      {{}, 0, 0},
      {{{"/proposed/front_teeth", 15}}, 1, 0},
      {{{"/proposed/front_teeth", 17}}, 0, 1},
      {{{"/proposed/rear_tyre", "190/55ZR17"}}, 0, 1},
      {{{"/proposed/rear_tyre", "160/60ZR17"}}, 1, 0},
      {{{"/proposed/primary_ratio", 1.9}}, 0, 1},
      {{{"/proposed/gear_ratios", shorterFirst}}, 1, 0},
      {{{"/proposed/gear_ratios", tallerFirst}}, 0, 1},
      {{{"/proposed/gear_ratios", mixed}}, 1, 1},
      {{{"/proposed/front_teeth", 15}, {"/proposed/gear_ratios", mixed}}, 1, 0},
      {{{"/proposed/gear_ratios", fourGears}}, 0, 0},
      {{{"/proposed/gear_ratios", fourGears}, {"/proposed/front_teeth", 15}}, 1, 0},
      {{{"/proposed/gear_ratios", fourGears}, {"/proposed/front_teeth", 17}}, 0, 1},
  };
  for (const Row& one : cases) {
    const Summary words = wordsFor(one.values);
    const QString all = words.headline + ' ' + words.detail;
    EXPECT_EQ(all.count("horter (geared down)"), one.down) << all.toStdString();
    EXPECT_EQ(all.count("aller (geared up)"), one.up) << all.toStdString();
    EXPECT_EQ(all.count("geared"), one.down + one.up) << all.toStdString();
  }
}

/// A change too small to be a step is still one that happened: it must read as a sentence.
TEST(SummaryWords, ChangesNearNothingReadAsSentences) {
  for (const int rear : {41, 42, 43, 44, 45})
    for (const char* tyre : {"180/55ZR17", "190/55ZR17", "190/50ZR17", "200/50ZR17"})
      for (const int front : {15, 16}) {
        const QString headline = wordsFor({{"/proposed/front_teeth", front},
                                           {"/proposed/rear_teeth", rear},
                                           {"/proposed/rear_tyre", tyre}})
                                     .headline;
        EXPECT_FALSE(headline.contains("by 0.0 %") || headline.contains("no step") ||
                     headline.contains("as much as less than") || headline.contains(" 0 "))
            << headline.toStdString();
      }
}

Summary wordsOf(const char* sample, const std::function<void(Profile&)>& change) {
  Profile profile = sampleBike(sample);
  change(profile);
  return ui::summary(plan(profile), UnitsShown());
}

TEST(SummaryWords, WhatDoesNotFitIsSaidBeforeAllElseAndInShort) {
  const Summary words = wordsOf("club-600", [](Profile& p) { p.proposed.options.links = 118; });
  EXPECT_EQ(words.misfit, "Does not fit");
  EXPECT_TRUE(words.detail.contains("past the end of its slot. Would fit with 114 links."))
      << words.detail.toStdString();
  EXPECT_FALSE(words.detail.contains("this chain")) << "where it comes from is told on the chain's page";
  EXPECT_EQ(wordsOf("club-600", [](Profile&) {}).misfit, "");
  const Summary odd = wordsOf("club-600", [](Profile& p) { p.proposed.options.links = 113; });
  EXPECT_EQ(odd.misfit, "Does not fit properly");
  EXPECT_TRUE(odd.cautions.contains("Does not fit properly: use an even number of links."));
  EXPECT_FALSE(odd.detail.contains("Fits with")) << odd.detail.toStdString();
}

}  // namespace
}  // namespace layshaft::test
