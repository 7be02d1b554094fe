// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/recorded_track.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "core/limits.h"
#include "core/number_text.h"
#include "core/track/laps.h"
#include "core/track/path_curve.h"
#include "core/track/slopes.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kStraightRadiusM = 1e6;

Problem refused(const char* path, double given, const Limit& limit) {
  return {.kind = Problem::Kind::OutOfRange,
          .path = path,
          .given = numberText(withoutNoise(given)),
          .low = limit.low,
          .high = limit.high,
          .unit = limit.unit};
}

/// Spreads the gap of a lap over it: nothing at its beginning, all of it at its end.
void close(std::vector<RidePoint>& points, const RecordedLap& lap, const std::vector<double>& distanceM) {
  if (!lap.begin || !lap.end) return;
  const double gapX = lap.end->place.xM - lap.begin->place.xM, gapY = lap.end->place.yM - lap.begin->place.yM;
  const double gapHeight =
      lap.begin->heightM && lap.end->heightM ? *lap.end->heightM - *lap.begin->heightM : 0.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double share = (distanceM[lap.first + i] - lap.begin->distanceM) / lap.lengthM;
    points[i].xM -= gapX * share;
    points[i].yM -= gapY * share;
    if (points[i].heightM) *points[i].heightM -= gapHeight * share;
  }
}

double turned(double from, double to) {
  return std::remainder(to - from, 2.0 * units::kPi);
}

void cutIntoStretches(const PathCurve& curve, const std::vector<PathPlace>& places, TrackPath& path) {
  const std::size_t count = places.size() - 1;
  path.spacingM = curve.lengthM() / static_cast<double>(count);
  for (std::size_t k = 0; k < count; ++k) {
    path.xM.push_back(places[k].at.xM);
    path.yM.push_back(places[k].at.yM);
    const double perKm =
        turned(places[k].headingRad, places[k + 1].headingRad) / path.spacingM * units::kMetresPerKilometre;
    path.curvaturePerKm.push_back(
        std::clamp(perKm, limits::kCurvaturePerKm.low, limits::kCurvaturePerKm.high));
  }
}

}  // namespace

std::vector<RecordedLap> recordedLaps(const RecordedLine& line) {
  constexpr std::size_t kFewestOfALap = 5;
  auto laps = findLaps(line);
  std::erase_if(laps, [](const RecordedLap& lap) { return lap.last < lap.first + kFewestOfALap - 1; });
  return laps;
}

Result<RecordedTrack> recordedTrack(const Recording& recording, const TrackOptions& options) {
  if (options.smoothingM && !limits::kSmoothingM.contains(*options.smoothingM))
    return refused("smooth", *options.smoothingM, limits::kSmoothingM);
  const auto line = recordedLine(recording);
  if (!line) return line.problem();
  const auto laps = recordedLaps(*line);
  if (options.lap && *options.lap >= std::max<std::size_t>(laps.size(), 1))
    return refused("lap", static_cast<double>(*options.lap + 1), {1.0, static_cast<double>(laps.size())});

  RecordedTrack track;
  track.points = recording.fixes.size();
  track.leftOut = line->leftOut;
  track.origin = line->origin;
  track.laps = laps.size();
  track.closed = !laps.empty();
  track.path.source = recording.source;
  std::vector<RidePoint> points = line->points;
  if (track.closed) {
    track.lap = options.lap.value_or(bestLap(laps));
    const RecordedLap& lap = laps[*track.lap];
    points.assign(line->points.begin() + static_cast<std::ptrdiff_t>(lap.first),
                  line->points.begin() + static_cast<std::ptrdiff_t>(lap.last) + 1);
    close(points, lap, line->distanceM);
    track.closingGapM = lap.closingGapM;
    track.lapTimeS = lap.timeS;
  }
  track.used = points.size();
  track.leftOut.outside = line->points.size() - points.size();

  std::vector<PlanePoint> plane;
  for (const RidePoint& point : points) plane.push_back({point.xM, point.yM});
  const PathCurve curve(plane, track.closed, options.smoothingM);
  track.lengthM = curve.lengthM();
  if (!limits::kRecordedLengthM.contains(track.lengthM))
    return refused("length_m", track.lengthM, limits::kRecordedLengthM);
  track.noiseM = curve.noiseM();
  track.smoothingM = curve.smoothingM();
  if (const double curvature = curve.greatestCurvaturePerM(); curvature * kStraightRadiusM > 1.0)
    track.smallestRadiusM = 1.0 / curvature;
  const double spacingM =
      std::max({options.spacingM, limits::kStretchM.low, track.lengthM / limits::kMostStretches});
  const auto places = curve.stretches(spacingM, limits::kFewestStretches);
  cutIntoStretches(curve, places, track.path);
  const std::size_t stretches = track.path.curvaturePerKm.size();
  track.path.curvatureNoisePerKm = std::min(units::kMetresPerKilometre * curve.curvatureNoisePerM(stretches),
                                            limits::kCurvatureNoisePerKm.high);
  track.path.smoothingM = track.smoothingM;
  track.path.slopePercent = slopesPercent(points, curve, stretches);
  if (track.path.slopePercent.empty())
    track.heightsLeftOut = static_cast<std::size_t>(
        std::count_if(points.begin(), points.end(), [](const RidePoint& point) { return point.heightM; }));
  return track;
}

}  // namespace layshaft
