// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/bike/track.h"
#include "core/track/track_line.h"

/// A track as a GPX 1.1 file.
namespace layshaft {

/// Where on the earth a map's origin is put.
struct GeoOrigin {
  double latitudeDeg = 0.0;   ///< positive to the north, ±89 at most
  double longitudeDeg = 0.0;  ///< positive to the east
};

/// A place of a map as latitude and longitude, degrees, on the WGS84 ellipsoid: the plane that touches it at
/// the origin, to the second order of distance over the earth's radius. Off by less than 0.1 m within 10 km
/// up to 60° (compared with geodesics). Longitude from -180 up to but without 180.
GeoOrigin geographic(const TrackPlace& place, const GeoOrigin& origin);

/// A GPX 1.1 document (https://www.topografix.com/GPX/1/1): the line as one track of one segment, with
/// heights from the start, and a waypoint where each named segment begins. Characters that XML does not
/// allow are left out of names.
std::string trackGpx(const Track& track, const TrackLine& line, const GeoOrigin& origin = {});

}  // namespace layshaft
