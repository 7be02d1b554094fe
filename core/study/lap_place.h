// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/study/lap.h"

namespace layshaft {

/// A lap at any place, from the points that are kept of it: rising, as `LapFigures` has them. Between two of
/// them the acceleration changes evenly with time, so that place and speed are met at both; gear and limiter
/// are those of the point before. None outside of the lap.
std::optional<LapPoint> lapPointAt(const std::vector<LapPoint>& points, double distanceM);

/// By how much one lap is later than another, both of one track: at the points of both and between them,
/// rising, so close together that straight lines from one to the next are off by less than 0.5 ms.
std::vector<LapDifference> lapDifference(const std::vector<LapPoint>& from, const std::vector<LapPoint>& to);

}  // namespace layshaft
