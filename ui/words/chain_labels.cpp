// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chain_labels.h"

#include <QCoreApplication>
#include <cmath>

#include "ui/words/chain_words.h"
#include "ui/words/figure_rows.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

using Figure = std::optional<double>;

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ChainLabels)
};

QString small(const Figure& metres, const UnitsShown& units) {
  return metres ? number(units.shown(Quantity::SmallLength, *metres), units.decimals(Quantity::SmallLength))
                : Say::tr("–");
}

/// "114 links (stock 112)" or "belt of 120 teeth"; links and a belt's teeth do not compare.
QString loopText(const ChainRunFigures& run, const ChainRunFigures& stock) {
  if (stock.belt != run.belt || stock.links == run.links)
    return run.belt ? Say::tr("belt of %n teeth", nullptr, run.links)
                    : Say::tr("%n links", nullptr, run.links);
  return (run.belt ? Say::tr("belt of %n teeth (stock %1)", nullptr, run.links)
                   : Say::tr("%n links (stock %1)", nullptr, run.links))
      .arg(stock.links);
}

QString tensionText(const ChainRunFigures& run, const UnitsShown& units) {
  const QString pull =
      units.withUnit(number(units.shown(Quantity::Force, *run.peakTensionN), 0), Quantity::Force);
  if (!run.safetyFactor) return Say::tr("peak tension %1").arg(pull);
  return (run.strengthAssumed
              ? Say::tr("peak tension %1, strength ÷ peak tension %2 (minimum for the size; comparison only)")
              : Say::tr("peak tension %1, strength ÷ peak tension %2 (comparison only)"))
      .arg(pull, number(*run.safetyFactor, 1));
}

QString massText(const std::optional<SprocketMass>& mass, const UnitsShown& units) {
  if (!mass) return Say::tr("–");
  return (mass->estimated ? QStringLiteral("≈ ") : QString()) +
         number(units.shown(Quantity::Mass, mass->kg), 2);
}

}  // namespace

QString teethLabel(const Plan& plan, SprocketPlace place) {
  const auto teeth = [place](const SetupPlan& setup) {
    return place == SprocketPlace::Front ? setup.setup.frontTeeth.count() : setup.setup.rearTeeth.count();
  };
  const int now = teeth(plan.proposed), before = teeth(plan.stock);
  return now == before ? Say::tr("%n teeth", nullptr, now)
                       : Say::tr("%n teeth (stock %1)", nullptr, now).arg(before);
}

QString wrapLabel(const Plan& plan) {
  const auto wrap = [](const SetupPlan& setup) { return figureText(setup.chainRun->frontWrapDeg, 0); };
  const QString now = wrap(plan.proposed), before = wrap(plan.stock);
  return now == before ? Say::tr("Wrap %1°").arg(now) : Say::tr("Wrap %1° (stock %2)").arg(now, before);
}

QStringList loopLabel(const Plan& plan, const UnitsShown& units) {
  const ChainRunFigures& run = *plan.proposed.chainRun;
  QString loop = loopText(run, *plan.stock.chainRun);
  if (const auto& size = plan.proposed.setup.options.chainSize; size && !run.belt)
    loop = Say::tr("%1, %2", "chain's size and links").arg(QString::fromUtf8(size->name.data()), loop);
  if (!run.tightCentreM) return {loop, Say::tr("does not reach")};
  QStringList lines{loop};
  if (run.peakTensionN) lines << tensionText(run, units);
  return lines;
}

QString centreLabel(const Plan& plan, const UnitsShown& units) {
  const QString now = small(plan.proposed.chainRun->centreDistanceM, units);
  const QString before = small(plan.stock.chainRun->centreDistanceM, units);
  const QString withUnit = units.withUnit(now, Quantity::SmallLength);
  return now == before ? Say::tr("Centres %1").arg(withUnit)
                       : Say::tr("Centres %1 (stock %2)").arg(withUnit, before);
}

QStringList axleLabel(const Plan& plan, const UnitsShown& units) {
  const ChainRunFigures& run = *plan.proposed.chainRun;
  QStringList lines;
  if (run.axleShiftM)
    lines << byShift(*run.axleShiftM, units, Say::tr("Axle stays"), Say::tr("Axle %1 back"),
                     Say::tr("Axle %1 forward"));
  if (run.fits) lines << (*run.fits ? Say::tr("Fits") : Say::tr("Does not fit"));
  return lines;
}

