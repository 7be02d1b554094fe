// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/sprocket_saving.h"

namespace layshaft {

std::optional<SprocketSaving> sprocketSaving(const Setup& stock, const Setup& setup, double rollingRadiusM) {
  const auto all = fittedByEstimate(stock, setup);
  if (!all) return std::nullopt;
  const Fitted weighed = fitted(stock, setup);
  return SprocketSaving{
      .kg = -all->massKg,
      .equivalentKg = -(all->massKg + all->wheelInertiaKgM2 / (rollingRadiusM * rollingRadiusM)),
      .counted = all->massKg == weighed.massKg && all->wheelInertiaKgM2 == weighed.wheelInertiaKgM2,
      .zeroTo100S = {},
      .quarterMileS = {},
      .driveS = {}};
}

}  // namespace layshaft
