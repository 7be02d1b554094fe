// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/profile.h"
#include "core/defaults.h"
#include "core/parts/torque_spline.h"
#include "core/study/road.h"

namespace layshaft {

/// What a bike brings to any road whatever its gearing, in SI: engine, masses, resistance and the limits of
/// grip and front lift. Whatever the profile lacks is empty, and the list beside it names the keys.
struct PullBike {
  std::optional<TorqueSpline> torque;  ///< as the curve is given; what the air does to it is the road's
  double efficiency = defaults::kDrivetrainEfficiency;  ///< from where the curve was measured to the wheel
  double idleRpm = defaults::kIdleRpm;
  std::optional<double> shiftRpm, launchRpm;  ///< as typed
  std::optional<double> massKg;               ///< with rider
  std::optional<double> dragAreaM2;
  std::optional<double> cgHeightM;
  std::optional<double> cgAheadM;  ///< of the rear axle, as stock
  std::optional<double> wheelbaseM;
  std::optional<double> dragHeightM;
  double engineInertiaKgM2 = 0.0;
  double rearWheelInertiaKgM2 = 0.0;
  double frontWheelInertiaKgM2 = 0.0;
  std::optional<double> frontRolloutM;  ///< the rear's where it was not measured
  double shiftTimeS = defaults::kShiftTimeS;
  Road dryAsphalt;  ///< level and without wind, in the air of the ride: what a chain is judged by

  // Of the profile that it was made from, the road of its ride included.
  std::vector<std::string_view> forceLacks;       ///< for the force at the wheel
  std::vector<std::string_view> resistanceLacks;  ///< for what is left of it to accelerate
  std::vector<std::string_view> boundsLack;       ///< for the limits of grip and front lift
  /// Defaults that were taken; under the torque curve its last point's engine speed where the rest up to the
  /// limit is assumed.
  std::vector<Assumed> assumed;
  /// What the profile holds because it is usual in the class of bike, not because somebody measured it.
  std::vector<Assumed> typical;
  std::optional<BikeClass> bikeClass;

  bool hasForce() const { return torque.has_value(); }
  bool hasResistance() const { return massKg && dragAreaM2; }
  /// Whether shift points, top speed and runs can be told.
  bool accelerates() const { return hasForce() && hasResistance(); }
};

/// The ride gives the launch engine speed, and a road whose lacks and defaults are listed too. Without a rev
/// limit, or without gear ratios in the setups, there is no force.
PullBike pullBike(const Bike& bike, const Ride& ride, bool gearsKnown = true);

}  // namespace layshaft
