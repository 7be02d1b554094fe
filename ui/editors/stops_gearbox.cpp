// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>

#include "ui/editors/stop.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct GearboxStops {
  Q_DECLARE_TR_FUNCTIONS(GearboxStops)
};

Stop primary(const Strip& strip) {
  auto* box = ratioBox(limits::kPrimaryRatio, QStringLiteral("8.8888"));
  return {
      .field = "primary_ratio",
      .label = GearboxStops::tr("&Primary"),
      .explanation = GearboxStops::tr(
          "Primary ratio: crankshaft turns per clutch turn. May be typed as teeth, the driven "
          "gear's first: 76/36 or 76:36."),
      .editor = box,
      .show = [box](const Shown& s) { showValue(*box, s.now.primaryRatio); },
      .under = [](const Shown& s) { return ratioUnder(s.now.primaryRatio, s.stock.primaryRatio); },
      .edit = [&strip, box] { strip.report(strip.edits().setPrimaryRatio(box->value())); },
      .backToStock = [&strip] { strip.report(strip.edits().setPrimaryRatio(strip.stock().primaryRatio)); }};
}

/// Alt+G leads to the first gear, Tab on to the others: Alt and a digit turn the pages.
QString gearLabel(std::size_t gear) {
  return gear == 0 ? GearboxStops::tr("&Gear 1") : QString::number(gear + 1);
}

Stop gearStop(const Strip& strip, std::size_t gear) {
  auto* box = ratioBox(limits::kGearRatio, QStringLiteral("8.888"));
  return {.field = "gear_ratios",
          .label = gearLabel(gear),
          .explanation =
              GearboxStops::tr("Ratio of gear %1: clutch turns per countershaft turn. Each ratio "
                               "must be lower than the one before. May be typed as teeth, the driven gear's "
                               "first: 36/15 or 36:15.")
                  .arg(gear + 1),
          .editor = box,
          .spokenName = GearboxStops::tr("Gear %1 ratio").arg(gear + 1),
          .show = [box, gear](const Shown& s) { showValue(*box, s.now.gearRatios[gear]); },
          .under =
              [gear](const Shown& s) {
                if (gear < s.stock.gearRatios.count())
                  return ratioUnder(s.now.gearRatios[gear], s.stock.gearRatios[gear]);
                return Under{.text = GearboxStops::tr("New"), .note = true};
              },
          .edit = [&strip, box, gear] { strip.report(strip.edits().setGearRatio(gear, box->value())); },
          .backToStock =
              [&strip, gear] {
                const GearRatios& stock = strip.stock().gearRatios;
                if (gear < stock.count()) strip.report(strip.edits().setGearRatio(gear, stock[gear]));
              }};
}

QString sumUpToTheSprockets(const Plan& plan) {
  const auto beforeChain = [](const SetupPlan& p) {
    return number(p.setup.primaryRatio * p.gearing.gears.back().ratio, 3);
  };
  return GearboxStops::tr("Primary × %1: %2")
      .arg(gearOrdinal(plan.proposed.gearing.gears.back().gear))
      .arg(stockTo(beforeChain(plan.stock), beforeChain(plan.proposed)));
}

}  // namespace

Section gearboxSection(Strip& strip) {
  return {.stops = {primary(strip)},
          .sum = sumUpToTheSprockets,
          .moreCount = [](const Shown& s) { return s.now.gearRatios.count(); },
          .more = [&strip](std::size_t gear) { return gearStop(strip, gear); }};
}

}  // namespace layshaft::ui
