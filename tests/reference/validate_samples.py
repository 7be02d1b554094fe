#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Puts a general-purpose JSON Schema validator over the profile schema and the sample profiles.

Usage: validate_samples.py SCHEMA SAMPLES_DIR [FILE...]

  1. the schema is a correct JSON Schema 2020-12 document, and describes every key;
  2. its limits are those of core/limits.h, tried on both sides of each end;
  3. a document with every key filled is accepted, also with any optional key null and with unknown keys anywhere;
  4. broken documents are refused, each at the key that was broken;
  5. every *.bike.json in SAMPLES_DIR is valid and uses only keys that the schema knows (a slip of the pen would
     otherwise pass as an unknown key), and every FILE is valid.

Needs Debian's python3-jsonschema. Exit 0 if all is well; 1 with one line per finding; 2 on bad usage.
"""

import copy
import json
import math
import re
import sys
from pathlib import Path

try:
  from jsonschema import Draft202012Validator
  from jsonschema.exceptions import SchemaError
except ImportError:
  sys.exit("validate_samples: python3-jsonschema is missing (needs Draft202012Validator)")

DIALECT = "https://json-schema.org/draft/2020-12/schema"
LIMITS_H = Path(__file__).resolve().parents[2] / "core" / "limits.h"
SETUPS = ("stock", "proposed", "pins[0]", "records.track_notes[0].setup")
ENTRIES = ("wear.measurements[0]", "records.services[0]", "records.track_notes[0]")

SETUP = {
  "front_teeth": 16, "rear_teeth": 43, "rear_tyre": "180/55ZR17", "rollout_mm": 1940, "rolling_allowance_percent": 2,
  "crown_radius_mm": 90, "tread_wear_mm": 1, "growth_per_kmh2": 1e-7, "primary_ratio": 1.9,
  "primary_teeth": [20, 38], "gear_teeth": [[10, 27], None, [20, 32]],
  "gear_ratios": [2.7, 2.0, 1.6, 1.3], "final_drive": "chain", "chain_size": "520", "chain_kind": "sealed", "links": 114,
  "chain_elongation_percent": 0.5, "belt_pitch_mm": 14, "belt_teeth": 140,
  "front_sprocket": {"size": "520", "material": "steel", "mass_kg": 0.4},
  "rear_sprocket": {"size": "520", "material": "aluminium", "mass_kg": 0.5},
}

# Every key that the format has, each with a good value.
COMPLETE = {
  "format": "layshaft-bike", "version": 1, "name": "Every key", "notes": "", "customer": "",
  "bike": {
    "class": "tourer",
    "engine": {
      "rev_limit_rpm": 12000, "idle_rpm": 1500, "shift_rpm": 11000,
      "torque_curve": [{"rpm": 4000, "torque_nm": 40}, {"rpm": 8000, "torque_nm": 60}],
      "curve_measured_at": "crankshaft", "curve_estimated": True,
      "curve_air": {"temperature_c": 20, "pressure_hpa": 1000, "humidity_percent": 50},
      "rotating_inertia_kgm2": 0.01, "torque_follows_air": True,
    },
    "chassis": {
      "mass_kg": 180, "rider_mass_kg": 80, "wheelbase_mm": 1400, "cg_height_mm": 640,
      "cg_ahead_of_rear_axle_mm": 690, "drag_area_m2": 0.4, "drag_height_mm": 650, "rolling_resistance": 0.015,
      "rolling_resistance_form": "constant", "tyre_pressure_bar": 2.5, "drivetrain_efficiency": 0.92,
      "front_wheel_inertia_kgm2": 0.5, "rear_wheel_inertia_kgm2": 0.6, "front_rollout_mm": 1870, "tyre_grip": 1.1,
      "shift_time_s": 0.1,
    },
    "chain_run": {
      "centre_distance_mm": 667, "adjuster_forward_mm": 10, "adjuster_back_mm": 15, "adjuster_mark_mm": 2, "largest_front_teeth": 17,
      "smallest_front_teeth": 14, "largest_rear_teeth": 48, "smallest_rear_teeth": 40, "tensile_strength_kn": 35,
      "swingarm_length_mm": 580, "swingarm_angle_deg": 8, "countershaft_ahead_of_pivot_mm": 80,
      "countershaft_above_pivot_mm": 10, "belt_lengths_teeth": [138, 140],
    },
    "speedometer": {"sensor": "rear_wheel", "reads_high_percent": 4},
  },
  "stock": SETUP,
  "proposed": copy.deepcopy(SETUP),
  "pins": [{"name": "Pin", **copy.deepcopy(SETUP)}],
  "aims": [{"want": "rev_at_speed", "gear": 4, "speed_kmh": 200, "rpm": 11000, "percent": 5}],
  "cruise_speed_kmh": 110,
  "ride": {
    "slope_percent": 2, "headwind_kmh": 10, "altitude_m": 300, "air_temperature_c": 20, "air_pressure_hpa": 980,
    "humidity_percent": 50, "surface": "asphalt",
    "surfaces": {name: {"grip": 0.8, "rolling_resistance": 0.03, "slip_percent": 5}
                 for name in ("asphalt", "wet_asphalt", "hardpack", "loam", "sand")},
    "launch_rpm": 7000, "lean_deg": 40, "drive": {"exit_speed_kmh": 80, "length_m": 400, "exit_gear": 2},
    "roll_on": {"from_speed_kmh": 80, "to_speed_kmh": 120, "gear": 4}, "track": "Round the pond",
  },
  "spares_box": {
    "front": [{"teeth": 15, "size": "520", "material": "steel", "mass_kg": 0.3, "state": "new"}],
    "rear": [{"teeth": 45, "size": "520", "material": "steel", "mass_kg": 0.9, "state": "used"}],
    "chains": [{"size": "520", "links": 114, "state": "worn", "elongation_percent": 0.4}],
    "gear_pairs": [{"gear": 2, "driving": 17, "driven": 33, "note": ""}],
  },
  # Of what excludes each other the schema takes all: the program looks.
  "tracks": [{
    "name": "Round the pond", "closed": True, "start_speed_kmh": 0, "corner_share_percent": 90,
    "brake_share_percent": 80, "max_lean_deg": 50,
    "segments": [{"name": "", "length_m": 100, "radius_m": 50, "angle_deg": 90, "corner_speed_kmh": 70,
                  "slope_percent": 2, "surface": "asphalt", "turn": "left"}],
    "path": {"spacing_m": 5, "curvature_per_km": [0, 10], "slope_percent": [0, 1], "x_m": [0, 5], "y_m": [0, 0],
             "source": ""},
  }],
  "wear": {
    "limit_percent": 1.7, "slack_mm": [20, 30], "slack_posture": "", "use_unit": "km", "chain_fitted_at": 1000,
    "measurements": [{"date": "2026-03-01", "at": 4200, "pitches": 20, "lengths_mm": [318, 318.4], "front": "good",
                      "rear": "worn", "lifts_off_half_tooth": False, "note": "",
                      "struck": {"date": "2026-03-02", "reason": ""}}],
  },
  "records": {
    "services": [{"date": "2026-02-28", "at": 4200, "new_chain": True, "new_front_sprocket": False,
                  "new_rear_sprocket": True, "parts": "", "note": "", "struck": {"date": "2026-03-01", "reason": ""}}],
    "track_notes": [{"date": "2026-04-05", "place": "", "surface": "loam", "weather": "", "setup": copy.deepcopy(SETUP),
                     "gear_at_end": 5, "rpm_at_end": 11000, "limiter_hit": True, "lap_time_s": 92.4, "rating": 7,
                     "words": "", "struck": {"date": "2026-04-06", "reason": ""}}],
  },
  "prices": {"currency": "", "parts": [{"part": "kit", "price": 150}]},
  "typical": ["bike.chassis.mass_kg"],
}

# Keys that may be neither missing nor null.
REQUIRED = [
  "format", "version", "name", "bike", "bike.engine", "stock", "stock.front_teeth",
  "stock.rear_teeth", "stock.rear_tyre", "stock.primary_ratio",
  "bike.engine.torque_curve[0].rpm", "bike.engine.torque_curve[0].torque_nm", "pins[0].name", "aims[0].want",
  "spares_box.front[0].teeth", "spares_box.rear[0].teeth",
  "spares_box.chains[0].size", "spares_box.chains[0].links", "prices.parts[0].part", "prices.parts[0].price",
  "tracks[0].name", "tracks[0].path.spacing_m", "tracks[0].path.curvature_per_km",
  *[f"spares_box.gear_pairs[0].{key}" for key in ("gear", "driving", "driven")],
  *[f"{entry}{key}" for entry in ENTRIES for key in (".date", ".struck.date")],
]

WHOLE = {"front_teeth", "rear_teeth", "links", "belt_teeth", "gear", "teeth", "largest_front_teeth",
         "smallest_front_teeth", "largest_rear_teeth", "smallest_rear_teeth", "belt_lengths_teeth",
         "primary_teeth", "gear_teeth", "pitches", "gear_at_end", "rating", "driving", "driven"}

# Key path -> its limit in core/limits.h. "*" stands here and below for each of SETUPS.
LIMIT_OF = {
  "*.front_teeth": "kFrontTeeth", "*.rear_teeth": "kRearTeeth", "*.rollout_mm": "kRolloutMm",
  "*.rolling_allowance_percent": "kRollingAllowancePercent", "*.crown_radius_mm": "kCrownRadiusMm",
  "*.tread_wear_mm": "kTreadWearMm", "*.growth_per_kmh2": "kGrowthPerKmh2", "*.primary_ratio": "kPrimaryRatio",
  "*.primary_teeth[0]": "kGearTeeth", "*.primary_teeth[1]": "kGearTeeth", "*.gear_teeth[0][0]": "kGearTeeth",
  "*.gear_teeth[2][1]": "kGearTeeth",
  "*.gear_ratios[0]": "kGearRatio", "*.gear_ratios[3]": "kGearRatio", "*.links": "kLinks",
  "*.chain_elongation_percent": "kElongationPercent", "*.belt_pitch_mm": "kBeltPitchMm",
  "*.belt_teeth": "kBeltTeeth", "*.front_sprocket.mass_kg": "kSprocketMassKg",
  "*.rear_sprocket.mass_kg": "kSprocketMassKg",
  "bike.engine.rev_limit_rpm": "kRevLimitRpm", "bike.engine.idle_rpm": "kIdleRpm",
  "bike.engine.shift_rpm": "kShiftRpm", "bike.engine.torque_curve[1].rpm": "kCurveRpm",
  "bike.engine.torque_curve[1].torque_nm": "kCurveTorqueNm",
  "bike.engine.curve_air.temperature_c": "kAirTemperatureC", "bike.engine.curve_air.pressure_hpa": "kAirPressureHpa",
  "bike.engine.curve_air.humidity_percent": "kPercent", "bike.engine.rotating_inertia_kgm2": "kEngineInertiaKgm2",
  "bike.chassis.mass_kg": "kMassKg", "bike.chassis.rider_mass_kg": "kRiderMassKg",
  "bike.chassis.wheelbase_mm": "kWheelbaseMm", "bike.chassis.cg_height_mm": "kCgHeightMm",
  "bike.chassis.cg_ahead_of_rear_axle_mm": "kCgAheadMm", "bike.chassis.drag_area_m2": "kDragAreaM2",
  "bike.chassis.drag_height_mm": "kDragHeightMm", "bike.chassis.rolling_resistance": "kRollingResistance",
  "bike.chassis.tyre_pressure_bar": "kTyrePressureBar", "bike.chassis.drivetrain_efficiency": "kEfficiency",
  "bike.chassis.front_wheel_inertia_kgm2": "kWheelInertiaKgm2",
  "bike.chassis.rear_wheel_inertia_kgm2": "kWheelInertiaKgm2", "bike.chassis.front_rollout_mm": "kRolloutMm",
  "bike.chassis.tyre_grip": "kGrip", "bike.chassis.shift_time_s": "kShiftTimeS",
  "bike.chain_run.centre_distance_mm": "kCentreDistanceMm", "bike.chain_run.adjuster_forward_mm": "kAdjusterMm",
  "bike.chain_run.adjuster_back_mm": "kAdjusterMm", "bike.chain_run.largest_front_teeth": "kFrontTeeth",
  "bike.chain_run.smallest_front_teeth": "kFrontTeeth", "bike.chain_run.largest_rear_teeth": "kRearTeeth",
  "bike.chain_run.smallest_rear_teeth": "kRearTeeth", "bike.chain_run.tensile_strength_kn": "kTensileStrengthKn",
  "bike.chain_run.swingarm_length_mm": "kSwingarmLengthMm", "bike.chain_run.swingarm_angle_deg": "kSwingarmAngleDeg",
  "bike.chain_run.countershaft_ahead_of_pivot_mm": "kCountershaftOffsetMm",
  "bike.chain_run.countershaft_above_pivot_mm": "kCountershaftOffsetMm",
  "bike.chain_run.belt_lengths_teeth[0]": "kBeltTeeth", "bike.speedometer.reads_high_percent": "kReadsHighPercent",
  "aims[0].gear": "kGear", "aims[0].speed_kmh": "kSpeedKmh", "aims[0].rpm": "kAimRpm",
  "aims[0].percent": "kAimPercent", "cruise_speed_kmh": "kCruiseSpeedKmh",
  "ride.slope_percent": "kSlopePercent", "ride.headwind_kmh": "kHeadwindKmh", "ride.altitude_m": "kAltitudeM",
  "ride.air_temperature_c": "kAirTemperatureC", "ride.air_pressure_hpa": "kAirPressureHpa",
  "ride.humidity_percent": "kPercent", "ride.launch_rpm": "kLaunchRpm", "ride.lean_deg": "kLeanDeg",
  "ride.drive.exit_speed_kmh": "kSpeedKmh", "ride.drive.length_m": "kDriveLengthM", "ride.drive.exit_gear": "kGear",
  "ride.roll_on.from_speed_kmh": "kSpeedKmh", "ride.roll_on.to_speed_kmh": "kSpeedKmh", "ride.roll_on.gear": "kGear",
  "spares_box.front[0].teeth": "kFrontTeeth", "spares_box.rear[0].teeth": "kRearTeeth",
  "spares_box.front[0].mass_kg": "kSprocketMassKg", "spares_box.rear[0].mass_kg": "kSprocketMassKg",
  "spares_box.chains[0].links": "kLinks", "spares_box.chains[0].elongation_percent": "kElongationPercent",
  "bike.chain_run.adjuster_mark_mm": "kAdjusterMarkMm",
  "wear.limit_percent": "kWearLimitPercent", "wear.slack_mm[0]": "kSlackMm", "wear.slack_mm[1]": "kSlackMm",
  "wear.chain_fitted_at": "kUse", "wear.measurements[0].at": "kUse",
  "wear.measurements[0].pitches": "kMeasuredPitches", "wear.measurements[0].lengths_mm[0]": "kMeasuredLengthMm",
  "wear.measurements[0].lengths_mm[1]": "kMeasuredLengthMm",
  "records.services[0].at": "kUse", "records.track_notes[0].gear_at_end": "kGear",
  "records.track_notes[0].rpm_at_end": "kNoteRpm", "records.track_notes[0].lap_time_s": "kLapTimeS",
  "records.track_notes[0].rating": "kRating", "prices.parts[0].price": "kPrice",
  "spares_box.gear_pairs[0].gear": "kGearOrPrimary", "spares_box.gear_pairs[0].driving": "kGearTeeth",
  "spares_box.gear_pairs[0].driven": "kGearTeeth",
  "tracks[0].start_speed_kmh": "kSpeedKmh", "tracks[0].corner_share_percent": "kShareOfGripPercent",
  "tracks[0].brake_share_percent": "kShareOfGripPercent", "tracks[0].max_lean_deg": "kMaxLeanDeg",
  "tracks[0].segments[0].length_m": "kSegmentLengthM", "tracks[0].segments[0].radius_m": "kBendRadiusM",
  "tracks[0].segments[0].angle_deg": "kBendAngleDeg", "tracks[0].segments[0].corner_speed_kmh": "kCornerSpeedKmh",
  "tracks[0].segments[0].slope_percent": "kSlopePercent", "tracks[0].path.spacing_m": "kStretchM",
  **{f"tracks[0].path.{key}[{entry}]": limit for entry in (0, 1) for key, limit in (
    ("curvature_per_km", "kCurvaturePerKm"), ("slope_percent", "kSlopePercent"), ("x_m", "kTrackPositionM"),
    ("y_m", "kTrackPositionM"))},
}
for _surface in COMPLETE["ride"]["surfaces"]:
  LIMIT_OF[f"ride.surfaces.{_surface}.grip"] = "kGrip"
  LIMIT_OF[f"ride.surfaces.{_surface}.rolling_resistance"] = "kRollingResistance"
  LIMIT_OF[f"ride.surfaces.{_surface}.slip_percent"] = "kSlipPercent"

# What else must be refused: key path, value put there.
BROKEN = [
  ("format", "another-bike"), ("version", 2), ("version", 0), ("version", "1"), ("version", True),
  ("name", 600), ("notes", ["x"]),
  ("bike", []), ("bike.engine", "twin"), ("stock", []), ("proposed", 15), ("ride", "uphill"), ("spares_box", []),
  ("bike.class", "spaceship"), ("typical", "bike.chassis.mass_kg"), ("typical[0]", 7), ("typical[0]", None),
  ("bike.engine.rev_limit_rpm", "12000"), ("bike.engine.rev_limit_rpm", False),
  ("bike.engine.torque_curve", [{"rpm": 4000, "torque_nm": 0}, {"rpm": 8000, "torque_nm": 0}]),
  ("bike.engine.torque_curve", {"4000": 40, "8000": 60}), ("bike.engine.torque_curve[1]", [4000, 40]),
  ("bike.engine.torque_curve[1]", None), ("bike.engine.curve_measured_at", "gearbox"),
  ("bike.engine.curve_air", 15), ("bike.engine.curve_estimated", "yes"), ("bike.engine.curve_estimated", 1), ("bike.engine.torque_follows_air", 1), ("bike.engine.torque_follows_air", "yes"),
  ("bike.chassis.mass_kg", "172 kg"), ("bike.chassis.rolling_resistance_form", "quadratic"),
  ("bike.chain_run.belt_lengths_teeth[0]", None), ("bike.speedometer.sensor", "gps"),
  ("bike.speedometer.sensor", ""),
  *[(f"{setup}.{key}", value) for setup in SETUPS for key, value in (
    ("rear_tyre", ""), ("rear_tyre", 180), ("gear_ratios", 2.7), ("gear_ratios[0]", None),
    ("primary_teeth", 38), ("primary_teeth", "38/20"), ("primary_teeth[0]", None), ("gear_teeth[0]", [10]),
    ("gear_teeth[0]", 10), ("gear_teeth[0][1]", None),
    ("gear_ratios[0]", "2.7"), ("final_drive", "shaft"),
    ("chain_size", "630"), ("chain_size", 520), ("front_sprocket", 0.4), ("front_sprocket.material", "titanium"),
    ("rear_sprocket.material", "wood"), ("rear_sprocket.size", "521"))],
  ("pins", {}), ("pins[0]", None), ("pins[0].name", 5),
  ("aims", "more pull"), ("aims[0]", None), ("aims[0].want", "more"),
  ("ride.surface", "ice"), ("ride.surfaces", []), ("ride.surfaces.loam", 0.8), ("ride.drive", 400),
  ("ride.roll_on", [80, 120]),
  ("spares_box.front", 15), ("spares_box.front[0]", 15), ("spares_box.rear[0]", 45),
  ("spares_box.chains[0]", None),
  ("spares_box.front[0].size", "630"), ("spares_box.rear[0].material", "wood"),
  ("spares_box.rear[0].state", "lost"), ("spares_box.chains[0].size", "630"),
  ("spares_box.chains[0].state", "lost"),
  ("customer", 5), ("wear", 1), ("wear.slack_mm", [20]), ("wear.slack_mm", 20), ("wear.use_unit", "miles"),
  ("wear.measurements", {}), ("wear.measurements[0]", None), ("wear.measurements[0].lengths_mm", 318),
  ("wear.measurements[0].lengths_mm[0]", None), ("wear.measurements[0].front", "new"),
  ("wear.measurements[0].lifts_off_half_tooth", "no"), ("records", []), ("records.services", {}),
  ("records.services[0]", None), ("records.services[0].new_chain", "yes"), ("records.track_notes[0]", None),
  ("records.track_notes[0].surface", "ice"), ("records.track_notes[0].setup", 15), ("prices", []),
  ("prices.parts[0]", None), ("prices.parts[0].part", ""),
  ("ride.track", 1), ("spares_box.gear_pairs", {}), ("spares_box.gear_pairs[0]", [2, 17, 33]),
  ("tracks", {}), ("tracks[0]", None), ("tracks[0].name", ""), ("tracks[0].closed", "yes"), ("tracks[0].segments", {}),
  ("tracks[0].segments[0]", None), ("tracks[0].segments[0].turn", "up"), ("tracks[0].segments[0].surface", "ice"),
  ("tracks[0].path", [0, 10]), ("tracks[0].path.curvature_per_km", [0]), ("tracks[0].path.x_m[0]", None),
  *[(f"{entry}.{key}", 5) for entry in ENTRIES for key in ("date", "struck", "struck.reason")],
]

# Key path -> every word that it takes.
SIZES = "415 420 428 520 525 530"
WORDS = {
  "*.chain_size": SIZES, "*.chain_kind": "plain sealed", "*.final_drive": "chain belt", "*.front_sprocket.material": "steel aluminium",
  "*.rear_sprocket.material": "steel aluminium", "*.front_sprocket.size": SIZES, "*.rear_sprocket.size": SIZES,
  "bike.engine.curve_measured_at": "crankshaft rear_wheel",
  "bike.chassis.rolling_resistance_form": "constant speed_dependent",
  "bike.speedometer.sensor": "gearbox_output rear_wheel front_wheel",
  "aims[0].want": "rev_at_speed cruise_below pull_gain least_drive_time top_speed_at_least rev_at_drive_end least_lap_time",
  "ride.surface": "asphalt wet_asphalt hardpack loam sand", "spares_box.front[0].size": SIZES,
  "spares_box.rear[0].size": SIZES, "spares_box.chains[0].size": SIZES,
  "spares_box.front[0].material": "steel aluminium", "spares_box.rear[0].material": "steel aluminium",
  "spares_box.front[0].state": "new used worn", "spares_box.rear[0].state": "new used worn",
  "spares_box.chains[0].state": "new used worn", "wear.use_unit": "hours km",
  "wear.measurements[0].front": "good worn hooked", "wear.measurements[0].rear": "good worn hooked",
  "records.track_notes[0].surface": "asphalt wet_asphalt hardpack loam sand",
  "tracks[0].segments[0].surface": "asphalt wet_asphalt hardpack loam sand",
  "tracks[0].segments[0].turn": "left right",
}

# An aim asks for what it needs, and no more has to be there.
AIMS = [{"want": "rev_at_speed", "speed_kmh": 200, "rpm": 11000}, {"want": "least_drive_time", "gear": None},
        {"want": "cruise_below", "speed_kmh": 110, "rpm": 5000}, {"want": "pull_gain", "gear": 3, "percent": -3},
        {"want": "top_speed_at_least", "speed_kmh": 180}, {"want": "least_lap_time"}]

# Limits of the numbers inside a tyre size, which the file keeps as the text that is printed on the sidewall.
INSIDE_TEXT = {"kTyreWidthMm", "kTyreAspectPercent", "kRimInches", "kRacingDiameterMm", "kCodeSectionInches"}

# What recordings are held against, which are no profiles.
IN_RECORDINGS = {"kLatitudeDeg", "kLongitudeDeg", "kPlaneM", "kHeightM", "kRecordedSpeedMps", "kSmoothingM",
                 "kRecordedLengthM", "kFromFirstFixM", "kFewestFixes", "kMostFixes", "kDeepestXml", "kMostTableColumns"}

# Key path -> fewest and most entries or characters, as numbers or names in core/limits.h.
COUNT_OF = {
  "*.gear_ratios": ("kFewestGears", "kMostGears"), "*.primary_teeth": (2, 2), "*.gear_teeth": (0, "kMostGears"),
  "bike.engine.torque_curve": ("kFewestCurvePoints", "kMostCurvePoints"),
  "bike.chain_run.belt_lengths_teeth": (0, "kMostBeltLengths"), "pins": (0, "kMostPins"), "aims": (0, "kMostAims"),
  "spares_box.front": (0, "kMostSpares"), "spares_box.rear": (0, "kMostSpares"),
  "spares_box.chains": (0, "kMostSpares"), "spares_box.gear_pairs": (0, "kMostSpares"),
  "spares_box.gear_pairs[0].note": (0, "kLongestRecordText"), "ride.track": (0, "kLongestName"),
  "tracks": (0, "kMostTracks"), "tracks[0].name": (1, "kLongestName"), "tracks[0].segments": (0, "kMostSegments"),
  "tracks[0].segments[0].name": (0, "kLongestName"), "tracks[0].path.source": (0, "kLongestName"),
  "tracks[0].path.curvature_per_km": ("kFewestStretches", "kMostStretches"),
  **{f"tracks[0].path.{key}": (0, "kMostStretches") for key in ("slope_percent", "x_m", "y_m")}, "name": (1, "kLongestName"), "pins[0].name": (1, "kLongestName"),
  "notes": (0, "kLongestNotes"), "typical": (0, "kMostTypical"), "typical[0]": (1, "kLongestKey"),
  "customer": (0, "kLongestName"), "wear.slack_mm": (2, 2), "wear.slack_posture": (0, "kLongestRecordText"),
  "wear.measurements": (0, "kMostRecords"), "wear.measurements[0].lengths_mm": (0, "kMostPlaces"),
  "records.services": (0, "kMostRecords"), "records.track_notes": (0, "kMostRecords"),
  "prices.parts": (0, "kMostPrices"), "prices.parts[0].part": (1, "kLongestName"),
  "prices.currency": (0, "kLongestName"), "records.track_notes[0].place": (0, "kLongestName"),
  **{f"{entry}.struck.reason": (0, "kLongestRecordText") for entry in ENTRIES},
  "wear.measurements[0].note": (0, "kLongestRecordText"), "records.services[0].note": (0, "kLongestRecordText"),
  "records.services[0].parts": (0, "kLongestRecordText"),
  "records.track_notes[0].weather": (0, "kLongestRecordText"), "records.track_notes[0].words": (0, "kLongestRecordText"),
}

findings = []
checks = 0


def check(ok, finding):
  global checks
  checks += 1
  if not ok:
    findings.append(finding)


def steps(path):
  """'pins[0].name' -> ['pins', 0, 'name']"""
  return [int(step[1:-1]) if step.startswith("[") else step for step in re.findall(r"\[\d+\]|[^.\[]+", path)]


def words(path):
  """The reverse of steps()."""
  return "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in path).lstrip(".")


def at(document, path):
  for step in path:
    document = document[step]
  return document


def changed(path, value):
  document = copy.deepcopy(COMPLETE)
  *parents, last = steps(path)
  at(document, parents)[last] = value
  return document


def without(path):
  document = copy.deepcopy(COMPLETE)
  *parents, last = steps(path)
  del at(document, parents)[last]
  return document


def errors(validator, document):
  return [(words(error.absolute_path), error.message) for error in validator.iter_errors(document)]


def must_pass(validator, document, what):
  found = errors(validator, document)
  where, message = found[0] if found else ("", "")
  check(not found, f"{what}: should be accepted, but {where or 'document'}: {message[:200]}")


def must_fail(validator, document, where, what):
  found = errors(validator, document)
  check(any(path == where for path, _ in found),
        f"{what}: should be refused at '{where}', but " +
        (f"was refused at '{found[0][0]}'" if found else "was accepted"))


def objects_in(value, path=()):
  if isinstance(value, dict):
    yield path, value
  for step, part in value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ():
    yield from objects_in(part, path + (step,))


def resolved(schema, part):
  """All the parts of the schema that speak about the same place as `part`."""
  parts = [part]
  if "$ref" in part:
    if not part["$ref"].startswith("#/$defs/"):
      sys.exit(f"validate_samples: the schema refers to {part['$ref']}, outside itself")
    parts += resolved(schema, schema["$defs"][part["$ref"].removeprefix("#/$defs/")])
  return parts


def known_keys(schema, part, path=()):
  """(path, descriptions) of every key that the schema lists, list entries as '[0]'."""
  merged = {}
  for piece in resolved(schema, part):
    for key, value in piece.get("properties", {}).items():
      merged.setdefault(key, []).append(value)
    if "items" in piece:
      yield from known_keys(schema, piece["items"], path + (0,))
  for key, values in merged.items():
    yield path + (key,), [piece["description"] for value in values for piece in resolved(schema, value)
                          if piece.get("description")]
    for value in values:
      yield from known_keys(schema, value, path + (key,))


def keys_of(document):
  """Every key path of a document, list entries as '[0]'."""
  return {words([0 if isinstance(step, int) else step for step in path + (key,)])
          for path, value in objects_in(document) for key in value}


def read_json(file):
  def pairs(items):
    keys = [key for key, _ in items]
    for key in keys:
      if keys.count(key) > 1:
        raise ValueError(f"key '{key}' twice")
    return dict(items)

  def no_constant(name):
    raise ValueError(f"{name} is not a JSON number")

  return json.loads(Path(file).read_bytes().decode("utf-8"), object_pairs_hook=pairs, parse_constant=no_constant)


def read_limits(file):
  text = file.read_text(encoding="utf-8")
  counts = {name: int(value) for name, value in re.findall(r"constexpr int (k\w+) = (\d+);", text)}
  limits = {name: tuple(counts.get(end) or float(end) for end in ends.replace(" ", "").split(",")[:2])
            for name, ends in re.findall(r"constexpr Limit (k\w+)\{([^}]*)\}", text)}
  return limits, counts


def check_schema(schema):
  check(schema.get("$schema") == DIALECT, f"schema: $schema is not {DIALECT}")
  try:
    Draft202012Validator.check_schema(schema)
  except SchemaError as error:
    check(False, f"schema: not JSON Schema 2020-12 at {words(error.absolute_path)}: {error.message[:200]}")
  known = {}
  for path, descriptions in known_keys(schema, schema):
    known[words(path)] = known.get(words(path), []) + descriptions
  for path, descriptions in known.items():
    check(descriptions, f"schema: '{path}' has no description")
  for path in sorted(keys_of(COMPLETE) ^ set(known)):
    check(False, f"'{path}' is in only one of schema and complete document")
  return set(known)


def places_of(table):
  return [(place.replace("*", setup), value) for place, value in table.items()
          for setup in (SETUPS if "*" in place else ("",))]


def check_limits(validator):
  limits, counts = read_limits(LIMITS_H)
  check(limits and counts, f"{LIMITS_H}: no limits found in it")
  places = places_of(LIMIT_OF)
  for path, value in objects_in(COMPLETE):
    for key, number in value.items():
      if type(number) in (int, float) and key != "version":
        place = words(path + (key,)).replace("torque_curve[0]", "torque_curve[1]")
        check(place in dict(places), f"'{place}' has no limit")
  for place, name in places:
    if name not in limits:
      check(False, f"{LIMITS_H.name}: no {name} for '{place}'")
      continue
    low, high = limits[name]
    whole = bool(WHOLE & {step for step in steps(place)[-2:] if isinstance(step, str)})
    if whole:
      low, high = int(low), int(high)
      must_fail(validator, changed(place, low + 0.5), place, f"{place} = {low + 0.5}")
    for end, beyond in ((low, low - 1 if whole else math.nextafter(low, -math.inf)),
                        (high, high + 1 if whole else math.nextafter(high, math.inf))):
      must_pass(validator, changed(place, end), f"{place} = {end}")
      must_fail(validator, changed(place, beyond), place, f"{place} = {beyond!r}")
  for place, ends in places_of(COUNT_OF):
    for name in ends:
      check(not isinstance(name, str) or name in counts, f"{LIMITS_H.name}: no {name} for '{place}'")
    few, most = (counts.get(name, 1) if isinstance(name, str) else name for name in ends)
    entry = at(COMPLETE, steps(place))[:1] or "x"
    must_pass(validator, changed(place, entry * few), f"{place} of {few}")
    must_pass(validator, changed(place, entry * most), f"{place} of {most}")
    must_fail(validator, changed(place, entry * (most + 1)), place, f"{place} of {most + 1}")
    if few > 0:
      must_fail(validator, changed(place, entry * (few - 1)), place, f"{place} of {few - 1}")
  used = INSIDE_TEXT | IN_RECORDINGS | set(LIMIT_OF.values()) | {name for ends in COUNT_OF.values() for name in ends}
  for name in sorted({*limits, *counts} - used):
    check(False, f"{LIMITS_H.name}: {name} belongs to no key")


def check_document(validator):
  must_pass(validator, COMPLETE, "complete document")
  for place, choice in places_of(WORDS):
    for word in choice.split():
      must_pass(validator, changed(place, word), f"{place} = {word}")
  for path, value in objects_in(COMPLETE):
    must_pass(validator, changed(words(path + ("a_key_of_tomorrow",)), {"x": [1]}),
              f"unknown key in '{words(path) or 'document'}'")
    for key, part in value.items():
      place = words(path + (key,))
      wrong = {"a": 1} if isinstance(part, list) else [1]
      must_fail(validator, changed(place, wrong), place, f"{place} = {json.dumps(wrong)}")
      if place in REQUIRED or place == "bike.engine.torque_curve[1].rpm" or place.endswith("[1].torque_nm"):
        continue
      must_pass(validator, changed(place, None), f"null {place}")
      must_pass(validator, without(place), f"no {place}")
  for place in REQUIRED:
    must_fail(validator, without(place), words(steps(place)[:-1]), f"no {place}")
    must_fail(validator, changed(place, None), place, f"null {place}")
  for place, value in BROKEN:
    text = json.dumps(value)
    must_fail(validator, changed(place, value), place, f"{place} = {text[:60]}")
  for aim in AIMS:
    must_pass(validator, changed("aims", [aim]), f"aim {json.dumps(aim)}")
  for document in ([], "layshaft-bike", None, 1):
    must_fail(validator, document, "", f"document {document!r}")


def check_file(validator, file, known=None):
  try:
    document = read_json(file)
  except (OSError, ValueError) as error:
    check(False, f"{file}: {error}")
    return
  found = errors(validator, document)
  check(not found, f"{file}: " + "; ".join(f"{path or 'document'}: {message[:200]}" for path, message in found[:5]))
  if known is None or found:
    return
  for key in sorted(keys_of(document) - known):
    check(False, f"{file}: '{key}' is not a key of the format")
  curve = [point["rpm"] for point in document["bike"]["engine"].get("torque_curve") or []]
  check(all(a < b for a, b in zip(curve, curve[1:])), f"{file}: curve points do not rise")
  for setup in (document["stock"], document.get("proposed") or {}, *(document.get("pins") or [])):
    ratios = setup.get("gear_ratios") or []
    check(all(a > b for a, b in zip(ratios, ratios[1:])), f"{file}: gear ratios do not fall")


def main(arguments):
  if len(arguments) < 2:
    print("usage: validate_samples.py SCHEMA SAMPLES_DIR [FILE...]", file=sys.stderr)
    return 2
  schema_file, samples_dir, *files = arguments
  try:
    schema = read_json(schema_file)
  except (OSError, ValueError) as error:
    print(f"{schema_file}: {error}", file=sys.stderr)
    return 1
  known = check_schema(schema)
  if not findings:
    validator = Draft202012Validator(schema)
    check_limits(validator)
    check_document(validator)
    samples = sorted(Path(samples_dir).glob("*.bike.json"))
    check(samples, f"{samples_dir}: no *.bike.json in it")
    for file in samples:
      check_file(validator, file, known)
    for file in files:
      check_file(validator, file)
  for finding in findings:
    print(f"validate_samples: {finding}", file=sys.stderr)
  if findings:
    return 1
  print(f"validate_samples: schema, {len(samples)} samples and {len(files)} more files are well; {checks} checks")
  return 0


if __name__ == "__main__":
  sys.exit(main(sys.argv[1:]))
