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

RollingResistance tyresOwnRolling(const Chassis& chassis, std::vector<Assumed>& assumed) {
  if (chassis.rollingResistanceForm == RollingResistanceForm::SpeedDependent) {
    if (!chassis.tyrePressureBar)
      assumed.push_back({"bike.chassis.tyre_pressure_bar", kDefaultTyrePressureBar});
    return RollingResistance::speedDependent(chassis.tyrePressureBar.value_or(kDefaultTyrePressureBar));
  }
  if (!chassis.rollingResistance)
    assumed.push_back({"bike.chassis.rolling_resistance", kDefaultRollingResistance});
  return RollingResistance::constant(chassis.rollingResistance.value_or(kDefaultRollingResistance));
}

double torqueFactor(const Engine& engine, const AirState& now) {
  if (!engine.torqueFollowsAir.value_or(true)) return 1.0;
  const Air measured = engine.curveAir.value_or(Air{});
  const AirState reference = airState(measured.temperatureC, measured.pressureHpa, measured.humidityPercent);
  return reference.torqueCorrection() / now.torqueCorrection();
}

}  // namespace

Road roadOf(const Bike& bike, const Ride& ride) {
  const Chassis chassis = bike.chassis.value_or(Chassis{});
  const Surface surface = ride.surface.value_or(Surface::Asphalt);
  const SurfaceDefaults usual = surfaceDefaults(surface);
  const auto own = ride.surfaces.find(surface);
  const SurfaceValues typed = own == ride.surfaces.end() ? SurfaceValues{} : own->second;
  const AirState air =
      airState(ride.airTemperatureC, ride.airPressureHpa, ride.humidityPercent, ride.altitudeM.value_or(0.0));
  Road road{.slopeRad = std::atan(ride.slopePercent.value_or(0.0) / 100.0),
            .headwindMps = units::mpsFromKmh(ride.headwindKmh.value_or(0.0)),
            .airDensityKgM3 = air.densityKgM3(),
            .torqueFactor = torqueFactor(bike.engine, air),
            .grip = typed.grip,
            .rolling = {},
            .assumed = {}};
  if (!road.grip) road.grip = usual.grip;
  if (!road.grip && chassis.tyreGrip) road.grip = *chassis.tyreGrip * usual.gripFactor;
  if (typed.rollingResistance)
    road.rolling = RollingResistance::constant(*typed.rollingResistance);
  else if (usual.rollingResistance)
    road.rolling = RollingResistance::constant(*usual.rollingResistance);
  else
    road.rolling = tyresOwnRolling(chassis, road.assumed);
  return road;
}

}  // namespace layshaft
