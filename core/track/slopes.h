// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "core/track/path_curve.h"
#include "core/track/recorded_line.h"

namespace layshaft {

/// Slopes of `count` equal stretches of a curve in percent, uphill positive, from the heights of the points
/// that it goes through: smoothed over distance with a stiffness of their own, over 20 m at least, for a
/// crest is longer than a bend (common practice). Points without a height are bridged. Empty where fewer than
/// half of the points have one, or where a slope is beyond what a profile takes.
std::vector<double> slopesPercent(const std::vector<RidePoint>& points, const PathCurve& curve,
                                  std::size_t count);

}  // namespace layshaft
