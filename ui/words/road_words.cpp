// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/road_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/defaults.h"
#include "core/units.h"
#include "ui/words/field_table.h"
#include "ui/words/figure_rows.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

struct RoadWords {
  Q_DECLARE_TR_FUNCTIONS(RoadWords)
};

using Figure = std::optional<double>;

QStringList row(const QString& name, const Figure& stock, const Figure& proposed, int decimals,
                const std::optional<Band>& band = {}) {
  QStringList cells = figureRow(name, stock, proposed, decimals);
  cells << (band ? QStringLiteral("±%1").arg(number((band->high - band->low) / 2.0, decimals)) : QString());
  return cells;
}

/// Which gears a straight takes and how it ends: "2nd to 5th, 3 shifts, 12,626 rpm, …".
QString straightPhrase(const DriveFigures& drive) {
  const QString start = gearOrdinal(drive.startGear()), end = gearOrdinal(drive.endGear);
  const QString way = drive.shifts() > 0
                          ? RoadWords::tr("%1 to %2, %n shifts", nullptr, drive.shifts()).arg(start, end)
                          : RoadWords::tr("stays in %1", "a gear").arg(start);
  const QString rpm = number(drive.endRpm, 0);
  return drive.secondsOnLimiter > 0.0
             ? RoadWords::tr("%1, %2 rpm, %3 s on the limiter", "%1 is which gears a straight takes")
                   .arg(way, rpm, number(drive.secondsOnLimiter, 2))
             : RoadWords::tr("%1, %2 rpm, %3 rpm below the limiter", "%1 is which gears a straight takes")
                   .arg(way, rpm, number(drive.revRangeLeftRpm, 0));
}

QString straightPhrase(const std::optional<DriveFigures>& drive, const DriveRequest& request) {
  if (drive) return straightPhrase(*drive);
  return request.exitGear ? RoadWords::tr("%1 does not turn between idle and the limiter at that speed")
                                .arg(gearOrdinal(*request.exitGear))
                          : RoadWords::tr("no gear pulls from that speed");
}

/// Which pair is quicker, as far as that can be told.
QString straightChangeWords(const DriveChange& change) {
  const QString band = number(change.bandS, 2);
  if (change.equal())
    return change.bandS > kEqualTimesS
               ? RoadWords::tr(
                     "Equal: the difference is within ±%1 s, what an estimated rollout leaves open.")
                     .arg(band)
               : RoadWords::tr("Equal within %1 s.").arg(number(kEqualTimesS, 2));
  const QString size = number(std::abs(change.seconds), 2);
  return (change.seconds < 0.0 ? RoadWords::tr("Proposed is %1 s quicker.")
                               : RoadWords::tr("Proposed is %1 s slower."))
      .arg(size);
}

QString startPhrase(const RunFigures& run) {
  const QString start = gearOrdinal(static_cast<int>(run.quarterMilePlan->gear) + 1);
  const int shifts = *run.quarterMileShifts;
  return shifts > 0 ? RoadWords::tr("starts in %1, %n shifts", nullptr, shifts).arg(start)
                    : RoadWords::tr("stays in %1", "a gear").arg(start);
}

/// Whether the profile's own roll-on is the one in top gear that every bike is compared by, in the unit shown
/// or in the one that it is for lack of another.
bool isTheUsualRollOn(const Plan& plan, const UnitsShown& units) {
  const RollOnRequest& asked = plan.rollOn;
  const auto isTop = [&](const SetupPlan& setup) {
    return !asked.gear || *asked.gear == static_cast<int>(setup.gearing.gears.size());
  };
  const auto goes = [&](double fromMps, double toMps) {
    constexpr double kNoise = 1e-9;  // m/s
    return std::abs(asked.fromMps - fromMps) < kNoise && std::abs(asked.toMps - toMps) < kNoise;
  };
  const bool usual =
      goes(units::mpsFromKmh(defaults::kRollOnFromKmh), units::mpsFromKmh(defaults::kRollOnToKmh)) ||
      (units.inMiles() &&
       goes(units::mpsFromMph(defaults::kRollOnFromMph), units::mpsFromMph(defaults::kRollOnToMph)));
  return usual && isTop(plan.stock) && isTop(plan.proposed);
}

constexpr const char* kCurveEstimated = "bike.engine.curve_estimated";

