// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_place.h"

#include <algorithm>
#include <cmath>

namespace layshaft {
namespace {

constexpr double kClosestM = 20.0;  // of places at which two laps are compared

/// The way between two points as a share of the seconds between them: the cubic that has the place and the
/// speed of both (Hermite).
class Way {
 public:
  Way(const LapPoint& a, const LapPoint& b)
      : metres_(b.distanceM - a.distanceM),
        first_(a.speedMps * (b.timeS - a.timeS)),
        last_(b.speedMps * (b.timeS - a.timeS)) {}

  double at(double s) const { return s * (first_ + s * (square() + s * cube())); }
  double rate(double s) const { return first_ + s * (2.0 * square() + s * 3.0 * cube()); }

  /// The share of the time after which so much of the way is done.
  double shareAfter(double metres) const {
    // Begun with one acceleration, which is right to some per cent; each step doubles the digits.
    constexpr int kSteps = 4;
    const double done = metres / metres_;
    const double fast = std::sqrt(std::max(0.0, first_ * first_ + done * (last_ * last_ - first_ * first_)));
    double share = first_ + fast > 0.0 ? done * (first_ + last_) / (first_ + fast) : done;
    for (int step = 0; step < kSteps; ++step) {
      const double slope = rate(share);
      if (!(slope > 0.0)) break;
      share = std::clamp(share - (at(share) - metres) / slope, 0.0, 1.0);
    }
    return share;
  }

 private:
  double square() const { return 3.0 * metres_ - 2.0 * first_ - last_; }
  double cube() const { return first_ + last_ - 2.0 * metres_; }

  double metres_, first_, last_;  ///< the way, and those that either speed would do in its time
};

/// `distanceM` must lie between the two.
LapPoint between(const LapPoint& a, const LapPoint& b, double distanceM) {
  LapPoint point = a;
  const double seconds = b.timeS - a.timeS;
  if (!(b.distanceM > a.distanceM) || !(seconds > 0.0)) return point;
  const Way way(a, b);
  const double share = way.shareAfter(distanceM - a.distanceM);
  point.distanceM = distanceM;
  point.timeS = a.timeS + share * seconds;
  point.speedMps = std::max(0.0, way.rate(share) / seconds);
  const double along = (distanceM - a.distanceM) / (b.distanceM - a.distanceM);
  if (a.rpm && b.rpm && a.gear == b.gear) point.rpm = *a.rpm + along * (*b.rpm - *a.rpm);
  return point;
}

/// The times of a lap at rising places.
std::vector<double> timesAt(const std::vector<LapPoint>& points, const std::vector<double>& places) {
  std::vector<double> times;
  times.reserve(places.size());
  std::size_t at = 0;
  for (const double place : places) {
    while (at + 1 < points.size() && points[at + 1].distanceM <= place) ++at;
    times.push_back(at + 1 < points.size() && place > points[at].distanceM
                        ? between(points[at], points[at + 1], place).timeS
                        : points[at].timeS);
  }
  return times;
}

std::vector<double> placesOf(const std::vector<LapPoint>& points) {
  std::vector<double> places;
  places.reserve(points.size());
  for (const LapPoint& point : points) places.push_back(point.distanceM);
  return places;
}

/// Of both laps, rising, with others between.
std::vector<double> placesOf(const std::vector<LapPoint>& a, const std::vector<LapPoint>& b) {
  const std::vector<double> ofA = placesOf(a), ofB = placesOf(b);
  std::vector<double> given(a.size() + b.size());
  std::merge(ofA.begin(), ofA.end(), ofB.begin(), ofB.end(), given.begin());
  given.erase(std::unique(given.begin(), given.end()), given.end());
  std::vector<double> places;
  for (const double place : given) {
    if (!places.empty()) {
      const double last = places.back(), gap = place - last;
      const int parts = static_cast<int>(std::ceil(gap / kClosestM));
      for (int part = 1; part < parts; ++part) places.push_back(last + gap * part / parts);
    }
    places.push_back(place);
  }
  return places;
}

}  // namespace

std::optional<LapPoint> lapPointAt(const std::vector<LapPoint>& points, double distanceM) {
  if (points.empty() || !(distanceM >= 0.0 && distanceM <= points.back().distanceM)) return std::nullopt;
  const auto above =
      std::upper_bound(points.begin(), points.end(), distanceM,
                       [](double place, const LapPoint& point) { return place < point.distanceM; });
  if (above == points.begin()) return points.front();
  if (above == points.end()) return points.back();
  return between(*(above - 1), *above, distanceM);
}

std::vector<LapDifference> lapDifference(const std::vector<LapPoint>& from, const std::vector<LapPoint>& to) {
  std::vector<LapDifference> result;
  if (from.empty() || to.empty()) return result;
  const std::vector<double> places = placesOf(from, to);
  const std::vector<double> before = timesAt(from, places), after = timesAt(to, places);
  result.reserve(places.size());
  for (std::size_t i = 0; i < places.size(); ++i) result.push_back({places[i], after[i] - before[i]});
  return result;
}

}  // namespace layshaft
