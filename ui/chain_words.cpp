// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chain_words.h"

#include <QCoreApplication>
#include <cmath>

#include "ui/wording.h"

namespace layshaft::ui {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("ChainWords", text);
}

QString takenOut(int links) {
  return links == 1 ? tr("1 link taken out") : tr("%1 links taken out").arg(links);
}

/// "3.7 mm back", "2.1 mm forward"; empty where it rounds to nothing.
QString wayWords(double shiftM, const UnitsShown& units) {
  const int decimals = units.system() == UnitSystem::Imperial ? 2 : 1;
  const QString size = number(std::abs(units.shown(Quantity::SmallLength, shiftM)), decimals);
  if (size == number(0.0, decimals)) return {};
  return (shiftM > 0.0 ? tr("%1 %2 back") : tr("%1 %2 forward")).arg(size, units.name(Quantity::SmallLength));
}

QString shiftWords(double shiftM, const UnitsShown& units) {
  const QString way = wayWords(shiftM, units);
  return way.isEmpty() ? tr("stays where it is") : tr("moves %1").arg(way);
}

/// "a 525 chain does not run on the rear sprocket, cut for 520: other inner width".
QString mixWords(const SizeMix& mix) {
  const SizeDifference differs = sizeDifference(mix.chain, mix.sprocket);
  QStringList what;
  if (differs.pitch) what << tr("pitch");
  if (differs.roller) what << tr("roller");
  if (differs.innerWidth) what << tr("inner width");
  const auto name = [](const ChainSize& size) { return QString::fromUtf8(size.name.data()); };
  return (mix.place == SprocketPlace::Front
              ? tr("a %1 chain does not run on the front sprocket, cut for %2 (other %3)")
              : tr("a %1 chain does not run on the rear sprocket, cut for %2 (other %3)"))
      .arg(name(mix.chain), name(mix.sprocket), what.join(tr(", ")));
}

/// Where a length comes from: the chain that is on, cut or not, one of the box, else a new one.
QString sourceWords(const FittingLength& length) {
  if (length.shortenBy == 0) return tr("as it is");
  if (length.shortenBy) return tr("this chain, %1").arg(takenOut(*length.shortenBy));
  if (length.spare && length.spare->shortenBy == 0) return tr("in the spares box");
  if (length.spare)
    return tr("the %1 of the spares box, %2").arg(length.spare->links).arg(takenOut(length.spare->shortenBy));
  return {};
}

}  // namespace

QString misfitWords(Misfit misfit, const ChainRunFigures& run, const UnitsShown& units) {
  switch (misfit) {
    case Misfit::AxleTooFarForward:
    case Misfit::AxleTooFarBack:
      return tr("the axle %1, beyond its slot").arg(shiftWords(run.axleShiftM, units));
    case Misfit::FrontTooLarge:
      return tr("the front sprocket is too large for its place");
    case Misfit::FrontTooSmall:
      return tr("the front sprocket is smaller than allowed");
    case Misfit::RearTooLarge:
      return tr("the rear sprocket is too large for its place");
    case Misfit::RearTooSmall:
      return tr("the rear sprocket is smaller than allowed");
    case Misfit::MixedSizes: {
      QStringList mixes;
      for (const SizeMix& mix : run.mixes) mixes << mixWords(mix);
      return mixes.join(tr(", "));
    }
    case Misfit::ChainDoesNotReach:
      break;
  }
  return tr("the chain does not reach round");
}

QString lengthWords(const std::vector<FittingLength>& lengths, const UnitsShown& units) {
  QStringList words;
  for (const FittingLength& length : lengths) {
    const QString source = sourceWords(length);
    const QString axle = shiftWords(length.axleShiftM, units);
    words << (source.isEmpty() ? tr("%1 (axle %2)").arg(length.links).arg(axle)
                               : tr("%1 (%2; axle %3)").arg(length.links).arg(source, axle));
  }
  return words.join(tr(", "));
}