std::vector<QStringList> chainTable(const Plan& plan, const UnitsShown& units) {
  const SetupPlan &from = plan.stock, &to = plan.proposed;
  if (!from.chainRun || !to.chainRun) return {};
  const ChainRunFigures &was = *from.chainRun, &is = *to.chainRun;
  const QString mm = units.name(Quantity::SmallLength), kg = units.name(Quantity::Mass);
  const int decimals = units.decimals(Quantity::SmallLength);
  const auto length = [&](const Figure& m) {
    return m ? Figure(units.shown(Quantity::SmallLength, *m)) : std::nullopt;
  };
  const auto whole = [](int x) { return Figure(static_cast<double>(x)); };
  const auto arm = [](const ChainRunFigures& run) {
    return run.swingarm ? run.swingarm->antiSquatPercent : std::nullopt;
  };
  const auto play = [&](const ChainRunFigures& run) {
    return run.swingarm && run.swingarm->tightSpot ? length(run.swingarm->tightSpot->leastPlayM)
                                                   : std::nullopt;
  };
  const auto force = [&](const Figure& n) {
    return n ? Figure(units.shown(Quantity::Force, *n)) : std::nullopt;
  };
  const auto speed = [&](double mps) { return Figure(units.shown(Quantity::Length, mps)); };
  const bool belt = is.belt;
  // A belt bends between its teeth, too: its speed does not ripple.
  const auto ripple = [](const ChainRunFigures& run, double percentage) {
    return run.belt ? std::nullopt : Figure(percentage);
  };
  // Of the lengths themselves: centre distance, axle and wheelbase move by the same.
  const auto lengthRow = [&](const QString& name, const Figure& a, const Figure& b) {
    QStringList cells = figureRow(name, length(a), length(b), decimals);
    if (!cells.back().isEmpty())
      cells.back() = signedNumber(units.shown(Quantity::SmallLength, *b - *a), decimals);
    return cells;
  };
  const auto massRow = [&](const QString& name, const std::optional<SprocketMass>& a,
                           const std::optional<SprocketMass>& b) {
    const bool weighed = a && b && !a->estimated && !b->estimated;
    const QString difference =
        weighed ? signedNumber(units.shown(Quantity::Mass, b->kg - a->kg), 2) : QString();
    return QStringList{name, massText(a, units), massText(b, units),
                       weighed && a->kg == b->kg ? QString() : difference};
  };
  return {
      {QString(), Say::tr("Stock"), Say::tr("Proposed"), Say::tr("Difference")},
      figureRow(belt ? Say::tr("Belt, teeth") : Say::tr("Links"),
                was.belt == belt ? whole(was.links) : std::nullopt, whole(is.links), 0),
      lengthRow(Say::tr("Centre distance, %1").arg(mm), was.centreDistanceM, is.centreDistanceM),
      {Say::tr("Axle shift (+ is back), %1").arg(mm), number(0.0, decimals),
       is.axleShiftM ? signedNumber(units.shown(Quantity::SmallLength, *is.axleShiftM), decimals)
                     : Say::tr("–"),
       QString()},
      lengthRow(Say::tr("Wheelbase, %1").arg(mm), was.wheelbaseM, is.wheelbaseM),
      figureRow(Say::tr("Front wrap, °"), was.frontWrapDeg, is.frontWrapDeg, 1),
      figureRow(Say::tr("Shared factor, front (1 is best)"), whole(was.commonFactorFront),
                whole(is.commonFactorFront), 0),
      figureRow(Say::tr("Shared factor, rear (1 is best)"), whole(was.commonFactorRear),
                whole(is.commonFactorRear), 0),
      figureRow(Say::tr("Speed ripple, front, %"), ripple(was, was.chordalFrontPercent),
                ripple(is, is.chordalFrontPercent), 2),
      figureRow(Say::tr("Speed ripple, rear, %"), ripple(was, was.chordalRearPercent),
                ripple(is, is.chordalRearPercent), 2),
      figureRow(Say::tr("Speed at the limit, %1/s").arg(units.name(Quantity::Length)),
                speed(was.topChainSpeedMps), speed(is.topChainSpeedMps), 1),
      figureRow(Say::tr("Peak tension, %1").arg(units.name(Quantity::Force)), force(was.peakTensionN),
                force(is.peakTensionN), 0),
      figureRow(Say::tr("Strength ÷ peak tension (comparison only)"), was.safetyFactor, is.safetyFactor, 1),
      massRow(Say::tr("front sprocket, %1").arg(kg), from.sprockets.front, to.sprockets.front),
      massRow(Say::tr("rear sprocket, %1").arg(kg), from.sprockets.rear, to.sprockets.rear),
      figureRow(Say::tr("Anti-squat, %"), arm(was), arm(is), 1),
      figureRow(Say::tr("Least slack before it binds, %1").arg(mm), play(was), play(is), decimals),
  };
}

}  // namespace layshaft::ui
