// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/line_noise.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/limits.h"
#include "core/track/stiffness.h"
#include "core/units.h"

namespace layshaft {
namespace {

/// Numbers that look normally distributed, the same on every machine, which those of the standard library are
/// not: Steele, Lea and Flood's SplitMix64 (OOPSLA 2014) through Box and Muller's rule.
class Normal {
 public:
  explicit Normal(std::uint64_t seed) : state_(seed * kStep) {}

  double operator()() {
    const double away = std::sqrt(-2.0 * std::log(uniform()));
    return away * std::cos(2.0 * units::kPi * uniform());
  }

 private:
  static constexpr std::uint64_t kStep = 0x9E3779B97F4A7C15u;

  /// Above 0, up to 1.
  double uniform() {
    std::uint64_t z = state_ += kStep;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    z ^= z >> 31;
    return std::ldexp(static_cast<double>(z >> 11) + 1.0, -53);
  }

  std::uint64_t state_;
};

/// Mean second derivatives of a spline over stretches of one length, from its first knot to its end.
std::vector<double> meanBends(const SplineKnots& knots, const CubicSpline& spline, std::size_t stretches) {
  const auto& at = knots.at();
  const double end = knots.closed() ? at.back() + knots.steps().back() : at.back();
  const double stretchM = (end - at.front()) / static_cast<double>(stretches);
  std::size_t span = 0;
  const auto slopeAt = [&](std::size_t k) {
    const double s = at.front() + stretchM * static_cast<double>(k);
    while (span + 1 < knots.spans() && at[span + 1] <= s) ++span;
    return knots.in(spline, span, std::clamp((s - at[span]) / knots.steps()[span], 0.0, 1.0)).slope;
  };
  std::vector<double> bends;
  double before = slopeAt(0);
  for (std::size_t k = 1; k <= stretches; ++k) {
    const double here = slopeAt(k);
    bends.push_back((here - before) / stretchM);
    before = here;
  }
  return bends;
}

double squares(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value * value;
  return sum;
}

/// Knots where stretches meet.
SplineKnots knotsOf(const TrackPath& path, bool closed) {
  const std::size_t count = path.curvaturePerKm.size();
  std::vector<double> at;
  for (std::size_t k = 0; k < count + (closed ? 0 : 1); ++k)
    at.push_back(path.spacingM * static_cast<double>(k));
  const auto period = closed ? std::optional(path.spacingM * static_cast<double>(count)) : std::nullopt;
  return SplineKnots(std::move(at), period);
}

}  // namespace

double curvatureNoisePerM(const SplineKnots& knots, double alpha, std::size_t stretches, double noiseM) {
  // So far apart no fix feels another: the smoother forgets by exp(−distance/(√2·smoothing length)).
  constexpr double kReach = 30.0;
  const double smoothingM = std::pow(alpha * knots.meanStep(), 0.25);
  const auto apart = static_cast<std::size_t>(std::ceil(kReach * (smoothingM / knots.meanStep() + 1.0)));
  const double all = static_cast<double>(knots.size());
  std::vector<double> moved(knots.size(), 0.0);
  double fixes = 0.0;
  for (std::size_t i = std::min(apart, knots.size()) / 2; i < knots.size(); i += apart, ++fixes)
    moved[i] = 1.0;
  const double each = squares(meanBends(knots, Smoother(knots, alpha).smooth(moved), stretches)) / fixes;
  return noiseM * std::sqrt(each * all / static_cast<double>(stretches));
}

TrackPath recordedAnotherDay(const TrackPath& path, bool closed, std::uint64_t day) {
  constexpr std::size_t kFewest = 5;  // knots of a spline that comes round
  const double noisePerKm = path.curvatureNoisePerKm.value_or(0.0);
  TrackPath other = path;
  if (noisePerKm == 0.0 || path.curvaturePerKm.size() < kFewest) return other;
  const SplineKnots knots = knotsOf(path, closed);
  std::vector<double> aside(knots.size());
  Normal normal(day);
  for (double& metres : aside) metres = normal();
  const double alpha = alphaOf(knots, path.smoothingM.value_or(0.0));
  const auto bends = meanBends(knots, Smoother(knots, alpha).smooth(aside), other.curvaturePerKm.size());
  const double size = std::sqrt(squares(bends) / static_cast<double>(bends.size()));
  for (std::size_t k = 0; k < bends.size(); ++k)
    other.curvaturePerKm[k] = std::clamp(other.curvaturePerKm[k] + noisePerKm * bends[k] / size,
                                         limits::kCurvaturePerKm.low, limits::kCurvaturePerKm.high);
  return other;
}

}  // namespace layshaft