QString fitWords(const Plan& plan, const SetupPlan& setup, const UnitsShown& units) {
  const auto& run = setup.chainRun;
  if (!run) return {};
  const QString loop =
      isBelt(setup.setup) ? tr("a belt of %1 teeth").arg(run->links) : tr("%1 links").arg(run->links);
  if (run->fits.value_or(true)) {
    const bool asStock = plan.stock.chainRun && std::abs(run->axleShiftM) < 1e-6;
    if (asStock) return {};
    const QString axle = tr("the axle %1").arg(shiftWords(run->axleShiftM, units));
    return run->fits ? tr("Fits with %1: %2.").arg(loop, axle)
                     : tr("With %1 %2; how far it may go is not given.").arg(loop, axle);
  }
  QStringList reasons;
  for (const Misfit misfit : run->misfits) reasons << misfitWords(misfit, *run, units);
  QString words = tr("Does not fit with %1: %2.").arg(loop, reasons.join(tr(", ")));
  if (!run->lengthsThatFit.empty())
    words += QLatin1Char(' ') + tr("Would fit: %1.").arg(lengthWords(run->lengthsThatFit, units));
  return words;
}

namespace {

int decimalsOf(const UnitsShown& units) {
  return units.system() == UnitSystem::Imperial ? 2 : 1;
}

QString small(double metres, const UnitsShown& units) {
  return number(units.shown(Quantity::SmallLength, metres), decimalsOf(units));
}

QString withUnit(double metres, const UnitsShown& units) {
  return small(metres, units) + QLatin1Char(' ') + units.name(Quantity::SmallLength);
}

/// "15 teeth (stock 16)".
QString beside(const QString& text, const QString& now, const QString& before) {
  return now == before ? text.arg(now) : tr("%1 (stock %2)").arg(text.arg(now), before);
}

QString massText(const std::optional<SprocketMass>& mass, const UnitsShown& units) {
  if (!mass) return tr("–");
  return (mass->estimated ? QStringLiteral("≈ ") : QString()) +
         number(units.shown(Quantity::Mass, mass->kg), 2);
}

/// A figure that either setup may lack.
using Figure = std::optional<double>;

QStringList figureRow(const QString& name, const Figure& stock, const Figure& proposed, int decimals) {
  const auto text = [&](const Figure& value) { return value ? number(*value, decimals) : tr("–"); };
  // The difference of the figures as they are read.
  const double scale = std::pow(10.0, decimals);
  const bool differ = stock && proposed && text(stock) != text(proposed);
  return {name, text(stock), text(proposed),
          differ
              ? signedNumber((std::round(*proposed * scale) - std::round(*stock * scale)) / scale, decimals)
              : QString()};
}

QString secondsWords(const SprocketSaving& saving) {
  QStringList parts;
  const auto add = [&](const Figure& seconds, const QString& what) {
    if (!seconds) return;
    const QString size = number(std::abs(*seconds), 3);
    if (size != number(0.0, 3)) parts << tr("%1 s %2").arg(size, what);
  };
  add(saving.driveS, tr("on the drive"));
  add(saving.quarterMileS, tr("over the quarter mile"));
  return parts.join(tr(", "));
}

QString savingWords(const SprocketSaving& saving, const UnitsShown& units) {
  const double kg = std::abs(saving.kg), equivalent = std::abs(saving.equivalentKg);
  constexpr double kNothing = 0.005;
  if (kg < kNothing && equivalent < kNothing) return {};
  const auto mass = [&](double x) {
    return number(units.shown(Quantity::Mass, x), 2) + QLatin1Char(' ') + units.name(Quantity::Mass);
  };
  const QString seconds = secondsWords(saving);
  const QString worth = seconds.isEmpty() ? QString() : tr(", worth %1").arg(seconds);
  const QString how =
      saving.counted ? tr("It is counted in pull and runs.")
                     : tr("That is an estimate from teeth and material, and not counted in pull and runs: "
                          "weigh both sprockets to count it.");
  return (saving.equivalentKg > 0.0 ? tr("The sprockets are %1 lighter than stock's and speed up as if the "
                                         "bike were %2 lighter%3. %4")
                                    : tr("The sprockets are %1 heavier than stock's and slow down as if the "
                                         "bike were %2 heavier%3. %4"))
      .arg(mass(kg), mass(equivalent), worth, how);
}

QString armWords(const Plan& plan, const UnitsShown& units) {
  const auto& from = plan.stock.chainRun->swingarm;
  const auto& to = plan.proposed.chainRun->swingarm;
  if (!from || !to) return {};
  QStringList parts;
  if (from->antiSquatPercent && to->antiSquatPercent) {
    const double change = *to->antiSquatPercent - *from->antiSquatPercent;
    if (number(std::abs(change), 1) != number(0.0, 1))
      parts << (change > 0.0 ? tr("Under power the rear squats less: anti-squat rises from %1 to %2 %.")
                             : tr("Under power the rear squats more: anti-squat falls from %1 to %2 %."))
                   .arg(number(*from->antiSquatPercent, 1), number(*to->antiSquatPercent, 1));
  }
  if (to->tightSpot)
    parts << tr("The chain is tightest with the swingarm at %1°, countershaft, pivot and axle in line: in "
                "the posture given "
                "it must have at least %2 of play in the middle of the run. The manual's slack goes first.")
                 .arg(number(to->tightSpot->angleDeg, 1), withUnit(to->tightSpot->leastPlayM, units));
  return parts.join(QLatin1Char(' '));
}

}  // namespace

