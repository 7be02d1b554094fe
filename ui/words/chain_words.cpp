// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chain_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <set>

#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ChainWords)
};

QString withUnit(double metres, const UnitsShown& units) {
  return units.withUnit(
      number(units.shown(Quantity::SmallLength, metres), units.decimals(Quantity::SmallLength)),
      Quantity::SmallLength);
}

/// "a 525 chain will not run on the rear sprocket, cut for 520 (other inner width)".
QString mixWords(const SizeMix& mix) {
  const SizeDifference differs = sizeDifference(mix.chain, mix.sprocket);
  QStringList what;
  if (differs.pitch) what << Say::tr("pitch");
  if (differs.roller) what << Say::tr("roller");
  if (differs.innerWidth) what << Say::tr("inner width");
  const auto name = [](const ChainSize& size) { return QString::fromUtf8(size.name.data()); };
  return (mix.place == SprocketPlace::Front
              ? Say::tr("a %1 chain will not run on the front sprocket, cut for %2 (different %3)")
              : Say::tr("a %1 chain will not run on the rear sprocket, cut for %2 (different %3)"))
      .arg(name(mix.chain), name(mix.sprocket), what.join(Say::tr(", ", "between dimensions")));
}

/// Where a length comes from: the chain on the bike, one of the box before one that must be cut, else a new
/// one.
QString sourceWords(const FittingLength& length, const ChainRunFigures& run) {
  if (run.belt) return length.links == run.links ? Say::tr("as it is") : Say::tr("another belt");
  QStringList ways;
  if (length.shortenBy)
    ways << (*length.shortenBy == 0 ? Say::tr("this chain")
                                    : Say::tr("this chain, %n links taken out", nullptr, *length.shortenBy));
  if (length.spare && length.spare->shortenBy == 0)
    //: %1 is the number of links of a chain
    ways << Say::tr("the %1-link chain in the spares box").arg(length.spare->links);
  if (ways.isEmpty() && length.spare)
    //: %1 is the number of links of a chain
    ways << Say::tr("the %1-link chain in the spares box, %n links taken out", nullptr,
                    length.spare->shortenBy)
                .arg(length.spare->links);
  return ways.isEmpty() ? Say::tr("a new chain") : ways.join(Say::tr(" or ", "between ways to get a chain"));
}

/// "112 (this chain, 2 links taken out; axle moves 2.4 mm forward)", … for the lengths that would fit.
QString lengthWords(const ChainRunFigures& run, const UnitsShown& units) {
  QStringList words;
  for (const FittingLength& length : run.lengthsThatFit)
    words << byShift(length.axleShiftM, units,
                     //: links or teeth, and where they come from
                     Say::tr("%2 (%3; axle stays where it is)"),
                     //: links or teeth, and where they come from
                     Say::tr("%2 (%3; axle moves %1 back)"),
                     //: links or teeth, and where they come from
                     Say::tr("%2 (%3; axle moves %1 forward)"))
                 .arg(QString::number(length.links), sourceWords(length, run));
  return words.join(Say::tr(", ", "between lengths"));
}

bool partsFit(const ChainRunFigures& run) {
  return std::all_of(run.misfits.begin(), run.misfits.end(), [](Misfit misfit) {
    return misfit == Misfit::AxleTooFarForward || misfit == Misfit::AxleTooFarBack ||
           misfit == Misfit::ChainDoesNotReach;
  });
}

/// Which lengths would do where this one does not, or that none does; empty where that cannot be told.
QString remedyWords(const ChainRunFigures& run, const UnitsShown& units, FitDetail detail) {
  if (!run.slotKnown || !partsFit(run)) return {};
  if (run.lengthsThatFit.empty())
    return run.belt ? Say::tr("None of the available belt lengths fits.")
                    : Say::tr("No even number of links fits.");
  if (detail == FitDetail::Short)
    return Say::tr("Would fit %1.", "%1 is \"with 112 or 114 links\"").arg(otherLengthsWords(run));
  return Say::tr("Would fit: %1.").arg(lengthWords(run, units));
}

