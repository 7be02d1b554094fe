// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is usual in a class of bike: where it stands against published figures, and how it comes and goes.
#include "core/bike/typical_bike.h"

#include <cmath>

#include "core/bike/words.h"
#include "core/profile_file/access.h"
#include "core/report.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Profile classlessBike() {
  return profileFrom(minimalProfile().dump());
}

// V. Cossalter, Motorcycle Dynamics, chapter 3, as quoted by a general multibody program's documentation:
// drag areas of motorcycles from 0.18 m² (faired, prone) to 0.70 m² (large, upright).
TEST(TypicalBike, DragAreasAreAsMotorcyclesHaveThem) {
  for (const auto& [bikeClass, word] : kBikeClassWords) {
    const double area = typicalChassis(bikeClass).dragAreaM2.value_or(0.0);
    EXPECT_GE(area, 0.18) << word;
    EXPECT_LE(area, 0.70) << word;
  }
}

// J. Katz, Automotive Aerodynamics, section 7.7.3: typical sports motorcycles 0.30 to 0.50 m². Cycle World,
// October 1982, "Roundup: against the wind": a medium standard bike, rider upright, 0.8 times 8 sq ft.
// 40 CFR 86.529-98: average rider and bike at 200 kg, 0.0252 N/(km/h)², which is 0.533 m² at 1.225 kg/m³. The
// typical values are good to 15 %.
TEST(TypicalBike, DragAreasAgreeWithMeasuredOnes) {
  const double sport = *typicalChassis(BikeClass::Sport).dragAreaM2;
  EXPECT_GE(sport, 0.30);
  EXPECT_LE(sport, 0.50);
  const double naked = *typicalChassis(BikeClass::Naked).dragAreaM2;
  const double averageM2 = 0.0252 * 3.6 * 3.6 / (0.5 * 1.225);
  EXPECT_NEAR(naked / averageM2, 1.0, 0.15);
  const double uprightM2 = 0.8 * 8 * 0.3048 * 0.3048;
  EXPECT_NEAR(*typicalChassis(BikeClass::Tourer).dragAreaM2 / uprightM2, 1.0, 0.15);
}

// Foale's machines, without rider, as quoted by N. Rose (2018): height of the centre of gravity over
// wheelbase 0.389 for sport bikes with a standard deviation of 0.046; a rider raises it by 0.05 to 0.15 m
// (from memory).
TEST(TypicalBike, ASportBikesCentreOfGravityIsWhereTheyHaveIt) {
  const Chassis sport = typicalChassis(BikeClass::Sport);
  const double withRider = *sport.cgHeightMm / *sport.wheelbaseMm;
  EXPECT_GE(withRider, 0.389 - 0.046 + 50 / *sport.wheelbaseMm);
  EXPECT_LE(withRider, 0.389 + 0.046 + 150 / *sport.wheelbaseMm);
}

// Where the front wheel lifts, in g: distance over height of the centre of gravity. The worked examples of
// the limits give 1.0968, 0.8750 and 1.2667 (Cossalter's and Foale's formula).
TEST(TypicalBike, TheFrontLiftsWhereTheExamplesLiftIt) {
  const auto liftG = [](BikeClass bikeClass) {
    const Chassis chassis = typicalChassis(bikeClass);
    return *chassis.cgAheadOfRearAxleMm / *chassis.cgHeightMm;
  };
  EXPECT_NEAR(liftG(BikeClass::Sport), 1.0968, 5e-5);
  EXPECT_NEAR(liftG(BikeClass::Motocross), 0.8750, 5e-5);
  EXPECT_NEAR(liftG(BikeClass::Tourer), 1.2667, 5e-5);
}

// TRL report PPR496: sport tyres on dry asphalt, peak about 1.2.
TEST(TypicalBike, GripIsAsMeasuredOnSportTyres) {
  EXPECT_EQ(typicalChassis(BikeClass::Sport).tyreGrip, 1.2);
  EXPECT_EQ(typicalChassis(BikeClass::Motocross).tyreGrip, std::nullopt) << "nobody published one";
}

