// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/aim_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>
#include <functional>
#include <optional>

#include "core/units.h"
#include "ui/words/chain_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr std::size_t kMostLeftOut = 3;  // of the better pairs that do not fit, so many are named

struct Say {
  Q_DECLARE_TR_FUNCTIONS(AimWords)
};

/// A size that is missed by reads as more than nothing.
QString sizeWords(double size, int decimals) {
  constexpr int kMostDecimals = 3;
  while (decimals < kMostDecimals && size > 0.0 && number(size, decimals) == number(0.0, decimals))
    ++decimals;
  return number(size, decimals);
}

QString pairWords(const LadderRow& row) {
  return pairText(row.frontTeeth, row.rearTeeth);
}

QString marginsWords(const LadderRow& row, const std::vector<Aim>& aims, const UnitsShown& units) {
  QStringList words;
  for (std::size_t i = 0; i < aims.size() && i < row.aims.size(); ++i)
    if (const QString margin = marginWords(aims[i], row.aims[i], units); !margin.isEmpty()) words << margin;
  return words.join(Say::tr(", ", "between margins"));
}

/// Why a pair is left out that would answer the aims; where there is one that fits, what it is better in.
QString leftOutWords(const LadderRow& row, const QString& named, std::optional<BetterBy> better,
                     const UnitsShown& units) {
  QStringList misfits;
  for (const Misfit misfit : row.chainRun->misfits) misfits << misfitWords(misfit, *row.chainRun, units);
  const QString reasons = misfits.join(Say::tr(", ", "between reasons"));
  const QString lengths = otherLengthsWords(*row.chainRun);
  const QString why = lengths.isEmpty()
                          ? Say::tr("%1, because %2", "a pair that is left out").arg(named, reasons)
                          : Say::tr("%1, because %2; it would fit %3", "%3 is \"with 112 or 114 links\"")
                                .arg(named, reasons, lengths);
  if (!better) return Say::tr("Left out: %1.").arg(why);
  switch (*better) {
    case BetterBy::DriveTime:
    case BetterBy::LapTime:
      return Say::tr("Quicker but left out: %1.").arg(why);
    case BetterBy::EngineSpeed:
      return Say::tr("Nearer to the aim but left out: %1.").arg(why);
    case BetterBy::SmallerChange:
      break;
  }
  return Say::tr("A smaller change but left out: %1.").arg(why);
}

/// Where none is best, the pair that comes nearest.
QString nearestWords(const AimAnswer& answer, const std::function<QString(std::size_t)>& named) {
  if (!answer.nearestThatFits)
    return answer.nearest ? Say::tr("Nearest, though it does not fit: %1.").arg(named(*answer.nearest))
                          : QString();
  const QString pair = named(*answer.nearestThatFits);
  return (answer.nearest == answer.nearestThatFits ? Say::tr("Nearest: %1.")
                                                   : Say::tr("Nearest that fits: %1."))
      .arg(pair);
}

/// The sentence with the gear in it, or the one for top gear where none is named; both have the gear
/// last.
QString inGear(const std::optional<int>& gear, const QString& named, const QString& last) {
  return gear ? named.arg(*gear) : last;
}

QString gainWords(const Aim& aim) {
  const double wanted = aim.percent.value_or(0.0);
  const QString size = number(std::abs(wanted), wanted == std::round(wanted) ? 0 : 1);
  if (wanted >= 0.0)
    return inGear(aim.gear, Say::tr("%1 % more pull in gear %2").arg(size),
                  Say::tr("%1 % more pull in top gear").arg(size));
  return inGear(aim.gear, Say::tr("at most %1 % less pull in gear %2").arg(size),
                Say::tr("at most %1 % less pull in top gear").arg(size));
}

}  // namespace

