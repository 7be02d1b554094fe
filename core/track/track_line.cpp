// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/track_line.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/bike/track_rules.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kPerPercent = 0.01;

/// A piece of road with one curvature and one slope.
struct Piece {
  double lengthM;
  double curvaturePerM;  ///< positive to the left
  double slope;          ///< rise over run
};

Piece pieceOf(const TrackSegment& segment, double bendMps2) {
  Piece piece{.lengthM = segment.lengthM.value_or(0.0),
              .curvaturePerM = 0.0,
              .slope = segment.slopePercent.value_or(0.0) * kPerPercent};
  if (segment.radiusM) {
    piece.curvaturePerM = 1.0 / *segment.radiusM;
    if (segment.angleDeg) piece.lengthM = *segment.radiusM * *segment.angleDeg * units::kPi / 180.0;
  } else if (segment.cornerSpeedKmh) {
    const double speedMps = units::mpsFromKmh(*segment.cornerSpeedKmh);
    piece.curvaturePerM = bendMps2 / (speedMps * speedMps);
  }
  if (segment.turn == Turn::Right) piece.curvaturePerM = -piece.curvaturePerM;
  return piece;
}

/// So many straight pieces leave the arc by `kOffM` at most: R·(1 − cos(step/2)) is about R·step²/8.
int stepsOf(const Piece& piece) {
  constexpr double kOffM = 0.02;
  constexpr int kMost = 2000;
  const double curvature = std::abs(piece.curvaturePerM), angle = curvature * piece.lengthM;
  const double steps = std::ceil(angle / std::sqrt(8.0 * kOffM * std::max(curvature, 1e-12)));
  return static_cast<int>(std::clamp(steps, 1.0, static_cast<double>(kMost)));
}

/// The place `lengthM` further on along a piece: on the map an arc whose radius is shorter by the slope.
TrackPlace onwards(const TrackPlace& from, const Piece& piece, double lengthM) {
  const double run = 1.0 / std::hypot(1.0, piece.slope);  // cosine of the slope
  const double turned = piece.curvaturePerM * lengthM, half = turned / 2.0;
  // The chord of an arc: its length is the arc's times sin(half)/half.
  const double chordM = lengthM * run * (std::abs(half) < 1e-9 ? 1.0 : std::sin(half) / half);
  const double heading = from.headingRad + half;
  return {.distanceM = from.distanceM + lengthM,
          .xM = from.xM + chordM * std::cos(heading),
          .yM = from.yM + chordM * std::sin(heading),
          .heightM = from.heightM + lengthM * run * piece.slope,
          .headingRad = from.headingRad + turned};
}

void add(TrackLine& line, const Piece& piece) {
  const TrackPlace from = line.places.back();
  const int steps = stepsOf(piece);
  for (int step = 1; step <= steps; ++step)
    line.places.push_back(onwards(from, piece, piece.lengthM * step / steps));
}

Piece stretchOf(const TrackPath& path, std::size_t i) {
  return {.lengthM = path.spacingM,
          .curvaturePerM = path.curvaturePerKm[i] / units::kMetresPerKilometre,
          .slope = i < path.slopePercent.size() ? path.slopePercent[i] * kPerPercent : 0.0};
}

/// The recorded places, and behind the last stretch the one where it ends.
void addRecorded(TrackLine& line, const TrackPath& path) {
  const std::size_t stretches = path.curvaturePerKm.size();
  TrackPlace place{.xM = path.xM[0], .yM = path.yM[0]};
  for (std::size_t i = 0; i < stretches; ++i) {
    const std::size_t from = i + 1 < stretches ? i : i - 1;
    place.xM = path.xM[i];
    place.yM = path.yM[i];
    // The way to the next place is a chord: the stretch begins half its bend before that.
    const double chordRad = std::atan2(path.yM[from + 1] - path.yM[from], path.xM[from + 1] - path.xM[from]);
    const Piece piece = stretchOf(path, i);
    const double bendRad = piece.curvaturePerM * piece.lengthM;
    const double headingRad = from == i ? chordRad - bendRad / 2.0 : place.headingRad;
    place.headingRad += std::remainder(headingRad - place.headingRad, 2.0 * units::kPi);
    line.places.push_back(place);
    place = onwards(place, piece, piece.lengthM);
  }
  line.places.push_back(place);
}

void close(TrackLine& line) {
  const TrackPlace &first = line.places.front(), &last = line.places.back();
  line.closingGapM = std::hypot(last.xM - first.xM, last.yM - first.yM);
  line.closingTurnRad = std::remainder(last.headingRad - first.headingRad, 2.0 * units::kPi);
}

}  // namespace

TrackLine trackLine(const Track& track, double bendMps2) {
  TrackLine line;
  if (track.path && track.path->curvaturePerKm.size() >= 2) {
    const TrackPath& path = *track.path;
    const bool placed = path.xM.size() == path.curvaturePerKm.size() && path.yM.size() == path.xM.size();
    if (placed) {
      addRecorded(line, path);
    } else {
      line.places.emplace_back();
      for (std::size_t i = 0; i < path.curvaturePerKm.size(); ++i) add(line, stretchOf(path, i));
    }
  } else if (!track.segments.empty()) {
    line.places.emplace_back();
    for (const TrackSegment& segment : track.segments) {
      line.begins.push_back(line.places.size() - 1);
      if (!segmentProblem(segment)) add(line, pieceOf(segment, bendMps2));
    }
  }
  if (line.places.empty()) return line;
  line.lengthM = line.places.back().distanceM;
  if (track.closed == true) close(line);
  return line;
}

TrackPlace placeAt(const TrackLine& line, double distanceM) {
  const auto& places = line.places;
  const auto next = std::upper_bound(places.begin(), places.end(), distanceM,
                                     [](double s, const TrackPlace& place) { return s < place.distanceM; });
  if (next == places.begin()) return places.front();
  if (next == places.end()) return places.back();
  const TrackPlace &a = *std::prev(next), &b = *next;
  const double share = (distanceM - a.distanceM) / (b.distanceM - a.distanceM);
  const auto between = [&](double from, double to) { return from + share * (to - from); };
  return {.distanceM = distanceM,
          .xM = between(a.xM, b.xM),
          .yM = between(a.yM, b.yM),
          .heightM = between(a.heightM, b.heightM),
          .headingRad = between(a.headingRad, b.headingRad)};
}

}  // namespace layshaft
