// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chain_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ChainWords)
};

QString withUnit(double metres, const UnitsShown& units) {
  return number(units.shown(Quantity::SmallLength, metres), units.decimals(Quantity::SmallLength)) +
         QLatin1Char(' ') + units.name(Quantity::SmallLength);
}

QString takenOut(int links) {
  return links == 1 ? Say::tr("1 link taken out") : Say::tr("%1 links taken out").arg(links);
}

/// "moves 3.7 mm back", "stays where it is".
QString shiftWords(double shiftM, const UnitsShown& units) {
  const QString way = wayWords(shiftM, units);
  return way.isEmpty() ? Say::tr("stays where it is") : Say::tr("moves %1").arg(way);
}

/// "a 525 chain does not run on the rear sprocket, cut for 520 (other inner width)".
QString mixWords(const SizeMix& mix) {
  const SizeDifference differs = sizeDifference(mix.chain, mix.sprocket);
  QStringList what;
  if (differs.pitch) what << Say::tr("pitch");
  if (differs.roller) what << Say::tr("roller");
  if (differs.innerWidth) what << Say::tr("inner width");
  const auto name = [](const ChainSize& size) { return QString::fromUtf8(size.name.data()); };
  return (mix.place == SprocketPlace::Front
              ? Say::tr("a %1 chain does not run on the front sprocket, cut for %2 (other %3)")
              : Say::tr("a %1 chain does not run on the rear sprocket, cut for %2 (other %3)"))
      .arg(name(mix.chain), name(mix.sprocket), what.join(Say::tr(", ")));
}

/// Where a length comes from: the chain that is on, one of the box before one that must be cut, else a new
/// one.
QString sourceWords(const FittingLength& length, const ChainRunFigures& run) {
  if (run.belt) return length.links == run.links ? Say::tr("as it is") : Say::tr("another belt");
  if (length.shortenBy == 0) return Say::tr("as it is");
  QStringList ways;
  if (length.spare && length.spare->shortenBy == 0) ways << Say::tr("in the spares box");
  if (length.shortenBy) ways << Say::tr("this chain, %1").arg(takenOut(*length.shortenBy));
  if (ways.isEmpty() && length.spare)
    ways << Say::tr("the %1 of the spares box, %2")
                .arg(length.spare->links)
                .arg(takenOut(length.spare->shortenBy));
  return ways.isEmpty() ? Say::tr("a new chain") : ways.join(Say::tr(" or "));
}

/// "112 (this chain, 2 links taken out; axle moves 2.4 mm forward)", … for the lengths that would fit.
QString lengthWords(const ChainRunFigures& run, const UnitsShown& units) {
  QStringList words;
  for (const FittingLength& length : run.lengthsThatFit)
    words << Say::tr("%1 (%2; axle %3)")
                 .arg(length.links)
                 .arg(sourceWords(length, run), shiftWords(length.axleShiftM, units));
  return words.join(Say::tr(", "));
}

bool partsFit(const ChainRunFigures& run) {
  return std::all_of(run.misfits.begin(), run.misfits.end(), [](Misfit misfit) {
    return misfit == Misfit::AxleTooFarForward || misfit == Misfit::AxleTooFarBack ||
           misfit == Misfit::ChainDoesNotReach;
  });
}

/// Which lengths would do where this one does not, or that none does; empty where that cannot be told.
QString remedyWords(const ChainRunFigures& run, const UnitsShown& units) {
  if (!run.slotKnown || !partsFit(run)) return {};
  if (!run.lengthsThatFit.empty()) return Say::tr("Would fit: %1.").arg(lengthWords(run, units));
  return run.belt ? Say::tr("No belt of the listed lengths fits.") : Say::tr("No even number of links fits.");
}

QString secondsWords(const SprocketSaving& saving) {
  QStringList parts;
  const auto add = [&](const std::optional<double>& seconds, const QString& what) {
    if (!seconds) return;
    const QString size = number(std::abs(*seconds), 3);
    if (size != number(0.0, 3)) parts << Say::tr("%1 s %2").arg(size, what);
  };
  add(saving.driveS, Say::tr("on the drive"));
  add(saving.quarterMileS, Say::tr("over the quarter mile"));
  return parts.join(Say::tr(", "));
}

/// Which of them differ from stock's: "The rear sprocket weighs".
QString whichWeigh(const SprocketSaving& saving) {
  const auto differs = [](const std::optional<SprocketDifference>& d) {
    return d && (d->kg != 0.0 || d->wheelInertiaKgM2 != 0.0);
  };
  const bool front = differs(saving.front), rear = differs(saving.rear);
  if (front && rear) return Say::tr("Both sprockets together weigh");
  return front ? Say::tr("The front sprocket weighs") : Say::tr("The rear sprocket weighs");
}

