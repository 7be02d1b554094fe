// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace layshaft {

struct LinePoint {
  double x, y;
};

/// The line of least squares through points, and how far they lie off it.
struct StraightLine {
  std::size_t points;
  double intercept, slope;
  double meanX;
  double sxx;                        ///< sum of the squares of x less its mean
  std::optional<double> residualSd;  ///< on points − 2 degrees of freedom; none with two points
  double at(double x) const { return intercept + slope * x; }
  /// Standard errors by the usual formulas; none with two points.
  std::optional<double> slopeError() const;
  std::optional<double> interceptError() const;
};

/// None with fewer than two different x.
std::optional<StraightLine> straightLine(const std::vector<LinePoint>& points);

/// Where a line reaches a height, and between which x by the spread of its points.
struct Reached {
  double x;
  std::optional<double> low, high;  ///< none with two points
};

/// Where the line comes up to `y`; none where it does not rise. The interval holds the true place with
/// probability `confidence`: x0 ± t·(s/b)·√(1/N + (x0 − x̄)²/Sxx), the delta method of inverse prediction, t
/// of Student's distribution with N − 2 degrees of freedom.
std::optional<Reached> reaches(const StraightLine& line, double y, double confidence);

}  // namespace layshaft
