// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/asked.h"

#include "core/study/shifting.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kDefaultRollOnFromKmh = 80.0, kDefaultRollOnToKmh = 120.0;

}  // namespace

ShiftPoints shiftPointsOf(const Engine& engine, const std::optional<PullModel>& model, std::size_t gears) {
  if (engine.shiftRpm) return {std::vector<double>(gears - 1, *engine.shiftRpm), true};
  if (model && model->bike().accelerates()) return {bestShiftRpm(*model), false};
  return {};
}

GearingConditions gearingConditionsOf(const Profile& profile, const ShiftPoints& shifts) {
  GearingConditions conditions{.revLimitRpm = profile.bike.engine.revLimitRpm,
                               .idleRpm = profile.bike.engine.idleRpm.value_or(0.0),
                               .shiftRpm = shifts.rpm,
                               .cruiseSpeedMps = {}};
  if (profile.cruiseSpeedKmh) conditions.cruiseSpeedMps = units::mpsFromKmh(*profile.cruiseSpeedKmh);
  return conditions;
}

std::optional<DriveRequest> driveOf(const Profile& profile) {
  if (!profile.ride || !profile.ride->drive) return std::nullopt;
  const Drive& drive = *profile.ride->drive;
  if (!drive.exitSpeedKmh || !drive.lengthM) return std::nullopt;
  return DriveRequest{units::mpsFromKmh(*drive.exitSpeedKmh), *drive.lengthM};
}

RollOnRequest rollOnOf(const Profile& profile) {
  const RollOn asked = profile.ride ? profile.ride->rollOn.value_or(RollOn{}) : RollOn{};
  return {.fromMps = units::mpsFromKmh(asked.fromSpeedKmh.value_or(kDefaultRollOnFromKmh)),
          .toMps = units::mpsFromKmh(asked.toSpeedKmh.value_or(kDefaultRollOnToKmh)),
          .gear = asked.gear};
}

}  // namespace layshaft
