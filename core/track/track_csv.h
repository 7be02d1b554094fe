// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/bike/track.h"

/// Tracks as comma-separated values (RFC 4180 with plain line feeds), in the units of the profile file.
namespace layshaft {

/// A row for each segment; columns are the keys of the file. `readSegments` reads it back.
std::string segmentsCsv(const std::vector<TrackSegment>& segments);

/// A row for each stretch: `distance_m` where it begins, then what the file has lists of.
std::string pathCsv(const TrackPath& path);

/// One or the other.
std::string trackCsv(const Track& track);

}  // namespace layshaft
