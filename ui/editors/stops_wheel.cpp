// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <QObject>
#include <cmath>
#include <type_traits>

#include "core/number_text.h"
#include "core/units.h"
#include "ui/editors/stop.h"
#include "ui/editors/tyre_field.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct WheelStops {
  Q_DECLARE_TR_FUNCTIONS(WheelStops)
};

Stop tyre(const Strip& strip) {
  auto* field = new TyreField;
  fixWidth(field, QStringLiteral("180/55ZR17"), 26);
  QObject::connect(field, &TyreField::refused, field,
                   [&strip, field](const QString& why) { strip.refuse(*field, why); });
  return {.field = "rear_tyre",
          .label = WheelStops::tr("Rear &tyre"),
          .explanation = WheelStops::tr(
              "Tyre size as it is printed on the sidewall: 180/55ZR17, 120/80-19, 4.00-18, MT90B16 …"),
          .editor = field,
          .show = [field](const Shown& s) { field->showTyre(s.now.rearTyre); },
          .under =
              [](const Shown& s) {
                const bool same = s.now.rearTyre.sameTyre(s.stock.rearTyre);
                return Under{.text = QString::fromStdString(s.stock.rearTyre.text()),
                             .difference = same ? QString() : WheelStops::tr("different")};
              },
          .edit = [&strip, field] { strip.report(strip.edits().setTyre(field->text().trimmed())); },
          .backToStock =
              [&strip] {
                strip.report(strip.edits().setTyre(QString::fromStdString(strip.stock().rearTyre.text())));
              }};
}

/// Width, aspect and rim are what a metric size is made of; other sizes are one piece.
struct TyreNumbers {
  WholeBox* width;
  WholeBox* aspect;
  DecimalBox* rim;
};

double widthMm(const TyreSize& tyre) {
  return std::round(units::millimetresFromMetres(tyre.widthM()) * 10.0) / 10.0;
}
double aspect(const TyreSize& tyre) {
  return std::round(tyre.aspectPercent());
}
double rim(const TyreSize& tyre) {
  return tyre.rimInches();
}

template <class Value>
Value rounded(double x) {
  if constexpr (std::is_integral_v<Value>)
    return static_cast<Value>(std::lround(x));
  else
    return x;
}

/// What the three have in common; each edit makes a size of all of them.
template <class Box>
Stop tyreNumber(const Strip& strip, const TyreNumbers& numbers, Box* box, const Limit& limit, double step,
                double (*of)(const TyreSize&), const QString& widest) {
  using Value = decltype(box->value());
  box->setRange(static_cast<Value>(limit.low), static_cast<Value>(limit.high));
  box->setSingleStep(static_cast<Value>(step));
  narrow(box, widest);
  return {.field = "rear_tyre",
          .label = {},
          .explanation = {},
          .editor = box,
          .show =
              [box, of](const Shown& s) {
                box->setEnabled(s.now.rearTyre.kind() == TyreSize::Kind::Metric);
                showValue(*box, static_cast<Value>(of(s.now.rearTyre)));
              },
          .under =
              [of](const Shown& s) {
                const bool metric = s.now.rearTyre.kind() == TyreSize::Kind::Metric;
                const double now = of(s.now.rearTyre), stock = of(s.stock.rearTyre);
                return Under{.text = number(stock, 0),
                             .difference = metric && now != stock ? signedNumber(now - stock, 0) : QString()};
              },
          .edit =
              [&strip, numbers] {
                const auto size =
                    TyreSize::metric(numbers.width->value(), numbers.aspect->value(), numbers.rim->value(),
                                     strip.edits().current().rearTyre.construction());
                strip.report(size ? strip.edits().setTyre(QString::fromStdString(size->text()))
                                  : std::optional(size.problem()));
              },
          .backToStock = [&strip, box, of] { box->setValue(rounded<Value>(of(strip.stock().rearTyre))); }};
}

std::vector<Stop> tyreNumbers(const Strip& strip) {
  const TyreNumbers numbers{new WholeBox, new WholeBox, new DecimalBox};
  numbers.rim->setDecimals(1);
  Stop width =
      tyreNumber(strip, numbers, numbers.width, limits::kTyreWidthMm, 10, widthMm, QStringLiteral("888"));
  width.label = WheelStops::tr("&Width");
  width.unit = [](const UnitsShown&) { return WheelStops::tr("mm"); };
  width.explanation = WheelStops::tr("Nominal section width of a metric tyre, mm.");
  Stop height = tyreNumber(strip, numbers, numbers.aspect, limits::kTyreAspectPercent, 5, aspect,
                           QStringLiteral("888"));
  height.label = WheelStops::tr("&Aspect");
  height.unit = unitOf(Quantity::Percent);
  height.explanation = WheelStops::tr("Section height of a metric tyre in per cent of its width.");
  Stop across = tyreNumber(strip, numbers, numbers.rim, limits::kRimInches, 1, rim, QStringLiteral("88.8"));
  across.label = WheelStops::tr("Ri&m");
  across.unit = [](const UnitsShown&) { return WheelStops::tr("in"); };
  across.explanation = WheelStops::tr("Rim diameter, inches.");
  return {width, height, across};
}

