// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/smoothing_spline.h"

#include <cassert>
#include <numeric>
#include <utility>

namespace layshaft {

// A column of Q belongs to a knot that bends; it holds 1/h, −1/h − 1/h', 1/h' in the rows of the knot before,
// the knot and the one behind it, h and h' being the steps on both sides. In a closed line the column r is
// knot r, its steps r − 1 and r; in an open one knot r + 1, its steps r and r + 1.

SplineKnots::SplineKnots(std::vector<double> at, std::optional<double> period)
    : at_(std::move(at)), closed_(period.has_value()) {
  assert(at_.size() >= (closed_ ? 5U : 3U));
  for (std::size_t i = 0; i + 1 < size(); ++i) step_.push_back(at_[i + 1] - at_[i]);
  if (closed_) step_.push_back(at_.front() + *period - at_.back());
  for (const double step : step_) steepness_.push_back(1.0 / step);
  const std::size_t rows = closed_ ? size() : size() - 2;
  squared_ = {std::vector<double>(rows), std::vector<double>(rows), std::vector<double>(rows), closed_};
  const auto steep = [&](std::size_t span) { return steepness_[span % spans()]; };
  for (std::size_t r = 0; r < rows; ++r) {
    const std::size_t span = closed_ ? r + spans() - 1 : r;
    // What the last rows of an open line would share with rows that are not there is never looked at.
    const double a = steep(span), b = steep(span + 1), c = steep(span + 2);
    squared_.diagonal[r] = a * a + (a + b) * (a + b) + b * b;
    squared_.first[r] = -(a + b) * b - b * (b + c);
    squared_.second[r] = b * c;
  }
}

double SplineKnots::meanStep() const {
  return std::accumulate(step_.begin(), step_.end(), 0.0) / static_cast<double>(step_.size());
}

SplineAt SplineKnots::in(const CubicSpline& spline, std::size_t span, double share) const {
  const std::size_t next = wrapped(span + 1);
  const double h = step_[span], t = share, u = 1.0 - share;
  const double m0 = spline.bend[span], m1 = spline.bend[next], y0 = spline.value[span],
               y1 = spline.value[next];
  return {.value = u * y0 + t * y1 - t * u * ((1.0 + u) * m0 + (1.0 + t) * m1) * h * h / 6.0,
          .slope = (y1 - y0) / h + ((1.0 - 3.0 * u * u) * m0 + (3.0 * t * t - 1.0) * m1) * h / 6.0,
          .bend = u * m0 + t * m1};
}

std::vector<double> SplineKnots::differences(std::span<const double> y) const {
  std::vector<double> rows(squared_.size());
  const std::size_t shift = closed_ ? size() - 1 : 0;  // from the row to the knot before it
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const std::size_t before = wrapped(r + shift), knot = wrapped(before + 1), behind = wrapped(knot + 1);
    rows[r] = (y[behind] - y[knot]) * steepness_[knot] - (y[knot] - y[before]) * steepness_[before];
  }
  return rows;
}

void SplineKnots::takeOff(std::span<double> y, double factor, std::span<const double> x) const {
  const std::size_t shift = closed_ ? size() - 1 : 0;
  for (std::size_t r = 0; r < x.size(); ++r) {
    const std::size_t before = wrapped(r + shift), knot = wrapped(before + 1), behind = wrapped(knot + 1);
    const double a = steepness_[before] * factor * x[r], b = steepness_[knot] * factor * x[r];
    y[before] -= a;
    y[knot] += a + b;
    y[behind] -= b;
  }
}

BandMatrix SplineKnots::system(double alpha) const {
  BandMatrix system = squared_;
  const std::size_t shift = closed_ ? size() - 1 : 0;
  for (std::size_t r = 0; r < rows(); ++r) {
    const std::size_t before = wrapped(r + shift), knot = wrapped(before + 1);
    system.diagonal[r] = alpha * system.diagonal[r] + (step_[before] + step_[knot]) / 3.0;
    system.first[r] = alpha * system.first[r] + step_[knot] / 6.0;
    system.second[r] *= alpha;
  }
  return system;
}

Smoother::Smoother(const SplineKnots& knots, double alpha)
    : knots_(knots), alpha_(alpha), factors_(knots.system(alpha)) {}

CubicSpline Smoother::smooth(std::span<const double> y) const {
  std::vector<double> bends = knots_.differences(y);
  factors_.solve(bends);
  CubicSpline spline{std::vector<double>(y.begin(), y.end()), std::move(bends)};
  knots_.takeOff(spline.value, alpha_, spline.bend);
  if (!knots_.closed()) {  // the ends do not bend
    spline.bend.insert(spline.bend.begin(), 0.0);
    spline.bend.push_back(0.0);
  }
  return spline;
}

double Smoother::freedomOfNoise() const {
  const BandMatrix inverse = factors_.bandsOfInverse();
  const BandMatrix& q = knots_.squaredDifferences();
  double trace = 0.0;
  for (std::size_t r = 0; r < q.size(); ++r)
    trace += q.diagonal[r] * inverse.diagonal[r] +
             2.0 * (q.first[r] * inverse.first[r] + q.second[r] * inverse.second[r]);
  return alpha_ * trace;
}

}  // namespace layshaft
