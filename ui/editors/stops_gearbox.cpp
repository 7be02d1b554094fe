// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>

#include "core/study/gear_reading.h"
#include "core/study/rollout.h"
#include "ui/editors/stop.h"
#include "ui/editors/typed_ratio.h"
#include "ui/editors/typed_reading.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct GearboxStops {
  Q_DECLARE_TR_FUNCTIONS(GearboxStops)
};

/// What a ratio's box says of the teeth that make it: to who points at it, and to who hears it read.
void tellTeeth(RatioBox& box, const QString& explanation, double ratio,
               const std::optional<GearTeeth>& teeth) {
  const QString made = teeth ? GearboxStops::tr("%1 = %2", "ratio and the teeth that make it")
                                   .arg(number(ratio, 3), teethWords(*teeth))
                             : QString();
  const QString tip =
      teeth ? GearboxStops::tr("%1. %2", "teeth that make a ratio, explanation").arg(made, explanation)
            : explanation;
  if (box.accessibleDescription() != made) box.setAccessibleDescription(made);
  if (box.toolTip() != tip) box.setToolTip(tip);
}

/// Who sees stock's own ratio has no need to read it twice: the teeth stand there, where they are known.
Under under(double now, double stock, const std::optional<GearTeeth>& teeth) {
  Under under = ratioUnder(now, stock);
  if (teeth && under.difference.isEmpty()) under.text = teethWords(*teeth);
  return under;
}

Stop primary(const Strip& strip) {
  auto* box = ratioBox(limits::kPrimaryRatio, QStringLiteral("8.8888"));
  const QString explanation = GearboxStops::tr(
      "Primary ratio: crankshaft turns per clutch turn. May be typed as teeth, the driven gear's first: "
      "76/36 or 76:36.");
  return {
      .field = "primary_ratio",
      .label = GearboxStops::tr("&Primary"),
      .explanation = explanation,
      .editor = box,
      .show =
          [=](const Shown& s) {
            showValue(*box, s.now.primaryRatio);
            tellTeeth(*box, explanation, s.now.primaryRatio, s.now.options.primaryTeeth);
          },
      .under =
          [](const Shown& s) {
            return under(s.now.primaryRatio, s.stock.primaryRatio, s.now.options.primaryTeeth);
          },
      .edit = [&strip, box] { strip.report(strip.edits().setPrimaryRatio(box->value(), box->teeth())); },
      .backToStock = [&strip] { strip.report(strip.edits().setPrimaryRatio(strip.stock().primaryRatio)); },
      // Beside gears that nobody knows it says nothing.
      .isThere = [](const Shown& s) { return !s.stock.gearRatios.empty(); }};
}

/// What the rev counter shows at a road speed gives a gear's ratio, with the parts of the setup in hand.
std::optional<double> ratioRead(const Strip& strip, const QString& text) {
  const auto reading = typedReading(text, strip.units);
  if (!reading) return std::nullopt;
  const Setup setup = strip.edits().current();
  return gearRatioOf(*reading, rolloutOf(setup), setup.primaryRatio,
                     finalRatio(setup.frontTeeth, setup.rearTeeth));
}

/// Alt+G leads to the first gear, Tab on to the others: Alt and a digit turn the pages.
QString gearLabel(std::size_t gear) {
  return gear == 0 ? GearboxStops::tr("&Gear 1") : QString::number(gear + 1);
}

Stop gearStop(const Strip& strip, std::size_t gear) {
  auto* box = ratioBox(limits::kGearRatio, QStringLiteral("8.888"));
  const QString explanation = GearboxStops::tr(
                                  "Ratio of gear %1: clutch turns per countershaft turn. Each ratio must be "
                                  "lower than the one before. "
                                  "May be typed as teeth, the driven gear's first: 36/15 or 36:15; or as the "
                                  "revs at a true road speed: 5000@110.")
                                  .arg(gear + 1);
  box->readReadings([&strip](const QString& text) { return ratioRead(strip, text); });
  return {.field = "gear_ratios",
          .label = gearLabel(gear),
          .explanation = explanation,
          .editor = box,
          .spokenName = GearboxStops::tr("Gear %1 ratio").arg(gear + 1),
          .show =
              [=](const Shown& s) {
                const double ratio = s.now.gearRatios[gear];
                showValue(*box, ratio);
                tellTeeth(*box, explanation, ratio, teethOf(s.now.options.gearTeeth, gear));
              },
          .under =
              [gear](const Shown& s) {
                const auto teeth = teethOf(s.now.options.gearTeeth, gear);
                if (gear < s.stock.gearRatios.count())
                  return under(s.now.gearRatios[gear], s.stock.gearRatios[gear], teeth);
                return Under{.text = GearboxStops::tr("New"), .note = true};
              },
          .edit = [&strip, box,
                   gear] { strip.report(strip.edits().setGearRatio(gear, box->value(), box->teeth())); },
          .backToStock =
              [&strip, gear] {
                const GearRatios& stock = strip.stock().gearRatios;
                if (gear < stock.count()) strip.report(strip.edits().setGearRatio(gear, stock[gear]));
              }};
}

QString sumUpToTheSprockets(const Plan& plan) {
  if (plan.proposed.gearing.gears.empty()) return {};
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
