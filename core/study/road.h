// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/profile.h"
#include "core/defaults.h"
#include "core/study/air.h"

namespace layshaft {

/// A value that the profile leaves open and a study filled in: the key path, and what was taken.
struct Assumed {
  std::string_view key;
  double value;
  bool operator==(const Assumed&) const = default;
};

/// Rolling resistance over road speed: base + perSpeed²·v² below a speed, another pair from there on.
struct RollingResistance {
  double base = 0.0;
  double perSpeed2 = 0.0;  ///< 1/(m/s)²
  double fastBase = 0.0;
  double fastPerSpeed2 = 0.0;
  std::optional<double> jumpMps;  ///< where the second pair begins; none for a constant
  bool operator==(const RollingResistance&) const = default;

  double at(double speedMps) const {
    return jumpMps && speedMps > *jumpMps ? fastBase + fastPerSpeed2 * speedMps * speedMps
                                          : base + perSpeed2 * speedMps * speedMps;
  }

  static RollingResistance constant(double coefficient);
  /// The speed-dependent form for motorcycle tyres on asphalt, pressure in bar (V. Cossalter, Motorcycle
  /// Dynamics, chapter 2, after J. Bradley, The Racing Motorcycle, 1996; from memory of both). It jumps
  /// upwards at 165 km/h, as published.
  static RollingResistance speedDependent(double pressureBar);
};

/// Grip and rolling resistance that a surface has by itself; nothing where the tyre's own count.
struct SurfaceDefaults {
  std::optional<double> grip;
  double gripFactor = 1.0;  ///< on the tyre's own grip, where `grip` is empty
  std::optional<double> rollingResistance;
};

/// Sources: the wet to dry ratio of published friction tables; rolling resistance of worn gravel, medium-hard
/// soil and sand from handbook tables; grip off the road is common practice.
SurfaceDefaults surfaceDefaults(Surface surface);

/// Where the bike is ridden, in SI: one stretch of road with its air and surface.
struct Road {
  double slopeRad = 0.0;     ///< positive uphill
  double headwindMps = 0.0;  ///< positive against the rider
  double airDensityKgM3 = defaults::kAirDensityKgM3;
  double torqueFactor = 1.0;  ///< what the air does to the engine
  std::optional<double> grip;
  RollingResistance rolling;
  double slip = 0.0;  ///< share of the wheel's turning that is lost
  bool operator==(const Road&) const = default;

  /// Whether a speed is beyond the jump of the rolling resistance.
  bool isFast(double speedMps) const { return rolling.jumpMps && speedMps > *rolling.jumpMps; }
};

/// `assumed`, if there, is told of the defaults that were taken.
Road roadOf(const Bike& bike, const Ride& ride, std::vector<Assumed>* assumed = nullptr);

/// Dry, level asphalt without wind in the air of the ride, with what the ride gives for that surface.
Road dryAsphalt(const Bike& bike, const Ride& ride);

/// Whether a rolling resistance typed for the ride's surface stands in for the chassis' speed-dependent form.
bool surfaceOverrulesForm(const Bike& bike, const Ride& ride);

}  // namespace layshaft