QString secondsWords(const SprocketSaving& saving) {
  QStringList parts;
  const auto add = [&](const std::optional<double>& seconds, const QString& words) {
    if (!seconds) return;
    const QString size = number(std::abs(*seconds), 3);
    if (size != number(0.0, 3)) parts << words.arg(size);
  };
  add(saving.driveS, Say::tr("%1 s on the straight"));
  add(saving.quarterMileS, Say::tr("%1 s over the quarter mile"));
  return parts.join(Say::tr(", ", "between times"));
}

constexpr double kNoMass = 0.005;  // kg

QString massWords(double kg, const UnitsShown& units) {
  return units.withUnit(number(units.shown(Quantity::Mass, std::abs(kg)), 2), Quantity::Mass);
}

/// What those that differ from stock's weigh against them.
QString weightWords(const SprocketSaving& saving, bool belt, const UnitsShown& units) {
  const auto differs = [](const std::optional<SprocketDifference>& d) {
    return d && (d->kg != 0.0 || d->wheelInertiaKgM2 != 0.0);
  };
  const auto say = [&](const QString& alike, const QString& less, const QString& more) {
    if (std::abs(saving.kg) < kNoMass) return alike;
    return (saving.kg > 0.0 ? less : more).arg(massWords(saving.kg, units));
  };
  if (differs(saving.front) && differs(saving.rear))
    return belt ? say(Say::tr("Both pulleys together weigh as much as stock's."),
                      Say::tr("Both pulleys together weigh %1 less than stock's."),
                      Say::tr("Both pulleys together weigh %1 more than stock's."))
                : say(Say::tr("Both sprockets together weigh as much as stock's."),
                      Say::tr("Both sprockets together weigh %1 less than stock's."),
                      Say::tr("Both sprockets together weigh %1 more than stock's."));
  if (differs(saving.front))
    return belt ? say(Say::tr("The front pulley weighs as much as stock's."),
                      Say::tr("The front pulley weighs %1 less than stock's."),
                      Say::tr("The front pulley weighs %1 more than stock's."))
                : say(Say::tr("The front sprocket weighs as much as stock's."),
                      Say::tr("The front sprocket weighs %1 less than stock's."),
                      Say::tr("The front sprocket weighs %1 more than stock's."));
  return belt ? say(Say::tr("The rear pulley weighs as much as stock's."),
                    Say::tr("The rear pulley weighs %1 less than stock's."),
                    Say::tr("The rear pulley weighs %1 more than stock's."))
              : say(Say::tr("The rear sprocket weighs as much as stock's."),
                    Say::tr("The rear sprocket weighs %1 less than stock's."),
                    Say::tr("The rear sprocket weighs %1 more than stock's."));
}

/// What that is worth as it turns, on the scales and on the clock.
QString worthWords(const SprocketSaving& saving, const UnitsShown& units) {
  const QString mass = massWords(saving.equivalentKg, units);
  const bool lighter = saving.equivalentKg >= 0.0;
  const QString seconds = secondsWords(saving);
  if (seconds.isEmpty())
    return (lighter ? Say::tr("Because it spins, that is worth %1 off the bike.")
                    : Say::tr("Because it spins, that is worth %1 on the bike."))
        .arg(mass);
  return (lighter ? Say::tr("Because it spins, that is worth %1 off the bike and saves %2.",
                            "%2 is \"0.012 s on the straight\"")
                  : Say::tr("Because it spins, that is worth %1 on the bike and costs %2.",
                            "%2 is \"0.012 s on the straight\""))
      .arg(mass, seconds);
}

QString savingWords(const SprocketSaving& saving, bool belt, const UnitsShown& units) {
  if (std::abs(saving.kg) < kNoMass && std::abs(saving.equivalentKg) < kNoMass) return {};
  QStringList sentences{weightWords(saving, belt, units), worthWords(saving, units)};
  if (saving.allCounted())
    sentences << Say::tr("It counts in pull and acceleration.");
  else if (saving.anyCounted())
    sentences << Say::tr(
        "Only what was weighed counts in pull and acceleration; the rest is an estimate from teeth and "
        "material.");
  else
    sentences << Say::tr(
        "That is an estimate from teeth and material and does not count in pull and acceleration: weigh "
        "both, old and new, to count it.");
  return sentences.join(QLatin1Char(' '));
}

