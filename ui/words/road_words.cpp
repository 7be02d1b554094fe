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
  if (bike.assumed.empty()) return {};
  QStringList parts;
  for (const Assumed& assumed : bike.assumed) {
    const auto rule = fieldRule(assumed.key);
    const QString unit = rule ? fileUnitWord(rule->limit.unit) : QString();
    const QString name = fieldName(assumed.key), value = QLocale().toString(assumed.value, 'g', 4);
    parts << (unit.isEmpty() ? RoadWords::tr("%1 %2", "field and value").arg(name, value)
                             : RoadWords::tr("%1, %2 %3", "field, unit and value").arg(name, unit, value));
  }
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
  const QString askedGear =
      plan.rollOn.gear ? RoadWords::tr("gear %1").arg(*plan.rollOn.gear) : RoadWords::tr("last gear");
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
      row(RoadWords::tr("%1–%2 %3, %4, s")
              .arg(asked(plan.rollOn.fromMps), asked(plan.rollOn.toMps), speed, askedGear),
          from.askedRollOnS, to.askedRollOnS, 2),
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
  const auto sentence = [&](const QString& name, const std::optional<DriveFigures>& drive) {
    if (!drive) return RoadWords::tr("%1: cannot be ridden from that speed.").arg(name);
    const bool limiter = drive->secondsOnLimiter > 0.0;
    const QString end = limiter ? RoadWords::tr("%1: ends in gear %2 at %3 rpm, %4 s of it on the limiter.")
                                : RoadWords::tr("%1: ends in gear %2 at %3 rpm, %4 rpm left to the limit.");
    return end.arg(name)
        .arg(drive->endGear)
        .arg(number(drive->endRpm, 0),
             limiter ? number(drive->secondsOnLimiter, 2) : number(drive->revRangeLeftRpm, 0));
  };
  return RoadWords::tr("%1 %2 straight from %3 %4.")
             .arg(number(units.shown(Quantity::Length, plan.drive->lengthM), 0), units.name(Quantity::Length),
                  number(units.shown(Quantity::Speed, plan.drive->exitMps), 0), units.name(Quantity::Speed)) +
         QLatin1Char('\n') + sentence(RoadWords::tr("Stock"), plan.stock.road.run.drive) + QLatin1Char('\n') +
         sentence(RoadWords::tr("Proposed"), plan.proposed.road.run.drive);
}

}  // namespace layshaft::ui
