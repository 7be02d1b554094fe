// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/aim_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>

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

/// Why a pair is left out that would answer the aims, better than one that fits where there is one.
QString leftOutWords(const LadderRow& row, const QString& named, bool better, const UnitsShown& units) {
  QStringList misfits;
  for (const Misfit misfit : row.chainRun->misfits) misfits << misfitWords(misfit, *row.chainRun, units);
  const QString reasons = misfits.join(Say::tr(", ", "between reasons"));
  const QString lengths = otherLengthsWords(*row.chainRun);
  if (lengths.isEmpty())
    return (better ? Say::tr("Better but left out: %1, because %2.") : Say::tr("Left out: %1, because %2."))
        .arg(named, reasons);
  return (better ? Say::tr("Better but left out: %1, because %2; it would fit %3.",
                           "%3 is \"with 112 or 114 links\"")
                 : Say::tr("Left out: %1, because %2; it would fit %3.", "%3 is \"with 112 or 114 links\""))
      .arg(named, reasons, lengths);
}

/// The sentence with the gear in it, or the one for the last gear where none is named; both have the gear
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
  const QString speed =
      units.withUnit(number(units.shown(Quantity::Speed, units::mpsFromKmh(aim.speedKmh.value_or(0.0))), 0),
                     Quantity::Speed);
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
      return Say::tr("%1 rpm off").arg(number(size, 0));
    case Aim::Want::CruiseBelow:
      return (margin >= 0.0 ? Say::tr("%1 rpm below") : Say::tr("%1 rpm above")).arg(sizeWords(size, 0));
    case Aim::Want::PullGain:
      return (outcome.reached ? Say::tr("%1 % pull to spare") : Say::tr("%1 % pull short"))
          .arg(sizeWords(size, 1));
    case Aim::Want::LeastDriveTime:
      if (number(size, 2) == number(0.0, 2)) return Say::tr("as quick as stock");
      return (margin > 0.0 ? Say::tr("%1 s quicker") : Say::tr("%1 s slower")).arg(number(size, 2));
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
                                               : Say::tr("No pair in this range meets every aim and fits."));
  const std::size_t all = answer.betterLeftOut.size(), shown = std::min(kMostLeftOut, all);
  for (std::size_t i = 0; i < shown; ++i) {
    const LadderRow& row = rows[answer.betterLeftOut[i]];
    sentences << leftOutWords(row, named(row), answer.best.has_value(), units);
  }
  if (all > shown) sentences << Say::tr("%n more are left out.", nullptr, static_cast<int>(all - shown));
  return sentences.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
