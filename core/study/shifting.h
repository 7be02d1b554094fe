// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/study/pull.h"

namespace layshaft {

/// The road speed at which shifting up from a gear (counted from 0, not the last) loses no acceleration: the
/// greatest at which the gear, whatever the tyre's grip, still accelerates at least as hard as the next. The
/// rev limit where it always does; the lowest speed that the next gear can hold where it never does. `model`
/// must accelerate.
double bestShiftMps(const PullModel& model, std::size_t gear);

/// The same for every gear but the last, as engine speeds.
std::vector<double> bestShiftRpm(const PullModel& model);

}  // namespace layshaft
