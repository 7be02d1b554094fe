// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

/// What the studies take for a value that a profile leaves open, in the units of the profile.
/// `resources/bike.schema.json` states the same defaults; a test holds the two together.
namespace layshaft::defaults {

/// From the crankshaft to the rear wheel: primary drive, gearbox and chain together; common practice.
inline constexpr double kDrivetrainEfficiency = 0.90;
/// Common practice.
inline constexpr double kRiderMassKg = 75.0;
/// Without drive from gear to gear, by hand and foot; common practice.
inline constexpr double kShiftTimeS = 0.15;
/// Force over weight on asphalt; common practice.
inline constexpr double kRollingResistance = 0.015;
/// Common practice for road tyres.
inline constexpr double kTyrePressureBar = 2.5;
/// Loaded tyres roll on about 2 % less than their free circumference (car radials −2.9 % by 3.05·D; one
/// published motorcycle measurement −2.2 %).
inline constexpr double kRollingAllowancePercent = 2.0;
/// Elongation at which a chain is worn out, per cent, sealed and plain: makers' instructions for measuring
/// pins (about 1 % and 2 %). Where the kind of a chain is not known the stricter one is taken.
inline constexpr double kSealedChainWearLimitPercent = 1.0, kPlainChainWearLimitPercent = 2.0;
/// The engine takes hold from a standstill: nothing is known of where it would stall.
inline constexpr double kIdleRpm = 0.0;

/// The launch engine speed is at most this share of the rev limit; common practice.
inline constexpr double kLaunchShareOfLimit = 0.6;
/// The roll-on that bikes are compared by; common practice.
inline constexpr double kRollOnFromKmh = 80.0, kRollOnToKmh = 120.0;
/// The same where speeds are read in miles per hour; common practice.
inline constexpr double kRollOnFromMph = 50.0, kRollOnToMph = 75.0;

/// Sea level of the international standard atmosphere (ISO 2533).
inline constexpr double kAirTemperatureC = 15.0, kAirPressureHpa = 1013.25, kAirDensityKgM3 = 1.225;
/// The standard atmosphere is dry.
inline constexpr double kHumidityPercent = 0.0;
/// A level road without wind, at sea level.
inline constexpr double kAltitudeM = 0.0, kSlopePercent = 0.0, kHeadwindKmh = 0.0;

/// A wheel that does not slip: how much it does is the rider's to say.
inline constexpr double kSlipPercent = 0.0;

/// How much of the grip a rider uses in bends, and of what grip and rear wheel allow under brakes; common
/// practice.
inline constexpr double kCornerSharePercent = 90.0, kBrakeSharePercent = 80.0;

}  // namespace layshaft::defaults
