// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/compare_table.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <string_view>

#include "core/bike/pair.h"
#include "core/number_text.h"
#include "core/report.h"
#include "core/units.h"
#include "ui/words/chain_words.h"
#include "ui/words/csv_units.h"
#include "ui/words/figure_rows.h"
#include "ui/words/gear_words.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(CompareTable)
};

constexpr int kLapDecimals = 2;

using F = CompareFigure;
using Value = std::optional<double>;

/// What is known before it is written: a number, words, or why neither.
struct Answer {
  Value value{};
  QString words{};
  QString why{};
};

Answer words(const QString& text) {
  return {.words = text};
}
Answer unknown(const QString& why) {
  return {.why = why};
}
/// The number, or why there is none.
Answer valueOr(const Value& value, const QString& why) {
  return value ? Answer{.value = value} : unknown(why);
}

QString listed(const std::vector<std::string_view>& keys) {
  return fieldNames(keys).join(Say::tr(", ", "between fields that are missing"));
}

class Answers {
 public:
  Answers(const Plan& plan, const UnitsShown& units, const PartsOnHand& onHand, const LapBands& bands)
      : plan_(plan), units_(units), onHand_(onHand), bands_(bands), setups_{&plan.stock, &plan.proposed} {
    for (const SetupPlan& pin : plan.pins) setups_.push_back(&pin);
    const PullBike& bike = *plan.pullBike;
    noLimit_ = Say::tr("Not known: it needs %1.").arg(listed(sawtoothLacks(plan)));
    noPull_ = Say::tr("Not known: it needs %1.").arg(listed(bike.forceLacks));
    auto keys = bike.forceLacks;
    keys.insert(keys.end(), bike.resistanceLacks.begin(), bike.resistanceLacks.end());
    noRun_ = keys.empty() ? Say::tr("It does not get there.")
                          : Say::tr("Not known: it needs %1.").arg(listed(keys));
  }

  const std::vector<const SetupPlan*>& setups() const { return setups_; }
  const LapBands& bands() const { return bands_; }
  std::size_t mostGears() const {
    std::size_t most = 0;
    for (const SetupPlan* setup : setups_) most = std::max(most, setup->gearing.gears.size());
    return most;
  }

