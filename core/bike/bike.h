// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/extras.h"
#include "core/parts/sprocket.h"
#include "core/parts/torque_curve.h"

/// The machine that stays the same whatever sprockets it wears. Quantities are kept in the units of the
/// profile file, named in each field, so that opening and saving a file changes no digit; the studies convert
/// to SI.
namespace layshaft {

/// Where the torque curve was measured: losses are already in a rear-wheel figure.
enum class CurvePlace { Crankshaft, RearWheel };

/// The air that a curve is given for, or that the bike runs in.
struct Air {
  std::optional<double> temperatureC;
  std::optional<double> pressureHpa;
  std::optional<double> humidityPercent;
  Extras extras;
  bool operator==(const Air&) const = default;
};

struct Engine {
  std::optional<double> revLimitRpm;
  std::optional<double> idleRpm;
  std::optional<double> shiftRpm;
  std::optional<TorqueCurve> torqueCurve;
  std::optional<CurvePlace> curveMeasuredAt;
  std::optional<bool> curveEstimated;  ///< from its peaks: nothing was measured
  std::optional<Air> curveAir;
  std::optional<double> rotatingInertiaKgm2;
  std::optional<bool> torqueFollowsAir;
  Extras extras;
  bool operator==(const Engine&) const = default;
};

enum class RollingResistanceForm { Constant, SpeedDependent };

/// Masses, geometry and resistances. The centre of gravity is with the rider seated.
struct Chassis {
  std::optional<double> massKg;  ///< ready to ride, without rider
  std::optional<double> riderMassKg;
  std::optional<double> wheelbaseMm;
  std::optional<double> cgHeightMm;
  std::optional<double> cgAheadOfRearAxleMm;
  std::optional<double> dragAreaM2;
  std::optional<double> dragHeightMm;
  std::optional<double> rollingResistance;
  std::optional<RollingResistanceForm> rollingResistanceForm;
  std::optional<double> tyrePressureBar;
  std::optional<double> drivetrainEfficiency;
  std::optional<double> frontWheelInertiaKgm2;
  std::optional<double> rearWheelInertiaKgm2;
  std::optional<double> frontRolloutMm;
  std::optional<double> tyreGrip;
  std::optional<double> shiftTimeS;
  Extras extras;
  bool operator==(const Chassis&) const = default;
};

/// Where the chain runs: what was measured with the stock pair, what the slot and the covers leave room for.
struct ChainRun {
  std::optional<double> centreDistanceMm;
  std::optional<double> adjusterForwardMm;
  std::optional<double> adjusterBackMm;
  std::optional<double> adjusterMarkMm;  ///< from one mark of the adjuster to the next
  std::optional<int> largestFrontTeeth;
  std::optional<int> smallestFrontTeeth;
  std::optional<int> largestRearTeeth;
  std::optional<int> smallestRearTeeth;
  std::optional<double> tensileStrengthKn;
  std::optional<double> swingarmLengthMm;
  std::optional<double> swingarmAngleDeg;
  std::optional<double> countershaftAheadOfPivotMm;
  std::optional<double> countershaftAbovePivotMm;
  std::vector<int> beltLengthsTeeth;  ///< lengths a belt is sold in
  Extras extras;
  bool operator==(const ChainRun&) const = default;
};

/// What the speedometer counts.
enum class SpeedSensor { GearboxOutput, RearWheel, FrontWheel };

struct Speedometer {
  std::optional<SpeedSensor> sensor;
  std::optional<double> readsHighPercent;
  Extras extras;
  bool operator==(const Speedometer&) const = default;
};

/// What kind of bike it is in the words of the trade, as far as usual figures of the kind are published.
enum class BikeClass { Sport, Naked, Tourer, Lightweight, Motocross };

struct Bike {
  std::optional<BikeClass> bikeClass;
  Engine engine;
  std::optional<Chassis> chassis;
  std::optional<ChainRun> chainRun;
  std::optional<Speedometer> speedometer;
  Extras extras;
  bool operator==(const Bike&) const = default;
};

}  // namespace layshaft
