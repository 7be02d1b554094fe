// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/road.h"

#include <cmath>

#include "core/units.h"

namespace layshaft {

RollingResistance RollingResistance::constant(double coefficient) {
  return {
      .base = coefficient, .perSpeed2 = 0.0, .fastBase = coefficient, .fastPerSpeed2 = 0.0, .jumpMps = {}};
}

RollingResistance RollingResistance::speedDependent(double pressureBar) {
  const double kmh2 = units::kmhFromMps(1.0) * units::kmhFromMps(1.0);
  return {.base = 0.0085 + 0.018 / pressureBar,
          .perSpeed2 = 1.59e-6 * kmh2 / pressureBar,
          .fastBase = 0.018 / pressureBar,
          .fastPerSpeed2 = 2.91e-6 * kmh2 / pressureBar,
          .jumpMps = units::mpsFromKmh(165.0)};
}

SurfaceDefaults surfaceDefaults(Surface surface) {
  switch (surface) {
    case Surface::WetAsphalt:
      return {.grip = {}, .gripFactor = 0.7, .rollingResistance = {}};
    case Surface::Hardpack:
      return {.grip = 0.7, .gripFactor = 1.0, .rollingResistance = 0.04};
    case Surface::Loam:
      return {.grip = 0.8, .gripFactor = 1.0, .rollingResistance = 0.07};
    case Surface::Sand:
      return {.grip = 0.6, .gripFactor = 1.0, .rollingResistance = 0.15};
    case Surface::Asphalt:
      break;
  }
  return {};
}

namespace {

RollingResistance tyresOwnRolling(const Chassis& chassis, std::vector<Assumed>* assumed) {
  const auto take = [&](const std::optional<double>& value, double otherwise, std::string_view key) {
    if (!value && assumed) assumed->push_back({key, otherwise});
    return value.value_or(otherwise);
  };
  if (chassis.rollingResistanceForm == RollingResistanceForm::SpeedDependent)
    return RollingResistance::speedDependent(
        take(chassis.tyrePressureBar, defaults::kTyrePressureBar, "bike.chassis.tyre_pressure_bar"));
  return RollingResistance::constant(
      take(chassis.rollingResistance, defaults::kRollingResistance, "bike.chassis.rolling_resistance"));
}

/// What the profile gives for the surface that is ridden on.
SurfaceValues typedValues(const Ride& ride) {
  const auto own = ride.surfaces.find(ride.surface.value_or(Surface::Asphalt));
  return own == ride.surfaces.end() ? SurfaceValues{} : own->second;
}

double torqueFactor(const Engine& engine, const AirState& now) {
  if (!engine.torqueFollowsAir.value_or(true)) return 1.0;
  const Air measured = engine.curveAir.value_or(Air{});
  const AirState reference = airState(measured.temperatureC, measured.pressureHpa, measured.humidityPercent);
  return reference.torqueCorrection() / now.torqueCorrection();
}

}  // namespace

Road roadOf(const Bike& bike, const Ride& ride, std::vector<Assumed>* assumed) {
  const Chassis chassis = bike.chassis.value_or(Chassis{});
  const SurfaceDefaults usual = surfaceDefaults(ride.surface.value_or(Surface::Asphalt));
  const SurfaceValues typed = typedValues(ride);
  const AirState air = airState(ride.airTemperatureC, ride.airPressureHpa, ride.humidityPercent,
                                ride.altitudeM.value_or(defaults::kAltitudeM));
  Road road{.slopeRad = std::atan(ride.slopePercent.value_or(defaults::kSlopePercent) / 100.0),
            .headwindMps = units::mpsFromKmh(ride.headwindKmh.value_or(defaults::kHeadwindKmh)),
            .airDensityKgM3 = air.densityKgM3(),
            .torqueFactor = torqueFactor(bike.engine, air),
            .grip = typed.grip,
            .rolling = {},
            .slip = typed.slipPercent.value_or(defaults::kSlipPercent) / 100.0};
  if (!road.grip) road.grip = usual.grip;
  if (!road.grip && chassis.tyreGrip) road.grip = *chassis.tyreGrip * usual.gripFactor;
  if (typed.rollingResistance)
    road.rolling = RollingResistance::constant(*typed.rollingResistance);
  else if (usual.rollingResistance)
    road.rolling = RollingResistance::constant(*usual.rollingResistance);
  else
    road.rolling = tyresOwnRolling(chassis, assumed);
  return road;
}

Road dryAsphalt(const Bike& bike, const Ride& ride) {
  Ride there = ride;
  there.surface = Surface::Asphalt;
  there.slopePercent = there.headwindKmh = 0.0;
  return roadOf(bike, there);
}

bool surfaceOverrulesForm(const Bike& bike, const Ride& ride) {
  return bike.chassis && bike.chassis->rollingResistanceForm == RollingResistanceForm::SpeedDependent &&
         typedValues(ride).rollingResistance;
}

}  // namespace layshaft
