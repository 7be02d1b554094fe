// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/steady_range.h"

#include <cmath>
#include <initializer_list>

namespace layshaft::ui {
namespace {

constexpr double kFilledEnough = 0.72;  // of the range; below it the data look lost in the picture

constexpr double kWorthMoreTicks = 0.08;  // of the range

double roundStep(double span, int ticks) {
  const double raw = span / ticks;
  const double power = std::pow(10.0, std::floor(std::log10(raw)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (raw <= factor * power * (1.0 + 1e-9)) return factor * power;
  return 10.0 * power;
}

}  // namespace

std::vector<double> ticks(const AxisRange& range) {
  std::vector<double> places;
  if (!(range.step > 0.0)) return places;
  constexpr double kTouch = 1e-9;
  const auto count = static_cast<long>(std::floor((range.high - range.low) / range.step + kTouch));
  for (long i = 0; i <= count; ++i) places.push_back(range.low + static_cast<double>(i) * range.step);
  return places;
}

AxisRange roundRange(double dataLow, double dataHigh, int ticks) {
  if (!(dataHigh > dataLow)) dataHigh = dataLow + 1.0;
  const double step = roundStep(dataHigh - dataLow, ticks);
  constexpr double kTouch = 1e-9;
  return {step * std::floor(dataLow / step + kTouch), step * std::ceil(dataHigh / step - kTouch), step};
}

AxisRange closeRange(double dataLow, double dataHigh, int ticks) {
  const AxisRange round = roundRange(dataLow, dataHigh, ticks);
  const AxisRange closer = roundRange(dataLow, dataHigh, ticks * 3 / 2);
  const double saved = (round.high - round.low) - (closer.high - closer.low);
  return saved > kWorthMoreTicks * (round.high - round.low) ? closer : round;
}

AxisRange steadyRange(const AxisRange& current, double dataLow, double dataHigh, const AxisRange& otherwise) {
  const bool inside = dataLow >= current.low && dataHigh <= current.high;
  const bool filled = dataHigh - dataLow >= kFilledEnough * (current.high - current.low);
  return inside && filled ? current : otherwise;
}

AxisRange steadyRange(const AxisRange& current, double dataLow, double dataHigh, int ticks) {
  return steadyRange(current, dataLow, dataHigh, roundRange(dataLow, dataHigh, ticks));
}

}  // namespace layshaft::ui
