// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track_report.h"

#include <nlohmann/json.hpp>
#include <optional>

#include "core/track/gpx_out.h"
#include "core/track/track_line.h"

namespace layshaft {
namespace {

using Json = nlohmann::ordered_json;

template <class T>
Json orNull(const std::optional<T>& x) {
  return x ? Json(*x) : Json(nullptr);
}

}  // namespace

std::string trackJson(const RecordedTrack& track) {
  const LeftOut& out = track.leftOut;
  Json json;
  json["source"] = track.path.source;
  json["points"] = track.points;
  json["points_used"] = track.used;
  json["left_out"] = {{"no_fix", out.noFix},
                      {"damaged", out.damaged},
                      {"repeated", out.repeated},
                      {"standing", out.standing},
                      {"leaps", out.leaps},
                      {"outside_lap", out.outside},
                      {"heights", track.heightsLeftOut}};
  json["closed"] = track.closed;
  json["laps"] = track.laps;
  json["lap"] = track.lap ? Json(*track.lap + 1) : Json(nullptr);
  json["lap_time_s"] = orNull(track.lapTimeS);
  json["length_m"] = track.lengthM;
  json["closing_gap_m"] = orNull(track.closingGapM);
  json["noise_m"] = track.noiseM;
  json["smoothing_m"] = track.smoothingM;
  json["curvature_noise_per_km"] = orNull(track.path.curvatureNoisePerKm);
  json["smallest_radius_m"] = orNull(track.smallestRadiusM);
  json["spacing_m"] = track.path.spacingM;
  json["origin"] = track.origin ? Json{{"latitude_deg", track.origin->latitudeDeg},
                                       {"longitude_deg", track.origin->longitudeDeg}}
                                : Json(nullptr);
  json["curvature_per_km"] = track.path.curvaturePerKm;
  json["slope_percent"] = track.path.slopePercent;
  json["x_m"] = track.path.xM;
  json["y_m"] = track.path.yM;
  // A file's name may be in any encoding.
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

Track profileTrack(const RecordedTrack& track) {
  Track kept;
  kept.name = track.path.source;
  kept.closed = track.closed;
  kept.path = SharedPath(track.path);
  return kept;
}

std::string recordedTrackGpx(const RecordedTrack& track) {
  const Track kept = profileTrack(track);
  const EarthPoint origin = track.origin.value_or(EarthPoint{});
  return trackGpx(kept, trackLine(kept), {origin.latitudeDeg, origin.longitudeDeg});
}

}  // namespace layshaft
