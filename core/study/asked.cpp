// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/asked.h"

#include <utility>

#include "core/bike/typical_bike.h"
#include "core/units.h"

namespace layshaft {
namespace {

std::optional<DriveRequest> driveOf(const Ride& ride) {
  if (!ride.drive || !ride.drive->exitSpeedKmh || !ride.drive->lengthM) return std::nullopt;
  return DriveRequest{units::mpsFromKmh(*ride.drive->exitSpeedKmh), *ride.drive->lengthM,
                      ride.drive->exitGear};
}

RollOnRequest rollOnOf(const Ride& ride) {
  const RollOn typed = ride.rollOn.value_or(RollOn{});
  return {.fromMps = units::mpsFromKmh(typed.fromSpeedKmh.value_or(defaults::kRollOnFromKmh)),
          .toMps = units::mpsFromKmh(typed.toSpeedKmh.value_or(defaults::kRollOnToKmh)),
          .gear = typed.gear};
}

}  // namespace

Asked asked(const Circumstances& given) {
  PullBike bike = pullBike(given.bike, given.ride, given.gearsKnown);
  bike.bikeClass = given.bike.bikeClass;
  for (const TypicalField& field : typicalFields(given.bike, given.typical))
    bike.typical.push_back({field.key, *((*given.bike.chassis).*field.member)});
  return {.bike = std::make_shared<const PullBike>(std::move(bike)),
          .road = roadOf(given.bike, given.ride),
          .drive = driveOf(given.ride),
          .rollOn = rollOnOf(given.ride),
          .leanDeg = given.ride.leanDeg};
}

GearingConditions gearingConditions(const Circumstances& given, const ShiftPoints& shifts) {
  GearingConditions conditions{.revLimitRpm = given.bike.engine.revLimitRpm,
                               .idleRpm = given.bike.engine.idleRpm.value_or(defaults::kIdleRpm),
                               .shiftRpm = shifts.rpm,
                               .cruiseSpeedMps = {}};
  if (given.cruiseSpeedKmh) conditions.cruiseSpeedMps = units::mpsFromKmh(*given.cruiseSpeedKmh);
  return conditions;
}

}  // namespace layshaft
