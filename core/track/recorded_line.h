// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/import/recording.h"
#include "core/problem.h"
#include "core/track/plane.h"

namespace layshaft {

/// Fixes of a recording that say nothing of the line, by the reason.
struct LeftOut {
  std::size_t noFix = 0;     ///< the receiver had no position
  std::size_t damaged = 0;   ///< the text of it was
  std::size_t repeated = 0;  ///< at the place of the one before, to a centimetre
  std::size_t standing = 0;  ///< the bike stood still
  std::size_t leaps = 0;     ///< nothing gets there so fast, or goes there and comes straight back
  std::size_t outside = 0;   ///< before or after the lap that is taken
  std::size_t total() const { return noFix + damaged + repeated + standing + leaps + outside; }
  bool operator==(const LeftOut&) const = default;
};

struct RidePoint {
  double xM = 0.0, yM = 0.0;
  std::optional<double> heightM, timeS;
};

/// A recording in a plane, without what says nothing.
struct RecordedLine {
  std::vector<RidePoint> points;
  std::vector<double> distanceM;     ///< along the points, from the first; rising
  std::optional<EarthPoint> origin;  ///< of the plane, if it was recorded on earth
  LeftOut leftOut;
};

/// Puts a recording on a plane: around its first fix if it was recorded on earth or on a grid whose origin is
/// more than 100 km away, else as it is. What it leaves out is counted. Problems: WrongCount if too few
/// points are left; OutOfRange for a fix too far from the first one, and for too short or too long a line.
Result<RecordedLine> recordedLine(const Recording& recording);

}  // namespace layshaft
