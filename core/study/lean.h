// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/setup.h"
#include "core/study/rollout.h"

namespace layshaft {

/// Radius of the tyre's crown as a share of the upright rolling radius, at most 1: half the section width
/// where it is not given.
double crownShare(const Setup& setup, const Rollout& rollout);

/// Upright rolling radius over the one at a lean angle: how many times faster the engine turns leaned over at
/// the same road speed. The contact point moves along a round crown, r(φ) = R − rc·(1 − cos φ) (V. Cossalter,
/// Motorcycle Dynamics; T. Foale, Motorcycle Handling and Chassis Design; both from memory).
double leanFactor(const Setup& setup, const Rollout& rollout, double leanDeg);

}  // namespace layshaft
