// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

/// What is taken for a number that a profile leaves open, in the unit of the file.
/// `resources/bike.schema.json` states the same defaults; a test holds the two together.
namespace layshaft::defaults {

/// Share of the crankshaft's power at the wheel. Common practice for chain-driven motorcycles.
inline constexpr double kDrivetrainEfficiency = 0.90;
/// Rider with gear, kg: the mass that vehicle rules count for a rider (from memory; common practice).
inline constexpr double kRiderMassKg = 75.0;
/// Time without drive in an upshift, s. Common practice for a foot shift without quickshifter.
inline constexpr double kShiftTimeS = 0.15;
/// Rolling drag over weight on asphalt. Common practice for motorcycle road tyres.
inline constexpr double kRollingResistance = 0.015;
/// For the rolling resistance that grows with speed, bar. Common practice.
inline constexpr double kTyrePressureBar = 2.5;
/// Loaded tyres roll on about 2 % less than their free circumference (see `core/bike/setup.h`).
inline constexpr double kRollingAllowancePercent = 2.0;
/// The usual roll-on of road tests, km/h. Common practice.
inline constexpr double kRollOnFromKmh = 80.0;
inline constexpr double kRollOnToKmh = 120.0;
/// International Standard Atmosphere at sea level (ISO 2533), dry.
inline constexpr double kAirTemperatureC = 15.0;
inline constexpr double kAirPressureHpa = 1013.25;
inline constexpr double kHumidityPercent = 0.0;

}  // namespace layshaft::defaults
