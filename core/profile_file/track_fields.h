// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bike/track.h"
#include "core/bike/words.h"
#include "core/limits.h"

/// The keys of tracks, and of the gears that are on hand: as in `fields.h`.
namespace layshaft::profile_file {

template <class Io>
void fields(Io& io, TrackSegment& segment) {
  io.optionalText("name", segment.name, limits::kLongestName);
  io.number("length_m", segment.lengthM, limits::kSegmentLengthM);
  io.number("radius_m", segment.radiusM, limits::kBendRadiusM);
  io.number("angle_deg", segment.angleDeg, limits::kBendAngleDeg);
  io.number("corner_speed_kmh", segment.cornerSpeedKmh, limits::kCornerSpeedKmh);
  io.number("slope_percent", segment.slopePercent, limits::kSlopePercent);
  io.word("surface", segment.surface, kSurfaceWords);
  io.word("turn", segment.turn, kTurnWords);
  io.rest(segment.extras);
}

template <class Io>
void fields(Io& io, TrackPath& path) {
  io.need("spacing_m", path.spacingM, limits::kStretchM);
  io.needNumbers("curvature_per_km", path.curvaturePerKm, limits::kCurvaturePerKm, limits::kFewestStretches,
                 limits::kMostStretches);
  io.numbers("slope_percent", path.slopePercent, limits::kSlopePercent, limits::kMostStretches);
  io.numbers("x_m", path.xM, limits::kTrackPositionM, limits::kMostStretches);
  io.numbers("y_m", path.yM, limits::kTrackPositionM, limits::kMostStretches);
  io.optionalText("source", path.source, limits::kLongestName);
  io.number("curvature_noise_per_km", path.curvatureNoisePerKm, limits::kCurvatureNoisePerKm);
  io.number("smoothing_m", path.smoothingM, limits::kSmoothingM);
  io.rest(path.extras);
}

template <class Io>
void fields(Io& io, Track& track) {
  io.needText("name", track.name, limits::kLongestName);
  io.flag("closed", track.closed);
  io.number("start_speed_kmh", track.startSpeedKmh, limits::kSpeedKmh);
  io.number("corner_share_percent", track.cornerSharePercent, limits::kShareOfGripPercent);
  io.number("brake_share_percent", track.brakeSharePercent, limits::kShareOfGripPercent);
  io.number("max_lean_deg", track.maxLeanDeg, limits::kMaxLeanDeg);
  io.list("segments", track.segments, limits::kMostSegments,
          [](Io& entry, TrackSegment& segment) { fields(entry, segment); });
  io.shared("path", track.path);
  io.rest(track.extras);
}

template <class Io>
void fields(Io& io, SpareGearPair& pair) {
  io.needWhole("gear", pair.gear, limits::kGearOrPrimary);
  io.needWhole("driving", pair.driving, limits::kGearTeeth);
  io.needWhole("driven", pair.driven, limits::kGearTeeth);
  io.optionalText("note", pair.note, limits::kLongestRecordText);
  io.rest(pair.extras);
}

}  // namespace layshaft::profile_file
