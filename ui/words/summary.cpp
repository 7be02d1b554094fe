// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/summary.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "ui/words/chain_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Summary)
};

constexpr double kNoticeablePercent = 0.05;  // below it a gear counts as unchanged, as in stepSize

QString sizeWords(StepSize size) {
  switch (size) {
    case StepSize::Small:
      return Say::tr("a small step");
    case StepSize::Moderate:
      return Say::tr("a moderate step");
    case StepSize::Large:
      return Say::tr("a large step");
    case StepSize::None:
      break;
  }
  return Say::tr("no step");
}

bool unchanged(double change) {
  return std::abs(change) < kNoticeablePercent;
}

bool uniform(const std::vector<double>& changes) {
  const auto [low, high] = std::minmax_element(changes.begin(), changes.end());
  return *high - *low < kNoticeablePercent;
}

QString shorterOrTaller(double change) {
  return change > 0 ? Say::tr("%1 % shorter").arg(percent(change))
                    : Say::tr("%1 % taller").arg(percent(change));
}

/// "gears 2 to 4" or "gear 6".
QString gearSpan(std::size_t first, std::size_t last) {
  if (first == last) return Say::tr("gear %1").arg(first + 1);
  return Say::tr("gears %1 to %2").arg(first + 1).arg(last + 1);
}

