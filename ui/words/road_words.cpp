// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/road_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/units.h"
#include "ui/words/field_table.h"
#include "ui/words/figure_rows.h"
#include "ui/words/numbers.h"
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

/// How a drive ends: the one sentence or the other.
QString endWords(const DriveFigures& drive, const QString& onLimiter, const QString& belowLimit) {
  const bool limiter = drive.secondsOnLimiter > 0.0;
  return (limiter ? onLimiter : belowLimit)
      .arg(drive.endGear)
      .arg(number(drive.endRpm, 0),
           limiter ? number(drive.secondsOnLimiter, 2) : number(drive.revRangeLeftRpm, 0));
}

}  // namespace

QString limitWords(LimitedBy limit) {
  switch (limit) {
    case LimitedBy::Drag:
      return RoadWords::tr("drag");
    case LimitedBy::Grip:
      return RoadWords::tr("grip");
    case LimitedBy::Lift:
      return RoadWords::tr("front lift");
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

QString assumedWords(const PullBike& bike) {
  QStringList parts;
  for (const Assumed& assumed : bike.assumed) {
    if (assumed.key == "bike.engine.torque_curve")
      continue;  // no value that was taken: a sentence of its own
    const auto rule = fieldRule(assumed.key);
    const QString unit = rule ? fileUnitWord(rule->limit.unit) : QString();
    const QString name = fieldName(assumed.key), value = QLocale().toString(assumed.value, 'g', 4);
    parts << (unit.isEmpty() ? RoadWords::tr("%1 %2", "field and value").arg(name, value)
                             : RoadWords::tr("%1, %2 %3", "field, unit and value").arg(name, unit, value));
  }
  if (parts.isEmpty()) return {};
  return RoadWords::tr("Not given, so taken: %1.").arg(parts.join(RoadWords::tr("; ", "between fields")));
}

std::vector<QStringList> runTable(const Plan& plan, const UnitsShown& units) {
  const RunFigures &from = plan.stock.road.run, &to = plan.proposed.road.run;
  const RoadPlan& road = plan.proposed.road;
  const QString speed = units.name(Quantity::Speed);
  const auto shown = [&](const Figure& mps) {
    return mps ? Figure(units.shown(Quantity::Speed, *mps)) : std::nullopt;
  };
  const auto topOf = [&](const RoadPlan& r) {
    return r.topSpeed ? Figure(units.shown(Quantity::Speed, r.topSpeed->speedMps)) : std::nullopt;
  };
  const auto drive = [](const RunFigures& run, double DriveFigures::*member) {
    return run.drive ? Figure((*run.drive).*member) : std::nullopt;
  };
  const auto shownBand = [&](const std::optional<Band>& band) {
    return band ? std::optional(
                      Band{units.shown(Quantity::Speed, band->low), units.shown(Quantity::Speed, band->high)})
                : std::nullopt;
  };
  const auto asked = [&](double mps) { return number(units.shown(Quantity::Speed, mps), 0); };
  const QString slow = asked(plan.rollOn.fromMps), fast = asked(plan.rollOn.toMps);
  const QString rollOn =
      plan.rollOn.gear ? RoadWords::tr("%1–%2 %3, gear %4, s").arg(slow, fast, speed).arg(*plan.rollOn.gear)
                       : RoadWords::tr("%1–%2 %3, last gear, s").arg(slow, fast, speed);
  return {
      {QString(), RoadWords::tr("stock"), RoadWords::tr("proposed"), RoadWords::tr("difference"),
       RoadWords::tr("±")},
      row(RoadWords::tr("0–60 mph, s"), from.zeroTo60MphS, to.zeroTo60MphS, 2),
      row(RoadWords::tr("0–100 km/h, s"), from.zeroTo100KmhS, to.zeroTo100KmhS, 2, road.zeroTo100BandS),
      row(RoadWords::tr("100 m, s"), from.hundredMetresS, to.hundredMetresS, 2),
      row(RoadWords::tr("1/8 mile, s"), from.eighthMileS, to.eighthMileS, 2),
      row(RoadWords::tr("1/4 mile, s"), from.quarterMileS, to.quarterMileS, 2, road.quarterMileBandS),
      row(RoadWords::tr("1/4 mile, %1").arg(speed), shown(from.quarterMileSpeedMps),
          shown(to.quarterMileSpeedMps), 1),
      row(RoadWords::tr("80–120 km/h, last gear, s"), from.rollOnTopS, to.rollOnTopS, 2),
      row(RoadWords::tr("80–120 km/h, best gear, s"), from.rollOnBestS, to.rollOnBestS, 2),
      row(rollOn, from.askedRollOnS, to.askedRollOnS, 2),
      row(RoadWords::tr("drive, s"), drive(from, &DriveFigures::timeS), drive(to, &DriveFigures::timeS), 2,
          road.driveBandS),
      row(RoadWords::tr("drive, end %1").arg(speed), shown(drive(from, &DriveFigures::endSpeedMps)),
          shown(drive(to, &DriveFigures::endSpeedMps)), 1),
      row(RoadWords::tr("top speed, %1").arg(speed), topOf(plan.stock.road), topOf(plan.proposed.road), 0,
          shownBand(road.topSpeedBandMps)),
  };
}

QString driveWords(const Plan& plan, const UnitsShown& units) {
  if (!plan.drive)
    return RoadWords::tr("Give the drive's exit speed and length to see how the straight ends.");
  const auto shown = [&](Quantity quantity, double si) {
    return units.withUnit(number(units.shown(quantity, si), 0), quantity);
  };
  const auto& stock = plan.stock.road.run.drive;
  const auto& proposed = plan.proposed.road.run.drive;
  return QStringList{
      RoadWords::tr("%1 straight from %2.")
          .arg(shown(Quantity::Length, plan.drive->lengthM), shown(Quantity::Speed, plan.drive->exitMps)),
      stock ? endWords(*stock, RoadWords::tr("Stock: ends in gear %1 at %2 rpm, %3 s of it on the limiter."),
                       RoadWords::tr("Stock: ends in gear %1 at %2 rpm, %3 rpm left to the limit."))
            : RoadWords::tr("Stock: cannot be ridden from that speed."),
      proposed ? endWords(*proposed,
                          RoadWords::tr("Proposed: ends in gear %1 at %2 rpm, %3 s of it on the limiter."),
                          RoadWords::tr("Proposed: ends in gear %1 at %2 rpm, %3 rpm left to the limit."))
               : RoadWords::tr("Proposed: cannot be ridden from that speed.")}
      .join(QLatin1Char('\n'));
}

}  // namespace layshaft::ui
