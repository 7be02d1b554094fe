// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/study/fitted.h"

namespace layshaft {

/// What a setup's sprockets weigh less than stock's and what that is worth. Negative: they weigh more.
struct SprocketSaving {
  std::optional<SprocketDifference> front, rear;  ///< none where a mass is not known, not even by estimate
  double kg;
  double equivalentKg;  ///< kilograms off the bike that would speed it up alike: what turns counts more
  // Seconds that it takes off; none without the data for runs.
  std::optional<double> zeroTo60S, zeroTo100S, quarterMileS, driveS;

  /// Whether all of it is in pull and runs, or any of it: weighed differences are.
  bool allCounted() const { return counted(front) && counted(rear); }
  bool anyCounted() const {
    return (front && front->kg != 0.0 && front->weighed) || (rear && rear->kg != 0.0 && rear->weighed);
  }

 private:
  static bool counted(const std::optional<SprocketDifference>& difference) {
    return !difference || difference->weighed || difference->kg == 0.0;
  }
};

/// The saving without its seconds; none where no mass is known.
std::optional<SprocketSaving> sprocketSaving(const Setup& stock, const Setup& setup, double rollingRadiusM);

/// What the setup changes about the bike with the saving's masses, estimates included.
Fitted withSaving(const SprocketSaving& saving, double axleShiftM);

}  // namespace layshaft
