// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/work_order_words.h"

#include <QCoreApplication>
#include <cmath>

#include "core/study/fitted.h"
#include "core/units.h"
#include "ui/words/chain_words.h"
#include "ui/words/numbers.h"
#include "ui/words/parts_words.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(WorkOrder)
};

QString colon(const QString& part, const QString& what) {
  return Say::tr("%1: %2", "a part, and what is done with it").arg(part, what);
}

/// The part of stock that a line takes the place of; empty where stock has none.
QString removedText(const PartLine& line, const Setup& stock) {
  const bool belt = isBelt(stock);
  const SetupOptions& options = stock.options;
  const auto sprocket = [&](PartKind pulley, PartKind wheel, int teeth, SprocketPlace place) {
    return partText({.kind = belt ? pulley : wheel,
                     .source = PartSource::Keep,
                     .teeth = teeth,
                     .size = belt ? std::nullopt : cutFor(stock, stock, place)});
  };
  switch (line.kind) {
    case PartKind::FrontSprocket:
    case PartKind::FrontPulley:
      return sprocket(PartKind::FrontPulley, PartKind::FrontSprocket, stock.frontTeeth.count(),
                      SprocketPlace::Front);
    case PartKind::RearSprocket:
    case PartKind::RearPulley:
      return sprocket(PartKind::RearPulley, PartKind::RearSprocket, stock.rearTeeth.count(),
                      SprocketPlace::Rear);
    case PartKind::Chain:
    case PartKind::Belt:
      if (belt && options.beltTeeth)
        return partText({.kind = PartKind::Belt, .source = PartSource::Keep, .teeth = *options.beltTeeth});
      if (!belt && options.links)
        return partText({.kind = PartKind::Chain,
                         .source = PartSource::Keep,
                         .links = *options.links,
                         .size = options.chainSize});
      break;
    case PartKind::RearTyre:
      return colon(partText(line), QString::fromStdString(stock.rearTyre.text()));
    case PartKind::JoiningLink:
      break;
  }
  return {};
}

QString fittedText(const PartLine& line, const Setup& setup) {
  if (line.kind == PartKind::RearTyre)
    return colon(partText(line), QString::fromStdString(setup.rearTyre.text()));
  return colon(partText(line), partSourceText(line));
}

QString slackText(const Profile& profile, const UnitsShown& units) {
  if (!profile.wear || !profile.wear->slackMm) return {};
  const auto shown = [&](double mm) {
    return number(units.shown(Quantity::SmallLength, units::metresFromMillimetres(mm)),
                  units.decimals(Quantity::SmallLength));
  };
  const LengthRange& slack = *profile.wear->slackMm;
  const QString range =
      units.withUnit(Say::tr("%1–%2", "least and most slack").arg(shown(slack.lowMm), shown(slack.highMm)),
                     Quantity::SmallLength);
  const QString posture = onOneLine(QString::fromStdString(profile.wear->slackPosture));
  return posture.isEmpty()
             ? Say::tr("Slack %1, as typed from the manual; measure at the tightest point.").arg(range)
             : Say::tr("Slack %1, as typed from the manual; bike: %2. Measure at the tightest point.")
                   .arg(range, posture);
}

QStringList checksFor(const Plan& plan) {
  const bool belt = isBelt(plan.proposed.setup);
  QStringList checks{
      belt ? Say::tr("Belt in line with both pulleys, axle marks alike on both sides")
           : Say::tr("Chain in line with both sprockets, axle marks alike on both sides"),
      belt ? Say::tr("Axle and pulley fasteners at the manual's torque, new locking parts")
           : Say::tr("Axle and sprocket fasteners at the manual's torque, new locking parts"),
      belt
          ? Say::tr(
                "Wheel turned by hand a whole way round: belt tension at its tightest point as in the manual")
          : Say::tr("Wheel turned by hand a whole way round: slack at its tightest point as in the manual"),
      belt ? Say::tr("Belt clear of guard, case, swingarm and tyre")
           : Say::tr("Chain clear of guard, case, slider, swingarm and tyre"),
      Say::tr("Brake hose, caliper and ABS sensor in place; brake pumped until the lever is firm")};
  const auto& speedometer = plan.proposed.speedometer;
  if (speedometer && speedometer->odometerOverTrue != 1.0)
    checks << Say::tr("Speedometer checked, and recalibrated where it must be");
  return checks;
}

}  // namespace

QString axleMarksText(const Plan& plan) {
  const auto& run = plan.proposed.chainRun;
  const auto marks = run ? adjusterMarks(plan.chainRoom, *run) : std::nullopt;
  if (!marks) return {};
  const QString size = number(std::abs(*marks), 1);
  if (size == number(0.0, 1)) return Say::tr("on the same mark");
  return (*marks > 0.0 ? Say::tr("%1 marks back") : Say::tr("%1 marks forward")).arg(size);
}

QString axleOrderText(const Plan& plan, const UnitsShown& units) {
  const auto& run = plan.proposed.chainRun;
  if (!run || !run->axleShiftM) return {};
  const QString shift = byShift(*run->axleShiftM, units, Say::tr("Axle expected where it is"),
                                Say::tr("Axle expected %1 back"), Say::tr("Axle expected %1 forward"));
  const QString marks = axleMarksText(plan);
  const QString where = marks.isEmpty() ? shift : Say::tr("%1, %2", "axle shift, marks").arg(shift, marks);
  return run->belt ? Say::tr("%1; belt tension decides.").arg(where)
                   : Say::tr("%1; slack decides.").arg(where);
}

WorkOrder workOrder(const Profile& profile, const Plan& plan, const UnitsShown& units) {
  WorkOrder order;
  for (const PartLine& line : partsList(profile, plan).lines) {
    if (line.source == PartSource::Keep) continue;
    // The bike's own chain is only made shorter.
    if (const QString removed =
            line.source == PartSource::Cut ? QString() : removedText(line, plan.stock.setup);
        !removed.isEmpty())
      order.remove << removed;
    order.fit << fittedText(line, plan.proposed.setup);
  }
  if (plan.stock.setup.primaryRatio != plan.proposed.setup.primaryRatio ||
      plan.stock.setup.gearRatios != plan.proposed.setup.gearRatios)
    order.fit << Say::tr("Gears of another ratio: see the bench sheet");
  for (const QString& line : {axleOrderText(plan, units), slackText(profile, units)})
    if (!line.isEmpty()) order.set << line;
  order.checks = checksFor(plan);
  return order;
}

QStringList fromTheManual(const Profile& profile, const Plan& plan) {
  const bool belt = isBelt(plan.proposed.setup);
  QStringList blanks{Say::tr("Axle nut: torque"),
                     Say::tr("Axle nut: spanner"),
                     belt ? Say::tr("Front pulley: torque") : Say::tr("Front sprocket: torque"),
                     belt ? Say::tr("Front pulley: spanner") : Say::tr("Front sprocket: spanner"),
                     belt ? Say::tr("Rear pulley: torque") : Say::tr("Rear sprocket: torque"),
                     belt ? Say::tr("Rear pulley: spanner") : Say::tr("Rear sprocket: spanner")};
  if (belt)
    blanks << Say::tr("Belt tension") << Say::tr("How it is measured");
  else if (!profile.wear || !profile.wear->slackMm)
    blanks << Say::tr("Slack") << Say::tr("How the bike stands for it");
  return blanks;
}

}  // namespace layshaft::ui
