// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/study/pull.h"

namespace layshaft {

/// When a run shifts: engine speeds for every gear but the last, and whether somebody typed them. Empty where
/// nobody did and the best ones cannot be told: then the rev limit counts.
struct ShiftPoints {
  std::vector<double> rpm;
  bool typed = false;
};

/// The road speed at which shifting up from a gear (counted from 0, not the last) loses no acceleration: the
/// greatest at which the gear, whatever the tyre's grip, still accelerates at least as hard as the next. The
/// rev limit where it always does; the lowest speed that the next gear can hold where it never does. `model`
/// must accelerate.
double bestShiftMps(const PullModel& model, std::size_t gear);

/// The same for every gear but the last, as engine speeds.
std::vector<double> bestShiftRpm(const PullModel& model);

/// The typed engine speed for every gear but the last of `gears`, else the best ones where `model`, which may
/// be null, can tell them, else none.
ShiftPoints shiftPoints(const std::optional<double>& typedRpm, std::size_t gears, const PullModel* model);

}  // namespace layshaft