/// What another anti-squat does: below 100 % the rear sinks under power, above it rises.
QString squatWords(double from, double to) {
  const QString was = number(from, 1), is = number(to, 1);
  if (was == is) return {};
  const bool more = to > from;
  constexpr double kNeutral = 100.0;
  if (from <= kNeutral && to <= kNeutral)
    return (more ? Say::tr("Anti-squat goes from %1 to %2 %: under power the rear squats less.")
                 : Say::tr("Anti-squat goes from %1 to %2 %: under power the rear squats more."))
        .arg(was, is);
  if (from >= kNeutral && to >= kNeutral)
    return (more ? Say::tr("Anti-squat goes from %1 to %2 %: under power the rear rises more.")
                 : Say::tr("Anti-squat goes from %1 to %2 %: under power the rear rises less."))
        .arg(was, is);
  return (more ? Say::tr("Anti-squat goes from %1 to %2 %: under power the rear rises where it squatted.")
               : Say::tr("Anti-squat goes from %1 to %2 %: under power the rear squats where it rose."))
      .arg(was, is);
}

QString armWords(const Plan& plan, const UnitsShown& units) {
  const auto& from = plan.stock.chainRun->swingarm;
  const auto& to = plan.proposed.chainRun->swingarm;
  if (!from || !to) return {};
  QStringList parts;
  if (from->antiSquatPercent && to->antiSquatPercent)
    if (const QString squat = squatWords(*from->antiSquatPercent, *to->antiSquatPercent); !squat.isEmpty())
      parts << squat;
  if (to->tightSpot && plan.proposed.chainRun->belt)
    parts << Say::tr("The belt is tightest with the swingarm at %1°, countershaft, pivot and axle in line.")
                 .arg(number(to->tightSpot->angleDeg, 1));
  else if (to->tightSpot)
    parts << Say::tr(
                 "The chain is tightest with the swingarm at %1°, countershaft, pivot and axle in line. With "
                 "less than %2 of slack in mid-run it binds there.")
                 .arg(number(to->tightSpot->angleDeg, 1), withUnit(to->tightSpot->leastPlayM, units));
  return parts.join(QLatin1Char(' '));
}

/// Whether the sprockets are all that is between the two.
bool onlyPairChanges(const SetupPlan& a, const SetupPlan& b) {
  return a.setup.primaryRatio == b.setup.primaryRatio && a.setup.gearRatios == b.setup.gearRatios &&
         a.gearing.rollout.metres == b.gearing.rollout.metres;
}

/// Links or teeth of what runs round: "114 links".
QString loopWords(const ChainRunFigures& run) {
  if (run.belt) return Say::tr("a belt of %n teeth", nullptr, run.links);
  return run.offsetLink ? Say::tr("%n links, an odd number", nullptr, run.links)
                        : Say::tr("%n links", nullptr, run.links);
}

}  // namespace

QString byShift(double shiftM, const UnitsShown& units, const QString& stays, const QString& back,
                const QString& forward) {
  const int decimals = units.decimals(Quantity::SmallLength);
  const QString size = number(std::abs(units.shown(Quantity::SmallLength, shiftM)), decimals);
  if (size == number(0.0, decimals)) return stays;
  return (shiftM > 0.0 ? back : forward).arg(units.withUnit(size, Quantity::SmallLength));
}

