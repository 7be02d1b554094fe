// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/pull_bike.h"

#include "core/units.h"

namespace layshaft {
namespace {

/// Takes a value, or its default and a note of it.
double orAssumed(const std::optional<double>& value, double otherwise, std::string_view key,
                 std::vector<Assumed>& assumed) {
  if (!value) assumed.push_back({key, otherwise});
  return value.value_or(otherwise);
}

void takeCurve(const TorqueCurve& curve, double revLimitRpm, PullBike& bike) {
  bike.torque.emplace(curve, revLimitRpm);
  if (const auto& beyond = bike.torque->beyond())
    bike.assumed.push_back({"bike.engine.torque_curve", beyond->lastPointRpm});
}

}  // namespace

PullBike pullBike(const Bike& bike, const Ride& ride, bool gearsKnown) {
  const Chassis chassis = bike.chassis.value_or(Chassis{});
  const Engine& engine = bike.engine;
  std::vector<Assumed> ofTheRoad;
  const Road road = roadOf(bike, ride, &ofTheRoad);
  PullBike result;
  if (!engine.torqueCurve) result.forceLacks.push_back("bike.engine.torque_curve");
  if (!engine.revLimitRpm) result.forceLacks.push_back("bike.engine.rev_limit_rpm");
  if (!gearsKnown) result.forceLacks.push_back("stock.gear_ratios");
  if (result.forceLacks.empty()) takeCurve(*engine.torqueCurve, *engine.revLimitRpm, result);
  if (result.torque && engine.curveEstimated.value_or(false))
    result.assumed.push_back({"bike.engine.curve_estimated", 1.0});
  const bool atWheel = engine.curveMeasuredAt == CurvePlace::RearWheel;
  // At the rear wheel the losses are in the curve already.
  result.efficiency = atWheel ? 1.0
                              : orAssumed(chassis.drivetrainEfficiency, defaults::kDrivetrainEfficiency,
                                          "bike.chassis.drivetrain_efficiency", result.assumed);
  result.idleRpm = engine.idleRpm.value_or(defaults::kIdleRpm);
  result.shiftRpm = engine.shiftRpm;
  result.launchRpm = ride.launchRpm;

  if (chassis.massKg)
    result.massKg = *chassis.massKg + orAssumed(chassis.riderMassKg, defaults::kRiderMassKg,
                                                "bike.chassis.rider_mass_kg", result.assumed);
  else
    result.resistanceLacks.push_back("bike.chassis.mass_kg");
  result.dragAreaM2 = chassis.dragAreaM2;
  if (!chassis.dragAreaM2) result.resistanceLacks.push_back("bike.chassis.drag_area_m2");

  result.cgHeightM = units::metresFromMillimetres(chassis.cgHeightMm);
  result.cgAheadM = units::metresFromMillimetres(chassis.cgAheadOfRearAxleMm);
  result.wheelbaseM = units::metresFromMillimetres(chassis.wheelbaseMm);
  result.dragHeightM =
      chassis.dragHeightMm ? units::metresFromMillimetres(chassis.dragHeightMm) : result.cgHeightM;
  if (!result.cgHeightM) result.boundsLack.push_back("bike.chassis.cg_height_mm");
  if (!result.cgAheadM) result.boundsLack.push_back("bike.chassis.cg_ahead_of_rear_axle_mm");
  if (!result.wheelbaseM) result.boundsLack.push_back("bike.chassis.wheelbase_mm");
  if (!road.grip) result.boundsLack.push_back("bike.chassis.tyre_grip");

  result.engineInertiaKgM2 = engine.rotatingInertiaKgm2.value_or(0.0);
  result.rearWheelInertiaKgM2 = chassis.rearWheelInertiaKgm2.value_or(0.0);
  result.frontWheelInertiaKgM2 = chassis.frontWheelInertiaKgm2.value_or(0.0);
  result.frontRolloutM = units::metresFromMillimetres(chassis.frontRolloutMm);
  result.shiftTimeS =
      orAssumed(chassis.shiftTimeS, defaults::kShiftTimeS, "bike.chassis.shift_time_s", result.assumed);
  result.dryAsphalt = dryAsphalt(bike, ride);
  result.assumed.insert(result.assumed.end(), ofTheRoad.begin(), ofTheRoad.end());
  return result;
}

}  // namespace layshaft