QString savingWords(const SprocketSaving& saving, const UnitsShown& units) {
  constexpr double kNothing = 0.005;  // kg
  if (std::abs(saving.kg) < kNothing && std::abs(saving.equivalentKg) < kNothing) return {};
  const auto mass = [&](double x) {
    return number(units.shown(Quantity::Mass, std::abs(x)), 2) + QLatin1Char(' ') +
           units.name(Quantity::Mass);
  };
  QStringList sentences;
  const QString seconds = secondsWords(saving);
  if (std::abs(saving.kg) < kNothing)
    sentences << Say::tr("%1 as much as stock's.").arg(whichWeigh(saving));
  else
    sentences << (saving.kg > 0.0 ? Say::tr("%1 %2 less than stock's.") : Say::tr("%1 %2 more than stock's."))
                     .arg(whichWeigh(saving), mass(saving.kg));
  sentences << (saving.equivalentKg >= 0.0 ? Say::tr("As it turns, that is as if the bike were %1 lighter")
                                           : Say::tr("As it turns, that is as if the bike were %1 heavier"))
                       .arg(mass(saving.equivalentKg)) +
                   (seconds.isEmpty()            ? Say::tr(".")
                    : saving.equivalentKg >= 0.0 ? Say::tr(", which saves %1.").arg(seconds)
                                                 : Say::tr(", which costs %1.").arg(seconds));
  if (saving.allCounted())
    sentences << Say::tr("It is counted in pull and runs.");
  else if (saving.anyCounted())
    sentences << Say::tr(
        "Only what was weighed is counted in pull and runs; the rest is an estimate from teeth and "
        "material.");
  else
    sentences << Say::tr(
        "That is an estimate from teeth and material, and not counted in pull and runs: weigh both, old and "
        "new, to count it.");
  return sentences.join(QLatin1Char(' '));
}

/// What another anti-squat does: below 100 % the rear sinks under power, above it rises.
QString squatWords(double from, double to) {
  const QString was = number(from, 1), is = number(to, 1);
  if (was == is) return {};
  const QString change = Say::tr("Anti-squat goes from %1 to %2 %: under power the rear ").arg(was, is);
  constexpr double kNeutral = 100.0;
  if (from <= kNeutral && to <= kNeutral)
    return change + (to > from ? Say::tr("squats less.") : Say::tr("squats more."));
  if (from >= kNeutral && to >= kNeutral)
    return change + (to > from ? Say::tr("rises more.") : Say::tr("rises less."));
  return change + (to > from ? Say::tr("rises where it squatted.") : Say::tr("squats where it rose."));
}

QString armWords(const Plan& plan, const UnitsShown& units) {
  const auto& from = plan.stock.chainRun->swingarm;
  const auto& to = plan.proposed.chainRun->swingarm;
  if (!from || !to) return {};
  QStringList parts;
  if (from->antiSquatPercent && to->antiSquatPercent)
    if (const QString squat = squatWords(*from->antiSquatPercent, *to->antiSquatPercent); !squat.isEmpty())
      parts << squat;
  if (to->tightSpot)
    parts << (plan.proposed.chainRun->belt
                  ? Say::tr("The belt is tightest with the swingarm at %1°, "
                            "countershaft, pivot and axle in line. In the "
                            "posture given the middle of its run then needs at least %2 "
                            "of play. The manual's figure goes first.")
                  : Say::tr("The chain is tightest with the swingarm at %1°, "
                            "countershaft, pivot and axle in line. In the "
                            "posture given the middle of its run then needs at least %2 "
                            "of play. The manual's slack goes first."))
                 .arg(number(to->tightSpot->angleDeg, 1), withUnit(to->tightSpot->leastPlayM, units));
  return parts.join(QLatin1Char(' '));
}

/// Whether the sprockets are all that is between the two.
bool onlyPairChanges(const SetupPlan& a, const SetupPlan& b) {
  return a.setup.primaryRatio == b.setup.primaryRatio && a.setup.gearRatios == b.setup.gearRatios &&
         a.gearing.rollout.metres == b.gearing.rollout.metres;
}

}  // namespace

QString wayWords(double shiftM, const UnitsShown& units) {
  const int decimals = units.decimals(Quantity::SmallLength);
  const QString size = number(std::abs(units.shown(Quantity::SmallLength, shiftM)), decimals);
  if (size == number(0.0, decimals)) return {};
  return (shiftM > 0.0 ? Say::tr("%1 %2 back") : Say::tr("%1 %2 forward"))
      .arg(size, units.name(Quantity::SmallLength));
}

