// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/adopted.h"

#include <gtest/gtest.h>

#include "core/study/fitted.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Profile adoptable() {
  return loadProfile(sourceFolder() / "sample-profiles/motocross-450.bike.json").value();
}

TEST(Adopted, WhatWasProposedIsStockAndNothingIsProposed) {
  const Profile before = adoptable(), after = adopted(before);
  EXPECT_EQ(after.stock.rearTeeth.count(), 51);
  EXPECT_TRUE(after.proposed.changesNothing());
  EXPECT_EQ(after.stock.options.rearSprocket->massKg, 0.44);
  EXPECT_EQ(after.pins.size(), before.pins.size());
  EXPECT_EQ(applied(after.pins[1].change, after.stock).frontTeeth,
            applied(before.pins[1].change, before.stock).frontTeeth);
}

TEST(Adopted, TheAxlesTravelIsCountedFromWhereItStandsNow) {
  const Profile before = adoptable(), after = adopted(before);
  const double shiftMm = 1000 * fitted(before.stock, applied(before.proposed, before.stock)).axleShiftM;
  ASSERT_LT(shiftMm, -4.0);
  const ChainRun &was = *before.bike.chainRun, &is = *after.bike.chainRun;
  EXPECT_NEAR(*is.adjusterForwardMm, *was.adjusterForwardMm + shiftMm, 0.006);
  EXPECT_NEAR(*is.adjusterBackMm, *was.adjusterBackMm - shiftMm, 0.006);
  EXPECT_NEAR(*is.centreDistanceMm, *was.centreDistanceMm + shiftMm, 0.006);
  EXPECT_NEAR(*is.swingarmLengthMm, *was.swingarmLengthMm + shiftMm, 0.006);
  EXPECT_NEAR(*after.bike.chassis->wheelbaseMm, *before.bike.chassis->wheelbaseMm + shiftMm, 0.006);
}

TEST(Adopted, TheNewStockDoesWhatTheProposalDid) {
  const Profile before = adoptable();
  const SetupPlan proposed = plan(before).proposed, stock = plan(adopted(before)).stock;
  EXPECT_NEAR(*stock.chainRun->centreDistanceM, *proposed.chainRun->centreDistanceM, 1e-5);
  EXPECT_NEAR(*stock.chainRun->wheelbaseM, *proposed.chainRun->wheelbaseM, 1e-5);
  EXPECT_FALSE(stock.chainRun->measuredCentreOffLinks);
  EXPECT_NEAR(stock.road.run.drive->timeS, proposed.road.run.drive->timeS, 1e-4);
  EXPECT_NEAR(*stock.road.run.zeroTo100KmhS, *proposed.road.run.zeroTo100KmhS, 1e-4);
  EXPECT_NEAR(stock.road.topSpeed->speedMps, proposed.road.topSpeed->speedMps, 1e-4);
}

TEST(Adopted, NumbersAreWrittenAsOneTypesThem) {
  for (const auto& file : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    const std::string text = writeProfile(adopted(loadProfile(file.path()).value()));
    EXPECT_EQ(text.find("00000"), std::string::npos) << file.path();
    EXPECT_EQ(text.find("99999"), std::string::npos) << file.path();
  }
}

TEST(Adopted, ASlotThatItLeftIsToBeMeasuredAgain) {
  Profile profile = adoptable();
  profile.proposed.options.links = 118;
  const Profile after = adopted(profile);
  EXPECT_FALSE(after.bike.chainRun->adjusterForwardMm);
  EXPECT_FALSE(after.bike.chainRun->adjusterBackMm);
}

TEST(Adopted, ASprocketThatStaysIsStillCutForTheOldChain) {
  Profile profile = adoptable();
  profile.proposed.options.chainSize = chainSize("525");
  const Profile after = adopted(profile);
  EXPECT_EQ(after.stock.options.frontSprocket->size, chainSize("520"));
  const auto run = plan(after).stock.chainRun.value();
  ASSERT_EQ(run.mixes.size(), 1U);
  EXPECT_EQ(run.mixes[0].place, SprocketPlace::Front);
}

TEST(Adopted, AnInertiaThatIsNotGivenStaysOpen) {
  Profile profile = adoptable();
  profile.bike.chassis->rearWheelInertiaKgm2.reset();
  EXPECT_FALSE(adopted(profile).bike.chassis->rearWheelInertiaKgm2);
}

TEST(Adopted, WhatIsNotGivenStaysOpen) {
  Json json = minimalProfile();
  json["proposed"] = {{"rear_teeth", 45}};
  const Profile after = adopted(profileFrom(json.dump()));
  EXPECT_FALSE(after.bike.chainRun);
  EXPECT_FALSE(after.bike.chassis);
  EXPECT_EQ(after.stock.rearTeeth.count(), 45);
}

TEST(Adopted, CanBeWrittenAndReadWhateverItHolds) {
  for (const auto& file : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    Profile profile = loadProfile(file.path()).value();
    profile.proposed.options.links = 130;  // far outside the slot
    const Profile after = adopted(profile);
    EXPECT_EQ(profileFrom(writeProfile(after)), after) << file.path();
  }
}

/// What the rider read at a true 100 km/h with the proposal is what the new stock shows, too.
TEST(Adopted, ASpeedometerThatNobodySetAnewGoesOnShowingTheSame) {
  for (const char* sensor : {"gearbox_output", "rear_wheel"})
    for (const double readsHigh : {0.0, 4.5}) {
      Json json = minimalProfile();
      json["bike"]["speedometer"] = {{"sensor", sensor}, {"reads_high_percent", readsHigh}};
      json["proposed"] = {{"front_teeth", 15}, {"rear_tyre", "190/55ZR17"}};
      const Profile before = profileFrom(json.dump());
      Profile after = adopted(before);
      after.bike.speedometer->readsHighPercent = readsHighPercentCarried(before);
      ASSERT_TRUE(after.bike.speedometer->readsHighPercent) << sensor;
      const double was = plan(before).proposed.speedometer->at100KmhIndicatedKmh;
      ASSERT_GT(std::abs(was - 100 - readsHigh), 1.0) << "the proposal moves what is shown";
      EXPECT_NEAR(plan(after).stock.speedometer->at100KmhIndicatedKmh, was, 6e-4) << sensor;
    }
}

TEST(Adopted, NothingIsCarriedWhereNothingMovesOrCounts) {
  Json json = minimalProfile();
  json["proposed"] = {{"front_teeth", 15}};
  EXPECT_FALSE(readsHighPercentCarried(profileFrom(json.dump()))) << "no speedometer given";
  json["bike"]["speedometer"] = {{"sensor", "rear_wheel"}, {"reads_high_percent", 3}};
  EXPECT_FALSE(readsHighPercentCarried(profileFrom(json.dump()))) << "the wheel's own sensor sees no teeth";
  json["bike"]["speedometer"]["sensor"] = "gearbox_output";
  EXPECT_TRUE(readsHighPercentCarried(profileFrom(json.dump())));
  json["proposed"] = Json::object();
  EXPECT_FALSE(readsHighPercentCarried(profileFrom(json.dump())));
}

}  // namespace
}  // namespace layshaft::test