  /// `gear` counts from 0.
  Answer of(F figure, const SetupPlan& setup, std::size_t gear) const {
    const Gearing& gearing = setup.gearing;
    const RunFigures& run = setup.road.run;
    if (compareSpec(figure).perGear && gear >= gearing.gears.size())
      return unknown(Say::tr("This gearbox has no such gear."));
    switch (figure) {
      case F::FinalRatio:
        return {.value = gearing.finalRatio};
      case F::Rollout:
        return {.value = gearing.rollout.metres};
      case F::Step:
        return {.value = setup.change.gearingPercent};
      case F::SpeedAtLimit:
        return valueOr(gearing.gears[gear].speedAtRevLimitMps, noLimit_);
      case F::SpeedPer1000Rpm:
        return {.value = gearing.gears[gear].speedPer1000RpmMps};
      case F::ShiftSpeed:
        return valueOr(gearing.gears[gear].shiftSpeedMps, noShift(gearing, gear));
      case F::RpmAfterShift:
        return valueOr(gearing.gears[gear].rpmAfterShift, noShift(gearing, gear));
      case F::CruiseGear:
        return gearing.cruise ? words(gearOrdinal(gearing.cruise->gear)) : unknown(noCruise());
      case F::CruiseRpm:
        return gearing.cruise ? Answer{.value = gearing.cruise->rpm} : unknown(noCruise());
      case F::TurnsPerDistance:
        return gearing.cruise ? Answer{.value = gearing.cruise->turnsPerKm} : unknown(noCruise());
      case F::Pull:
        return pull(setup, gear);
      case F::PullLimit:
        return pullLimit(setup, gear);
      case F::TopSpeed:
        return setup.road.topSpeed ? Answer{.value = setup.road.topSpeed->speedMps} : unknown(noTopSpeed());
      case F::TopSpeedLimit:
        return topSpeedLimit(setup);
      case F::StandingStart:
        return valueOr(units_.inMiles() ? run.zeroTo60MphS : run.zeroTo100KmhS, noRun_);
      case F::HundredMetres:
        return valueOr(run.hundredMetresS, noRun_);
      case F::EighthMile:
        return valueOr(run.eighthMileS, noRun_);
      case F::QuarterMile:
        return valueOr(run.quarterMileS, noRun_);
      case F::QuarterMileSpeed:
        return valueOr(run.quarterMileSpeedMps, noRun_);
      case F::RollOnTop:
        return valueOr(units_.inMiles() ? rollOnInMiles(setup).topS : run.rollOnTopS, noRun_);
      case F::RollOnBest:
        return valueOr(units_.inMiles() ? rollOnInMiles(setup).bestS : run.rollOnBestS, noRun_);
      case F::RollOnAsked:
        return valueOr(run.askedRollOnS, noRun_);
      case F::StraightTime:
      case F::StraightEndSpeed:
      case F::StraightGears:
      case F::StraightEndRpm:
      case F::RevRangeLeft:
      case F::OnLimiter:
        return run.drive ? straight(figure, *run.drive) : unknown(noStraight());
      case F::CornerExit:
        return valueOr(
            setup.cornerExitRpm,
            plan_.leanDeg ? noStraight() : Say::tr("Not known: it needs %1.").arg(listed({"ride.lean_deg"})));
      case F::LapTime:
      case F::LapChange:
      case F::LapTopSpeed:
      case F::LapShifts:
      case F::LapLimiter:
      case F::LapFullThrottle:
        return setup.lap ? lap(figure, setup, *setup.lap) : unknown(noLapWords(plan_));
      case F::SpeedometerShows:
        return setup.speedometer ? Answer{.value = setup.speedometer->indicatedOverTrue}
                                 : unknown(noSpeedometer());
      case F::OdometerCounts:
        return setup.speedometer ? Answer{.value = setup.speedometer->odometerOverTrue}
                                 : unknown(noSpeedometer());
      case F::SpeedometerVerdict:
        return verdict(setup);
      case F::Wrap:
        return setup.chainRun ? valueOr(setup.chainRun->frontWrapDeg, doesNotReach())
                              : unknown(noLoop(setup));
      case F::SafetyFactor:
        return setup.chainRun ? valueOr(setup.chainRun->safetyFactor, noStrength()) : unknown(noLoop(setup));
      case F::DriveSpeed:
        return setup.chainRun ? valueOr(setup.chainRun->topChainSpeedMps, noLimit_) : unknown(noLoop(setup));
      case F::Fits:
        return fits(setup);
      case F::AxleShift:
        return setup.chainRun ? valueOr(setup.chainRun->axleShiftM, doesNotReach()) : unknown(noLoop(setup));
      case F::Wheelbase:
        return setup.chainRun ? valueOr(setup.chainRun->wheelbaseM, noWheelbase(*setup.chainRun))
                              : unknown(noLoop(setup));
      case F::FrontSprocket:
        return sprocket(setup, setup.setup.frontTeeth.count(), plan_.stock.setup.frontTeeth.count(),
                        onHand_.fronts);
      case F::RearSprocket:
        return sprocket(setup, setup.setup.rearTeeth.count(), plan_.stock.setup.rearTeeth.count(),
                        onHand_.rears);
      case F::Loop:
        return loop(setup);
      case F::Tyre:
        return words(setup.setup.rearTyre == plan_.stock.setup.rearTyre
                         ? none()
                         : QString::fromStdString(setup.setup.rearTyre.text()));
    }
    return {};
  }

 private:
  static QString none() { return Say::tr("none", "part to buy"); }
  static QString doesNotReach() { return Say::tr("The chain or belt is too short to go round."); }

