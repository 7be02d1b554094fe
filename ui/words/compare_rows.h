// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "ui/words/units_shown.h"

/// Which rows a comparison of setups has, in which groups, and which way each gets better. No figures here.
namespace layshaft::ui {

/// A headline over rows of one subject, in the order in which they stand.
enum class CompareGroup {
  Gearing,
  SpeedPerGear,
  Shifts,
  Cruise,
  Pull,
  Acceleration,
  Straight,
  Lap,
  Speedometer,
  Drive,  ///< chain or belt
  Axle,
  Parts
};
inline constexpr int kCompareGroupCount = static_cast<int>(CompareGroup::Parts) + 1;

/// A question that every setup answers, in the order in which they stand; some have a row for each gear.
enum class CompareFigure {
  FinalRatio,
  Rollout,
  Step,
  SpeedAtLimit,
  SpeedPer1000Rpm,
  ShiftSpeed,
  RpmAfterShift,
  CruiseGear,
  CruiseRpm,
  TurnsPerDistance,
  Pull,
  PullLimit,
  TopSpeed,
  TopSpeedLimit,
  StandingStart,  ///< to 100 km/h, or to 60 mph where speeds are read in miles
  HundredMetres,
  EighthMile,
  QuarterMile,
  QuarterMileSpeed,
  RollOnTop,
  RollOnBest,
  RollOnAsked,
  StraightTime,
  StraightEndSpeed,
  StraightGears,
  StraightEndRpm,
  RevRangeLeft,
  OnLimiter,
  CornerExit,
  LapTime,
  LapChange,  ///< against stock, with its band
  LapTopSpeed,
  LapShifts,
  LapLimiter,
  LapFullThrottle,
  SpeedometerShows,
  OdometerCounts,
  SpeedometerVerdict,
  Wrap,
  SafetyFactor,
  DriveSpeed,
  Fits,
  AxleShift,
  Wheelbase,
  FrontSprocket,
  RearSprocket,
  Loop,
  Tyre
};
inline constexpr int kCompareFigureCount = static_cast<int>(CompareFigure::Tyre) + 1;

/// Which of two values serves a rider better.
enum class Better {
  Neither,  ///< a matter of what is wanted
  Less,
  More,
  NearestAbove  ///< the nearest to 1 that is not below it
};

/// What is known of a figure before any setup is.
struct CompareSpec {
  CompareFigure figure;
  CompareGroup group;
  const char* word;  ///< kept in settings; with its unit also the column of a CSV file
  const char* name;  ///< untranslated; `%1` of rows for each gear is the gear
  Better better;
  Quantity quantity;
  int decimals;
  bool perGear;
  bool usual;                                             ///< shown until somebody chooses
  const char *milesName = nullptr, *milesWord = nullptr;  ///< where speeds are read in miles, if others
};
const CompareSpec& compareSpec(CompareFigure figure);

/// What a figure is called where it is chosen, and what a group is called.
QString compareName(CompareFigure figure);
QString compareName(CompareFigure figure, const UnitsShown& units);
QString compareName(CompareFigure figure, int gear);  ///< of a row for one gear, 1 is first
QString compareGroupName(CompareGroup group);

/// The rows that are there until somebody chooses, and all there are.
std::vector<CompareFigure> usualCompareFigures();
std::vector<CompareFigure> allCompareFigures();

/// A word that settings keep for a figure, and back; none for a word not known.
QString compareWord(CompareFigure figure);
std::optional<CompareFigure> compareFigureOf(const QString& word);

}  // namespace layshaft::ui
