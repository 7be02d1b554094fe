// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/rollout.h"

#include <algorithm>
#include <cmath>

#include "core/defaults.h"
#include "core/units.h"

namespace layshaft {

double Rollout::radiusM() const {
  return metres / (2.0 * units::kPi);
}

double Rollout::atSpeed(double speed) const {
  return metres * (1.0 + growthPerMps2 * speed * speed);
}

double Rollout::rpm(double speed, double overallRatio) const {
  return 60.0 * speed * overallRatio / atSpeed(speed);
}

double Rollout::speedMps(double engineRpm, double overallRatio) const {
  const double plain = engineRpm / 60.0 * metres / overallRatio;
  if (growthPerMps2 == 0.0) return plain;
  // v = plain·(1 + k·v²), the smaller root; where growth would run away the speed is held at the last real
  // root.
  const double discriminant = std::max(0.0, 1.0 - 4.0 * growthPerMps2 * plain * plain);
  return 2.0 * plain / (1.0 + std::sqrt(discriminant));
}

Rollout rolloutOf(const Setup& setup) {
  const SetupOptions& options = setup.options;
  // The profile's growth is per (km/h)².
  const double growth = options.growthPerKmh2.value_or(0.0) * units::kmhFromMps(1.0) * units::kmhFromMps(1.0);
  if (options.rolloutMm)
    return {units::metresFromMillimetres(*options.rolloutMm), RolloutSource::Measured, growth};
  const double allowance =
      options.rollingAllowancePercent.value_or(defaults::kRollingAllowancePercent) / 100.0;
  const double unworn = units::kPi * setup.rearTyre.diameterM() * (1.0 - allowance);
  const double wear = units::metresFromMillimetres(options.treadWearMm.value_or(0.0));
  return {unworn - 2.0 * units::kPi * wear, RolloutSource::TyreSize, growth};
}

}  // namespace layshaft
