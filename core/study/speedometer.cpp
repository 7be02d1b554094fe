// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/speedometer.h"

#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kRoundingKmh = 1e-9;

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

SpeedometerVerdict unR39(double shownKmh, double trueKmh) {
  const double over = shownKmh - trueKmh;
  if (over < -kRoundingKmh) return SpeedometerVerdict::ReadsLow;
  return over > trueKmh / 10.0 + 4.0 + kRoundingKmh ? SpeedometerVerdict::ReadsHigh
                                                    : SpeedometerVerdict::Within;
}

std::optional<SpeedometerFigures> speedometer(const Speedometer& instrument, const Gearing& stock,
                                              const Gearing& setup, std::optional<double> topSpeedMps) {
  if (!instrument.sensor) return std::nullopt;
  const double scale = signalOverTrue(*instrument.sensor, stock, setup);
  const double shown = scale * (1.0 + instrument.readsHighPercent.value_or(0.0) / 100.0);
  SpeedometerFigures figures{.indicatedOverTrue = shown,
                             .odometerOverTrue = scale,
                             .at100KmhIndicatedKmh = 100.0 * shown,
                             .correctorPercent = 100.0 * (1.0 / scale - 1.0),
                             .verdict = {}};
  for (const double trueKmh : {40.0, 80.0, 120.0}) {
    if (topSpeedMps && trueKmh > units::kmhFromMps(*topSpeedMps) + kRoundingKmh) break;
    // What reads low somewhere does so everywhere; too high it reads at the fastest first.
    if (figures.verdict.value_or(SpeedometerVerdict::Within) == SpeedometerVerdict::Within)
      figures.verdict = unR39(trueKmh * shown, trueKmh);
  }
  return figures;
}

}  // namespace layshaft
