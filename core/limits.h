// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

/// What is allowed for every number a person can type. The limits are wide enough for anything that has been
/// ridden and narrow enough to catch a slip of the decimal point or of the unit (common practice, no source).
/// `resources/bike.schema.json` states the same limits; a test holds the two together.
namespace layshaft {

struct Limit {
  double low;
  double high;
  const char* unit = "";
  bool contains(double x) const { return x >= low && x <= high; }
};

namespace limits {

inline constexpr Limit kFrontTeeth{6, 48};
inline constexpr Limit kRearTeeth{12, 120};
inline constexpr Limit kPrimaryRatio{0.2, 20};
inline constexpr Limit kGearRatio{0.1, 20};
inline constexpr Limit kGearTeeth{1, 999};
inline constexpr int kFewestGears = 1;
inline constexpr int kMostGears = 10;

inline constexpr Limit kRevLimitRpm{1000, 30000, "rpm"};
inline constexpr Limit kIdleRpm{0, 8000, "rpm"};
inline constexpr Limit kShiftRpm{500, 30000, "rpm"};
inline constexpr Limit kCurveRpm{0, 30000, "rpm"};
inline constexpr Limit kCurveTorqueNm{0, 1000, "N·m"};
inline constexpr int kFewestCurvePoints = 2;
inline constexpr int kMostCurvePoints = 1000;
inline constexpr Limit kEngineInertiaKgm2{0, 5, "kg·m²"};

inline constexpr Limit kAirTemperatureC{-60, 60, "°C"};
inline constexpr Limit kAirPressureHpa{300, 1100, "hPa"};
inline constexpr Limit kPercent{0, 100, "%"};

inline constexpr Limit kMassKg{20, 1000, "kg"};
inline constexpr Limit kRiderMassKg{0, 300, "kg"};
inline constexpr Limit kWheelbaseMm{500, 3000, "mm"};
inline constexpr Limit kCgHeightMm{100, 2000, "mm"};
inline constexpr Limit kCgAheadMm{0, 3000, "mm"};
inline constexpr Limit kDragAreaM2{0, 3, "m²"};
inline constexpr Limit kDragHeightMm{0, 2000, "mm"};
inline constexpr Limit kRollingResistance{0, 1};
inline constexpr Limit kTyrePressureBar{0.3, 6, "bar"};
inline constexpr Limit kEfficiency{0.3, 1};
inline constexpr Limit kWheelInertiaKgm2{0, 10, "kg·m²"};
inline constexpr Limit kRolloutMm{500, 4000, "mm"};
inline constexpr Limit kGrip{0.05, 3};
inline constexpr Limit kSlipPercent{0, 60, "%"};
inline constexpr Limit kShiftTimeS{0, 3, "s"};

inline constexpr Limit kCentreDistanceMm{150, 1500, "mm"};
inline constexpr Limit kAdjusterMm{0, 300, "mm"};
inline constexpr Limit kAdjusterMarkMm{0.1, 50, "mm"};
inline constexpr Limit kTensileStrengthKn{1, 200, "kN"};
inline constexpr Limit kSwingarmLengthMm{150, 1500, "mm"};
inline constexpr Limit kSwingarmAngleDeg{-45, 45, "°"};
inline constexpr Limit kCountershaftOffsetMm{-500, 500, "mm"};

inline constexpr Limit kReadsHighPercent{-60, 150, "%"};

// Inside a tyre size (common practice, no source): from pocket bikes to the widest custom rears.
inline constexpr Limit kTyreWidthMm{50, 400, "mm"};
inline constexpr Limit kTyreAspectPercent{25, 110, "%"};
inline constexpr Limit kRimInches{6, 30, "in"};
inline constexpr Limit kRacingDiameterMm{400, 800, "mm"};
inline constexpr Limit kCodeSectionInches{1.5, 8, "in"};

inline constexpr Limit kRollingAllowancePercent{0, 10, "%"};
inline constexpr Limit kCrownRadiusMm{10, 300, "mm"};
inline constexpr Limit kTreadWearMm{0, 20, "mm"};
inline constexpr Limit kGrowthPerKmh2{0, 1e-6, "1/(km/h)²"};
inline constexpr Limit kLinks{30, 300};
inline constexpr Limit kElongationPercent{0, 10, "%"};
inline constexpr Limit kBeltPitchMm{2, 30, "mm"};
inline constexpr Limit kBeltTeeth{30, 500};
inline constexpr Limit kSprocketMassKg{0.01, 20, "kg"};

inline constexpr Limit kCruiseSpeedKmh{5, 400, "km/h"};
inline constexpr Limit kSlopePercent{-50, 50, "%"};
inline constexpr Limit kHeadwindKmh{-150, 150, "km/h"};
inline constexpr Limit kAltitudeM{-500, 6000, "m"};
inline constexpr Limit kLaunchRpm{500, 30000, "rpm"};
inline constexpr Limit kLeanDeg{0, 70, "°"};
inline constexpr Limit kSpeedKmh{0, 500, "km/h"};
inline constexpr Limit kDriveLengthM{1, 20000, "m"};
inline constexpr Limit kGear{1, kMostGears};
inline constexpr Limit kAimRpm{500, 30000, "rpm"};
inline constexpr Limit kAimPercent{-90, 300, "%"};

inline constexpr Limit kWearLimitPercent{0.1, 10, "%"};
inline constexpr Limit kSlackMm{0, 300, "mm"};
inline constexpr Limit kUse{0, 10e6};  ///< hours or kilometres
inline constexpr Limit kMeasuredPitches{1, 120};
inline constexpr Limit kMeasuredLengthMm{5, 3000, "mm"};
inline constexpr Limit kNoteRpm{0, 30000, "rpm"};
inline constexpr Limit kLapTimeS{1, 86400, "s"};
inline constexpr Limit kRating{1, 10};
inline constexpr Limit kPrice{0, 1e8};

inline constexpr Limit kSegmentLengthM{0.1, 20000, "m"};
inline constexpr Limit kBendRadiusM{1, 20000, "m"};
inline constexpr Limit kBendAngleDeg{0.1, 720, "°"};
inline constexpr Limit kCornerSpeedKmh{1, 500, "km/h"};
inline constexpr Limit kShareOfGripPercent{10, 100, "%"};
inline constexpr Limit kMaxLeanDeg{5, 70, "°"};
inline constexpr Limit kStretchM{0.5, 200, "m"};
inline constexpr Limit kCurvaturePerKm{-1000, 1000, "1/km"};
inline constexpr Limit kCurvatureNoisePerKm{0, 1000, "1/km"};
inline constexpr Limit kTrackPositionM{-1e6, 1e6, "m"};
inline constexpr Limit kGearOrPrimary{0, kMostGears};
inline constexpr int kMostTracks = 50;
inline constexpr int kMostSegments = 500;
inline constexpr int kFewestStretches = 2;
inline constexpr int kMostStretches = 20000;

// Of recordings. A line of 100 km in stretches of 5 m is what a profile takes; the rest is common practice.
inline constexpr Limit kLatitudeDeg{-90, 90, "°"};
inline constexpr Limit kLongitudeDeg{-180, 180, "°"};
inline constexpr Limit kPlaneM{-1e7, 1e7, "m"};  ///< national grids count from far away
inline constexpr Limit kHeightM{-1000, 10000, "m"};
inline constexpr Limit kRecordedSpeedMps{0, 1000, "m/s"};
inline constexpr Limit kSmoothingM{0, 200, "m"};
inline constexpr Limit kRecordedLengthM{20, 100000, "m"};
inline constexpr Limit kFromFirstFixM{0, 100000, "m"};
inline constexpr int kFewestFixes = 4;
inline constexpr int kMostFixes = 2000000;
inline constexpr int kDeepestXml = 64;
inline constexpr int kMostTableColumns = 1000;
inline constexpr int kLargestTableBytes = 4 << 20;  ///< of a table of segments

inline constexpr int kLongestName = 200;     ///< characters
inline constexpr int kLongestNotes = 20000;  ///< characters
inline constexpr int kMostBeltLengths = 50;
inline constexpr int kMostPins = 4;
inline constexpr int kMostTypical = 100;  ///< marks
inline constexpr int kLongestKey = 200;   ///< characters of a key path
inline constexpr int kMostAims = 20;
inline constexpr int kMostSpares = 200;
inline constexpr int kMostRecords = 5000;
inline constexpr int kMostPlaces = 50;  ///< measured along a chain
inline constexpr int kMostPrices = 200;
inline constexpr int kLongestRecordText = 5000;  ///< characters

}  // namespace limits
}  // namespace layshaft
