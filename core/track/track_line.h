// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/bike/track.h"
#include "core/units.h"

/// Where a track runs: for its map, and for files that hold places.
namespace layshaft {

/// A place on a track, in a plane with x east and y north.
struct TrackPlace {
  double distanceM = 0.0;  ///< from the start, along the road
  double xM = 0.0, yM = 0.0;
  double heightM = 0.0;     ///< above the start
  double headingRad = 0.0;  ///< from east towards north; not taken back by whole turns
  bool operator==(const TrackPlace&) const = default;
};

/// The line of a track as places with straight pieces between them.
struct TrackLine {
  std::vector<TrackPlace> places;
  std::vector<std::size_t> begins;  ///< of each segment its first place; of a path's line none
  double lengthM = 0.0;
  /// Of a closed track how far its end is from its start, and by how much the heading there differs from a
  /// whole turn: what was measured a little wrong, not an error.
  std::optional<double> closingGapM, closingTurnRad;
};

/// What a bend of known speed is taken to lean like on the map: 45°, common practice for road bikes.
inline constexpr double kMapBendMps2 = units::kStandardGravityMps2;

/// The line of a track from its start at the origin, heading east. Segments follow one another with one
/// heading; a bend goes left unless it says right, a straight goes straight on. Of a bend with a known speed
/// the radius is what `bendMps2` towards its middle asks for, m/s², above zero. Slopes shorten the line on
/// the map. Pieces leave the true arc by at most a few centimetres. A path has its own places, or else its
/// curvature makes them. Segments that are none, as `trackProblem` tells, are passed over; a track that has
/// nothing has no places.
TrackLine trackLine(const Track& track, double bendMps2 = kMapBendMps2);

/// The place at a distance from the start, between the two places around it; the first or last beyond the
/// ends. The line must have a place.
TrackPlace placeAt(const TrackLine& line, double distanceM);

}  // namespace layshaft