QString teethWords(const Plan& plan, SprocketPlace place) {
  const auto teeth = [place](const SetupPlan& setup) {
    return QString::number(place == SprocketPlace::Front ? setup.setup.frontTeeth.count()
                                                         : setup.setup.rearTeeth.count());
  };
  return beside(tr("%1 teeth"), teeth(plan.proposed), teeth(plan.stock));
}

QString wrapWords(const Plan& plan) {
  const auto wrap = [](const SetupPlan& setup) { return number(setup.chainRun->frontWrapDeg, 0); };
  return beside(tr("wrap %1°"), wrap(plan.proposed), wrap(plan.stock));
}

QStringList loopWords(const Plan& plan, const UnitsShown& units) {
  const ChainRunFigures& run = *plan.proposed.chainRun;
  const bool belt = isBelt(plan.proposed.setup);
  QString loop = beside(belt ? tr("belt of %1 teeth") : tr("%1 links"), QString::number(run.links),
                        QString::number(plan.stock.chainRun->links));
  if (const auto& size = plan.proposed.setup.options.chainSize; size && !belt)
    loop = QString::fromUtf8(size->name.data()) + tr(", ") + loop;
  if (!run.tightCentreM) return {loop, tr("does not reach round")};
  QStringList lines{loop};
  if (run.peakTensionN) {
    QString pull =
        tr("pulls up to %1 %2")
            .arg(number(units.shown(Quantity::Force, *run.peakTensionN), 0), units.name(Quantity::Force));
    if (run.safetyFactor)
      pull += (run.strengthAssumed ? tr(", safety factor %1 (least strength of the size)")
                                   : tr(", safety factor %1"))
                  .arg(number(*run.safetyFactor, 1));
    lines << pull;
  }
  return lines;
}

QString centreWords(const Plan& plan, const UnitsShown& units) {
  return tr("centres %1")
      .arg(beside(QStringLiteral("%1 ") + units.name(Quantity::SmallLength),
                  small(plan.proposed.chainRun->centreDistanceM, units),
                  small(plan.stock.chainRun->centreDistanceM, units)));
}

QStringList axleWords(const Plan& plan, const UnitsShown& units) {
  const ChainRunFigures& run = *plan.proposed.chainRun;
  const QString way = wayWords(run.axleShiftM, units);
  QStringList lines{tr("axle %1").arg(way.isEmpty() ? tr("stays") : way)};
  if (run.fits) lines << (*run.fits ? tr("fits") : tr("does not fit"));
  return lines;
}

QString turnWords(const Plan& plan) {
  const double percentMore = plan.proposed.change.finalRatioPercent;
  const QString size = number(std::abs(percentMore), 1);
  if (size == number(0.0, 1))
    return tr("For one turn of the rear wheel the front sprocket turns as often as with stock:");
  return (percentMore > 0.0 ? tr("For one turn of the rear wheel the front sprocket turns %1 % more: every "
                                 "gear is shorter.")
                            : tr("For one turn of the rear wheel the front sprocket turns %1 % less: every "
                                 "gear is taller."))
      .arg(size);
}

