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
  if (limit.fromStart && limit.toEnd) return Say::tr("all of %1", "a gear").arg(name);
  if (limit.fromStart) return Say::tr("%1 up to %2", "a gear and a speed").arg(name, speed(limit.toMps));
  if (limit.toEnd) return Say::tr("%1 from %2 up", "a gear and a speed").arg(name, speed(limit.fromMps));
  return Say::tr("%1 from %2 to %3", "a gear and two speeds")
      .arg(name, speed(limit.fromMps), speed(limit.toMps));
}

QStringList gearsLimitedBy(LimitedBy by, const RoadPlan& road, const UnitsShown& units) {
  QStringList gears;
  for (std::size_t g = 0; g < road.limits.size(); ++g)
    if (const auto& limit = road.limits[g]; limit && limit->by == by)
      gears << rangeWords(static_cast<int>(g) + 1, *limit, units);
  return gears;
}

}  // namespace

QString limitedPullWords(const Plan& plan, double change, const UnitsShown& units) {
  const bool shorter = change > 0.0;
  const RoadPlan& weaker = (shorter ? plan.stock : plan.proposed).road;
  const QString comma = Say::tr(", ", "between gears");
  QStringList sentences;
  if (const QStringList gears = gearsLimitedBy(LimitedBy::Grip, weaker, units); !gears.isEmpty())
    sentences << Say::tr("Grip limit: %1.", "%1 is \"1st up to 60 km/h, 2nd up to 75 km/h\"")
                     .arg(gears.join(comma));
  if (const QStringList gears = gearsLimitedBy(LimitedBy::Lift, weaker, units); !gears.isEmpty())
    sentences << Say::tr("Wheelie limit: %1.", "%1 is \"1st up to 60 km/h, 2nd up to 75 km/h\"")
                     .arg(gears.join(comma));
  if (sentences.isEmpty()) return {};
  const bool everywhere = std::all_of(weaker.limits.begin(), weaker.limits.end(), [](const auto& limit) {
    return limit && limit->fromStart && limit->toEnd;
  });
  if (everywhere)
    sentences << (shorter ? Say::tr("So shorter gearing pulls no harder in any gear.")
                          : Say::tr("So taller gearing pulls no less in any gear."));
  else
    sentences << (shorter ? Say::tr("There shorter gearing pulls no harder; elsewhere by up to %1 %.")
                          : Say::tr("There taller gearing pulls no less; elsewhere less by up to %1 %."))
                     .arg(percent(change));
  return sentences.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
