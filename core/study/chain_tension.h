// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/study/pull.h"

namespace layshaft {

/// The greatest force at the wheel's tread that the engine makes, over gears and engine speeds, and that grip
/// and front lift let through on dry, level asphalt without wind, N: a chain must hold there, on whatever
/// loose ground it is ridden today. The air is today's; the tyre does not grow. `model` is today's.
double greatestTreadForceN(const PullModel& model);

}  // namespace layshaft
