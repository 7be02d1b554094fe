// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/track/recorded_line.h"

namespace layshaft {

/// Where a line crosses the gate: behind the point `after`, at a share of the way to the next.
struct Crossing {
  std::size_t after = 0;
  double share = 0.0;
  double distanceM = 0.0;  ///< along the line
  PlanePoint place;
  std::optional<double> heightM, timeS;
};

/// Once around. Without crossings it is the whole line, whose end comes close to its beginning.
struct RecordedLap {
  std::size_t first = 0, last = 0;  ///< points of the line, both inside
  std::optional<Crossing> begin, end;
  double lengthM = 0.0;
  double closingGapM = 0.0;  ///< from where it ends to where it began
  std::optional<double> timeS;
};

/// Laps in the order in which they were ridden; none if the line is open. A gate is laid across the line
/// where it comes by again in the same direction, within `kLapWidthM`, most of the way: at the straightest of
/// such places, but not where laps begin apart, as in the paddock's lane. A lap is from one passing to the
/// next. A line that comes by nowhere, but ends where it begins in about the same direction, is one lap.
std::vector<RecordedLap> findLaps(const RecordedLine& line);

/// The lap to take, where there are some: the fastest if times were recorded, else the one with the smallest
/// gap; of those that are as long as the middle one within 3 %, for others cut a corner or went astray.
std::size_t bestLap(const std::vector<RecordedLap>& laps);

inline constexpr double kLapWidthM =
    20.0;  ///< as far as two laps are apart: a track's width and two fixes' error
inline constexpr double kShortestLapM = 60.0;  ///< a turning circle is shorter

}  // namespace layshaft