QString misfitWords(Misfit misfit, const ChainRunFigures& run, const UnitsShown& units) {
  switch (misfit) {
    case Misfit::AxleTooFarForward:
    case Misfit::AxleTooFarBack:
      return byShift(run.axleShiftM.value_or(0.0), units, Say::tr("the axle has no adjustment left"),
                     Say::tr("the axle would have to move %1 back, past the end of its slot"),
                     Say::tr("the axle would have to move %1 forward, past the end of its slot"));
    case Misfit::FrontTooLarge:
      return run.belt ? Say::tr("the front pulley will not clear the case or cover")
                      : Say::tr("the front sprocket will not clear the case or cover");
    case Misfit::FrontTooSmall:
      return run.belt ? Say::tr("the front pulley is smaller than allowed")
                      : Say::tr("the front sprocket is smaller than allowed");
    case Misfit::RearTooLarge:
      return run.belt ? Say::tr("the rear pulley will not clear swingarm or guard")
                      : Say::tr("the rear sprocket will not clear swingarm or guard");
    case Misfit::RearTooSmall:
      return run.belt ? Say::tr("the rear pulley is smaller than allowed")
                      : Say::tr("the rear sprocket is smaller than allowed");
    case Misfit::MixedSizes: {
      QStringList mixes;
      for (const SizeMix& mix : run.mixes) mixes << mixWords(mix);
      return mixes.join(Say::tr(", ", "between reasons"));
    }
    case Misfit::ChainDoesNotReach:
      break;
  }
  return run.belt ? Say::tr("the belt is too short for its pulleys")
                  : Say::tr("the chain is too short for its sprockets");
}

QString otherLengthsWords(const ChainRunFigures& run) {
  std::set<int> rising;
  for (const FittingLength& length : run.lengthsThatFit) rising.insert(length.links);
  if (rising.empty()) return {};
  if (rising.size() == 1) {
    const int only = *rising.begin();
    return run.belt ? Say::tr("with %n teeth", nullptr, only) : Say::tr("with %n links", nullptr, only);
  }
  QStringList lengths;
  for (const int links : rising) lengths << QString::number(links);
  const QString last = lengths.takeLast();
  const QString all = Say::tr("%1 or %2", "numbers, the last alone")
                          .arg(lengths.join(Say::tr(", ", "between numbers")), last);
  return (run.belt ? Say::tr("with %1 teeth", "several lengths")
                   : Say::tr("with %1 links", "several lengths"))
      .arg(all);
}

QString misfitHeading(const ChainRunFigures& run) {
  if (run.fits == false) return Say::tr("Does not fit");
  return run.offsetLink ? Say::tr("Does not fit properly") : QString();
}

QString fitWords(const Plan& plan, const SetupPlan& setup, const UnitsShown& units, FitDetail detail) {
  const auto& run = setup.chainRun;
  if (!run) return {};
  const QString loop = loopWords(*run);
  if (run->fits.value_or(true)) {
    constexpr double kNothing = 1e-6;  // m
    if (plan.stock.chainRun && std::abs(run->axleShiftM.value_or(0.0)) < kNothing) return {};
    const double shift = run->axleShiftM.value_or(0.0);
    const QString words =
        run->fits && run->offsetLink ? byShift(shift, units,
                                               //: %2 is "113 links, an odd number"
                                               Say::tr("With %2: the axle stays where it is."),
                                               //: %2 is "113 links, an odd number"
                                               Say::tr("With %2: the axle moves %1 back."),
                                               //: %2 is "113 links, an odd number"
                                               Say::tr("With %2: the axle moves %1 forward."))
        : run->fits
            ? byShift(shift, units,
                      //: %2 is "114 links" or "a belt of 120 teeth"
                      Say::tr("Fits with %2: the axle stays where it is."),
                      //: %2 is "114 links" or "a belt of 120 teeth"
                      Say::tr("Fits with %2: the axle moves %1 back."),
                      //: %2 is "114 links" or "a belt of 120 teeth"
                      Say::tr("Fits with %2: the axle moves %1 forward."))
            : byShift(
                  shift, units,
                  //: %2 is "114 links" or "a belt of 120 teeth"
                  Say::tr("With %2: the axle stays where it is; the ends of its slot are not both given."),
                  //: %2 is "114 links" or "a belt of 120 teeth"
                  Say::tr("With %2: the axle moves %1 back; the ends of its slot are not both given."),
                  //: %2 is "114 links" or "a belt of 120 teeth"
                  Say::tr("With %2: the axle moves %1 forward; the ends of its slot are not both given."));
    return words.arg(loop);
  }
  QStringList reasons;
  for (const Misfit misfit : run->misfits) reasons << misfitWords(misfit, *run, units);
  QStringList sentences{
      Say::tr("Does not fit with %1: %2.").arg(loop, reasons.join(Say::tr(", ", "between reasons")))};
  if (const QString remedy = remedyWords(*run, units, detail); !remedy.isEmpty()) sentences << remedy;
  return sentences.join(QLatin1Char(' '));
}

