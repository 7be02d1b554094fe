// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/track/recorded_track.h"

/// A track that was read from a recording, as numbers for other programs.
namespace layshaft {

/// The JSON report: unit in every key, null for what the recording lacks the data for. `curvature_per_km`,
/// `slope_percent`, `x_m` and `y_m` are lists as a profile has them; without heights `slope_percent` is
/// empty.
std::string trackJson(const RecordedTrack& track);

/// The track as a profile keeps it, named by its source.
Track profileTrack(const RecordedTrack& track);

/// A GPX 1.1 document of the smooth line, on its place on earth; around 0° N 0° E if it was recorded in a
/// plane.
std::string recordedTrackGpx(const RecordedTrack& track);

}  // namespace layshaft
