// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/sprocket_saving.h"

namespace layshaft {

std::optional<SprocketSaving> sprocketSaving(const Setup& stock, const Setup& setup, double rollingRadiusM) {
  SprocketSaving saving{.front = sprocketDifference(stock, setup, SprocketPlace::Front),
                        .rear = sprocketDifference(stock, setup, SprocketPlace::Rear),
                        .kg = 0.0,
                        .equivalentKg = 0.0,
                        .zeroTo60S = {},
                        .zeroTo100S = {},
                        .quarterMileS = {},
                        .driveS = {}};
  if (!saving.front && !saving.rear) return std::nullopt;
  const Fitted more = withSaving(saving, 0.0);
  saving.kg = 0.0 - more.massKg;  // never a negative zero
  saving.equivalentKg = 0.0 - (more.massKg + more.wheelInertiaKgM2 / (rollingRadiusM * rollingRadiusM));
  return saving;
}

Fitted withSaving(const SprocketSaving& saving, double axleShiftM) {
  Fitted result{.axleShiftM = axleShiftM};
  for (const auto& difference : {saving.front, saving.rear})
    if (difference) result.add(*difference);
  return result;
}

}  // namespace layshaft
