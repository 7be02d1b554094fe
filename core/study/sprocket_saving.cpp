// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/sprocket_saving.h"

namespace layshaft {

std::optional<SprocketSaving> sprocketSaving(const Setup& stock, const Setup& setup, double rollingRadiusM) {
  SprocketSaving saving{.front = sprocketDifference(stock, setup, SprocketPlace::Front),
                        .rear = sprocketDifference(stock, setup, SprocketPlace::Rear),
                        .kg = 0.0,
                        .equivalentKg = 0.0,
                        .zeroTo100S = {},
                        .quarterMileS = {},
                        .driveS = {}};
  if (!saving.front && !saving.rear) return std::nullopt;
  for (const auto& difference : {saving.front, saving.rear}) {
    if (!difference) continue;
    saving.kg -= difference->kg;
    saving.equivalentKg -= difference->kg + difference->wheelInertiaKgM2 / (rollingRadiusM * rollingRadiusM);
  }
  return saving;
}

Fitted withSaving(const SprocketSaving& saving, double axleShiftM) {
  Fitted result{.axleShiftM = axleShiftM};
  for (const auto& difference : {saving.front, saving.rear}) {
    if (!difference) continue;
    result.massKg += difference->kg;
    result.wheelInertiaKgM2 += difference->wheelInertiaKgM2;
  }
  return result;
}

}  // namespace layshaft
