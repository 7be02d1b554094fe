// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/summary.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "ui/words/cautions.h"
#include "ui/words/chain_words.h"
#include "ui/words/limit_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"

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

/// What becomes of one gear: "gear 6 is 4.8 % shorter".
QString oneGear(std::size_t gear, double change) {
  if (unchanged(change)) return Say::tr("gear %1 is as stock").arg(gear);
  return (change > 0 ? Say::tr("gear %1 is %2 % shorter") : Say::tr("gear %1 is %2 % taller"))
      .arg(gear)
      .arg(percent(change));
}

/// The same for neighbours that change alike: "gears 2 to 4 are as stock".
QString gearsFromTo(std::size_t first, std::size_t last, double change) {
  if (unchanged(change)) return Say::tr("gears %1 to %2 are as stock").arg(first).arg(last);
  return (change > 0 ? Say::tr("gears %1 to %2 are %3 % shorter") : Say::tr("gears %1 to %2 are %3 % taller"))
      .arg(first)
      .arg(last)
      .arg(percent(change));
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
    parts << (first == last ? oneGear(first + 1, changes[first])
                            : gearsFromTo(first + 1, last + 1, changes[first]));
    first = last + 1;
  }
  return wholeSentence(parts.join(Say::tr(", ", "between parts of a sentence")));
}

/// A change that is the same in every gear: how large it is, and what as many rear teeth would do.
QString changeWords(const GearingChange& change) {
  const bool shorter = change.gearingPercent > 0;
  const QString size = percent(change.gearingPercent), step = sizeWords(change.size);
  const double teeth = change.wholeGearingTeethEquivalent;
  const double count = std::abs(teeth);
  if (count < 0.25)
    return (shorter
                ? Say::tr("Shorter (geared down) by %1 %, %2: less than a quarter of a tooth at the rear.",
                          "%2 is \"a small step\"")
                : Say::tr("Taller (geared up) by %1 %, %2: less than a quarter of a tooth at the rear.",
                          "%2 is \"a small step\""))
        .arg(size, step);
  const int whole = static_cast<int>(std::round(count));
  if (std::abs(count - whole) < 0.05)
    return (teeth > 0
                ? Say::tr("Shorter (geared down) by %1 %, %2: about as much as %n more teeth at the rear.",
                          "%2 is \"a small step\"", whole)
                : Say::tr("Taller (geared up) by %1 %, %2: about as much as %n teeth fewer at the rear.",
                          "%2 is \"a small step\"", whole))
        .arg(size, step);
  return (teeth > 0
              ? Say::tr("Shorter (geared down) by %1 %, %2: about as much as %3 more teeth at the rear.",
                        "%2 is \"a small step\", %3 has a decimal")
              : Say::tr("Taller (geared up) by %1 %, %2: about as much as %3 teeth fewer at the rear.",
                        "%2 is \"a small step\", %3 has a decimal"))
      .arg(size, step, number(count, 1));
}

/// Names each direction once with both its names: shorter is "gearing down" in the trade, taller "gearing
/// up".
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
                             : anyShorter ? Say::tr("Shorter (geared down).")
                             : anyTaller  ? Say::tr("Taller (geared up).")
                                          : QString();
  if (gears != stockGears) {
    const QString count =
        Say::tr("%n gears instead of %1.", nullptr, static_cast<int>(gears)).arg(stockGears);
    return QStringList{count, directions, gearByGear(changes)}.join(QLatin1Char(' ')).simplified();
  }
  if (std::all_of(changes.begin(), changes.end(), unchanged) && proposed.change.direction == Direction::Same)
    return proposed.setup == stock.setup ? Say::tr("The proposal is the same as stock.")
                                         : Say::tr("Different parts, same gearing as stock.");
  if (!changes.empty() && !uniform(changes)) {
    const QString alike = anyShorter && anyTaller ? directions
                          : anyShorter ? Say::tr("Shorter (geared down), but not equally in every gear.")
                                       : Say::tr("Taller (geared up), but not equally in every gear.");
    return QStringList{alike, gearByGear(changes)}.join(QLatin1Char(' '));
  }
  return changeWords(proposed.change);
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

