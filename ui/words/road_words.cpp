// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/road_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/units.h"
#include "ui/words/figure_rows.h"
#include "ui/words/wording.h"

namespace layshaft::ui {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("RoadWords", text);
}

struct FieldName {
  std::string_view key;
  const char* name;
};
constexpr std::array kFieldNames{
    FieldName{"bike.engine.torque_curve", QT_TRANSLATE_NOOP("RoadWords", "the torque curve")},
    FieldName{"bike.chassis.mass_kg", QT_TRANSLATE_NOOP("RoadWords", "the bike's mass")},
    FieldName{"bike.chassis.drag_area_m2", QT_TRANSLATE_NOOP("RoadWords", "the drag area")},
    FieldName{"bike.chassis.cg_height_mm",
              QT_TRANSLATE_NOOP("RoadWords", "the height of the centre of gravity")},
    FieldName{"bike.chassis.cg_ahead_of_rear_axle_mm",
              QT_TRANSLATE_NOOP("RoadWords", "the centre of gravity's distance ahead of the rear axle")},
    FieldName{"bike.chassis.wheelbase_mm", QT_TRANSLATE_NOOP("RoadWords", "the wheelbase")},
    FieldName{"bike.chassis.tyre_grip", QT_TRANSLATE_NOOP("RoadWords", "the tyre's grip")},
    FieldName{"bike.chassis.drivetrain_efficiency", QT_TRANSLATE_NOOP("RoadWords", "drive-train efficiency")},
    FieldName{"bike.chassis.rider_mass_kg", QT_TRANSLATE_NOOP("RoadWords", "rider's mass, kg")},
    FieldName{"bike.chassis.rolling_resistance", QT_TRANSLATE_NOOP("RoadWords", "rolling resistance")},
    FieldName{"bike.chassis.tyre_pressure_bar", QT_TRANSLATE_NOOP("RoadWords", "tyre pressure, bar")},
    FieldName{"stock.chain_size", QT_TRANSLATE_NOOP("RoadWords", "stock's chain size")},
    FieldName{"stock.links", QT_TRANSLATE_NOOP("RoadWords", "stock's number of links")},
    FieldName{"stock.belt_pitch_mm", QT_TRANSLATE_NOOP("RoadWords", "stock's belt pitch")},
    FieldName{"stock.belt_teeth", QT_TRANSLATE_NOOP("RoadWords", "stock's belt teeth")},
    FieldName{"proposed.chain_size", QT_TRANSLATE_NOOP("RoadWords", "the proposal's chain size")},
    FieldName{"proposed.links", QT_TRANSLATE_NOOP("RoadWords", "the proposal's number of links")},
    FieldName{"proposed.belt_pitch_mm", QT_TRANSLATE_NOOP("RoadWords", "the proposal's belt pitch")},
    FieldName{"proposed.belt_teeth", QT_TRANSLATE_NOOP("RoadWords", "the proposal's belt teeth")},
    FieldName{"bike.chassis.shift_time_s", QT_TRANSLATE_NOOP("RoadWords", "shift time, s")},
};

QString fieldName(std::string_view key) {
  for (const FieldName& field : kFieldNames)
    if (field.key == key) return tr(field.name);
  return QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()));
}

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
      return tr("drag");
    case LimitedBy::Grip:
      return tr("grip");
    case LimitedBy::Lift:
      return tr("front lift");
    case LimitedBy::RevLimit:
      break;
  }
  return tr("rev limit");
}

QStringList fieldNames(const std::vector<std::string_view>& keys) {
  QStringList names;
  for (const std::string_view key : keys) names << fieldName(key);
  return names;
}

QString assumedWords(const PullBike& bike) {
  if (bike.assumed.empty()) return {};
  QStringList parts;
  for (const Assumed& assumed : bike.assumed)
    parts << fieldName(assumed.key) + QLatin1Char(' ') + QLocale().toString(assumed.value, 'g', 4);
  return tr("Not given, so taken: %1.").arg(parts.join(QStringLiteral("; ")));
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
  const QString askedGear = plan.rollOn.gear ? tr("gear %1").arg(*plan.rollOn.gear) : tr("last gear");
  return {
      {QString(), tr("stock"), tr("proposed"), tr("difference"), tr("±")},
      row(tr("0–60 mph, s"), from.zeroTo60MphS, to.zeroTo60MphS, 2),
      row(tr("0–100 km/h, s"), from.zeroTo100KmhS, to.zeroTo100KmhS, 2, road.zeroTo100BandS),
      row(tr("100 m, s"), from.hundredMetresS, to.hundredMetresS, 2),
      row(tr("1/8 mile, s"), from.eighthMileS, to.eighthMileS, 2),
      row(tr("1/4 mile, s"), from.quarterMileS, to.quarterMileS, 2, road.quarterMileBandS),
      row(tr("1/4 mile, %1").arg(speed), shown(from.quarterMileSpeedMps), shown(to.quarterMileSpeedMps), 1),
      row(tr("80–120 km/h, last gear, s"), from.rollOnTopS, to.rollOnTopS, 2),
      row(tr("80–120 km/h, best gear, s"), from.rollOnBestS, to.rollOnBestS, 2),
      row(tr("%1–%2 %3, %4, s").arg(asked(plan.rollOn.fromMps), asked(plan.rollOn.toMps), speed, askedGear),
          from.askedRollOnS, to.askedRollOnS, 2),
      row(tr("drive, s"), drive(from, &DriveFigures::timeS), drive(to, &DriveFigures::timeS), 2,
          road.driveBandS),
      row(tr("drive, end %1").arg(speed), shown(drive(from, &DriveFigures::endSpeedMps)),
          shown(drive(to, &DriveFigures::endSpeedMps)), 1),
      row(tr("top speed, %1").arg(speed), topOf(plan.stock.road), topOf(plan.proposed.road), 0,
          shownBand(road.topSpeedBandMps)),
  };
}

QString driveWords(const Plan& plan, const UnitsShown& units) {
  if (!plan.drive) return tr("Give the drive's exit speed and length to see how the straight ends.");
  const auto sentence = [&](const QString& name, const std::optional<DriveFigures>& drive) {
    if (!drive) return tr("%1: cannot be ridden from that speed.").arg(name);
    const QString end =
        tr("%1: ends in gear %2 at %3 rpm, ").arg(name).arg(drive->endGear).arg(number(drive->endRpm, 0));
    return drive->secondsOnLimiter > 0.0
               ? end + tr("%1 s of it on the limiter.").arg(number(drive->secondsOnLimiter, 2))
               : end + tr("%1 rpm left to the limit.").arg(number(drive->revRangeLeftRpm, 0));
  };
  return tr("%1 %2 straight from %3 %4.")
             .arg(number(units.shown(Quantity::Length, plan.drive->lengthM), 0), units.name(Quantity::Length),
                  number(units.shown(Quantity::Speed, plan.drive->exitMps), 0), units.name(Quantity::Speed)) +
         QLatin1Char('\n') + sentence(tr("Stock"), plan.stock.road.run.drive) + QLatin1Char('\n') +
         sentence(tr("Proposed"), plan.proposed.road.run.drive);
}

}  // namespace layshaft::ui
