// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/torque_spline.h"

#include <cmath>

namespace layshaft {
namespace {

/// The slope at an end from the two nearest intervals `h0` (at the end) and `h1` with secants `d0`, `d1`; cut
/// back so that the curve keeps the shape of its points.
double endSlope(double h0, double h1, double d0, double d1) {
  const double slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0.0) return 0.0;
  if (d0 * d1 < 0.0 && std::abs(slope) > 3.0 * std::abs(d0)) return 3.0 * d0;
  return slope;
}

double secantOf(const TorquePoint& a, const TorquePoint& b) {
  return (b.torqueNm - a.torqueNm) / (b.rpm - a.rpm);
}

std::vector<double> slopesOf(const std::vector<TorquePoint>& points) {
  const std::size_t n = points.size();
  std::vector<double> h(n - 1), secant(n - 1), slope(n, 0.0);
  for (std::size_t i = 0; i + 1 < n; ++i) {
    h[i] = points[i + 1].rpm - points[i].rpm;
    secant[i] = secantOf(points[i], points[i + 1]);
  }
  for (std::size_t i = 1; i + 1 < n; ++i) {
    if (secant[i - 1] * secant[i] <= 0.0) continue;
    const double w1 = 2.0 * h[i] + h[i - 1], w2 = h[i] + 2.0 * h[i - 1];
    slope[i] = (w1 + w2) / (w1 / secant[i - 1] + w2 / secant[i]);
  }
  slope[0] = endSlope(h[0], h[1], secant[0], secant[1]);
  slope[n - 1] = endSlope(h[n - 2], h[n - 3], secant[n - 2], secant[n - 3]);
  return slope;
}

}  // namespace

TorqueSpline::TorqueSpline(const TorqueCurve& curve, double revLimitRpm) : revLimitRpm_(revLimitRpm) {
  const auto& points = curve.points();
  const bool straight = points.size() < 4;
  const std::vector<double> slope = straight ? std::vector<double>() : slopesOf(points);
  pieces_.push_back({0.0, points.front().torqueNm, 0.0, 0.0, 0.0});
  for (std::size_t i = 0; i < points.size() && points[i].rpm < revLimitRpm; ++i) {
    knots_.push_back(points[i].rpm);
    if (i + 1 == points.size()) {
      goOnFrom(points[i], straight ? secantOf(points[i - 1], points[i]) : slope[i]);
      break;
    }
    const double h = points[i + 1].rpm - points[i].rpm;
    const double secant = secantOf(points[i], points[i + 1]);
    const double left = straight ? secant : slope[i], right = straight ? secant : slope[i + 1];
    pieces_.push_back({points[i].rpm, points[i].torqueNm, left, (3.0 * secant - 2.0 * left - right) / h,
                       (left + right - 2.0 * secant) / (h * h)});
  }
}

void TorqueSpline::goOnFrom(const TorquePoint& last, double slope) {
  const bool falls = slope < 0.0 && last.torqueNm > 0.0;
  beyond_ = Beyond{last.rpm, falls};
  pieces_.push_back({last.rpm, last.torqueNm, falls ? slope : 0.0, 0.0, 0.0});
  if (!falls) return;
  const double endRpm = last.rpm - last.torqueNm / slope;
  if (endRpm >= revLimitRpm_) return;
  knots_.push_back(endRpm);
  pieces_.push_back({endRpm, 0.0, 0.0, 0.0, 0.0});
}

TorquePoint TorqueSpline::peak() const {
  // Monotone between the knots: the peak is at one of them or at the limit.
  TorquePoint best{.rpm = knots_.empty() ? revLimitRpm_ : knots_.front(), .torqueNm = pieces_.front().c0};
  for (const double rpm : knots_)
    if (const double torque = at(rpm); torque > best.torqueNm) best = {.rpm = rpm, .torqueNm = torque};
  if (const double torque = at(revLimitRpm_); torque > best.torqueNm)
    best = {.rpm = revLimitRpm_, .torqueNm = torque};
  return best;
}

}  // namespace layshaft