TEST(TypicalBike, EveryValueIsOneThatTheFieldMayHave) {
  for (const auto& [bikeClass, word] : kBikeClassWords) {
    const Chassis chassis = typicalChassis(bikeClass);
    int given = 0;
    Chassis rest = chassis;
    for (const TypicalField& field : kTypicalFields) {
      const auto& value = chassis.*field.member;
      if (!value) continue;
      ++given;
      EXPECT_TRUE(fieldRule(field.key)->limit.contains(*value)) << field.key << " of " << word;
      (rest.*field.member).reset();
    }
    EXPECT_GE(given, 3) << word;
    EXPECT_EQ(rest, Chassis{}) << word << " has a value that is not in the list of fields";
  }
}

TEST(TypicalBike, FillsOnlyWhatIsOpenAndMarksIt) {
  Profile profile = classlessBike();
  setField(profile, "bike.chassis.mass_kg", 187.0);
  takeTypicalValues(profile, BikeClass::Naked);
  EXPECT_EQ(profile.bike.bikeClass, BikeClass::Naked);
  EXPECT_EQ(profile.bike.chassis->massKg, 187);
  EXPECT_FALSE(isTypical(profile, "bike.chassis.mass_kg"));
  EXPECT_EQ(profile.bike.chassis->dragAreaM2, 0.50);
  EXPECT_TRUE(isTypical(profile, "bike.chassis.drag_area_m2"));
  EXPECT_EQ(profile.bike.chassis->wheelbaseMm, std::nullopt) << "nobody published one";
  EXPECT_EQ(profileFrom(writeProfile(profile)), profile);
}

TEST(TypicalBike, WhatIsTypedIsTypicalNoMore) {
  Profile profile = classlessBike();
  takeTypicalValues(profile, BikeClass::Sport);
  EXPECT_EQ(setField(profile, "bike.chassis.drag_area_m2", 0.31), std::nullopt);
  EXPECT_FALSE(isTypical(profile, "bike.chassis.drag_area_m2"));
  takeTypicalValues(profile, BikeClass::Tourer);
  EXPECT_EQ(profile.bike.chassis->dragAreaM2, 0.31) << "not another class's either";
  EXPECT_NE(setField(profile, "bike.chassis.mass_kg", 1.0), std::nullopt);
  EXPECT_TRUE(isTypical(profile, "bike.chassis.mass_kg")) << "what is refused changes nothing";
}

TEST(TypicalBike, AnotherClassBringsItsOwnAndNoneTakesThemAway) {
  Profile profile = classlessBike();
  takeTypicalValues(profile, BikeClass::Sport);
  ASSERT_TRUE(profile.bike.chassis->tyreGrip);
  takeTypicalValues(profile, BikeClass::Motocross);
  EXPECT_EQ(profile.bike.chassis->dragAreaM2, 0.70);
  EXPECT_EQ(profile.bike.chassis->tyreGrip, std::nullopt) << "a sport tyre's says nothing here";
  takeTypicalValues(profile, std::nullopt);
  EXPECT_EQ(profile.bike.chassis, Chassis{});
  EXPECT_TRUE(profile.typical.empty());
}

TEST(TypicalBike, MarksThatMeanNothingAreKeptAndDoNoHarm) {
  Json json = minimalProfile();
  json["typical"] = {"bike.chassis.drag_area_m2", "bike.paint.colour"};
  const Profile profile = profileFrom(json.dump());
  EXPECT_TRUE(typicalFields(profile.bike, profile.typical).empty()) << "there is no value";
  EXPECT_EQ(Json::parse(writeProfile(profile))["typical"], json["typical"]);
  EXPECT_EQ(problemOf(with("/typical", "bike.chassis.mass_kg")).path, "typical");
  EXPECT_EQ(problemOf(with("/typical", {"bike.chassis.mass_kg", 7})).path, "typical[1]");
}

TEST(TypicalBike, TheReportListsThemWithWhatWasAssumed) {
  Profile profile = classlessBike();
  takeTypicalValues(profile, BikeClass::Naked);
  const Json report = Json::parse(reportJson(plan(profile)));
  EXPECT_EQ(report["assumed"]["bike.chassis.drag_area_m2"], 0.50);
  EXPECT_EQ(report["assumed"]["bike.chassis.tyre_grip"], 1.2);
  EXPECT_EQ(Json::parse(reportJson(plan(classlessBike())))["assumed"].contains("bike.chassis.drag_area_m2"),
            false);
}

}  // namespace
}  // namespace layshaft::test