QString aimWords(const Aim& aim, const UnitsShown& units) {
  const QString speed = units.chosenSpeed(units::mpsFromKmh(aim.speedKmh.value_or(0.0)));
  const QString rpm = number(aim.rpm.value_or(0.0), 0);
  switch (aim.want) {
    case Aim::Want::RevAtSpeed:
      return inGear(aim.gear, Say::tr("%1 rpm at %2 in gear %3").arg(rpm, speed),
                    Say::tr("%1 rpm at %2 in top gear").arg(rpm, speed));
    case Aim::Want::CruiseBelow:
      return inGear(aim.gear, Say::tr("below %1 rpm at %2 in gear %3").arg(rpm, speed),
                    Say::tr("below %1 rpm at %2 in top gear").arg(rpm, speed));
    case Aim::Want::PullGain:
      return gainWords(aim);
    case Aim::Want::LeastDriveTime:
      return Say::tr("quickest to the end of the straight");
    case Aim::Want::LeastLapTime:
      return Say::tr("quickest round the lap");
    case Aim::Want::RevAtDriveEnd:
      return inGear(aim.gear, Say::tr("gear %2 at %1 rpm at the end of the straight").arg(rpm),
                    Say::tr("top gear at %1 rpm at the end of the straight").arg(rpm));
    case Aim::Want::TopSpeedAtLeast:
      break;
  }
  return Say::tr("top speed at least %1").arg(speed);
}

QString marginWords(const Aim& aim, const AimOutcome& outcome, const UnitsShown& units) {
  if (!outcome.margin) return {};
  const double margin = *outcome.margin;
  const double size = std::abs(margin);
  switch (aim.want) {
    case Aim::Want::RevAtSpeed:
    case Aim::Want::RevAtDriveEnd:
      return Say::tr("%1 rpm off").arg(number(size, 0));
    case Aim::Want::CruiseBelow:
      return (margin >= 0.0 ? Say::tr("%1 rpm below") : Say::tr("%1 rpm above")).arg(sizeWords(size, 0));
    case Aim::Want::PullGain:
      return (outcome.reached ? Say::tr("%1 % pull to spare") : Say::tr("%1 % pull short"))
          .arg(sizeWords(size, 1));
    case Aim::Want::LeastDriveTime:
      if (equalTimes(margin, 0.0)) return Say::tr("as quick as stock");
      return (margin > 0.0 ? Say::tr("%1 s quicker") : Say::tr("%1 s slower")).arg(number(size, 2));
    case Aim::Want::LeastLapTime:
      if (equalTimes(margin, 0.0, outcome.bandS)) return Say::tr("equal to stock round the lap");
      return (margin > 0.0 ? Say::tr("%1 s a lap quicker") : Say::tr("%1 s a lap slower"))
          .arg(number(size, 2));
    case Aim::Want::TopSpeedAtLeast:
      break;
  }
  return (outcome.reached ? Say::tr("%1 to spare", "a speed") : Say::tr("%1 short", "a speed"))
      .arg(units.withUnit(sizeWords(units.shown(Quantity::Speed, size), 0), Quantity::Speed));
}

QString aimAnswerWords(const std::vector<LadderRow>& rows, const std::vector<Aim>& aims,
                       const UnitsShown& units) {
  if (aims.empty() || rows.empty()) return {};
  const AimAnswer answer = aimAnswer(rows, aims);
  const auto named = [&](const LadderRow& row) {
    const QString margins = marginsWords(row, aims, units);
    return margins.isEmpty() ? pairWords(row)
                             : Say::tr("%1 (%2)", "pair and margins").arg(pairWords(row), margins);
  };
  QStringList sentences;
  if (answer.best)
    sentences << Say::tr("Best for the aims: %1.").arg(named(rows[*answer.best]));
  else
    sentences << (answer.betterLeftOut.empty() ? Say::tr("No pair in this range meets every aim.")
                                               : Say::tr("No pair in this range meets every aim and fits."))
              << nearestWords(answer, [&](std::size_t i) { return named(rows[i]); });
  QStringList asQuick;
  for (const std::size_t i : answer.asQuick) asQuick << pairWords(rows[i]);
  if (!asQuick.isEmpty())
    sentences << Say::tr("Equal to it within %1 s: %2.", "%2 is a list of pairs")
                     .arg(number(std::ceil(100.0 * answer.asQuickWithinS - 1e-6) / 100.0, 2),
                          asQuick.join(Say::tr(", ", "between pairs")));
  const std::size_t all = answer.betterLeftOut.size(), shown = std::min(kMostLeftOut, all);
  for (std::size_t i = 0; i < shown; ++i) {
    const LadderRow& row = rows[answer.betterLeftOut[i]];
    const auto better = i < answer.betterBy.size() ? std::optional(answer.betterBy[i]) : std::nullopt;
    sentences << leftOutWords(row, named(row), better, units);
  }
  if (all > shown) sentences << Say::tr("%n more are left out.", nullptr, static_cast<int>(all - shown));
  return sentences.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
