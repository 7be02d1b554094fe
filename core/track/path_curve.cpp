// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/path_curve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/track/line_noise.h"

namespace layshaft {
namespace {

constexpr double kLeastStepM = 1e-3;  ///< between knots; where the smooth line stands still they would meet

struct GaussNode {
  double at, weight;
};
// Legendre's for four nodes on 0 to 1 (Abramowitz and Stegun, table 25.4).
constexpr std::array<GaussNode, 4> kGauss = {{{0.0694318442029737, 0.1739274225687269},
                                              {0.3300094782075719, 0.3260725774312731},
                                              {0.6699905217924281, 0.3260725774312731},
                                              {0.9305681557970263, 0.1739274225687269}}};

SplineKnots knotsAlong(std::vector<double> distanceM, bool closed) {
  std::optional<double> period;
  if (closed) {
    period = distanceM.back() - distanceM.front();
    distanceM.pop_back();
  }
  return SplineKnots(std::move(distanceM), period);
}

/// Distances from point to point, rising by something at every one.
std::vector<double> chords(const std::vector<PlanePoint>& points, bool closed) {
  std::vector<double> distanceM{0.0};
  const std::size_t count = points.size() + (closed ? 1 : 0);
  for (std::size_t i = 1; i < count; ++i) {
    const PlanePoint &a = points[i - 1], &b = points[i < points.size() ? i : 0];
    distanceM.push_back(distanceM.back() + std::max(kLeastStepM, std::hypot(b.xM - a.xM, b.yM - a.yM)));
  }
  return distanceM;
}

double speedIn(const SplineKnots& knots, const CubicSpline& x, const CubicSpline& y, std::size_t span,
               double share) {
  return std::hypot(knots.in(x, span, share).slope, knots.in(y, span, share).slope);
}

/// Length of the line from the beginning of a span to a share of it.
double lengthIn(const SplineKnots& knots, const CubicSpline& x, const CubicSpline& y, std::size_t span,
                double share) {
  double length = 0.0;
  for (const GaussNode& node : kGauss) length += node.weight * speedIn(knots, x, y, span, share * node.at);
  return length * share * knots.steps()[span];
}

}  // namespace

PathCurve::PathCurve(const std::vector<PlanePoint>& points, bool closed, std::optional<double> smoothingM) {
  // From point to point noise makes the way longer; along the smooth line it is right.
  constexpr int kRounds = 2;
  std::vector<std::vector<double>> xy(2);
  for (const PlanePoint& point : points) {
    xy[0].push_back(point.xM);
    xy[1].push_back(point.yM);
  }
  distanceM_ = chords(points, closed);
  for (int round = 1; round <= kRounds; ++round) {
    knots_ = knotsAlong(distanceM_, closed);
    const Search search = round < kRounds ? Search::Rough : Search::Fine;
    const Stiffness chosen = closed ? chosenStiffness(SplineKnots(knots_->at()), xy, 0.0, search)
                                    : chosenStiffness(*knots_, xy, 0.0, search);
    smoothingM_ = chosen.smoothingM;
    fit(xy);
    measure();
    if (round == kRounds && chosen.freedom > 0.0) noiseM_ = std::sqrt(squaresAside(points) / chosen.freedom);
  }
  if (!smoothingM) return;
  smoothingM_ = *smoothingM;
  fit(xy);
  measure();
}

double PathCurve::squaresAside(const std::vector<PlanePoint>& points) const {
  double squares = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const bool behind = i < knots_->spans();  // the last point of an open line ends a span and begins none
    const std::size_t span = behind ? i : i - 1;
    const SplineAt x = knots_->in(x_, span, behind ? 0.0 : 1.0), y = knots_->in(y_, span, behind ? 0.0 : 1.0);
    const double speed = std::hypot(x.slope, y.slope);
    if (!(speed > 0.0)) continue;
    const double aside = ((points[i].xM - x.value) * y.slope - (points[i].yM - y.value) * x.slope) / speed;
    squares += aside * aside;
  }
  return squares;
}

void PathCurve::fit(const std::vector<std::vector<double>>& xy) {
  const Smoother smoother(*knots_, alphaOf(*knots_, smoothingM_));
  x_ = smoother.smooth(xy[0]);
  y_ = smoother.smooth(xy[1]);
}

void PathCurve::measure() {
  distanceM_.assign(1, 0.0);
  for (std::size_t span = 0; span < knots_->spans(); ++span)
    distanceM_.push_back(distanceM_.back() + std::max(kLeastStepM, lengthIn(*knots_, x_, y_, span, 1.0)));
}

PathPlace PathCurve::place(std::size_t span, double share) const {
  const SplineAt x = knots_->in(x_, span, share), y = knots_->in(y_, span, share);
  return {.at = {x.value, y.value}, .headingRad = std::atan2(y.slope, x.slope)};
}

std::vector<PathPlace> PathCurve::stretches(double spacingM, std::size_t fewest) const {
  constexpr int kSteps = 3;  // of Newton's: the speed along a spline hardly changes within a span
  const double wanted = std::round(lengthM() / spacingM);
  const auto count = std::max(fewest, static_cast<std::size_t>(std::max(wanted, 1.0)));
  std::vector<PathPlace> places;
  places.reserve(count + 1);
  std::size_t span = 0;
  for (std::size_t k = 0; k <= count; ++k) {
    const double s = lengthM() * static_cast<double>(k) / static_cast<double>(count);
    while (span + 1 < knots_->spans() && distanceM_[span + 1] < s) ++span;
    const double inside = s - distanceM_[span], spanM = distanceM_[span + 1] - distanceM_[span];
    double share = std::clamp(inside / spanM, 0.0, 1.0);
    for (int step = 0; step < kSteps; ++step) {
      const double speed = speedIn(*knots_, x_, y_, span, share) * knots_->steps()[span];
      if (!(speed > 0.0)) break;
      share = std::clamp(share + (inside - lengthIn(*knots_, x_, y_, span, share)) / speed, 0.0, 1.0);
    }
    places.push_back(place(span, share));
  }
  return places;
}

double PathCurve::curvatureNoisePerM(std::size_t stretches) const {
  if (noiseM_ == 0.0) return 0.0;
  return layshaft::curvatureNoisePerM(*knots_, alphaOf(*knots_, smoothingM_), stretches, noiseM_);
}

double PathCurve::greatestCurvaturePerM() const {
  constexpr double kLookM = 1.0;
  constexpr double kMostLooks = 50.0;
  double greatest = 0.0;
  for (std::size_t span = 0; span < knots_->spans(); ++span) {
    const auto looks =
        static_cast<int>(std::clamp(std::ceil(knots_->steps()[span] / kLookM), 1.0, kMostLooks));
    for (int look = 0; look <= looks; ++look) {
      const double share = static_cast<double>(look) / looks;
      const SplineAt x = knots_->in(x_, span, share), y = knots_->in(y_, span, share);
      const double speed = std::hypot(x.slope, y.slope);
      if (speed > 0.0)
        greatest =
            std::max(greatest, std::abs(x.slope * y.bend - y.slope * x.bend) / (speed * speed * speed));
    }
  }
  return greatest;
}

}  // namespace layshaft