QString capitalised(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

QString wholeSentence(const QString& words) {
  return Say::tr("%1.", "a whole sentence").arg(capitalised(words));
}

/// Gear by gear, neighbours that change alike together: "Gear 1 is 4.1 % taller, gears 2 to 6 are as stock."
QString gearByGear(const std::vector<double>& changes) {
  QStringList parts;
  for (std::size_t first = 0; first < changes.size();) {
    std::size_t last = first;
    while (last + 1 < changes.size() && std::abs(changes[last + 1] - changes[first]) < kNoticeablePercent)
      ++last;
    const QString how = unchanged(changes[first]) ? Say::tr("as stock") : shorterOrTaller(changes[first]);
    parts << (first == last ? Say::tr("%1 is %2") : Say::tr("%1 are %2")).arg(gearSpan(first, last), how);
    first = last + 1;
  }
  return wholeSentence(parts.join(Say::tr(", ", "between parts of a sentence")));
}

/// Both names of the direction, once: shorter is "gearing down" in the trade, taller "gearing up".
QString directionName(bool shorter) {
  return shorter ? Say::tr("Shorter (geared down)") : Say::tr("Taller (geared up)");
}

QString rearTeethWords(double teeth) {
  const double count = std::abs(teeth);
  const QString amount = number(count, std::abs(count - std::round(count)) < 0.05 ? 0 : 1);
  const bool one = std::abs(count - 1.0) < 0.05;
  if (teeth > 0)
    return one ? Say::tr("one more tooth at the rear") : Say::tr("%1 more teeth at the rear").arg(amount);
  return one ? Say::tr("one tooth fewer at the rear") : Say::tr("%1 teeth fewer at the rear").arg(amount);
}

QString headline(const Plan& plan, const std::vector<double>& changes) {
  const SetupPlan& stock = plan.stock;
  const SetupPlan& proposed = plan.proposed;
  const auto stockGears = stock.gearing.gears.size();
  const auto gears = proposed.gearing.gears.size();
  const bool anyShorter =
      std::any_of(changes.begin(), changes.end(), [](double c) { return c >= kNoticeablePercent; });
  const bool anyTaller =
      std::any_of(changes.begin(), changes.end(), [](double c) { return c <= -kNoticeablePercent; });
  const QString directions = anyShorter && anyTaller
                                 ? Say::tr("Some gears shorter (geared down), some taller (geared up).")
                             : anyShorter || anyTaller ? wholeSentence(directionName(anyShorter))
                                                       : QString();
  if (gears != stockGears) {
    const QString count =
        gears == 1 ? Say::tr("1 gear instead of %1.").arg(stockGears)
                   : Say::tr("%n gears instead of %1.", nullptr, static_cast<int>(gears)).arg(stockGears);
    return QStringList{count, directions, gearByGear(changes)}.join(QLatin1Char(' ')).simplified();
  }
  if (std::all_of(changes.begin(), changes.end(), unchanged))
    return proposed.setup == stock.setup ? Say::tr("The proposal is the same as stock.")
                                         : Say::tr("Other parts, but the same gearing as stock.");
  if (!uniform(changes)) {
    if (anyShorter && anyTaller) return directions + QLatin1Char(' ') + gearByGear(changes);
    return Say::tr("%1, but not in every gear alike. %2").arg(directionName(anyShorter), gearByGear(changes));
  }
  const double change = proposed.change.gearingPercent;
  const double rearTeeth = proposed.change.wholeGearingTeethEquivalent;
  if (std::abs(rearTeeth) < 0.25)
    return Say::tr("%1 by %2 %, %3: less than a quarter of a tooth at the rear.")
        .arg(directionName(change > 0), percent(change), sizeWords(proposed.change.size));
  return Say::tr("%1 by %2 %, %3: about as much as %4.")
      .arg(directionName(change > 0), percent(change), sizeWords(proposed.change.size),
           rearTeethWords(rearTeeth));
}

/// "front 16 → 15", "tyre 180/55ZR17 → 190/55ZR17, rollout 1.939 → 1.973 m": what is different about the
/// parts.
QStringList partsChanged(const Plan& plan, const UnitsShown& units) {
  const Setup& from = plan.stock.setup;
  const Setup& to = plan.proposed.setup;
  QStringList parts;
  if (from.frontTeeth != to.frontTeeth)
    parts << Say::tr("front %1 → %2").arg(from.frontTeeth.count()).arg(to.frontTeeth.count());
  if (from.rearTeeth != to.rearTeeth)
    parts << Say::tr("rear %1 → %2").arg(from.rearTeeth.count()).arg(to.rearTeeth.count());
  if (!from.rearTyre.sameTyre(to.rearTyre))
    parts << Say::tr("tyre %1 → %2")
                 .arg(QString::fromStdString(from.rearTyre.text()),
                      QString::fromStdString(to.rearTyre.text()));
  const double before = units.shown(Quantity::SmallLength, plan.stock.gearing.rollout.metres);
  const double after = units.shown(Quantity::SmallLength, plan.proposed.gearing.rollout.metres);
  const int decimals = units.rolloutDecimals();
  if (number(before, decimals) != number(after, decimals))
    parts << Say::tr("rollout %1 → %2 %3")
                 .arg(number(before, decimals), number(after, decimals), units.name(Quantity::SmallLength));
  if (from.primaryRatio != to.primaryRatio)
    parts << Say::tr("primary %1 → %2").arg(number(from.primaryRatio, 3), number(to.primaryRatio, 3));
  if (from.gearRatios != to.gearRatios) parts << Say::tr("gear ratios changed");
  if (isBelt(from) != isBelt(to))
    parts << (isBelt(to) ? Say::tr("belt instead of chain") : Say::tr("chain instead of belt"));
  const auto sizeName = [](const std::optional<ChainSize>& size) {
    return size ? QString::fromUtf8(size->name.data()) : Say::tr("none");
  };
  if (!(from.options.chainSize == to.options.chainSize))
    parts << Say::tr("chain %1 → %2").arg(sizeName(from.options.chainSize), sizeName(to.options.chainSize));
  if (from.options.links != to.options.links && to.options.links)
    parts << Say::tr("chain of %n links", nullptr, *to.options.links);
  return parts;
}

/// What a whole change wins and costs, in the engine's and the road's terms.
QString winsAndCosts(const std::vector<double>& changes) {
  if (changes.empty() || !uniform(changes) || unchanged(changes.front())) return {};
  const double change = changes.front();
  const double sooner = 100.0 * (1.0 - 1.0 / (1.0 + change / 100.0));
  if (change > 0)
    return Say::
        tr("Every gear ends %1 % sooner and pulls %2 % harder; at the same road speed the engine turns %2 "
           "% faster.")
            .arg(percent(sooner), percent(change));
  return Say::
      tr("Every gear reaches %1 % further and pulls %2 % less; at the same road speed the engine turns %2 "
         "% slower.")
          .arg(percent(sooner), percent(change));
}

QString detail(const Plan& plan, const UnitsShown& units, const std::vector<double>& changes) {
  QStringList sentences;
  const QStringList parts = partsChanged(plan, units);
  if (!parts.isEmpty()) sentences << wholeSentence(parts.join(Say::tr(", ", "between parts of a sentence")));
  if (const QString wins = winsAndCosts(changes); !wins.isEmpty()) sentences << wins;
  if (const QString fits = fitWords(plan, plan.proposed, units); !fits.isEmpty()) sentences << fits;
  const RolloutSource from = plan.stock.gearing.rollout.source;
  const RolloutSource to = plan.proposed.gearing.rollout.source;
  if (from == RolloutSource::TyreSize && to == RolloutSource::TyreSize)
    sentences << Say::tr("Rollout is estimated from the tyre size, good to about ±2 %.");
  else if (from != to)
    sentences << Say::tr(
        "One rollout is measured, the other estimated to about ±2 %: measure both before you trust the "
        "difference.");
  return sentences.join(QLatin1Char(' '));
}

}  // namespace

QString stepWords(const GearingChange& change) {
  if (change.direction == Direction::Same) return Say::tr("same");
  const QString way = change.direction == Direction::Shorter ? Say::tr("shorter") : Say::tr("taller");
  switch (change.size) {
    case StepSize::Small:
      return Say::tr("small, %1").arg(way);
    case StepSize::Moderate:
      return Say::tr("moderate, %1").arg(way);
    case StepSize::Large:
      return Say::tr("large, %1").arg(way);
    case StepSize::None:
      break;
  }
  return way;
}

Summary summary(const Plan& plan, const UnitsShown& units) {
  const auto changes = gearChangesPercent(plan.stock.gearing, plan.proposed.gearing);
  return {headline(plan, changes), detail(plan, units, changes)};
}

}  // namespace layshaft::ui
