// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/recorded_line.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "core/limits.h"
#include "core/number_text.h"

namespace layshaft {
namespace {

// Common practice, no source.
constexpr double kSamePlaceM = 0.01;          ///< as fine as the last digit that receivers write
constexpr double kStandingMps = 0.8;          ///< slower than anybody rides; faster than a fix wanders
constexpr double kStandingWindowS = 2.0;      ///< over which that is measured
constexpr double kFastestMps = 140.0;         ///< 500 km/h
constexpr std::size_t kMostLeapsInARow = 10;  ///< after so many it is the fix before that was wrong
constexpr double kFarM = 100000.0;
constexpr double kSpikeM = 20.0;
constexpr double kSpikeShare = 5.0;  ///< how much farther there and back is than the way without it

double distance(const RidePoint& a, const RidePoint& b) {
  return std::hypot(b.xM - a.xM, b.yM - a.yM);
}

std::optional<double> medianHeight(const Recording& recording) {
  std::vector<double> heights;
  for (const Fix& fix : recording.fixes)
    if (fix.heightM) heights.push_back(*fix.heightM);
  if (heights.empty()) return std::nullopt;
  const auto middle = heights.begin() + static_cast<std::ptrdiff_t>(heights.size() / 2);
  std::nth_element(heights.begin(), middle, heights.end());
  return *middle;
}

std::vector<RidePoint> onPlane(const Recording& recording, std::optional<EarthPoint>& origin) {
  std::vector<RidePoint> points;
  points.reserve(recording.fixes.size());
  if (!recording.onEarth) {
    // Grids whose origin is far away would cost digits.
    const Fix& first = recording.fixes.front();
    const bool far = std::max(std::abs(first.east), std::abs(first.north)) > kFarM;
    const double x = far ? first.east : 0.0, y = far ? first.north : 0.0;
    for (const Fix& fix : recording.fixes)
      points.push_back({fix.east - x, fix.north - y, fix.heightM, fix.timeS});
    return points;
  }
  origin = EarthPoint{recording.fixes.front().north, recording.fixes.front().east,
                      medianHeight(recording).value_or(0.0)};
  const LocalPlane plane(*origin);
  for (const Fix& fix : recording.fixes) {
    const PlanePoint point = plane.onPlane(fix.north, fix.east);
    points.push_back({point.xM, point.yM, fix.heightM, fix.timeS});
  }
  return points;
}

/// Keeps the points that `keep` wants; it is asked of each with those kept so far.
template <class Keep>
std::size_t leaveOut(std::vector<RidePoint>& points, Keep keep) {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (keep(i, kept)) points[kept++] = points[i];
  const std::size_t gone = points.size() - kept;
  points.resize(kept);
  return gone;
}

bool isTooFast(const RidePoint& from, const RidePoint& to) {
  if (!from.timeS || !to.timeS) return false;
  const double seconds = *to.timeS - *from.timeS;
  // Beyond what noise alone does between fixes that follow fast on each other.
  return seconds > 0.0 && distance(from, to) > kFastestMps * seconds + kSpikeM;
}

bool isSpike(const RidePoint& before, const RidePoint& point, const RidePoint& after) {
  const double there = distance(before, point), back = distance(point, after);
  return std::min(there, back) > kSpikeM && std::min(there, back) > kSpikeShare * distance(before, after);
}

std::size_t leaveOutLeaps(std::vector<RidePoint>& points) {
  std::size_t inARow = 0;
  return leaveOut(points, [&](std::size_t i, std::size_t kept) {
    if (kept == 0) return true;
    const bool leap = isTooFast(points[kept - 1], points[i]) ||
                      (i + 1 < points.size() && isSpike(points[kept - 1], points[i], points[i + 1]));
    inARow = leap ? inARow + 1 : 0;
    if (inARow <= kMostLeapsInARow) return !leap;
    inARow = 0;
    return true;
  });
}

/// While a bike stands its fixes wander, and a line through them would have length without going anywhere.
std::size_t leaveOutStanding(std::vector<RidePoint>& points) {
  std::vector<char> standing(points.size(), 0);
  std::size_t first = 0, done = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!points[i].timeS) continue;
    const double from = *points[i].timeS - kStandingWindowS;
    while (first < i && (!points[first].timeS || *points[first].timeS < from)) ++first;
    const double seconds = *points[i].timeS - *points[first].timeS;
    if (seconds < kStandingWindowS / 2.0 || distance(points[first], points[i]) >= kStandingMps * seconds)
      continue;
    for (done = std::max(done, first + 1); done <= i; ++done) standing[done] = 1;
  }
  return leaveOut(points, [&](std::size_t i, std::size_t) { return standing[i] == 0; });
}

Problem outOfRange(const char* path, double given, const Limit& limit) {
  return {.kind = Problem::Kind::OutOfRange,
          .path = path,
          .given = numberText(std::round(given)),
          .low = limit.low,
          .high = limit.high,
          .unit = limit.unit};
}

}  // namespace

Result<RecordedLine> recordedLine(const Recording& recording) {
  RecordedLine line;
  line.leftOut.noFix = recording.noFix;
  line.leftOut.damaged = recording.damaged;
  auto& points = line.points;
  if (!recording.fixes.empty()) points = onPlane(recording, line.origin);
  const auto leaveOutRepeated = [&] {
    line.leftOut.repeated += leaveOut(points, [&](std::size_t i, std::size_t kept) {
      return kept == 0 || distance(points[kept - 1], points[i]) >= kSamePlaceM;
    });
  };
  line.leftOut.leaps = leaveOutLeaps(points);
  line.leftOut.standing = leaveOutStanding(points);
  leaveOutRepeated();
  if (points.size() < limits::kFewestFixes)
    return Problem{.kind = Problem::Kind::WrongCount,
                   .path = "points",
                   .given = std::to_string(points.size()),
                   .low = limits::kFewestFixes,
                   .high = limits::kMostFixes};
  for (const RidePoint& point : points)
    if (const double far = distance(points.front(), point); !limits::kFromFirstFixM.contains(far))
      return outOfRange("points", far, limits::kFromFirstFixM);
  line.distanceM.reserve(points.size());
  line.distanceM.push_back(0.0);
  for (std::size_t i = 1; i < points.size(); ++i)
    line.distanceM.push_back(line.distanceM.back() + distance(points[i - 1], points[i]));
  if (line.distanceM.back() < limits::kRecordedLengthM.low)
    return outOfRange("length_m", line.distanceM.back(), limits::kRecordedLengthM);
  return line;
}

}  // namespace layshaft
