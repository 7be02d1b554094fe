// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/typical_bike.h"

#include <algorithm>

#include "core/defaults.h"

namespace layshaft {
namespace {

/// Published masses are with a rider; the profile's are without.
constexpr double withoutRider(double withRiderKg) {
  return withRiderKg - defaults::kRiderMassKg;
}

/// Dry asphalt, sport tyres, straight ahead: peak friction measured by TRL (report PPR496).
constexpr double kSportTyreGrip = 1.2;
/// The usual choice for motorcycle tyres on asphalt (Bosch Automotive Handbook gives 0.013 to 0.015; from
/// memory).
constexpr double kRollingOnAsphalt = 0.015;

bool contains(const std::vector<std::string>& marks, std::string_view key) {
  return std::find(marks.begin(), marks.end(), key) != marks.end();
}

}  // namespace

// Drag areas are the middle of what V. Cossalter (Motorcycle Dynamics), T. Foale (Motorcycle Handling and
// Chassis Design) and J. Bradley (The Racing Motorcycle) give for each posture; wheelbases and centres of
// gravity those of the wheelie examples in Cossalter's and Foale's manner, with the rider seated. All from
// memory of the books. Efficiencies are from the crankshaft to the rear wheel, common practice: 0.85 to 0.92
// by chain.
Chassis typicalChassis(BikeClass bikeClass) {
  Chassis chassis;
  switch (bikeClass) {
    case BikeClass::Sport:  // tucked in: 0.30 to 0.36 m²
      chassis.massKg = withoutRider(275);
      chassis.wheelbaseMm = 1400;
      chassis.cgHeightMm = 620;
      chassis.cgAheadOfRearAxleMm = 680;
      chassis.dragAreaM2 = 0.33;
      chassis.rollingResistance = kRollingOnAsphalt;
      chassis.drivetrainEfficiency = 0.90;
      chassis.tyreGrip = kSportTyreGrip;
      break;
    case BikeClass::Naked:  // upright: 0.45 to 0.60 m²
      chassis.massKg = withoutRider(275);
      chassis.dragAreaM2 = 0.50;
      chassis.rollingResistance = kRollingOnAsphalt;
      chassis.drivetrainEfficiency = 0.90;
      chassis.tyreGrip = kSportTyreGrip;
      break;
    case BikeClass::Tourer:  // 0.50 to 0.70 m²; laden
      chassis.massKg = withoutRider(430);
      chassis.wheelbaseMm = 1620;
      chassis.cgHeightMm = 600;
      chassis.cgAheadOfRearAxleMm = 760;
      chassis.dragAreaM2 = 0.60;
      chassis.rollingResistance = kRollingOnAsphalt;
      chassis.drivetrainEfficiency = 0.87;
      break;
    case BikeClass::Lightweight:  // a 125 for the road
      chassis.massKg = withoutRider(210);
      chassis.dragAreaM2 = 0.40;
      chassis.rollingResistance = kRollingOnAsphalt;
      chassis.drivetrainEfficiency = 0.88;
      break;
    case BikeClass::Motocross:  // standing: 0.60 to 0.80 m²; what the ground does is the surface's
      chassis.massKg = withoutRider(190);
      chassis.wheelbaseMm = 1480;
      chassis.cgHeightMm = 800;
      chassis.cgAheadOfRearAxleMm = 700;
      chassis.dragAreaM2 = 0.70;
      break;
  }
  return chassis;
}

void takeTypicalValues(Profile& profile, std::optional<BikeClass> bikeClass) {
  for (const TypicalField& field : typicalFields(profile.bike, profile.typical)) {
    ((*profile.bike.chassis).*field.member).reset();
    forgetTypical(profile, field.key);
  }
  profile.bike.bikeClass = bikeClass;
  if (!bikeClass) return;
  const Chassis usual = typicalChassis(*bikeClass);
  if (!profile.bike.chassis) profile.bike.chassis.emplace();
  for (const TypicalField& field : kTypicalFields) {
    auto& own = (*profile.bike.chassis).*field.member;
    if (own || !(usual.*field.member)) continue;
    own = usual.*field.member;
    if (!contains(profile.typical, field.key)) profile.typical.emplace_back(field.key);
  }
}

std::vector<TypicalField> typicalFields(const Bike& bike, const std::vector<std::string>& marks) {
  std::vector<TypicalField> fields;
  if (!bike.chassis) return fields;
  for (const TypicalField& field : kTypicalFields)
    if ((*bike.chassis).*field.member && contains(marks, field.key)) fields.push_back(field);
  return fields;
}

bool isTypical(const Profile& profile, std::string_view key) {
  const auto fields = typicalFields(profile.bike, profile.typical);
  return std::any_of(fields.begin(), fields.end(),
                     [&](const TypicalField& field) { return field.key == key; });
}

void forgetTypical(Profile& profile, std::string_view key) {
  std::erase(profile.typical, key);
}

}  // namespace layshaft