QString turnWords(const Plan& plan) {
  const double more = plan.proposed.change.finalRatioPercent;
  const bool belt = isBelt(plan.proposed.setup);
  const QString size = number(std::abs(more), 1);
  if (size == number(0.0, 1))
    return belt
               ? Say::tr("For one turn of the rear wheel the front pulley makes as many turns as with stock.")
               : Say::tr(
                     "For one turn of the rear wheel the front sprocket makes as many turns as with stock.");
  if (!onlyPairChanges(plan.stock, plan.proposed)) {
    const QString words =
        belt ? (more > 0.0 ? Say::tr("For one turn of the rear wheel the front pulley makes %1 % more turns; "
                                     "primary, gears or tyre change too.")
                           : Say::tr("For one turn of the rear wheel the front pulley makes %1 % fewer "
                                     "turns; primary, gears or tyre change too."))
             : (more > 0.0 ? Say::tr("For one turn of the rear wheel the front sprocket makes %1 % more "
                                     "turns; primary, gears or tyre change too.")
                           : Say::tr("For one turn of the rear wheel the front sprocket makes %1 % fewer "
                                     "turns; primary, gears or tyre change too."));
    return words.arg(size);
  }
  const QString words = belt ? (more > 0.0 ? Say::tr("For one turn of the rear wheel the front pulley makes "
                                                     "%1 % more turns: every gear is shorter.")
                                           : Say::tr("For one turn of the rear wheel the front pulley makes "
                                                     "%1 % fewer turns: every gear is taller."))
                             : (more > 0.0 ? Say::tr("For one turn of the rear wheel the front sprocket "
                                                     "makes %1 % more turns: every gear is shorter.")
                                           : Say::tr("For one turn of the rear wheel the front sprocket "
                                                     "makes %1 % fewer turns: every gear is taller."));
  return words.arg(size);
}

QStringList chainVerdict(const Plan& plan, const UnitsShown& units) {
  const SetupPlan& setup = plan.proposed;
  if (!setup.chainRun || !plan.stock.chainRun) return {};
  QStringList sentences;
  const ChainRunFigures& run = *setup.chainRun;
  const QString fit = fitWords(plan, setup, units, FitDetail::Full);
  sentences << (fit.isEmpty() ? Say::tr("The axle stays where it is.") : fit);
  const bool others = run.lengthsThatFit.size() > 1 ||
                      (run.lengthsThatFit.size() == 1 && run.lengthsThatFit.front().links != run.links);
  if (run.fits.value_or(true) && others)
    sentences << Say::tr("Lengths that fit: %1.").arg(lengthWords(run, units));
  if (run.lowWrap)
    sentences << (run.belt ? Say::tr("Less than 120° of wrap on the smaller pulley: it may jump teeth.")
                           : Say::tr("Less than 120° of wrap on the smaller sprocket: it may jump teeth."));
  if (const auto& off = plan.stock.chainRun->measuredCentreOffLinks)
    sentences << (plan.stock.chainRun->belt
                      ? Say::tr("The measured centre distance and stock's belt don't agree, by %1 teeth: "
                                "re-measure, or count the teeth again.")
                      : Say::tr("The measured centre distance and stock's links don't agree, by %1 links: "
                                "re-measure, or count the links again."))
                     .arg(number(std::abs(*off), 1));
  return sentences;
}

QStringList chainNotes(const Plan& plan, const UnitsShown& units) {
  QStringList notes;
  if (const auto& saving = plan.proposed.sprockets.saving)
    notes << savingWords(*saving, isBelt(plan.proposed.setup), units);
  if (plan.stock.chainRun && plan.proposed.chainRun) notes << armWords(plan, units);
  notes.removeAll(QString());
  return notes;
}

}  // namespace layshaft::ui
