// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/limit_words.h"

#include <cmath>

#include "core/units.h"
#include "tests/ui/support.h"
#include "ui/words/road_words.h"
#include "ui/words/summary.h"

namespace layshaft::test {
namespace {

using ui::UnitsShown;

RoadPlan roadLimitedBy(std::vector<std::optional<GearLimit>> limits) {
  RoadPlan road{};
  road.limits = std::move(limits);
  return road;
}

GearLimit limitFromTo(LimitedBy by, bool fromStart, bool toEnd, bool gaps = false, bool both = false) {
  return {.by = by,
          .fromStart = fromStart,
          .toEnd = toEnd,
          .gaps = gaps,
          .both = both,
          .fromMps = 20 / 3.6,
          .toMps = 60 / 3.6,
          .usableN = 1000};
}

QString limitedWordsFor(const RoadPlan& stock, const RoadPlan& proposed, double change) {
  Plan shown = plan(workedExample());
  shown.stock.road = stock;
  shown.proposed.road = proposed;
  return ui::limitedPullWords(shown, change, UnitsShown());
}

TEST(LimitWords, NameGearsAndSpeedsAndWhatIsLeft) {
  const auto grip = LimitedBy::Grip, lift = LimitedBy::Lift;
  const RoadPlan stock = roadLimitedBy({limitFromTo(grip, true, true),
                                        limitFromTo(grip, true, false),
                                        limitFromTo(lift, false, true),
                                        limitFromTo(lift, false, false),
                                        {}});
  EXPECT_EQ(limitedWordsFor(stock, RoadPlan{}, 5.0),
            "Grip limit (stock): all of 1st, 2nd up to 60 km/h. Wheelie limit (stock): 3rd from 20 km/h up, "
            "4th from 20 km/h "
            "to 60 km/h. There shorter gearing by itself pulls no harder; elsewhere by up to 5.0 %.");
  // Taller gearing takes pull from stock; what limits the proposal is what costs nothing.
  EXPECT_EQ(
      limitedWordsFor(RoadPlan{}, roadLimitedBy({limitFromTo(grip, true, true), {}}), 5.0),
      "It pulls by up to 5.0 % harder, by less in 1st, where the tyre or the front wheel does not take all "
      "of it.");
  EXPECT_EQ(
      limitedWordsFor(roadLimitedBy({limitFromTo(grip, true, true), {}}),
                      roadLimitedBy({limitFromTo(grip, true, true), limitFromTo(grip, true, false)}), 5.0),
      "Grip limit (stock): all of 1st. There shorter gearing by itself pulls no harder; elsewhere by up to "
      "5.0 %, by less in 2nd.");
  EXPECT_EQ(limitedWordsFor(RoadPlan{}, RoadPlan{}, 5.0), "");
  EXPECT_EQ(limitedWordsFor(RoadPlan{}, roadLimitedBy({limitFromTo(lift, true, false), {}}), -5.0),
            "Wheelie limit (proposed): 1st up to 60 km/h. There taller gearing by itself pulls no less; "
            "elsewhere less "
            "by up to 5.0 "
            "%.");
  EXPECT_EQ(limitedWordsFor(roadLimitedBy({limitFromTo(grip, true, true), limitFromTo(grip, true, true)}),
                            RoadPlan{}, 5.0),
            "Grip limit (stock): all of 1st, all of 2nd. So shorter gearing by itself pulls no harder in any "
            "gear.");
  EXPECT_EQ(
      limitedWordsFor(roadLimitedBy({limitFromTo(grip, true, true, true), limitFromTo(grip, true, true)}),
                      RoadPlan{}, 5.0),
      "Grip limit (stock): parts of 1st from 20 km/h to 60 km/h, all of 2nd. There shorter gearing by itself "
      "pulls "
      "no harder; elsewhere by up to 5.0 %.")
      << "not all of first";
  EXPECT_TRUE(
      limitedWordsFor(roadLimitedBy({limitFromTo(lift, true, false, false, true), {}}), RoadPlan{}, 5.0)
          .startsWith("Grip and wheelie limit (stock): 1st up to 60 km/h."));
}

// What the sentence says, held against the pull itself: at no speed that it names does the shorter one
// pull harder in that gear, and where it names none it does.
TEST(LimitWords, AreTrueOfThePull) {
  Profile profile = sampleBike("motocross-450");
  profile.proposed = {};
  profile.proposed.rearTeeth = rear(profile.stock.rearTeeth.count() + 3);
  profile.stock.options.links.reset();  // the axle stays
  const Plan shown = plan(profile);
  const RoadModel &stock = *shown.stock.model, &shorter = *shown.proposed.model;
  int limited = 0, free = 0;
  for (std::size_t g = 0; g < stock.gearCount(); ++g) {
    const auto& limit = shown.stock.road.limits[g];
    const double from = limit ? limit->fromMps : shorter.speedMps(5000, g);
    for (double v = from; v < shorter.speedMps(shorter.highestRpm(g), g); v += 0.25) {
      const double gain = shorter.accelerationMps2(v, g) - stock.accelerationMps2(v, g);
      if (limit && v > limit->fromMps + 0.01 && v < limit->toMps - 0.01) {
        EXPECT_LE(gain, 1e-9) << "gear " << g + 1 << " at " << v;
        ++limited;
      } else if (!limit && shorter.rpm(v, g) < shown.pullBike->torque->peak().rpm) {
        EXPECT_GT(gain, 0.0) << "gear " << g + 1 << " at " << v;
        ++free;
      }
    }
  }
  EXPECT_GT(limited, 20);
  EXPECT_GT(free, 10);
}

TEST(LimitWords, TheReadoutSaysThemInsteadOfAHarderPull) {
  Profile profile = sampleBike("motocross-450");
  const QString loam = ui::summary(plan(profile), UnitsShown()).detail;
  EXPECT_TRUE(loam.contains("Grip limit (stock): ")) << loam.toStdString();
  EXPECT_FALSE(loam.contains("% harder;")) << loam.toStdString();
  profile.ride->surfaces[*profile.ride->surface].grip = 3.0;
  profile.bike.chassis->cgHeightMm.reset();
  EXPECT_TRUE(ui::summary(plan(profile), UnitsShown()).detail.contains("% harder;"));
}

TEST(StraightWords, TellStartGearAndShiftsOfEachSetup) {
  Profile profile = workedExample();
  const QString words = ui::driveWords(plan(profile), UnitsShown());
  EXPECT_TRUE(
      words.contains("Stock: 1st to 4th, 3 shifts, 14,478 rpm, 722 rpm below "
                     "the limiter.\n"))
      << words.toStdString();
  EXPECT_TRUE(words.contains("Proposed: 1st to 5th, 4 shifts, 13,904 rpm")) << words.toStdString();
  EXPECT_TRUE(words.endsWith("Equal within 0.01 s.")) << words.toStdString();
  EXPECT_EQ(ui::standingStartWords(plan(profile)),
            "1/4 mile: stock starts in 1st, 3 shifts; proposed starts in 1st, 3 shifts.");
}

TEST(StraightWords, TellWhichIsQuicker) {
  Profile profile = workedExample();
  profile.proposed.rearTeeth = rear(52);
  const QString words = ui::driveWords(plan(profile), UnitsShown());
  EXPECT_TRUE(words.contains("Proposed is ") && words.contains(" s slower.")) << words.toStdString();
  profile.proposed = {};
  EXPECT_FALSE(ui::driveWords(plan(profile), UnitsShown()).contains("Equal")) << "nothing to compare";
}

TEST(StraightWords, KeepToTheExitGear) {
  Profile profile = workedExample();
  profile.ride->drive->exitGear = 3;
  const QString words = ui::driveWords(plan(profile), UnitsShown());
  EXPECT_TRUE(words.startsWith("400 m straight from 80 km/h in 3rd.\nStock: 3rd to ")) << words.toStdString();
  profile.ride->drive->exitGear = 1;
  profile.ride->drive->exitSpeedKmh = 200;
  EXPECT_TRUE(ui::driveWords(plan(profile), UnitsShown())
                  .contains("Stock: 1st does not turn between idle and the limiter at that speed."));
}

}  // namespace
}  // namespace layshaft::test
