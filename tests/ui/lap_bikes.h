// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "tests/ui/support.h"

namespace layshaft::test {

/// The example that was worked out independently: 39.6193 s with stock, 39.5823 s with the proposal.
inline Profile lapExampleBike() {
  return profileFrom(contentsOf(sourceFolder() / "tests/reference/data/lap-club-600.bike.json"));
}

/// The same bike on a recorded line of two straights and two half turns of 40 m radius.
inline Profile onARecordedLine() {
  TrackPath path{.spacingM = 5.0, .curvaturePerKm = {}, .slopePercent = {}, .xM = {}, .yM = {}, .source = {}};
  for (const double radius : {0.0, 40.0, 0.0, 40.0}) {
    const int stretches = radius > 0.0 ? 25 : 40;
    for (int i = 0; i < stretches; ++i) path.curvaturePerKm.push_back(radius > 0.0 ? 1000.0 / radius : 0.0);
  }
  Track track{.name = "Recorded", .closed = true};
  track.path = SharedPath(path);
  Profile profile = lapExampleBike();
  profile.tracks = {track};
  profile.ride->track.clear();
  return profile;
}

/// The same line over and over: a rally's stage.
inline Profile onALongLine() {
  Profile profile = onARecordedLine();
  TrackPath path = *profile.tracks.front().path;
  const auto once = path.curvaturePerKm;
  while (path.curvaturePerKm.size() <= 2000)
    path.curvaturePerKm.insert(path.curvaturePerKm.end(), once.begin(), once.end());
  profile.tracks.front().path = SharedPath(path);
  return profile;
}

}  // namespace layshaft::test
