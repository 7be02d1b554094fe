// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/limit_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(LimitWords)
};

QString rangeWords(int gear, const GearLimit& limit, const UnitsShown& units) {
  const auto speed = [&](double mps) {
    return units.withUnit(number(units.shown(Quantity::Speed, mps), 0), Quantity::Speed);
  };
  const QString name = gearOrdinal(gear);
  if (limit.gaps)
    return Say::tr("parts of %1 from %2 to %3", "a gear and two speeds")
        .arg(name, speed(limit.fromMps), speed(limit.toMps));
  if (limit.fromStart && limit.toEnd) return Say::tr("all of %1", "a gear").arg(name);
  if (limit.fromStart) return Say::tr("%1 up to %2", "a gear and a speed").arg(name, speed(limit.toMps));
  if (limit.toEnd) return Say::tr("%1 from %2 up", "a gear and a speed").arg(name, speed(limit.fromMps));
  return Say::tr("%1 from %2 to %3", "a gear and two speeds")
      .arg(name, speed(limit.fromMps), speed(limit.toMps));
}

/// The gears of which `counts` says that they belong to a sentence, joined; empty if none does.
template <class Counts>
QString gearsLimited(const RoadPlan& road, const UnitsShown& units, const Counts& counts) {
  QStringList gears;
  for (std::size_t g = 0; g < road.limits.size(); ++g)
    if (const auto& limit = road.limits[g]; limit && counts(*limit))
      gears << rangeWords(static_cast<int>(g) + 1, *limit, units);
  return gears.join(Say::tr(", ", "between gears"));
}

/// What limits a setup, a sentence per cause. Which setup is said: its speeds are not the other one's.
QStringList limitsOf(const RoadPlan& road, bool stock, const UnitsShown& units) {
  const auto only = [](LimitedBy by) {
    return [by](const GearLimit& limit) { return !limit.both && limit.by == by; };
  };
  const QString setup = stock ? Say::tr("stock") : Say::tr("proposed");
  QStringList sentences;
  if (const QString gears = gearsLimited(road, units, only(LimitedBy::Grip)); !gears.isEmpty())
    sentences << Say::tr("Grip limit (%1): %2.", "%2 is \"1st up to 60 km/h, 2nd up to 75 km/h\"")
                     .arg(setup, gears);
  if (const QString gears = gearsLimited(road, units, only(LimitedBy::Lift)); !gears.isEmpty())
    sentences << Say::tr("Wheelie limit (%1): %2.", "%2 is \"1st up to 60 km/h, 2nd up to 75 km/h\"")
                     .arg(setup, gears);
  if (const QString gears = gearsLimited(road, units, [](const GearLimit& limit) { return limit.both; });
      !gears.isEmpty())
    sentences << Say::tr("Grip and wheelie limit (%1): %2.", "%2 is \"1st up to 60 km/h, 2nd up to 75 km/h\"")
                     .arg(setup, gears);
  return sentences;
}

/// Gears that are limited in one setup and not in the other.
QString gearsOnlyIn(const RoadPlan& one, const RoadPlan& other) {
  QStringList gears;
  for (std::size_t g = 0; g < one.limits.size(); ++g)
    if (one.limits[g] && !(g < other.limits.size() && other.limits[g]))
      gears << gearOrdinal(static_cast<int>(g) + 1);
  return gears.join(Say::tr(", ", "between gears"));
}

}  // namespace

QString limitedPullWords(const Plan& plan, double change, const UnitsShown& units) {
  const bool shorter = change > 0.0;
  const RoadPlan &weaker = (shorter ? plan.stock : plan.proposed).road,
                 &stronger = (shorter ? plan.proposed : plan.stock).road;
  QStringList sentences = limitsOf(weaker, shorter, units);
  const QString part = gearsOnlyIn(stronger, weaker), size = percent(change);
  if (sentences.isEmpty() && part.isEmpty()) return {};
  const bool everywhere = std::all_of(weaker.limits.begin(), weaker.limits.end(), [](const auto& limit) {
    return limit && limit->fromStart && limit->toEnd && !limit->gaps;
  });
  // An axle that moves along shifts the limits by a little: that is not the gearing's doing.
  if (sentences.isEmpty())
    sentences << (shorter
                      ? Say::tr("It pulls by up to %1 % harder, by less in %2, where the tyre or the front "
                                "wheel does not take all of it.")
                      : Say::tr("It pulls by up to %1 % less, by less in %2, where the tyre or the front "
                                "wheel did not take all of it."))
                     .arg(size, part);
  else if (everywhere)
    sentences << (shorter ? Say::tr("So shorter gearing by itself pulls no harder in any gear.")
                          : Say::tr("So taller gearing by itself pulls no less in any gear."));
  else if (part.isEmpty())
    sentences << (shorter
                      ? Say::tr("There shorter gearing by itself pulls no harder; elsewhere by up to %1 %.")
                      : Say::tr(
                            "There taller gearing by itself pulls no less; elsewhere less by up to %1 %."))
                     .arg(size);
  else
    sentences << (shorter
                      ? Say::tr("There shorter gearing by itself pulls no harder; elsewhere by up to %1 %, "
                                "by less in %2.")
                      : Say::tr("There taller gearing by itself pulls no less; elsewhere less by up to %1 "
                                "%, by less in %2."))
                     .arg(size, part);
  return sentences.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