/// What a whole change gains and costs, in the engine's and the road's terms.
QString gainsAndCosts(const Plan& plan, const UnitsShown& units, const std::vector<double>& changes) {
  if (changes.empty() || !uniform(changes) || unchanged(changes.front())) return {};
  const double change = changes.front();
  const double reach = 100.0 * (1.0 - 1.0 / (1.0 + change / 100.0));
  if (const QString limited = limitedPullWords(plan, change, units); !limited.isEmpty())
    return (change > 0
                ? Say::tr("Every gear tops out %1 % lower; at the same road speed the engine turns %2 "
                          "% faster.")
                : Say::tr("Every gear tops out %1 % higher; at the same road speed the engine turns %2 "
                          "% slower."))
               .arg(percent(reach), percent(change)) +
           QLatin1Char(' ') + limited;
  return (change > 0
              ? Say::tr("Every gear tops out %1 % lower and pulls %2 % harder; at the same road speed the "
                        "engine turns %2 % faster.")
              : Say::tr("Every gear tops out %1 % higher and pulls %2 % less; at the same road speed the "
                        "engine turns %2 % slower."))
      .arg(percent(reach), percent(change));
}

QString detail(const Plan& plan, const UnitsShown& units, const std::vector<double>& changes) {
  QStringList sentences;
  const QStringList parts = partsChanged(plan, units);
  if (!parts.isEmpty()) sentences << wholeSentence(parts.join(Say::tr(", ", "between parts of a sentence")));
  if (const QString gains = gainsAndCosts(plan, units, changes); !gains.isEmpty()) sentences << gains;
  if (const QString fits = fitWords(plan, plan.proposed, units, FitDetail::Short); !fits.isEmpty())
    sentences << fits;
  const auto& speedometer = plan.proposed.speedometer;
  if (speedometer && speedometer->odometerOverTrue != 1.0 &&
      speedometer->verdict == SpeedometerVerdict::Within)
    sentences << speedometerWords(plan);  // otherwise it is a caution
  const RolloutSource from = plan.stock.gearing.rollout.source;
  const RolloutSource to = plan.proposed.gearing.rollout.source;
  if (from == RolloutSource::TyreSize && to == RolloutSource::TyreSize)
    sentences << Say::tr("Rollout is estimated from the tyre size, good to about ±2 %.");
  else if (from != to)
    sentences << Say::tr(
        "One rollout is measured, the other estimated to about ±2 %: measure both before you trust the "
        "difference.");
  if (!estimatedCurveWords(*plan.pullBike).isEmpty())
    sentences << Say::tr("The torque curve is estimated from peaks.");
  return sentences.join(QLatin1Char(' '));
}

}  // namespace

QString stepWords(const GearingChange& change) {
  if (change.direction == Direction::Same) return Say::tr("same");
  const bool shorter = change.direction == Direction::Shorter;
  switch (change.size) {
    case StepSize::Small:
      return shorter ? Say::tr("small, shorter") : Say::tr("small, taller");
    case StepSize::Moderate:
      return shorter ? Say::tr("moderate, shorter") : Say::tr("moderate, taller");
    case StepSize::Large:
      return shorter ? Say::tr("large, shorter") : Say::tr("large, taller");
    case StepSize::None:
      break;
  }
  return shorter ? Say::tr("shorter") : Say::tr("taller");
}

Summary summary(const Plan& plan, const UnitsShown& units) {
  const auto changes = gearChangesPercent(plan.stock.gearing, plan.proposed.gearing);
  const auto& run = plan.proposed.chainRun;
  return {run ? misfitHeading(*run) : QString(), headline(plan, changes), detail(plan, units, changes),
          cautionsFor(plan, CautionPlace::Readout)};
}

}  // namespace layshaft::ui