  QString noShift(const Gearing& gearing, std::size_t gear) const {
    return gear + 1 < gearing.gears.size() ? noLimit_ : Say::tr("There is no shift out of top gear.");
  }
  QString noCruise() const {
    if (plan_.stock.gearing.gears.empty()) return noLimit_;
    return plan_.stock.gearing.cruiseSpeedMps
               ? Say::tr("No gear holds the cruise speed between idle and the rev limit.")
               : Say::tr("Not known: it needs %1.").arg(listed({"cruise_speed_kmh"}));
  }
  QString noTopSpeed() const {
    return plan_.pullBike->accelerates() ? Say::tr("No gear pulls anywhere.") : noRun_;
  }
  QString noStraight() const {
    if (!plan_.pullBike->accelerates()) return noRun_;
    if (!plan_.drive)
      return Say::tr("Not known: it needs %1.")
          .arg(listed({"ride.drive.exit_speed_kmh", "ride.drive.length_m"}));
    return plan_.drive->exitGear ? Say::tr("%1 does not turn between idle and the limiter at the exit speed.")
                                       .arg(gearOrdinal(*plan_.drive->exitGear))
                                 : Say::tr("No gear pulls from the exit speed.");
  }
  QString noSpeedometer() const {
    return Say::tr("Not known: it needs %1.").arg(listed({"bike.speedometer.sensor"}));
  }
  QString noLoop(const SetupPlan& setup) const {
    return Say::tr("Not known: it needs %1.").arg(listed(chainRunLacks(plan_.stock.setup, setup.setup)));
  }
  QString noStrength() const {
    return plan_.pullBike->forceLacks.empty() ? Say::tr("The strength of what runs there is not known.")
                                              : noPull_;
  }
  QString noWheelbase(const ChainRunFigures& run) const {
    return run.centreDistanceM ? Say::tr("Not known: it needs %1.").arg(listed({"bike.chassis.wheelbase_mm"}))
                               : doesNotReach();
  }

