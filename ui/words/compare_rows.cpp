// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/compare_rows.h"

#include <QCoreApplication>
#include <array>

#include "ui/words/gear_words.h"

namespace layshaft::ui {
namespace {

struct CompareRows {
  Q_DECLARE_TR_FUNCTIONS(CompareRows)
};

using F = CompareFigure;
using G = CompareGroup;
using Q = Quantity;

// What has a better direction: more pull, more top speed, less time, less engine speed at the same cruise
// (calmer and thriftier), less time on the limiter, an odometer near the road, a speedometer that shows no
// less than the road and little more, and what chains live longer by: more wrap, more strength for the pull.
// What has none: a gear's speed at the limit and its shifts (tall or short is what is being chosen), how a
// straight ends and a corner is left (engine speeds to be placed, not raised), what a lap time is made of
// (the time says whether it was worth it), where the axle goes, and words.
constexpr std::array<CompareSpec, kCompareFigureCount> kSpecs{{
    {F::FinalRatio, G::Gearing, "final_ratio", QT_TRANSLATE_NOOP("CompareRows", "Final ratio"),
     Better::Neither, Q::Ratio, 3, false, true},
    {F::Rollout, G::Gearing, "rollout_m", QT_TRANSLATE_NOOP("CompareRows", "Rollout"), Better::Neither,
     Q::SmallLength, 0, false, false},
    {F::Step, G::Gearing, "gearing_percent", QT_TRANSLATE_NOOP("CompareRows", "Shorter than stock by"),
     Better::Neither, Q::Percent, 1, false, true},
    {F::SpeedAtLimit, G::SpeedPerGear, "speed_at_rev_limit_mps",
     QT_TRANSLATE_NOOP("CompareRows", "%1 at the rev limit"), Better::Neither, Q::Speed, 1, true, true},
    {F::SpeedPer1000Rpm, G::SpeedPerGear, "speed_per_1000_rpm_mps",
     QT_TRANSLATE_NOOP("CompareRows", "%1 per 1,000 rpm"), Better::Neither, Q::Speed, 1, true, false},
    {F::ShiftSpeed, G::Shifts, "shift_speed_mps", QT_TRANSLATE_NOOP("CompareRows", "Shift out of %1"),
     Better::Neither, Q::Speed, 1, true, true},
    {F::RpmAfterShift, G::Shifts, "rpm_after_shift",
     QT_TRANSLATE_NOOP("CompareRows", "Engine speed after %1"), Better::Neither, Q::EngineSpeed, 0, true,
     false},
    {F::CruiseGear, G::Cruise, "cruise_gear", QT_TRANSLATE_NOOP("CompareRows", "Gear at cruise"),
     Better::Neither, Q::Plain, 0, false, false},
    {F::CruiseRpm, G::Cruise, "cruise_rpm", QT_TRANSLATE_NOOP("CompareRows", "Engine speed at cruise"),
     Better::Less, Q::EngineSpeed, 0, false, true},
    {F::TurnsPerDistance, G::Cruise, "turns_per_km",
     QT_TRANSLATE_NOOP("CompareRows", "Engine turns per distance"), Better::Less, Q::Plain, 0, false, false},
    {F::Pull, G::Pull, "pull_n", QT_TRANSLATE_NOOP("CompareRows", "Pull in %1"), Better::More, Q::Force, 0,
     true, true},
    {F::PullLimit, G::Pull, "pull_limit", QT_TRANSLATE_NOOP("CompareRows", "What limits %1"), Better::Neither,
     Q::Plain, 0, true, false},
    {F::TopSpeed, G::Pull, "top_speed_mps", QT_TRANSLATE_NOOP("CompareRows", "Top speed (closed course)"),
     Better::More, Q::Speed, 0, false, true},
    {F::TopSpeedLimit, G::Pull, "top_speed_limit", QT_TRANSLATE_NOOP("CompareRows", "What limits top speed"),
     Better::Neither, Q::Plain, 0, false, true},
    {F::StandingStart, G::Acceleration, "zero_to_100_kmh_s", QT_TRANSLATE_NOOP("CompareRows", "0–100 km/h"),
     Better::Less, Q::Time, 2, false, true, QT_TRANSLATE_NOOP("CompareRows", "0–60 mph"), "zero_to_60_mph_s"},
    {F::HundredMetres, G::Acceleration, "hundred_metres_s", QT_TRANSLATE_NOOP("CompareRows", "100 m"),
     Better::Less, Q::Time, 2, false, false},
    {F::EighthMile, G::Acceleration, "eighth_mile_s", QT_TRANSLATE_NOOP("CompareRows", "1/8 mile"),
     Better::Less, Q::Time, 2, false, false},
    {F::QuarterMile, G::Acceleration, "quarter_mile_s", QT_TRANSLATE_NOOP("CompareRows", "1/4 mile"),
     Better::Less, Q::Time, 2, false, true},
    {F::QuarterMileSpeed, G::Acceleration, "quarter_mile_speed_mps",
     QT_TRANSLATE_NOOP("CompareRows", "Speed after 1/4 mile"), Better::More, Q::Speed, 1, false, false},
    {F::RollOnTop, G::Acceleration, "roll_on_80_120_kmh_top_gear_s",
     QT_TRANSLATE_NOOP("CompareRows", "80–120 km/h, top gear"), Better::Less, Q::Time, 2, false, true,
     QT_TRANSLATE_NOOP("CompareRows", "50–75 mph, top gear"), "roll_on_50_75_mph_top_gear_s"},
    {F::RollOnBest, G::Acceleration, "roll_on_80_120_kmh_best_gear_s",
     QT_TRANSLATE_NOOP("CompareRows", "80–120 km/h, best gear"), Better::Less, Q::Time, 2, false, false,
     QT_TRANSLATE_NOOP("CompareRows", "50–75 mph, best gear"), "roll_on_50_75_mph_best_gear_s"},
    {F::RollOnAsked, G::Acceleration, "roll_on_s", QT_TRANSLATE_NOOP("CompareRows", "The bike's own roll-on"),
     Better::Less, Q::Time, 2, false, false},
    {F::StraightTime, G::Straight, "straight_s", QT_TRANSLATE_NOOP("CompareRows", "Straight"), Better::Less,
     Q::Time, 2, false, true},
    {F::StraightEndSpeed, G::Straight, "straight_end_speed_mps",
     QT_TRANSLATE_NOOP("CompareRows", "Speed at its end"), Better::More, Q::Speed, 1, false, true},
    {F::StraightGears, G::Straight, "straight_gears", QT_TRANSLATE_NOOP("CompareRows", "Gears it takes"),
     Better::Neither, Q::Plain, 0, false, true},
    {F::StraightEndRpm, G::Straight, "straight_end_rpm",
     QT_TRANSLATE_NOOP("CompareRows", "Engine speed at its end"), Better::Neither, Q::EngineSpeed, 0, false,
     false},
    {F::RevRangeLeft, G::Straight, "rev_range_left_rpm",
     QT_TRANSLATE_NOOP("CompareRows", "Below the limiter"), Better::Neither, Q::EngineSpeed, 0, false, true},
    {F::OnLimiter, G::Straight, "seconds_on_limiter", QT_TRANSLATE_NOOP("CompareRows", "On the limiter"),
     Better::Less, Q::Time, 2, false, true},
    {F::CornerExit, G::Straight, "corner_exit_rpm",
     QT_TRANSLATE_NOOP("CompareRows", "Engine speed at corner exit"), Better::Neither, Q::EngineSpeed, 0,
     false, true},
    {F::LapTime, G::Lap, "lap_s", QT_TRANSLATE_NOOP("CompareRows", "Lap time"), Better::Less, Q::Time, 2,
     false, true},
    {F::LapChange, G::Lap, "lap_change", QT_TRANSLATE_NOOP("CompareRows", "Lap against stock, s"),
     Better::Neither, Q::Time, 2, false, true},
    {F::LapTopSpeed, G::Lap, "lap_top_speed_mps",
     QT_TRANSLATE_NOOP("CompareRows", "Top speed on the lap (closed course)"), Better::Neither, Q::Speed, 0,
     false, true},
    {F::LapShifts, G::Lap, "lap_shifts", QT_TRANSLATE_NOOP("CompareRows", "Upshifts on the lap"),
     Better::Neither, Q::Plain, 0, false, true},
    {F::LapLimiter, G::Lap, "lap_limiter_s", QT_TRANSLATE_NOOP("CompareRows", "On the limiter, whole lap"),
     Better::Less, Q::Time, 2, false, true},
    {F::LapFullThrottle, G::Lap, "lap_full_throttle_over_lap",
     QT_TRANSLATE_NOOP("CompareRows", "At full throttle, of the lap"), Better::Neither, Q::Percent, 0, false,
     true},
    {F::SpeedometerShows, G::Speedometer, "indicated_over_true",
     QT_TRANSLATE_NOOP("CompareRows", "Speedometer shows, of the true speed"), Better::NearestAbove,
     Q::Percent, 1, false, true},
    {F::OdometerCounts, G::Speedometer, "odometer_over_true",
     QT_TRANSLATE_NOOP("CompareRows", "Odometer counts, of the distance"), Better::Neither, Q::Percent, 1,
     false, false},
    {F::SpeedometerVerdict, G::Speedometer, "un_r39", QT_TRANSLATE_NOOP("CompareRows", "UN Regulation 39"),
     Better::Neither, Q::Plain, 0, false, true},
    {F::Wrap, G::Drive, "front_wrap_deg", QT_TRANSLATE_NOOP("CompareRows", "Wrap in front, °"), Better::More,
     Q::Plain, 0, false, false},
    {F::SafetyFactor, G::Drive, "safety_factor",
     QT_TRANSLATE_NOOP("CompareRows", "Strength ÷ peak tension (comparison only)"), Better::More, Q::Ratio, 1,
     false, true},
    {F::DriveSpeed, G::Drive, "top_chain_speed_mps",
     QT_TRANSLATE_NOOP("CompareRows", "Its speed at the rev limit, m/s"), Better::Neither, Q::Plain, 1, false,
     false},
    {F::Fits, G::Axle, "fits", QT_TRANSLATE_NOOP("CompareRows", "Whether it fits"), Better::Neither, Q::Plain,
     0, false, true},
    {F::AxleShift, G::Axle, "axle_shift_mm", QT_TRANSLATE_NOOP("CompareRows", "Axle shift, + is back"),
     Better::Neither, Q::SmallLength, 1, false, true},
    {F::Wheelbase, G::Axle, "wheelbase_mm", QT_TRANSLATE_NOOP("CompareRows", "Wheelbase"), Better::Neither,
     Q::SmallLength, 1, false, false},
    {F::FrontSprocket, G::Parts, "front_part",
     QT_TRANSLATE_NOOP("CompareRows", "Sprocket or pulley in front"), Better::Neither, Q::Plain, 0, false,
     true},
    {F::RearSprocket, G::Parts, "rear_part",
     QT_TRANSLATE_NOOP("CompareRows", "Sprocket or pulley at the rear"), Better::Neither, Q::Plain, 0, false,
     true},
    {F::Loop, G::Parts, "loop", QT_TRANSLATE_NOOP("CompareRows", "Length to fit"), Better::Neither, Q::Plain,
     0, false, true},
    {F::Tyre, G::Parts, "rear_tyre", QT_TRANSLATE_NOOP("CompareRows", "Rear tyre"), Better::Neither, Q::Plain,
     0, false, true},
}};

constexpr bool inOrder() {
  for (std::size_t i = 0; i < kSpecs.size(); ++i)
    if (static_cast<std::size_t>(kSpecs[i].figure) != i || (i > 0 && kSpecs[i].group < kSpecs[i - 1].group))
      return false;
  return true;
}
static_assert(inOrder(), "a figure stands at its own place, and groups stay together");

constexpr std::array<const char*, kCompareGroupCount> kGroups{
    QT_TRANSLATE_NOOP("CompareRows", "Gearing"),
    QT_TRANSLATE_NOOP("CompareRows", "Speed in Each Gear"),
    QT_TRANSLATE_NOOP("CompareRows", "Shifts"),
    QT_TRANSLATE_NOOP("CompareRows", "Cruise"),
    QT_TRANSLATE_NOOP("CompareRows", "Pull and Limits"),
    QT_TRANSLATE_NOOP("CompareRows", "Acceleration"),
    QT_TRANSLATE_NOOP("CompareRows", "Straight"),
    QT_TRANSLATE_NOOP("CompareRows", "Lap"),
    QT_TRANSLATE_NOOP("CompareRows", "Speedometer"),
    QT_TRANSLATE_NOOP("CompareRows", "Chain or Belt"),
    QT_TRANSLATE_NOOP("CompareRows", "Axle"),
    QT_TRANSLATE_NOOP("CompareRows", "Parts to Buy"),
};

}  // namespace

const CompareSpec& compareSpec(CompareFigure figure) {
  return kSpecs[static_cast<std::size_t>(figure)];
}

QString compareName(CompareFigure figure) {
  const CompareSpec& spec = compareSpec(figure);
  const QString name = CompareRows::tr(spec.name);
  if (spec.milesName)
    return CompareRows::tr("%1 or %2", "the same by either unit of speed")
        .arg(name, CompareRows::tr(spec.milesName));
  return spec.perGear ? name.arg(CompareRows::tr("each gear", "in place of one gear's name")) : name;
}

QString compareName(CompareFigure figure, const UnitsShown& units) {
  const CompareSpec& spec = compareSpec(figure);
  if (!spec.milesName) return compareName(figure);
  return CompareRows::tr(units.inMiles() ? spec.milesName : spec.name);
}

QString compareName(CompareFigure figure, int gear) {
  return CompareRows::tr(compareSpec(figure).name).arg(gearOrdinal(gear));
}

QString compareGroupName(CompareGroup group) {
  return CompareRows::tr(kGroups[static_cast<std::size_t>(group)]);
}

std::vector<CompareFigure> usualCompareFigures() {
  std::vector<CompareFigure> usual;
  for (const CompareSpec& spec : kSpecs)
    if (spec.usual) usual.push_back(spec.figure);
  return usual;
}

std::vector<CompareFigure> allCompareFigures() {
  std::vector<CompareFigure> all;
  for (const CompareSpec& spec : kSpecs) all.push_back(spec.figure);
  return all;
}

QString compareWord(CompareFigure figure) {
  return QString::fromLatin1(compareSpec(figure).word);
}

std::optional<CompareFigure> compareFigureOf(const QString& word) {
  for (const CompareSpec& spec : kSpecs)
    if (word == QLatin1String(spec.word)) return spec.figure;
  return std::nullopt;
}

}  // namespace layshaft::ui
