// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track_report.h"

#include <nlohmann/json.hpp>
#include <optional>

#include "core/number_text.h"

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

std::string recordedTrackCsv(const RecordedTrack& track) {
  const TrackPath& path = track.path;
  std::string out = "distance_m,curvature_per_km,slope_percent,x_m,y_m\n";
  for (std::size_t k = 0; k < path.curvaturePerKm.size(); ++k) {
    out +=
        numberText(path.spacingM * static_cast<double>(k)) + ',' + numberText(path.curvaturePerKm[k]) + ',';
    if (!path.slopePercent.empty()) out += numberText(path.slopePercent[k]);
    out += ',' + numberText(path.xM[k]) + ',' + numberText(path.yM[k]) + '\n';
  }
  return out;
}

}  // namespace layshaft