  static const GearLimit* limitIn(const SetupPlan& setup, std::size_t gear) {
    return gear < setup.road.limits.size() && setup.road.limits[gear] ? &*setup.road.limits[gear] : nullptr;
  }
  /// Whether tyre or front wheel limit the gear in every setup that has it: then pull counts at the road.
  bool allLimited(std::size_t gear) const {
    return std::all_of(setups_.begin(), setups_.end(), [&](const SetupPlan* setup) {
      return gear >= setup->road.pull.size() || limitIn(*setup, gear);
    });
  }
  Answer pull(const SetupPlan& setup, std::size_t gear) const {
    const auto& pulls = setup.road.pull;
    if (gear >= pulls.size()) return unknown(noPull_);
    const GearLimit* limit = limitIn(setup, gear);
    if (!limit) return {.value = pulls[gear].peakForceN};
    return {.value = allLimited(gear) ? limit->contactN : std::min(limit->usableN, pulls[gear].peakForceN)};
  }
  Answer pullLimit(const SetupPlan& setup, std::size_t gear) const {
    if (gear >= setup.road.limits.size()) return unknown(noRun_);
    const GearLimit* limit = limitIn(setup, gear);
    if (!limit) return words(Say::tr("the engine", "what limits a gear's pull"));
    const QString to =
        units_.withUnit(number(units_.shown(Quantity::Speed, limit->toMps), 0), Quantity::Speed);
    return words(Say::tr("%1 to %2", "what limits a gear, up to which speed").arg(limitWords(limit->by), to));
  }
  Answer topSpeedLimit(const SetupPlan& setup) const {
    const auto& top = setup.road.topSpeed;
    if (!top) return unknown(noTopSpeed());
    return words(Say::tr("%1, %2", "gear and what limits top speed")
                     .arg(gearOrdinal(top->gear), limitWords(top->limitedBy.value_or(LimitedBy::RevLimit))));
  }
  static Answer straight(F figure, const DriveFigures& drive) {
    switch (figure) {
      case F::StraightEndSpeed:
        return {.value = drive.endSpeedMps};
      case F::StraightGears:
        return words(drive.shifts() > 0 ? Say::tr("%1 to %2", "two gears")
                                              .arg(gearOrdinal(drive.startGear()), gearOrdinal(drive.endGear))
                                        : gearOrdinal(drive.endGear));
      case F::StraightEndRpm:
        return {.value = drive.endRpm};
      case F::RevRangeLeft:
        return {.value = drive.revRangeLeftRpm};
      case F::OnLimiter:
        return {.value = drive.secondsOnLimiter};
      default:
        return {.value = drive.timeS};
    }
  }
  Answer lap(F figure, const SetupPlan& setup, const LapFigures& lap) const {
    switch (figure) {
      case F::LapChange:
        return lapChange(setup, lap);
      case F::LapTopSpeed:
        return {.value = lap.topMps};
      case F::LapShifts:
        return {.value = lap.shifts};
      case F::LapLimiter:
        return {.value = lap.limiterS};
      case F::LapFullThrottle:
        return {.value = lap.fullThrottleS / lap.timeS};
      default:
        return {.value = lap.timeS};
    }
  }
  Answer lapChange(const SetupPlan& setup, const LapFigures& lap) const {
    if (&setup == &plan_.stock) return words(number(0.0, kLapDecimals));
    if (!plan_.stock.lap) return unknown(noLapWords(plan_));
    const double from = plan_.stock.lap->timeS;
    const auto at = std::find(setups_.begin(), setups_.end(), &setup) - setups_.begin();
    const auto known = bands_.betweenS(0, static_cast<std::size_t>(at));
    if (!known) return unknown(Say::tr("Not known yet: how far the difference may be off."));
    const double band = std::max(*known, kEqualTimesS);
    Answer answer = words(equalTimes(from, lap.timeS, band)
                              ? Say::tr("equal ± %1", "a lap within what can be told").arg(bandText(band))
                              : Say::tr("%1 ± %2", "a difference and how far it may be off")
                                    .arg(signedNumber(lap.timeS - from, kLapDecimals), bandText(band)));
    answer.why = Say::tr("± is what rollout, grip and the time of a shift leave open.");
    return answer;
  }
  Answer verdict(const SetupPlan& setup) const {
    if (!setup.speedometer) return unknown(noSpeedometer());
    if (!setup.speedometer->verdict) return unknown(Say::tr("It reaches none of the speeds of the test."));
    switch (*setup.speedometer->verdict) {
      case layshaft::SpeedometerVerdict::ReadsLow:
        return words(Say::tr("reads low"));
      case layshaft::SpeedometerVerdict::ReadsHigh:
        return words(Say::tr("reads high"));
      case layshaft::SpeedometerVerdict::Within:
        break;
    }
    return words(Say::tr("within"));
  }
  Answer fits(const SetupPlan& setup) const {
    const auto& run = setup.chainRun;
    if (!run) return unknown(noLoop(setup));
    if (!run->fits) return unknown(Say::tr("Not known: it needs the axle's travel."));
    if (*run->fits) return words(Say::tr("fits"));
    QStringList reasons;
    for (const Misfit misfit : run->misfits) reasons << misfitWords(misfit, *run, units_);
    Answer answer = words(Say::tr("does not fit"));
    answer.why = reasons.join(QLatin1Char('\n'));
    return answer;
  }
  static Answer sprocket(const SetupPlan& setup, int teeth, int stock,
                         const std::vector<SpareSprocket>& onHand) {
    if (teeth == stock) return words(none());
    return words(spareSprocket(onHand, teeth, setup.setup)
                     ? Say::tr("none: %1 teeth on hand", "part to buy").arg(teeth)
                     : Say::tr("%1 teeth", "part to buy").arg(teeth));
  }
  Answer loop(const SetupPlan& setup) const {
    const auto& run = setup.chainRun;
    if (!run) return unknown(noLoop(setup));
    const auto count = [&](int n) {
      return run->belt ? Say::tr("%1 teeth", "part to buy").arg(n) : Say::tr("%1 links", "length").arg(n);
    };
    const auto& lengths = run->lengthsThatFit;
    if (lengths.empty())
      return run->fits.value_or(true) ? words(count(run->links)) : unknown(Say::tr("No length fits."));
    auto wanted = std::find_if(lengths.begin(), lengths.end(), [&](const FittingLength& length) {
      return run->fits.value_or(true) && length.links == run->links;
    });
    if (wanted == lengths.end()) wanted = lengths.begin();
    const QString length = count(wanted->links);
    if (wanted->shortenBy == 0) return words(Say::tr("none: %1 as it is", "length of a chain").arg(length));
    if (wanted->shortenBy) return words(Say::tr("none: cut to %1", "length of a chain").arg(length));
    if (wanted->spare) return words(Say::tr("none: %1 on hand", "length of a chain").arg(length));
    return words(length);
  }

