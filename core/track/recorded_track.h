// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/bike/track.h"
#include "core/import/recording.h"
#include "core/problem.h"
#include "core/track/laps.h"
#include "core/track/recorded_line.h"

namespace layshaft {

inline constexpr double kUsualSpacingM = 5.0;

struct TrackOptions {
  std::optional<double> smoothingM;  ///< chosen from the fixes where not given
  double spacingM = kUsualSpacingM;  ///< of the stretches, about
  std::optional<std::size_t> lap;    ///< which of the laps, from 0; the best one where not given
};

/// A track out of a recording, and what there is to say of it.
struct RecordedTrack {
  TrackPath path;
  bool closed = false;
  std::size_t points = 0;  ///< fixes of the recording
  std::size_t used = 0;    ///< that the path was made from
  std::size_t laps = 0;
  std::optional<std::size_t> lap;  ///< the one that was taken
  std::optional<double> lapTimeS;
  double lengthM = 0.0;
  std::optional<double> closingGapM;  ///< from the end of the lap to its beginning, before it was closed
  double noiseM = 0.0;                ///< of the fixes, beside the line
  double smoothingM = 0.0;
  std::optional<double> smallestRadiusM;  ///< none on a straight
  LeftOut leftOut;
  std::size_t heightsLeftOut =
      0;  ///< of points used: too few have one, or they make a slope that no road has
  std::optional<EarthPoint> origin;  ///< of x and y, if the recording was on earth
};

/// The laps of a line that a track can be made of, as `TrackOptions::lap` counts them.
std::vector<RecordedLap> recordedLaps(const RecordedLine& line);

/// Takes one lap out of a recording (the whole line if it does not close), smooths it in position
/// (`PathCurve`) and cuts it into stretches of one length; of each the mean curvature, so that a lap turns by
/// 360° in all, and the mean slope. A lap's closing gap is spread over it, as surveyors close a traverse
/// (Bowditch's rule). Heights are smoothed over distance by the same rule, over 20 m at least. Curvature is
/// kept within the limits of a profile's.
///
/// Problems: those of `recordedLine`; OutOfRange for `smooth`, `lap` and the length of what is taken.
Result<RecordedTrack> recordedTrack(const Recording& recording, const TrackOptions& options = {});

}  // namespace layshaft
