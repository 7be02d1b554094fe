// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bike/profile.h"
#include "core/bike/words.h"
#include "core/limits.h"
#include "core/profile_file/track_fields.h"

/// Every key of the profile file, once (those of tracks in `track_fields.h`). `Io` is the reader, the writer
/// or the access to a single field: each call names a key, the member it fills and what is allowed. A new key
/// is added here, in the schema and in the window's field table, and nowhere else.
namespace layshaft::profile_file {

template <class Io>
void fields(Io& io, TorquePoint& point) {
  io.need("rpm", point.rpm, limits::kCurveRpm);
  io.need("torque_nm", point.torqueNm, limits::kCurveTorqueNm);
  io.rest(point.extras);
}

template <class Io>
void fields(Io& io, Air& air) {
  io.number("temperature_c", air.temperatureC, limits::kAirTemperatureC);
  io.number("pressure_hpa", air.pressureHpa, limits::kAirPressureHpa);
  io.number("humidity_percent", air.humidityPercent, limits::kPercent);
  io.rest(air.extras);
}

template <class Io>
void fields(Io& io, Engine& engine) {
  io.number("rev_limit_rpm", engine.revLimitRpm, limits::kRevLimitRpm);
  io.number("idle_rpm", engine.idleRpm, limits::kIdleRpm);
  io.number("shift_rpm", engine.shiftRpm, limits::kShiftRpm);
  io.torqueCurve("torque_curve", engine.torqueCurve);
  io.word("curve_measured_at", engine.curveMeasuredAt, kCurvePlaceWords);
  io.flag("curve_estimated", engine.curveEstimated);
  io.object("curve_air", engine.curveAir);
  io.number("rotating_inertia_kgm2", engine.rotatingInertiaKgm2, limits::kEngineInertiaKgm2);
  io.flag("torque_follows_air", engine.torqueFollowsAir);
  io.rest(engine.extras);
}

template <class Io>
void fields(Io& io, Chassis& chassis) {
  io.number("mass_kg", chassis.massKg, limits::kMassKg);
  io.number("rider_mass_kg", chassis.riderMassKg, limits::kRiderMassKg);
  io.number("wheelbase_mm", chassis.wheelbaseMm, limits::kWheelbaseMm);
  io.number("cg_height_mm", chassis.cgHeightMm, limits::kCgHeightMm);
  io.number("cg_ahead_of_rear_axle_mm", chassis.cgAheadOfRearAxleMm, limits::kCgAheadMm);
  io.number("drag_area_m2", chassis.dragAreaM2, limits::kDragAreaM2);
  io.number("drag_height_mm", chassis.dragHeightMm, limits::kDragHeightMm);
  io.number("rolling_resistance", chassis.rollingResistance, limits::kRollingResistance);
  io.word("rolling_resistance_form", chassis.rollingResistanceForm, kRollingResistanceWords);
  io.number("tyre_pressure_bar", chassis.tyrePressureBar, limits::kTyrePressureBar);
  io.number("drivetrain_efficiency", chassis.drivetrainEfficiency, limits::kEfficiency);
  io.number("front_wheel_inertia_kgm2", chassis.frontWheelInertiaKgm2, limits::kWheelInertiaKgm2);
  io.number("rear_wheel_inertia_kgm2", chassis.rearWheelInertiaKgm2, limits::kWheelInertiaKgm2);
  io.number("front_rollout_mm", chassis.frontRolloutMm, limits::kRolloutMm);
  io.number("tyre_grip", chassis.tyreGrip, limits::kGrip);
  io.number("shift_time_s", chassis.shiftTimeS, limits::kShiftTimeS);
  io.rest(chassis.extras);
}

template <class Io>
void fields(Io& io, ChainRun& run) {
  io.number("centre_distance_mm", run.centreDistanceMm, limits::kCentreDistanceMm);
  io.number("adjuster_forward_mm", run.adjusterForwardMm, limits::kAdjusterMm);
  io.number("adjuster_back_mm", run.adjusterBackMm, limits::kAdjusterMm);
  io.number("adjuster_mark_mm", run.adjusterMarkMm, limits::kAdjusterMarkMm);
  io.whole("largest_front_teeth", run.largestFrontTeeth, limits::kFrontTeeth);
  io.whole("smallest_front_teeth", run.smallestFrontTeeth, limits::kFrontTeeth);
  io.whole("largest_rear_teeth", run.largestRearTeeth, limits::kRearTeeth);
  io.whole("smallest_rear_teeth", run.smallestRearTeeth, limits::kRearTeeth);
  io.number("tensile_strength_kn", run.tensileStrengthKn, limits::kTensileStrengthKn);
  io.number("swingarm_length_mm", run.swingarmLengthMm, limits::kSwingarmLengthMm);
  io.number("swingarm_angle_deg", run.swingarmAngleDeg, limits::kSwingarmAngleDeg);
  io.number("countershaft_ahead_of_pivot_mm", run.countershaftAheadOfPivotMm, limits::kCountershaftOffsetMm);
  io.number("countershaft_above_pivot_mm", run.countershaftAbovePivotMm, limits::kCountershaftOffsetMm);
  io.wholes("belt_lengths_teeth", run.beltLengthsTeeth, limits::kBeltTeeth, limits::kMostBeltLengths);
  io.rest(run.extras);
}

template <class Io>
void fields(Io& io, Speedometer& speedometer) {
  io.word("sensor", speedometer.sensor, kSpeedSensorWords);
  io.number("reads_high_percent", speedometer.readsHighPercent, limits::kReadsHighPercent);
  io.rest(speedometer.extras);
}

template <class Io>
void fields(Io& io, Bike& bike) {
  io.word("class", bike.bikeClass, kBikeClassWords);
  io.needObject("engine", bike.engine);
  io.object("chassis", bike.chassis);
  io.object("chain_run", bike.chainRun);
  io.object("speedometer", bike.speedometer);
  io.rest(bike.extras);
}

template <class Io>
void fields(Io& io, SprocketDetails& sprocket) {
  io.chainSize("size", sprocket.size);
  io.word("material", sprocket.material, kMaterialWords);
  io.number("mass_kg", sprocket.massKg, limits::kSprocketMassKg);
  io.rest(sprocket.extras);
}

/// A whole setup and a change of one have the same keys; a change may leave each of them out.
template <class Io, class AnySetup>
void setupFields(Io& io, AnySetup& setup) {
  io.teeth("front_teeth", setup.frontTeeth, Teeth::front, limits::kFrontTeeth);
  io.teeth("rear_teeth", setup.rearTeeth, Teeth::rear, limits::kRearTeeth);
  io.tyre("rear_tyre", setup.rearTyre);
  SetupOptions& options = setup.options;
  io.number("rollout_mm", options.rolloutMm, limits::kRolloutMm);
  io.number("rolling_allowance_percent", options.rollingAllowancePercent, limits::kRollingAllowancePercent);
  io.number("crown_radius_mm", options.crownRadiusMm, limits::kCrownRadiusMm);
  io.number("tread_wear_mm", options.treadWearMm, limits::kTreadWearMm);
  io.number("growth_per_kmh2", options.growthPerKmh2, limits::kGrowthPerKmh2);
  io.number("primary_ratio", setup.primaryRatio, limits::kPrimaryRatio);
  io.gearTeeth("primary_teeth", options.primaryTeeth, limits::kGearTeeth);
  io.gearRatios("gear_ratios", setup.gearRatios);
  io.teethOfGears("gear_teeth", options.gearTeeth, limits::kGearTeeth, limits::kMostGears);
  io.word("final_drive", options.finalDrive, kFinalDriveWords);
  io.chainSize("chain_size", options.chainSize);
  io.word("chain_kind", options.chainKind, kChainKindWords);
  io.whole("links", options.links, limits::kLinks);
  io.number("chain_elongation_percent", options.chainElongationPercent, limits::kElongationPercent);
  io.number("belt_pitch_mm", options.beltPitchMm, limits::kBeltPitchMm);
  io.whole("belt_teeth", options.beltTeeth, limits::kBeltTeeth);
  io.object("front_sprocket", options.frontSprocket);
  io.object("rear_sprocket", options.rearSprocket);
  io.rest(options.extras);
}

template <class Io>
void fields(Io& io, SetupChange& setup) {
  setupFields(io, setup);
}

template <class Io>
void fields(Io& io, Pin& pin) {
  io.needText("name", pin.name, limits::kLongestName);
  fields(io, pin.change);
}

template <class Io>
void fields(Io& io, Aim& aim) {
  io.needWord("want", aim.want, kAimWords);
  io.whole("gear", aim.gear, limits::kGear);
  io.number("speed_kmh", aim.speedKmh, limits::kSpeedKmh);
  io.number("rpm", aim.rpm, limits::kAimRpm);
  io.number("percent", aim.percent, limits::kAimPercent);
  io.rest(aim.extras);
}

template <class Io>
void fields(Io& io, SurfaceValues& values) {
  io.number("grip", values.grip, limits::kGrip);
  io.number("rolling_resistance", values.rollingResistance, limits::kRollingResistance);
  io.number("slip_percent", values.slipPercent, limits::kSlipPercent);
  io.rest(values.extras);
}

template <class Io>
void fields(Io& io, Drive& drive) {
  io.number("exit_speed_kmh", drive.exitSpeedKmh, limits::kSpeedKmh);
  io.number("length_m", drive.lengthM, limits::kDriveLengthM);
  io.whole("exit_gear", drive.exitGear, limits::kGear);
  io.rest(drive.extras);
}

template <class Io>
void fields(Io& io, RollOn& rollOn) {
  io.number("from_speed_kmh", rollOn.fromSpeedKmh, limits::kSpeedKmh);
  io.number("to_speed_kmh", rollOn.toSpeedKmh, limits::kSpeedKmh);
  io.whole("gear", rollOn.gear, limits::kGear);
  io.rest(rollOn.extras);
}

template <class Io>
void fields(Io& io, Ride& ride) {
  io.number("slope_percent", ride.slopePercent, limits::kSlopePercent);
  io.number("headwind_kmh", ride.headwindKmh, limits::kHeadwindKmh);
  io.number("altitude_m", ride.altitudeM, limits::kAltitudeM);
  io.number("air_temperature_c", ride.airTemperatureC, limits::kAirTemperatureC);
  io.number("air_pressure_hpa", ride.airPressureHpa, limits::kAirPressureHpa);
  io.number("humidity_percent", ride.humidityPercent, limits::kPercent);
  io.word("surface", ride.surface, kSurfaceWords);
  io.surfaces("surfaces", ride.surfaces, ride.unknownSurfaces);
  io.number("launch_rpm", ride.launchRpm, limits::kLaunchRpm);
  io.number("lean_deg", ride.leanDeg, limits::kLeanDeg);
  io.object("drive", ride.drive);
  io.object("roll_on", ride.rollOn);
  io.optionalText("track", ride.track, limits::kLongestName);
  io.rest(ride.extras);
}

template <class Io>
void spareSprocketFields(Io& io, SpareSprocket& spare, const Limit& teeth) {
  io.needWhole("teeth", spare.teeth, teeth);
  io.chainSize("size", spare.size);
  io.word("material", spare.material, kMaterialWords);
  io.number("mass_kg", spare.massKg, limits::kSprocketMassKg);
  io.word("state", spare.state, kSpareStateWords);
  io.rest(spare.extras);
}

template <class Io>
void fields(Io& io, SpareChain& spare) {
  io.needChainSize("size", spare.size);
  io.needWhole("links", spare.links, limits::kLinks);
  io.word("state", spare.state, kSpareStateWords);
  io.number("elongation_percent", spare.elongationPercent, limits::kElongationPercent);
  io.rest(spare.extras);
}

template <class Io>
void fields(Io& io, SparesBox& box) {
  io.list("front", box.front, limits::kMostSpares,
          [](Io& entry, SpareSprocket& spare) { spareSprocketFields(entry, spare, limits::kFrontTeeth); });
  io.list("rear", box.rear, limits::kMostSpares,
          [](Io& entry, SpareSprocket& spare) { spareSprocketFields(entry, spare, limits::kRearTeeth); });
  io.list("chains", box.chains, limits::kMostSpares,
          [](Io& entry, SpareChain& spare) { fields(entry, spare); });
  io.list("gear_pairs", box.gearPairs, limits::kMostSpares,
          [](Io& entry, SpareGearPair& spare) { fields(entry, spare); });
  io.rest(box.extras);
}

template <class Io>
void fields(Io& io, Struck& struck) {
  io.needDate("date", struck.date);
  io.optionalText("reason", struck.reason, limits::kLongestRecordText);
  io.rest(struck.extras);
}

template <class Io>
void fields(Io& io, WearMeasurement& measurement) {
  io.needDate("date", measurement.date);
  io.number("at", measurement.at, limits::kUse);
  io.whole("pitches", measurement.pitches, limits::kMeasuredPitches);
  io.numbers("lengths_mm", measurement.lengthsMm, limits::kMeasuredLengthMm, limits::kMostPlaces);
  io.word("front", measurement.front, kTeethSeenWords);
  io.word("rear", measurement.rear, kTeethSeenWords);
  io.flag("lifts_off_half_tooth", measurement.liftsOffHalfTooth);
  io.optionalText("note", measurement.note, limits::kLongestRecordText);
  io.object("struck", measurement.struck);
  io.rest(measurement.extras);
}

template <class Io>
void fields(Io& io, Wear& wear) {
  io.number("limit_percent", wear.limitPercent, limits::kWearLimitPercent);
  io.lengthRange("slack_mm", wear.slackMm, limits::kSlackMm);
  io.optionalText("slack_posture", wear.slackPosture, limits::kLongestRecordText);
  io.word("use_unit", wear.useUnit, kUseUnitWords);
  io.number("chain_fitted_at", wear.chainFittedAt, limits::kUse);
  io.entries("measurements", wear.measurements, limits::kMostRecords,
             [](Io& entry, WearMeasurement& measurement) { fields(entry, measurement); });
  io.rest(wear.extras);
}

template <class Io>
void fields(Io& io, Service& service) {
  io.needDate("date", service.date);
  io.number("at", service.at, limits::kUse);
  io.flag("new_chain", service.newChain);
  io.flag("new_front_sprocket", service.newFrontSprocket);
  io.flag("new_rear_sprocket", service.newRearSprocket);
  io.optionalText("parts", service.parts, limits::kLongestRecordText);
  io.optionalText("note", service.note, limits::kLongestRecordText);
  io.object("struck", service.struck);
  io.rest(service.extras);
}

template <class Io>
void fields(Io& io, TrackNote& note) {
  io.needDate("date", note.date);
  io.optionalText("place", note.place, limits::kLongestName);
  io.word("surface", note.surface, kSurfaceWords);
  io.optionalText("weather", note.weather, limits::kLongestRecordText);
  io.object("setup", note.setup);
  io.whole("gear_at_end", note.gearAtEnd, limits::kGear);
  io.number("rpm_at_end", note.rpmAtEnd, limits::kNoteRpm);
  io.flag("limiter_hit", note.limiterHit);
  io.number("lap_time_s", note.lapTimeS, limits::kLapTimeS);
  io.whole("rating", note.rating, limits::kRating);
  io.optionalText("words", note.words, limits::kLongestRecordText);
  io.object("struck", note.struck);
  io.rest(note.extras);
}

template <class Io>
void fields(Io& io, Records& records) {
  io.entries("services", records.services, limits::kMostRecords,
             [](Io& entry, Service& service) { fields(entry, service); });
  io.entries("track_notes", records.trackNotes, limits::kMostRecords,
             [](Io& entry, TrackNote& note) { fields(entry, note); });
  io.rest(records.extras);
}

template <class Io>
void fields(Io& io, PartPrice& price) {
  io.needText("part", price.part, limits::kLongestName);
  io.need("price", price.price, limits::kPrice);
  io.rest(price.extras);
}

template <class Io>
void fields(Io& io, Prices& prices) {
  io.optionalText("currency", prices.currency, limits::kLongestName);
  io.list("parts", prices.parts, limits::kMostPrices,
          [](Io& entry, PartPrice& price) { fields(entry, price); });
  io.rest(prices.extras);
}

/// Everything behind the setups; `readProfile` and `writeProfile` deal with format, version, stock and
/// proposed.
template <class Io>
void lists(Io& io, Profile& profile) {
  io.list("pins", profile.pins, limits::kMostPins, [](Io& entry, Pin& pin) { fields(entry, pin); });
  io.list("aims", profile.aims, limits::kMostAims, [](Io& entry, Aim& aim) { fields(entry, aim); });
  io.number("cruise_speed_kmh", profile.cruiseSpeedKmh, limits::kCruiseSpeedKmh);
  io.object("ride", profile.ride);
  io.object("spares_box", profile.sparesBox);
  io.list("tracks", profile.tracks, limits::kMostTracks,
          [](Io& entry, Track& track) { fields(entry, track); });
  io.object("wear", profile.wear);
  io.object("records", profile.records);
  io.object("prices", profile.prices);
  io.texts("typical", profile.typical, limits::kMostTypical, limits::kLongestKey);
  io.rest(profile.extras);
}

}  // namespace layshaft::profile_file
