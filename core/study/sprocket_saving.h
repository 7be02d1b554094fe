// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/study/fitted.h"

namespace layshaft {

/// What a setup's sprockets weigh less than stock's and what that is worth. Negative: they weigh more.
struct SprocketSaving {
  double kg;
  double equivalentKg;  ///< kilograms off the bike that would speed it up alike: what turns counts more
  bool counted;         ///< in pull and runs: every mass that differs was weighed
  // Seconds that it takes off; none without the data for runs.
  std::optional<double> zeroTo100S, quarterMileS, driveS;
};

/// The saving without its seconds; none where no mass is known, not even by estimate.
std::optional<SprocketSaving> sprocketSaving(const Setup& stock, const Setup& setup, double rollingRadiusM);

}  // namespace layshaft