/// "drag area 0.5 m²; shift time 0.15 s": fields with the values that stand in for measured ones.
QString valueList(const std::vector<Assumed>& values, const UnitsShown& units) {
  QStringList parts;
  for (const Assumed& taken : values) {
    if (taken.key == "bike.engine.torque_curve" || taken.key == kCurveEstimated)
      continue;  // no value that was taken: a sentence of its own
    const Field* row = fieldRow(taken.key);
    const auto rule = fieldRule(taken.key);
    if (!row || !rule) continue;
    const QString unit = shownUnit(*row, *rule, units);
    const QString name = fieldName(taken.key), value = shownText(*row, taken.value, units);
    parts << (unit.isEmpty() ? RoadWords::tr("%1 %2", "field and value").arg(name, value)
                             : RoadWords::tr("%1 %2 %3", "field, value and unit").arg(name, value, unit));
  }
  return parts.join(RoadWords::tr("; ", "between fields"));
}

QString rollOnName(const RollOnRequest& asked, const UnitsShown& units) {
  const QString speed = units.name(Quantity::Speed);
  // A title is no estimate: 80 km/h are not 50 mph.
  const auto speedText = [&](double mps) {
    const double shown = units.shown(Quantity::Speed, mps);
    constexpr double kWhole = 0.005;
    return number(shown, std::abs(shown - std::round(shown)) < kWhole ? 0 : 1);
  };
  const QString slow = speedText(asked.fromMps), fast = speedText(asked.toMps);
  return asked.gear ? RoadWords::tr("%1–%2 %3, gear %4, s").arg(slow, fast, speed).arg(*asked.gear)
                    : RoadWords::tr("%1–%2 %3, top gear, s").arg(slow, fast, speed);
}

}  // namespace

QString limitWords(LimitedBy limit) {
  switch (limit) {
    case LimitedBy::Drag:
      return RoadWords::tr("drag");
    case LimitedBy::Grip:
      return RoadWords::tr("grip limit");
    case LimitedBy::Lift:
      return RoadWords::tr("wheelie limit");
    case LimitedBy::RevLimit:
      break;
  }
  return RoadWords::tr("rev limit");
}

QStringList fieldNames(const std::vector<std::string_view>& keys) {
  QStringList names;
  for (const std::string_view key : keys) names << fieldName(key);
  return names;
}

QString lackingWords(const QString& what, const std::vector<std::string_view>& keys) {
  return RoadWords::tr("%1 Missing: %2.", "what something needs, and fields")
      .arg(what, fieldNames(keys).join(RoadWords::tr(", ", "between missing fields")));
}

QString assumedWords(const PullBike& bike, const UnitsShown& units) {
  const QString values = valueList(bike.assumed, units);
  return values.isEmpty() ? QString() : RoadWords::tr("Assumed: %1.").arg(values);
}

QString typicalWords(const PullBike& bike, const UnitsShown& units) {
  const QString values = valueList(bike.typical, units);
  return values.isEmpty() ? QString() : RoadWords::tr("Typical values, not measured: %1.").arg(values);
}

QString estimatedCurveWords(const PullBike& bike) {
  const bool estimated = std::any_of(bike.assumed.begin(), bike.assumed.end(),
                                     [](const Assumed& assumed) { return assumed.key == kCurveEstimated; });
  return estimated
             ? RoadWords::tr(
                   "Estimated from peak power and torque: the torque curve, and all that follows from it.")
             : QString();
}