  const Plan& plan_;
  const UnitsShown& units_;
  const PartsOnHand& onHand_;
  const LapBands& bands_;
  std::vector<const SetupPlan*> setups_;
  QString noLimit_, noPull_, noRun_;
};

/// The number as people read it, and what it is measured in.
double shownValue(const CompareSpec& spec, const UnitsShown& units, double value) {
  switch (spec.figure) {
    case F::TurnsPerDistance:
      return units.system() == UnitSystem::Metric ? value : value * units::kMetresPerMile / 1000.0;
    case F::LapFullThrottle:
    case F::SpeedometerShows:
    case F::OdometerCounts:
      return 100.0 * value;
    default:
      return units.shown(spec.quantity, value);
  }
}

int decimalsOf(const CompareSpec& spec, const UnitsShown& units) {
  if (spec.figure == F::Rollout) return units.rolloutDecimals();
  return spec.quantity == Quantity::SmallLength ? units.decimals(Quantity::SmallLength) : spec.decimals;
}

bool isWords(F figure) {
  switch (figure) {
    case F::CruiseGear:
    case F::PullLimit:
    case F::TopSpeedLimit:
    case F::StraightGears:
    case F::LapChange:
    case F::SpeedometerVerdict:
    case F::Fits:
    case F::FrontSprocket:
    case F::RearSprocket:
    case F::Loop:
    case F::Tyre:
      return true;
    default:
      return false;
  }
}

QString rowName(const CompareSpec& spec, const Plan& plan, const UnitsShown& units, int gear) {
  QString name = gear > 0 ? compareName(spec.figure, gear) : compareName(spec.figure, units);
  const auto shown = [&](Quantity quantity, double si) {
    return units.withUnit(number(units.shown(quantity, si), 0), quantity);
  };
  switch (spec.figure) {
    case F::TurnsPerDistance:
      return units.system() == UnitSystem::Metric ? Say::tr("Engine turns per km")
                                                  : Say::tr("Engine turns per mile");
    case F::TopSpeed:
      if (!plan.pullBike->accelerates()) name = Say::tr("Speed at the rev limit (closed course)");
      break;
    case F::CruiseRpm:
      if (plan.stock.gearing.cruiseSpeedMps)
        name = Say::tr("Engine speed at %1").arg(units.chosenSpeed(*plan.stock.gearing.cruiseSpeedMps));
      break;
    case F::StraightTime:
      if (plan.drive)
        name = Say::tr("%1 straight from %2")
                   .arg(shown(Quantity::Length, plan.drive->lengthM), units.chosenSpeed(plan.drive->exitMps));
      break;
    case F::RollOnAsked:
      name = Say::tr("%1–%2").arg(number(units.shown(Quantity::Speed, plan.rollOn.fromMps), 0),
                                  shown(Quantity::Speed, plan.rollOn.toMps));
      name = plan.rollOn.gear
                 ? Say::tr("%1 in %2", "a roll-on and its gear").arg(name, gearOrdinal(*plan.rollOn.gear))
                 : Say::tr("%1, top gear", "a roll-on").arg(name);
      break;
    case F::LapTime:
      name = lapName(plan);
      break;
    case F::FrontSprocket:
      return isBelt(plan.proposed.setup) ? Say::tr("Front pulley") : Say::tr("Front sprocket");
    case F::RearSprocket:
      return isBelt(plan.proposed.setup) ? Say::tr("Rear pulley") : Say::tr("Rear sprocket");
    default:
      break;
  }
  const QString unit = isWords(spec.figure) ? QString() : units.name(spec.quantity);
  return unit.isEmpty() ? name : Say::tr("%1, %2", "figure and its unit").arg(name, unit);
}