double shownLength(const UnitsShown& units, double mm) {
  return units.shown(Quantity::SmallLength, units::metresFromMillimetres(mm));
}
int rolloutDecimals(const UnitsShown& units) {
  return units.system() == UnitSystem::Imperial ? 2 : 0;
}

void showRollout(DecimalBox& box, const Shown& s) {
  const double now = s.units.shown(Quantity::SmallLength, s.nowPlan.gearing.rollout.metres);
  const int decimals = rolloutDecimals(s.units);
  const auto& measured = s.now.options.rolloutMm;
  {
    const QSignalBlocker quiet(box);  // another unit, another range: not an edit
    // New words make the box write its number anew, which would put the cursor elsewhere while one is typed.
    const bool estimated = !measured || box.specialValueText().isEmpty();
    const QString words =
        estimated ? QStringLiteral("≈ %1").arg(number(now, decimals)) : box.specialValueText();
    const double roundTo = std::pow(10.0, decimals);
    const double low = shownLength(s.units, limits::kRolloutMm.low);
    box.setMaximum(shownLength(s.units, limits::kRolloutMm.high));
    box.allowNone(low - 1, low, words, std::round(now * roundTo) / roundTo);
  }
  showValue(box, box.valueFor(measured ? std::optional(shownLength(s.units, *measured)) : std::nullopt));
}

Under rolloutUnder(const Shown& s) {
  const int decimals = rolloutDecimals(s.units);
  const double now = s.units.shown(Quantity::SmallLength, s.nowPlan.gearing.rollout.metres);
  const double stock = s.units.shown(Quantity::SmallLength, s.plan.stock.gearing.rollout.metres);
  Under under{.text =
                  QStringLiteral("%1 %2").arg(number(stock, decimals), s.units.name(Quantity::SmallLength))};
  // Another tyre's rollout differs by itself; only a measured one can be taken back here.
  const auto& measured = s.now.options.rolloutMm;
  if (measured && measured != s.stock.options.rolloutMm)
    under.difference = signedNumber(now - stock, decimals);
  return under;
}

Stop rollout(const Strip& strip) {
  auto* box = new DecimalBox;
  box->setDecimals(2);
  box->setGroupSeparatorShown(true);
  fixWidth(box, QStringLiteral("≈ 8,888.88"), 34);
  return {
      .field = "rollout_mm",
      .label = WheelStops::tr("R&ollout"),
      .explanation =
          WheelStops::tr("Distance for one turn of the rear wheel with the rider on, measured: mark, roll "
                         "one turn, measure. Empty: estimated from the tyre size, good to about ±2 %."),
      .editor = box,
      .unit = unitOf(Quantity::SmallLength),
      .show = [box](const Shown& s) { showRollout(*box, s); },
      .under = rolloutUnder,
      .edit =
          [&strip, box] {
            std::optional<double> mm;
            if (const auto shown = box->optionalValue())
              mm = withoutNoise(units::millimetresFromMetres(strip.units.si(Quantity::SmallLength, *shown)));
            strip.report(strip.edits().setRollout(mm, strip.units));
          },
      .backToStock =
          [&strip] {
            // What was measured on stock's tyre says nothing about another one.
            const bool sameTyre = strip.edits().current().rearTyre.sameTyre(strip.stock().rearTyre);
            strip.report(strip.edits().setRollout(sameTyre ? strip.stock().options.rolloutMm : std::nullopt,
                                                  strip.units));
          }};
}

QString overallSum(const Plan& plan) {
  if (plan.proposed.gearing.gears.empty()) return {};
  const auto overall = [](const SetupPlan& p) { return number(p.gearing.gears.back().overallRatio, 2); };
  return WheelStops::tr("Overall in %1: %2 engine turns per wheel turn")
      .arg(gearOrdinal(plan.proposed.gearing.gears.back().gear))
      .arg(stockTo(overall(plan.stock), overall(plan.proposed)));
}

}  // namespace

Section wheelSection(Strip& strip) {
  std::vector<Stop> stops{tyre(strip)};
  for (Stop& stop : tyreNumbers(strip)) stops.push_back(std::move(stop));
  stops.push_back(rollout(strip));
  return {.stops = std::move(stops), .sum = overallSum};
}

}  // namespace layshaft::ui
