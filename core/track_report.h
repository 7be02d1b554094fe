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

/// Comma-separated values (RFC 4180 with plain line feeds): a row per stretch, with the distance to its
/// beginning.
std::string recordedTrackCsv(const RecordedTrack& track);

}  // namespace layshaft
