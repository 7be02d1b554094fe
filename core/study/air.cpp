// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/air.h"

#include <cmath>

#include "core/units.h"

namespace layshaft {
namespace {

// ISO 2533 and the gas constants per kilogram of dry air and of water vapour, J/(kg·K).
constexpr double kDryAirGasConstant = 287.05287;
constexpr double kVapourGasConstant = 461.495;
constexpr double kSeaLevelTemperatureK = 288.15;
constexpr double kLapseKPerM = 0.0065;

}  // namespace

double AirState::vapourPressurePa() const {
  // Magnus formula over water.
  return humidity * 611.2 * std::exp(17.62 * temperatureC / (243.12 + temperatureC));
}

double AirState::densityKgM3() const {
  const double kelvin = units::kelvinFromCelsius(temperatureC);
  const double vapour = vapourPressurePa();
  return (pressurePa - vapour) / (kDryAirGasConstant * kelvin) + vapour / (kVapourGasConstant * kelvin);
}

double AirState::torqueCorrection() const {
  const double dryHpa = (pressurePa - vapourPressurePa()) / 100.0;
  return 1.180 * (990.0 / dryHpa) * std::sqrt((temperatureC + 273.0) / 298.0) - 0.18;
}

double standardPressurePa(double altitudeM) {
  const double exponent = units::kStandardGravityMps2 / (kDryAirGasConstant * kLapseKPerM);
  return units::pascalsFromHectopascals(defaults::kAirPressureHpa) *
         std::pow(1.0 - kLapseKPerM * altitudeM / kSeaLevelTemperatureK, exponent);
}

AirState airState(std::optional<double> temperatureC, std::optional<double> pressureHpa,
                  std::optional<double> humidityPercent, double altitudeM) {
  AirState air;
  air.temperatureC = temperatureC.value_or(defaults::kAirTemperatureC);
  air.pressurePa = pressureHpa ? units::pascalsFromHectopascals(*pressureHpa) : standardPressurePa(altitudeM);
  air.humidity = humidityPercent.value_or(defaults::kHumidityPercent) / 100.0;
  return air;
}

}  // namespace layshaft