std::vector<QStringList> chainTable(const Plan& plan, const UnitsShown& units) {
  const SetupPlan &from = plan.stock, &to = plan.proposed;
  if (!from.chainRun || !to.chainRun) return {};
  const ChainRunFigures &was = *from.chainRun, &is = *to.chainRun;
  const QString mm = units.name(Quantity::SmallLength), kg = units.name(Quantity::Mass);
  const int decimals = decimalsOf(units);
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
  const bool belt = isBelt(to.setup);
  // A belt bends between its teeth, too: its speed does not ripple.
  const auto ripple = [belt](double percentage) { return belt ? std::nullopt : Figure(percentage); };
  return {
      {QString(), tr("stock"), tr("proposed"), tr("difference")},
      figureRow(belt ? tr("belt, teeth") : tr("links"), whole(was.links), whole(is.links), 0),
      figureRow(tr("centre distance, %1").arg(mm), length(was.centreDistanceM), length(is.centreDistanceM),
                decimals),
      {tr("axle from stock, %1").arg(mm), number(0.0, decimals),
       signedNumber(units.shown(Quantity::SmallLength, is.axleShiftM), decimals), QString()},
      figureRow(tr("wheelbase, %1").arg(mm), length(was.wheelbaseM), length(is.wheelbaseM), decimals),
      figureRow(tr("front wrap, °"), was.frontWrapDeg, is.frontWrapDeg, 1),
      figureRow(tr("meeting, front (1 is best)"), whole(was.commonFactorFront), whole(is.commonFactorFront),
                0),
      figureRow(tr("meeting, rear (1 is best)"), whole(was.commonFactorRear), whole(is.commonFactorRear), 0),
      figureRow(tr("chordal, front, %"), ripple(was.chordalFrontPercent), ripple(is.chordalFrontPercent), 2),
      figureRow(tr("chordal, rear, %"), ripple(was.chordalRearPercent), ripple(is.chordalRearPercent), 2),
      figureRow(tr("speed at the limit, m/s"), was.topChainSpeedMps, is.topChainSpeedMps, 1),
      figureRow(tr("greatest tension, %1").arg(units.name(Quantity::Force)), force(was.peakTensionN),
                force(is.peakTensionN), 0),
      figureRow(tr("safety factor"), was.safetyFactor, is.safetyFactor, 1),
      {tr("front sprocket, %1").arg(kg), massText(from.sprockets.front, units),
       massText(to.sprockets.front, units), QString()},
      {tr("rear sprocket, %1").arg(kg), massText(from.sprockets.rear, units),
       massText(to.sprockets.rear, units), QString()},
      figureRow(tr("anti-squat, %"), arm(was), arm(is), 1),
      figureRow(tr("least play, %1").arg(mm), play(was), play(is), decimals),
  };
}

QStringList chainVerdict(const Plan& plan, const UnitsShown& units) {
  const SetupPlan& setup = plan.proposed;
  if (!setup.chainRun || !plan.stock.chainRun) return {};
  QStringList sentences;
  const ChainRunFigures& run = *setup.chainRun;
  const bool asStock = std::abs(run.axleShiftM) < 1e-6 && run.fits.value_or(true);
  sentences << (asStock ? tr("The axle stays where it is.") : fitWords(plan, setup, units));
  if (run.fits.value_or(true) && run.lengthsThatFit.size() > 1)
    sentences << tr("Lengths that fit: %1.").arg(lengthWords(run.lengthsThatFit, units));
  if (!isBelt(setup.setup) && run.links % 2 != 0)
    sentences << tr(
        "An odd number of links needs an offset link, the weakest of a chain: choose an even one.");
  constexpr double kEnoughWrap = 120.0;  // degrees; what handbooks ask for
  if (run.frontWrapDeg < kEnoughWrap)
    sentences << tr("Less than 120° of wrap on the front sprocket: it may jump teeth.");
  if (const auto& off = plan.stock.chainRun->measuredCentreOffLinks)
    sentences << tr("The measured centre distance and stock's links contradict each other by %1 links: "
                    "measure again, or "
                    "count them.")
                     .arg(number(std::abs(*off), 1));
  return sentences;
}

QStringList chainNotes(const Plan& plan, const UnitsShown& units) {
  QStringList notes;
  if (const auto& saving = plan.proposed.sprockets.saving) notes << savingWords(*saving, units);
  if (plan.stock.chainRun && plan.proposed.chainRun) notes << armWords(plan, units);
  notes.removeAll(QString());
  return notes;
}

QStringList chainLacks(const Plan& plan) {
  QStringList lacks;
  const auto& stock = plan.stock.setup.options;
  if (isBelt(plan.stock.setup)) {
    if (!stock.beltPitchMm) lacks << tr("stock's belt pitch");
    if (!stock.beltTeeth) lacks << tr("stock's belt teeth");
  } else {
    if (!stock.chainSize) lacks << tr("stock's chain size");
    if (!stock.links) lacks << tr("stock's number of links");
  }
  if (lacks.isEmpty() && !plan.stock.chainRun)
    lacks << tr("a number of links that reaches round stock's sprockets");
  if (lacks.isEmpty() && !plan.proposed.chainRun)
    lacks << tr("pitch and length of the proposed belt or chain");
  return lacks;
}

}  // namespace layshaft::ui