QString misfitWords(Misfit misfit, const ChainRunFigures& run, const UnitsShown& units) {
  switch (misfit) {
    case Misfit::AxleTooFarForward:
    case Misfit::AxleTooFarBack: {
      const QString way = wayWords(run.axleShiftM.value_or(0.0), units);
      return way.isEmpty() ? Say::tr("the axle moves by a hair and has no slot for it")
                           : Say::tr("the axle moves %1, beyond its slot").arg(way);
    }
    case Misfit::FrontTooLarge:
      return Say::tr("the front sprocket is too large for its place");
    case Misfit::FrontTooSmall:
      return Say::tr("the front sprocket is smaller than allowed");
    case Misfit::RearTooLarge:
      return Say::tr("the rear sprocket is too large for its place");
    case Misfit::RearTooSmall:
      return Say::tr("the rear sprocket is smaller than allowed");
    case Misfit::MixedSizes: {
      QStringList mixes;
      for (const SizeMix& mix : run.mixes) mixes << mixWords(mix);
      return mixes.join(Say::tr(", "));
    }
    case Misfit::ChainDoesNotReach:
      break;
  }
  return run.belt ? Say::tr("the belt does not reach round") : Say::tr("the chain does not reach round");
}

QString otherLengthsWords(const ChainRunFigures& run) {
  QStringList lengths;
  for (const FittingLength& length : run.lengthsThatFit)
    if (const QString links = QString::number(length.links); !lengths.contains(links)) lengths << links;
  if (lengths.isEmpty()) return {};
  return (run.belt ? Say::tr("with %1 teeth") : Say::tr("with %1 links")).arg(lengths.join(Say::tr(" or ")));
}

QString fitWords(const Plan& plan, const SetupPlan& setup, const UnitsShown& units) {
  const auto& run = setup.chainRun;
  if (!run) return {};
  const QString loop = (run->belt         ? Say::tr("a belt of %1 teeth")
                        : run->offsetLink ? Say::tr("%1 links, an odd number with an offset link")
                                          : Say::tr("%1 links"))
                           .arg(run->links);
  if (run->fits.value_or(true)) {
    constexpr double kNothing = 1e-6;  // m
    if (plan.stock.chainRun && std::abs(run->axleShiftM.value_or(0.0)) < kNothing) return {};
    const QString axle = Say::tr("the axle %1").arg(shiftWords(run->axleShiftM.value_or(0.0), units));
    return run->fits ? Say::tr("Fits with %1: %2.").arg(loop, axle)
                     : Say::tr("With %1: %2; the ends of its slot are not both given.").arg(loop, axle);
  }
  QStringList reasons;
  for (const Misfit misfit : run->misfits) reasons << misfitWords(misfit, *run, units);
  const QString words = Say::tr("Does not fit with %1: %2.").arg(loop, reasons.join(Say::tr(", ")));
  const QString remedy = remedyWords(*run, units);
  return remedy.isEmpty() ? words : words + QLatin1Char(' ') + remedy;
}

QString turnWords(const Plan& plan) {
  const double more = plan.proposed.change.finalRatioPercent;
  const QString size = number(std::abs(more), 1);
  if (size == number(0.0, 1))
    return Say::tr("For one turn of the rear wheel the front sprocket turns as often as with stock.");
  const QString turns =
      (more > 0.0 ? Say::tr("For one turn of the rear wheel the front sprocket turns %1 % more")
                  : Say::tr("For one turn of the rear wheel the front sprocket turns %1 % less"))
          .arg(size);
  if (!onlyPairChanges(plan.stock, plan.proposed))
    return turns + Say::tr("; primary, gears or tyre change, too.");
  return turns + (more > 0.0 ? Say::tr(": every gear is shorter.") : Say::tr(": every gear is taller."));
}

QStringList chainVerdict(const Plan& plan, const UnitsShown& units) {
  const SetupPlan& setup = plan.proposed;
  if (!setup.chainRun || !plan.stock.chainRun) return {};
  QStringList sentences;
  const ChainRunFigures& run = *setup.chainRun;
  const QString fit = fitWords(plan, setup, units);
  sentences << (fit.isEmpty() ? Say::tr("The axle stays where it is.") : fit);
  const bool others = run.lengthsThatFit.size() > 1 ||
                      (run.lengthsThatFit.size() == 1 && run.lengthsThatFit.front().links != run.links);
  if (run.fits.value_or(true) && others)
    sentences << Say::tr("Lengths that fit: %1.").arg(lengthWords(run, units));
  if (run.offsetLink)
    sentences << Say::tr(
        "An odd number of links needs an offset link, the weakest of a chain: choose an even one.");
  if (run.lowWrap) sentences << Say::tr("Less than 120° of wrap on the smaller sprocket: it may jump teeth.");
  if (const auto& off = plan.stock.chainRun->measuredCentreOffLinks)
    sentences << (plan.stock.chainRun->belt
                      ? Say::tr("The measured centre distance and stock's belt contradict "
                                "each other by %1 teeth: measure "
                                "again, or count them.")
                      : Say::tr("The measured centre distance and stock's links contradict "
                                "each other by %1 links: measure "
                                "again, or count them."))
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

}  // namespace layshaft::ui