std::vector<QStringList> runTable(const Plan& plan, const UnitsShown& units) {
  const RoadPlan& road = plan.proposed.road;
  const QString speed = units.name(Quantity::Speed);
  const auto shown = [&](const Figure& mps) {
    return mps ? Figure(units.shown(Quantity::Speed, *mps)) : std::nullopt;
  };
  const auto shownBand = [&](const std::optional<Band>& band) {
    return band ? std::optional(
                      Band{units.shown(Quantity::Speed, band->low), units.shown(Quantity::Speed, band->high)})
                : std::nullopt;
  };
  const bool miles = units.inMiles();
  std::vector<QStringList> rows{{QString(), RoadWords::tr("Stock"), RoadWords::tr("Proposed"),
                                 RoadWords::tr("Difference"), RoadWords::tr("± for 2 % of Rollout")}};
  for (const SetupPlan& pin : plan.pins) rows.front() << shownName(pin.name);
  const auto add = [&](const QString& name, const auto& figureOf, int decimals,
                       const std::optional<Band>& band = {}) {
    rows.push_back(row(name, figureOf(plan.stock), figureOf(plan.proposed), decimals, band));
    for (const SetupPlan& pin : plan.pins) rows.back() << figureText(figureOf(pin), decimals);
  };
  const auto time = [](Figure RunFigures::*member) {
    return [member](const SetupPlan& of) { return of.road.run.*member; };
  };
  const auto drive = [](double DriveFigures::*member) {
    return [member](const SetupPlan& of) {
      return of.road.run.drive ? Figure((*of.road.run.drive).*member) : std::nullopt;
    };
  };
  if (miles)
    add(RoadWords::tr("0–60 mph, s"), time(&RunFigures::zeroTo60MphS), 2, road.zeroTo60BandS);
  else
    add(RoadWords::tr("0–100 km/h, s"), time(&RunFigures::zeroTo100KmhS), 2, road.zeroTo100BandS);
  add(RoadWords::tr("100 m, s"), time(&RunFigures::hundredMetresS), 2);
  add(RoadWords::tr("1/8 mile, s"), time(&RunFigures::eighthMileS), 2);
  add(RoadWords::tr("1/4 mile, s"), time(&RunFigures::quarterMileS), 2, road.quarterMileBandS);
  add(
      RoadWords::tr("1/4 mile, %1").arg(speed),
      [&](const SetupPlan& of) { return shown(of.road.run.quarterMileSpeedMps); }, 1);
  const auto rollOn = [miles](Figure RollOnFigures::*member) {
    return [miles, member](const SetupPlan& of) {
      const RollOnFigures usual =
          miles ? rollOnInMiles(of)
                : RollOnFigures{.topS = of.road.run.rollOnTopS, .bestS = of.road.run.rollOnBestS};
      return usual.*member;
    };
  };
  add(miles ? RoadWords::tr("50–75 mph, top gear, s") : RoadWords::tr("80–120 km/h, top gear, s"),
      rollOn(&RollOnFigures::topS), 2);
  add(miles ? RoadWords::tr("50–75 mph, best gear, s") : RoadWords::tr("80–120 km/h, best gear, s"),
      rollOn(&RollOnFigures::bestS), 2);
  if (!isTheUsualRollOn(plan, units)) add(rollOnName(plan.rollOn, units), time(&RunFigures::askedRollOnS), 2);
  add(RoadWords::tr("Straight, s"), drive(&DriveFigures::timeS), 2, road.driveBandS);
  add(
      RoadWords::tr("Straight, end speed, %1").arg(speed),
      [&](const SetupPlan& of) { return shown(drive(&DriveFigures::endSpeedMps)(of)); }, 1);
  add((plan.pullBike->accelerates() ? RoadWords::tr("Top speed, %1")
                                    : RoadWords::tr("Top speed at the rev limit, %1"))
          .arg(speed),
      [&](const SetupPlan& of) {
        return of.road.topSpeed ? shown(of.road.topSpeed->speedMps) : std::nullopt;
      },
      0, shownBand(road.topSpeedBandMps));
  return rows;
}

QString driveWords(const Plan& plan, const UnitsShown& units) {
  if (!plan.pullBike->accelerates()) return {};
  if (!plan.drive) return RoadWords::tr("Give an exit speed and a length to see how the straight ends.");
  const auto shown = [&](Quantity quantity, double si) {
    return units.withUnit(number(units.shown(quantity, si), 0), quantity);
  };
  const DriveRequest& request = *plan.drive;
  const QString length = shown(Quantity::Length, request.lengthM), exit = units.chosenSpeed(request.exitMps);
  QStringList lines{
      request.exitGear
          ? RoadWords::tr("%1 straight from %2 in %3.").arg(length, exit, gearOrdinal(*request.exitGear))
          : RoadWords::tr("%1 straight from %2.").arg(length, exit),
      RoadWords::tr("Stock: %1.", "%1 is how it rides the straight")
          .arg(straightPhrase(plan.stock.road.run.drive, request)),
      RoadWords::tr("Proposed: %1.", "%1 is how it rides the straight")
          .arg(straightPhrase(plan.proposed.road.run.drive, request))};
  const auto change = driveChange(plan.stock.road, plan.proposed.road);
  if (change && !(plan.stock.setup == plan.proposed.setup)) lines << straightChangeWords(*change);
  return lines.join(QLatin1Char('\n'));
}

QString standingStartWords(const Plan& plan) {
  const RunFigures &stock = plan.stock.road.run, &proposed = plan.proposed.road.run;
  if (!stock.quarterMilePlan || !proposed.quarterMilePlan) return {};
  return RoadWords::tr("1/4 mile: stock %1; proposed %2.", "%1 and %2 are \"starts in 1st, 4 shifts\"")
      .arg(startPhrase(stock), startPhrase(proposed));
}

}  // namespace layshaft::ui