/// How good a value is: more is better; none where it cannot be best.
Value merit(Better better, const Value& value) {
  if (!value) return std::nullopt;
  switch (better) {
    case Better::Less:
      return -*value;
    case Better::More:
      return *value;
    case Better::NearestAbove:
      return *value < 1.0 - 1e-9 ? std::nullopt : Value(-*value);
    case Better::Neither:
      break;
  }
  return std::nullopt;
}

/// Whether nobody can tell the two apart.
bool asGood(const CompareRow& row, std::size_t a, std::size_t b, const Answers& answers) {
  if (row.cells[a].text == row.cells[b].text) return true;
  if (row.figure == F::StraightTime) {
    const auto change = driveChange(answers.setups()[a]->road, answers.setups()[b]->road);
    return change && change->equal();
  }
  if (row.figure == F::LapTime) {
    const auto band = answers.bands().betweenS(a, b);
    return !band || equalTimes(*row.values[a], *row.values[b], *band);
  }
  return compareSpec(row.figure).quantity == Quantity::Time && equalTimes(*row.values[a], *row.values[b]);
}

void markBest(CompareRow& row, const Plan& plan, const Answers& answers) {
  Better better = compareSpec(row.figure).better;
  // Without an engine curve a top speed is the gearing's alone: tall or short is what is being chosen.
  if (row.figure == F::TopSpeed && !plan.pullBike->accelerates()) better = Better::Neither;
  std::optional<std::size_t> best;
  std::size_t known = 0;
  for (std::size_t s = 0; s < row.values.size(); ++s) {
    known += row.values[s] ? 1U : 0U;
    const Value here = merit(better, row.values[s]);
    if (here && (!best || *here > *merit(better, row.values[*best]))) best = s;
  }
  if (!best || known < 2) return;
  std::size_t marked = 0;
  for (std::size_t s = 0; s < row.cells.size(); ++s)
    if (merit(better, row.values[s]) && asGood(row, *best, s, answers)) {
      row.cells[s].best = true;
      ++marked;
    }
  if (marked == known)
    for (CompareCell& cell : row.cells) cell.best = false;
}

/// Whether the difference from stock stands elsewhere: in the figure itself, or below it with its band.
bool hasOwnDifference(F figure) {
  return figure == F::Step || figure == F::AxleShift || figure == F::LapTime;
}

CompareRow rowOf(const Answers& answers, const Plan& plan, const UnitsShown& units, F figure, int gear) {
  const CompareSpec& spec = compareSpec(figure);
  const int decimals = decimalsOf(spec, units);
  CompareRow row{
      .figure = figure, .gear = gear, .name = rowName(spec, plan, units, gear), .cells = {}, .values = {}};
  Value stock;
  for (const SetupPlan* setup : answers.setups()) {
    Answer answer = answers.of(figure, *setup, gear > 0 ? static_cast<std::size_t>(gear - 1) : 0);
    CompareCell cell{.text = answer.words, .difference = {}, .why = std::move(answer.why)};
    if (cell.text.isEmpty()) {
      const Value shown =
          answer.value ? Value(asWritten(shownValue(spec, units, *answer.value), decimals)) : Value();
      cell.text = figureText(shown, decimals);
      if (setup == &plan.stock)
        stock = shown;
      else if (shown && stock && *shown != *stock && !hasOwnDifference(figure))
        cell.difference = signedNumber(*shown - *stock, decimals);
    }
    row.values.push_back(answer.value);
    row.cells.push_back(std::move(cell));
  }
  markBest(row, plan, answers);
  return row;
}

/// As the column's word says.
double inFile(const CompareSpec& spec, double si) {
  return std::string_view(spec.word).ends_with("_mm") ? units::millimetresFromMetres(si) : si;
}

}  // namespace

