// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/speedometer.h"

#include "core/units.h"

namespace layshaft {
namespace {

double signalOverTrue(SpeedSensor sensor, const Gearing& stock, const Gearing& setup) {
  const double tyre = stock.rollout.metres / setup.rollout.metres;
  switch (sensor) {
    case SpeedSensor::GearboxOutput:
      return setup.finalRatio / stock.finalRatio * tyre;
    case SpeedSensor::RearWheel:
      return tyre;
    case SpeedSensor::FrontWheel:
      break;
  }
  return 1.0;
}

}  // namespace

bool withinUnR39(double shownKmh, double trueKmh) {
  constexpr double kRounding = 1e-9;
  const double over = shownKmh - trueKmh;
  return over >= -kRounding && over <= trueKmh / 10.0 + 4.0 + kRounding;
}

std::optional<SpeedometerFigures> speedometer(const Speedometer& instrument, const Gearing& stock,
                                              const Gearing& setup, double topSpeedMps) {
  if (!instrument.sensor) return std::nullopt;
  const double scale = signalOverTrue(*instrument.sensor, stock, setup);
  const double shown = scale * (1.0 + instrument.readsHighPercent.value_or(0.0) / 100.0);
  SpeedometerFigures figures{.indicatedOverTrue = shown,
                             .odometerOverTrue = scale,
                             .at100KmhIndicatedKmh = 100.0 * shown,
                             .correctorPercent = 100.0 * (1.0 / scale - 1.0),
                             .withinUnR39 = {}};
  for (const double trueKmh : {40.0, 80.0, 120.0}) {
    if (units::mpsFromKmh(trueKmh) > topSpeedMps) break;
    figures.withinUnR39 = figures.withinUnR39.value_or(true) && withinUnR39(trueKmh * shown, trueKmh);
  }
  return figures;
}

}  // namespace layshaft
