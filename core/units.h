// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

/// Every conversion between SI, which the studies use, and the trade's units, which files and people use.
/// Factors marked "exact" are exact by definition: the international yard and pound (1959), the conventional
/// standard gravity (CGPM 1901) and the metric horsepower of 75 kgf·m/s.
namespace layshaft::units {

inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kStandardGravityMps2 = 9.80665;  ///< exact
inline constexpr double kMetresPerKilometre = 1000.0;    ///< exact
inline constexpr double kMetresPerInch = 0.0254;         ///< exact
inline constexpr double kMetresPerFoot = 12.0 * kMetresPerInch;
inline constexpr double kMetresPerMile = 1609.344;                                                  ///< exact
inline constexpr double kKilogramsPerPound = 0.45359237;                                            ///< exact
inline constexpr double kSecondsPerHour = 3600.0;                                                   ///< exact
inline constexpr double kNewtonsPerPoundForce = kKilogramsPerPound * kStandardGravityMps2;          ///< exact
inline constexpr double kNewtonMetresPerPoundFoot = kNewtonsPerPoundForce * 12.0 * kMetresPerInch;  ///< exact
inline constexpr double kWattsPerMechanicalHorsepower = 550.0 * kNewtonMetresPerPoundFoot;  ///< 550 ft·lbf/s
inline constexpr double kWattsPerMetricHorsepower = 75.0 * kStandardGravityMps2;            ///< 75 kgf·m/s
inline constexpr double kPascalsPerPsi = kNewtonsPerPoundForce / (kMetresPerInch * kMetresPerInch);
/// The conventional inch of mercury: 13 595.1 kg/m³ under standard gravity.
inline constexpr double kPascalsPerInchOfMercury = 13595.1 * kStandardGravityMps2 * kMetresPerInch;
inline constexpr double kSquareMetresPerSquareFoot = kMetresPerFoot * kMetresPerFoot;
inline constexpr double kKilogramSquareMetresPerPoundSquareFoot =
    kKilogramsPerPound * kSquareMetresPerSquareFoot;

constexpr double metresFromMillimetres(double mm) {
  return mm / 1000.0;
}
constexpr std::optional<double> metresFromMillimetres(const std::optional<double>& mm) {
  return mm ? std::optional(metresFromMillimetres(*mm)) : std::nullopt;
}
constexpr double millimetresFromMetres(double m) {
  return m * 1000.0;
}
constexpr double metresFromInches(double in) {
  return in * kMetresPerInch;
}
constexpr double inchesFromMetres(double m) {
  return m / kMetresPerInch;
}
constexpr double mpsFromKmh(double kmh) {
  return kmh / 3.6;
}
constexpr double kmhFromMps(double mps) {
  return mps * 3.6;
}
constexpr double mpsFromMph(double mph) {
  return mph * kMetresPerMile / kSecondsPerHour;
}
constexpr double mphFromMps(double mps) {
  return mps * kSecondsPerHour / kMetresPerMile;
}
constexpr double kilogramsFromPounds(double lb) {
  return lb * kKilogramsPerPound;
}
constexpr double poundsFromKilograms(double kg) {
  return kg / kKilogramsPerPound;
}
constexpr double newtonsFromPoundForce(double lbf) {
  return lbf * kNewtonsPerPoundForce;
}
constexpr double poundForceFromNewtons(double n) {
  return n / kNewtonsPerPoundForce;
}
constexpr double newtonMetresFromPoundFeet(double lbft) {
  return lbft * kNewtonMetresPerPoundFoot;
}
constexpr double poundFeetFromNewtonMetres(double nm) {
  return nm / kNewtonMetresPerPoundFoot;
}
constexpr double wattsFromHorsepower(double hp) {
  return hp * kWattsPerMechanicalHorsepower;
}
constexpr double horsepowerFromWatts(double w) {
  return w / kWattsPerMechanicalHorsepower;
}
constexpr double wattsFromMetricHorsepower(double ps) {
  return ps * kWattsPerMetricHorsepower;
}
constexpr double metricHorsepowerFromWatts(double w) {
  return w / kWattsPerMetricHorsepower;
}
constexpr double radPerSecondFromRpm(double rpm) {
  return rpm * (2.0 * kPi / 60.0);
}
constexpr double rpmFromRadPerSecond(double radps) {
  return radps * (60.0 / (2.0 * kPi));
}
constexpr double radiansFromDegrees(double deg) {
  return deg * (kPi / 180.0);
}
constexpr double degreesFromRadians(double rad) {
  return rad * (180.0 / kPi);
}
constexpr double kelvinFromCelsius(double c) {
  return c + 273.15;
}
constexpr double fahrenheitFromCelsius(double c) {
  return c * 9.0 / 5.0 + 32.0;
}
constexpr double celsiusFromFahrenheit(double f) {
  return (f - 32.0) * 5.0 / 9.0;
}
constexpr double pascalsFromHectopascals(double hPa) {
  return hPa * 100.0;
}
constexpr double pascalsFromBar(double bar) {
  return bar * 1e5;
}
constexpr double barFromPsi(double psi) {
  return psi * kPascalsPerPsi / 1e5;
}
constexpr double psiFromBar(double bar) {
  return bar * 1e5 / kPascalsPerPsi;
}

/// Engine torque in N·m that gives `watts` at `rpm`; `rpm` must be above 0.
constexpr double torqueFromPower(double watts, double rpm) {
  return watts / radPerSecondFromRpm(rpm);
}

}  // namespace layshaft::units