bool needLapBands(const std::vector<CompareFigure>& figures) {
  return std::any_of(figures.begin(), figures.end(),
                     [](F figure) { return figure == F::LapTime || figure == F::LapChange; });
}

PartsOnHand partsOnHand(const Profile& profile) {
  return profile.sparesBox ? PartsOnHand{profile.sparesBox->front, profile.sparesBox->rear} : PartsOnHand{};
}

CompareTable compareTable(const Plan& plan, const UnitsShown& units,
                          const std::vector<CompareFigure>& figures, const PartsOnHand& onHand,
                          const LapBands* bands) {
  LapBands own;
  if (!bands && needLapBands(figures)) own = LapBands::workedOut(plan);
  const Answers answers(plan, units, onHand, bands ? *bands : own);
  CompareTable table{.setups = {Say::tr("Stock"), Say::tr("Proposed")}, .pairs = {}, .rows = {}};
  for (const SetupPlan& pin : plan.pins) table.setups << shownName(pin.name);
  for (const SetupPlan* setup : answers.setups()) table.pairs << teethPair(setup->setup);
  const int most = static_cast<int>(answers.mostGears());
  for (const CompareFigure figure : figures) {
    if (!compareSpec(figure).perGear) {
      table.rows.push_back(rowOf(answers, plan, units, figure, 0));
      continue;
    }
    const bool shifts = compareSpec(figure).group == CompareGroup::Shifts;
    for (int gear = 1; gear <= (shifts ? most - 1 : most); ++gear)
      table.rows.push_back(rowOf(answers, plan, units, figure, gear));
  }
  return table;
}

std::vector<QStringList> compareRows(const CompareTable& table) {
  QStringList titles{QString()};
  for (qsizetype s = 0; s < table.setups.size(); ++s)
    titles << Say::tr("%1, %2", "a setup's name and its pair").arg(table.setups[s], table.pairs[s]);
  titles << Say::tr("Best");
  std::vector<QStringList> rows{titles};
  std::optional<CompareGroup> group;
  for (const CompareRow& row : table.rows) {
    const CompareGroup its = compareSpec(row.figure).group;
    if (group != its) {
      QStringList headline{compareGroupName(its)};
      headline.resize(titles.size());
      rows.push_back(headline);
      group = its;
    }
    QStringList cells{row.name}, best;
    for (std::size_t s = 0; s < row.cells.size(); ++s) {
      cells << row.cells[s].text;
      if (row.cells[s].best) best << table.setups[static_cast<qsizetype>(s)];
    }
    cells << best.join(Say::tr(", ", "between names of setups"));
    rows.push_back(cells);
  }
  return rows;
}

QString compareCsv(const CompareTable& table, const Plan& plan, const UnitsShown& units) {
  std::vector<const CompareRow*> numbers;
  for (const CompareRow& row : table.rows)
    if (!isWords(row.figure)) numbers.push_back(&row);
  std::string out = "setup,front_teeth,rear_teeth";
  for (const CompareRow* row : numbers) {
    const CompareSpec& spec = compareSpec(row->figure);
    out += ',' + (row->gear > 0 ? "gear_" + std::to_string(row->gear) + '_' : std::string()) +
           (spec.milesWord && units.inMiles() ? spec.milesWord : spec.word);
  }
  out += '\n';
  const auto line = [&](const std::string& name, const SetupPlan& setup, std::size_t s) {
    out += csvField(name) + ',' + std::to_string(setup.setup.frontTeeth.count()) + ',' +
           std::to_string(setup.setup.rearTeeth.count());
    for (const CompareRow* row : numbers)
      out += ',' +
             (row->values[s] ? numberText(inFile(compareSpec(row->figure), *row->values[s])) : std::string());
    out += '\n';
  };
  line("stock", plan.stock, 0);
  line("proposed", plan.proposed, 1);
  for (std::size_t p = 0; p < plan.pins.size(); ++p) line(plan.pins[p].name, plan.pins[p], 2 + p);
  return QString::fromStdString(csvInUnits(out, units));
}

}  // namespace layshaft::ui
