// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/track_rules.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/short_text.h"

namespace layshaft {
namespace {

std::string at(const char* list, std::size_t index) {
  return list + ("[" + std::to_string(index) + "]");
}

Problem under(const std::string& prefix, Problem problem) {
  problem.path = prefix + (problem.path.empty() ? "" : ".") + problem.path;
  if (!problem.below.empty()) problem.below = prefix + "." + problem.below;
  return problem;
}

std::optional<Problem> pathProblem(const TrackPath& path) {
  const std::size_t stretches = path.curvaturePerKm.size();
  const auto unlike = [&](const char* key, std::size_t size) {
    return Problem{.kind = Problem::Kind::WrongCount,
                   .path = key,
                   .given = std::to_string(size),
                   .low = static_cast<double>(stretches),
                   .high = static_cast<double>(stretches),
                   .below = "curvature_per_km"};
  };
  if (const auto size = path.slopePercent.size(); size != 0 && size != stretches)
    return unlike("slope_percent", size);
  const bool placed = !path.xM.empty() || !path.yM.empty();
  if (const auto size = path.xM.size(); placed && size != stretches) return unlike("x_m", size);
  if (const auto size = path.yM.size(); placed && size != stretches) return unlike("y_m", size);
  return std::nullopt;
}

}  // namespace

std::optional<Problem> segmentProblem(const TrackSegment& segment) {
  const bool length = segment.lengthM.has_value(), radius = segment.radiusM.has_value(),
             angle = segment.angleDeg.has_value(), speed = segment.cornerSpeedKmh.has_value();
  const bool straightOrBend = length && !angle && !(radius && speed);
  const bool arc = radius && angle && !length && !speed;
  if (straightOrBend || arc) return std::nullopt;
  std::string given;
  for (const auto& [has, key] : {std::pair{length, "length_m"}, std::pair{radius, "radius_m"},
                                 std::pair{angle, "angle_deg"}, std::pair{speed, "corner_speed_kmh"}})
    if (has) given += (given.empty() ? "" : ", ") + std::string(key);
  return Problem{.kind = Problem::Kind::NotASegment, .path = {}, .given = given};
}

std::optional<Problem> trackProblem(const Track& track) {
  if (track.path && !track.segments.empty())
    return Problem{.kind = Problem::Kind::OnlyOneOf, .path = "path", .given = {}, .below = "segments"};
  for (std::size_t i = 0; i < track.segments.size(); ++i)
    if (auto problem = segmentProblem(track.segments[i])) return under(at("segments", i), *problem);
  if (track.path)
    if (auto problem = pathProblem(*track.path)) return under("path", *problem);
  return std::nullopt;
}

std::optional<Problem> tracksProblem(const Profile& profile) {
  const auto& tracks = profile.tracks;
  for (std::size_t i = 0; i < tracks.size(); ++i) {
    if (auto problem = trackProblem(tracks[i])) return under(at("tracks", i), *problem);
    const auto here = tracks.begin() + static_cast<std::ptrdiff_t>(i);
    if (std::any_of(tracks.begin(), here, [&](const Track& other) { return other.name == here->name; }))
      return Problem{.kind = Problem::Kind::NameTaken,
                     .path = at("tracks", i) + ".name",
                     .given = shortText(here->name)};
  }
  if (!profile.ride || profile.ride->track.empty() || trackOfTheRide(profile)) return std::nullopt;
  if (tracks.empty()) return Problem{.kind = Problem::Kind::MissingKey, .path = "tracks"};
  Problem problem{
      .kind = Problem::Kind::NotOneOf, .path = "ride.track", .given = shortText(profile.ride->track)};
  for (const Track& track : tracks) problem.allowed.push_back(shortText(track.name));
  return problem;
}

const Track* trackOfTheRide(const Profile& profile) {
  const auto& tracks = profile.tracks;
  const bool named = profile.ride && !profile.ride->track.empty();
  const auto found = named
                         ? std::find_if(tracks.begin(), tracks.end(),
                                        [&](const Track& track) { return track.name == profile.ride->track; })
                         : tracks.begin();
  return found == tracks.end() ? nullptr : &*found;
}

}  // namespace layshaft
