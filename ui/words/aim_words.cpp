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
  return words.join(Say::tr(", "));
}

QString whyNot(const LadderRow& row, const UnitsShown& units) {
  QStringList reasons;
  for (const Misfit misfit : row.chainRun->misfits) reasons << misfitWords(misfit, *row.chainRun, units);
  const QString lengths = otherLengthsWords(*row.chainRun);
  return reasons.join(Say::tr(", ")) +
         (lengths.isEmpty() ? QString() : Say::tr("; it would fit %1").arg(lengths));
}

}  // namespace

QString aimWords(const Aim& aim, const UnitsShown& units) {
  const QString gear = aim.gear ? Say::tr("gear %1").arg(*aim.gear) : Say::tr("last gear");
  const QString speed =
      number(units.shown(Quantity::Speed, units::mpsFromKmh(aim.speedKmh.value_or(0.0))), 0) +
      QLatin1Char(' ') + units.name(Quantity::Speed);
  const QString rpm = number(aim.rpm.value_or(0.0), 0);
  switch (aim.want) {
    case Aim::Want::RevAtSpeed:
      return Say::tr("%1 at %2 rpm at %3").arg(gear, rpm, speed);
    case Aim::Want::CruiseBelow:
      return Say::tr("%1 below %2 rpm at %3").arg(gear, rpm, speed);
    case Aim::Want::PullGain: {
      const double percentage = aim.percent.value_or(0.0);
      return (percentage >= 0.0 ? Say::tr("%1 % more pull in %2") : Say::tr("at most %1 % less pull in %2"))
          .arg(number(std::abs(percentage), percentage == std::round(percentage) ? 0 : 1), gear);
    }
    case Aim::Want::LeastDriveTime:
      return Say::tr("end of the drive in least time");
    case Aim::Want::TopSpeedAtLeast:
      break;
  }
  return Say::tr("no slower than %1").arg(speed);
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
  return (outcome.reached ? Say::tr("%1 %2 to spare") : Say::tr("%1 %2 short"))
      .arg(sizeWords(units.shown(Quantity::Speed, size), 0), units.name(Quantity::Speed));
}

QString aimAnswerWords(const std::vector<LadderRow>& rows, const std::vector<Aim>& aims,
                       const UnitsShown& units) {
  if (aims.empty() || rows.empty()) return {};
  const AimAnswer answer = aimAnswer(rows, aims);
  const auto named = [&](const LadderRow& row) {
    const QString margins = marginsWords(row, aims, units);
    return margins.isEmpty() ? pairWords(row) : Say::tr("%1 (%2)").arg(pairWords(row), margins);
  };
  QStringList sentences;
  if (answer.best)
    sentences << Say::tr("Best for the aims: %1.").arg(named(rows[*answer.best]));
  else
    sentences << (answer.betterLeftOut.empty() ? Say::tr("No pair of this range reaches all aims.")
                                               : Say::tr("No pair of this range reaches all aims and fits."));
  const std::size_t all = answer.betterLeftOut.size(), shown = std::min(kMostLeftOut, all);
  for (std::size_t i = 0; i < shown; ++i) {
    const LadderRow& row = rows[answer.betterLeftOut[i]];
    sentences << (answer.best ? Say::tr("Better but left out: %1, because %2.")
                              : Say::tr("Left out: %1, because %2."))
                     .arg(named(row), whyNot(row, units));
  }
  if (all == shown + 1) sentences << Say::tr("One more is left out.");
  if (all > shown + 1) sentences << Say::tr("%1 more are left out.").arg(all - shown);
  return sentences.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
