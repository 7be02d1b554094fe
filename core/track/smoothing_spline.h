// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/track/band_matrix.h"

/// Cubic smoothing splines over knots of any spacing.
///
/// Of all functions g the one is taken with the least Σ(yᵢ − g(sᵢ))² + α·∫g″² ds: cubic between the knots,
/// its second derivative continuous, straight outside or coming round with a period. With evenly spaced knots
/// at distance h a ripple of wave number k is left at 1/(1 + α·h·k⁴) of its size, so that L = (α·h)^¼ is the
/// smoothing length: a ripple of 2π·L is halved, and so is a circle of radius L.
///
/// Source: Reinsch, Smoothing by spline functions, Numer. Math. 10 (1967), 177-183; Green and Silverman,
/// Nonparametric Regression and Generalized Linear Models (1994), 2.3.
namespace layshaft {

/// A function by its values and second derivatives at the knots.
struct CubicSpline {
  std::vector<double> value, bend;
};

struct SplineAt {
  double value, slope, bend;
};

/// Knots, of which there are at least 3, or 5 with a period; rising, the first one less than a period before
/// what follows the last.
class SplineKnots {
 public:
  explicit SplineKnots(std::vector<double> at, std::optional<double> period = std::nullopt);

  std::size_t size() const { return at_.size(); }
  std::size_t spans() const { return step_.size(); }
  const std::vector<double>& at() const { return at_; }
  const std::vector<double>& steps() const {
    return step_;
  }  ///< from each knot to the next, the last one round
  double meanStep() const;
  bool closed() const { return closed_; }

  /// The spline in a span, at a share of the way through it.
  SplineAt in(const CubicSpline& spline, std::size_t span, double share) const;

  /// The knots that bend: all but the ends, or all of a closed line. Row r is knot r + 1, or r.
  std::size_t rows() const { return squared_.size(); }
  /// Second differences: Qᵀ·y, and Q·x times a factor taken off y.
  std::vector<double> differences(std::span<const double> y) const;
  void takeOff(std::span<double> y, double factor, std::span<const double> x) const;
  /// QᵀQ, and R + α·QᵀQ, whose solution for Qᵀy are the second derivatives.
  const BandMatrix& squaredDifferences() const { return squared_; }
  BandMatrix system(double alpha) const;

 private:
  std::size_t wrapped(std::size_t knot) const { return knot < size() ? knot : knot - size(); }
  std::vector<double> at_, step_, steepness_;  ///< steepness: 1 / step
  bool closed_;
  BandMatrix squared_;
};

/// Smooths over the same knots with one stiffness.
class Smoother {
 public:
  /// `alpha` as above, not below 0; at 0 the spline goes through all values. `knots` has to stay.
  Smoother(const SplineKnots& knots, double alpha);

  CubicSpline smooth(std::span<const double> y) const;
  /// Second differences of values become second derivatives of their spline.
  void bends(std::span<double> differences) const { factors_.solve(differences); }

  /// How many of the values the noise is left free in: the trace of (1 − hat matrix). Not with a period.
  double freedomOfNoise() const;

 private:
  const SplineKnots& knots_;
  double alpha_;
  BandFactors factors_;
};

}  // namespace layshaft
