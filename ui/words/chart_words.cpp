// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chart_words.h"

#include <QCoreApplication>

#include "ui/words/chain_labels.h"
#include "ui/words/chain_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ChartWords)
};

/// Stock's and the proposal's pair, and which pins are drawn with them.
QStringList whose(const Plan& plan) {
  QStringList sentences{Say::tr("Stock %1, proposed %2.", "pairs")
                            .arg(teethPair(plan.stock.setup), teethPair(plan.proposed.setup))};
  QStringList pins;
  for (const SetupPlan& pin : plan.pins) pins << shownName(pin.name);
  if (!pins.isEmpty()) sentences << Say::tr("Pins: %1.").arg(pins.join(Say::tr(", ", "between names")));
  return sentences;
}

QString whereNumbersAre() {
  return Say::tr("File ▸ Export ▸ Show Data as a Table has the numbers.");
}

QString speed(double mps, const UnitsShown& units) {
  return units.withUnit(number(units.shown(Quantity::Speed, mps), 0), Quantity::Speed);
}

QString changeInTopGear(const GearingChange& change) {
  switch (change.direction) {
    case Direction::Shorter:
      return Say::tr("In top gear the proposal is %1 % shorter than stock.")
          .arg(percent(change.gearingPercent));
    case Direction::Taller:
      return Say::tr("In top gear the proposal is %1 % taller than stock.")
          .arg(percent(change.gearingPercent));
    case Direction::Same:
      break;
  }
  return Say::tr("In top gear the proposal is as stock.");
}

QStringList topSpeeds(const Plan& plan, const UnitsShown& units) {
  QStringList sentences;
  const auto& stock = plan.stock.road.topSpeed;
  const auto& proposed = plan.proposed.road.topSpeed;
  if (plan.pullBike->accelerates() && stock && proposed)
    sentences << Say::tr("Top speed: stock %1, proposed %2.")
                     .arg(speed(stock->speedMps, units), speed(proposed->speedMps, units));
  return sentences;
}

}  // namespace

QString noValue() {
  return Say::tr("–");
}

QString sawtoothNeeds() {
  return Say::tr("The sawtooth takes every gear up to the rev limit.");
}

QString sawtoothWords(const Plan& plan, const UnitsShown& units) {
  const auto reach = [&](const SetupPlan& setup) {
    return speed(*setup.gearing.gears.back().speedAtRevLimitMps, units);
  };
  if (!sawtoothLacks(plan).empty()) return sawtoothNeeds();
  QStringList sentences{Say::tr("Engine speed over road speed, a climbing line for each gear.")};
  sentences << whose(plan)
            << Say::tr("At the rev limit of %1 rpm stock reaches %2 in gear %3, the proposal %4 in gear %5.")
                   .arg(number(*plan.revLimitRpm, 0), reach(plan.stock))
                   .arg(plan.stock.gearing.gears.size())
                   .arg(reach(plan.proposed))
                   .arg(plan.proposed.gearing.gears.size())
            << changeInTopGear(plan.proposed.change) << whereNumbersAre();
  return sentences.join(QLatin1Char(' '));
}

QString pullChartWords(const Plan& plan, const UnitsShown& units, const QString& measured) {
  QStringList sentences{
      Say::tr("%1, over road speed, a line for each gear.", "what is measured").arg(measured)};
  sentences << whose(plan);
  const auto &stock = plan.stock.road.pull, &proposed = plan.proposed.road.pull;
  const auto force = [&](const GearPull& pull) {
    return units.withUnit(number(units.shown(Quantity::Force, pull.peakForceN), 0), Quantity::Force);
  };
  if (!stock.empty() && !proposed.empty())
    sentences << Say::tr("Peak pull in 1st gear: stock %1, proposed %2.")
                     .arg(force(stock.front()), force(proposed.front()));
  sentences << topSpeeds(plan, units) << changeInTopGear(plan.proposed.change) << whereNumbersAre();
  return sentences.join(QLatin1Char(' '));
}

QString runChartWords(const Plan& plan, const UnitsShown& units, const QString& along, bool straight) {
  QStringList sentences;
  if (straight) {
    sentences << Say::tr("Road speed down the straight. To the right: %1.", "title of an axis").arg(along)
              << whose(plan) << driveWords(plan, units);
  } else {
    sentences << Say::tr("Road speed from a standstill. To the right: %1.", "title of an axis").arg(along)
              << whose(plan);
    const auto &stock = plan.stock.road.run.quarterMileS, &proposed = plan.proposed.road.run.quarterMileS;
    if (stock && proposed)
      sentences
          << Say::tr("Quarter mile: stock %1 s, proposed %2 s.").arg(number(*stock, 2), number(*proposed, 2));
    sentences << standingStartWords(plan);
  }
  sentences << whereNumbersAre();
  sentences.removeAll(QString());
  return sentences.join(QLatin1Char(' '));
}

QString chainDrawingWords(const Plan& plan, const UnitsShown& units) {
  QStringList sentences{isBelt(plan.proposed.setup)
                            ? Say::tr("Both pulleys and the belt, to scale, seen from the left.")
                            : Say::tr("Both sprockets and the chain, to scale, seen from the left.")};
  QStringList labels{loopLabel(plan, units)};
  if (plan.proposed.chainRun->tightCentreM) labels << centreLabel(plan, units);
  labels << axleLabel(plan, units);
  sentences << Say::tr("Stock %1, proposed %2.", "pairs")
                   .arg(teethPair(plan.stock.setup), teethPair(plan.proposed.setup))
            << Say::tr("%1.", "labels of the drawing as a sentence")
                   .arg(labels.join(Say::tr(", ", "between labels")))
            << turnWords(plan) << whereNumbersAre();
  return sentences.join(QLatin1Char(' '));
}

QString readingWords(const QString& what, const QStringList& setups, const QStringList& values) {
  QStringList read;
  for (qsizetype i = 0; i < values.size() && i < setups.size(); ++i)
    if (values[i] != noValue()) read << Say::tr("%1 %2", "setup and its value").arg(setups[i], values[i]);
  return read.isEmpty() ? QString()
                        : Say::tr("%1: %2.", "what is read, and the values")
                              .arg(what, read.join(Say::tr(", ", "between values")));
}

QString readingWords(const QString& place, const QStringList& rows) {
  return rows.isEmpty()
             ? Say::tr("%1: nothing to read here.").arg(place)
             : Say::tr("%1. %2", "place and what is read there").arg(place, rows.join(QLatin1Char(' ')));
}

}  // namespace layshaft::ui
