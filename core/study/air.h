// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/bike.h"
#include "core/defaults.h"
#include "core/units.h"

namespace layshaft {

/// Air as a bike and its engine meet it.
struct AirState {
  double temperatureC = defaults::kAirTemperatureC;
  double pressurePa =
      units::pascalsFromHectopascals(defaults::kAirPressureHpa);  ///< total, moisture included
  double humidity = defaults::kHumidityPercent / 100.0;           ///< relative, 0 to 1

  double vapourPressurePa() const;
  /// kg/m³: dry air and vapour as ideal gases, each with its own gas constant.
  double densityKgM3() const;
  /// What an observed torque is multiplied with to get the torque at 990 hPa dry and 25 °C (SAE J1349, as
  /// published in 1990). Greater in thin air; 1 in the standard's own.
  double torqueCorrection() const;
};

/// Pressure of the international standard atmosphere (ISO 2533), Pa, altitude in m, to 11 km.
double standardPressurePa(double altitudeM);

/// Air of a profile's block: the standard's, its pressure that of the altitude, where nothing is typed.
AirState airState(std::optional<double> temperatureC, std::optional<double> pressureHpa,
                  std::optional<double> humidityPercent, double altitudeM = defaults::kAltitudeM);

}  // namespace layshaft
