// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/track/plane.h"
#include "core/track/smoothing_spline.h"
#include "core/track/stiffness.h"

namespace layshaft {

struct PathPlace {
  PlanePoint at;
  double headingRad = 0.0;  ///< from x to y
};

/// A smooth line through measured points, open or closed: x and y are smoothing splines over the distance
/// along the line itself, so that slow, dense stretches are smoothed over as many metres as fast ones.
/// Curvature comes from the splines and is not smoothed again, which would clip bends.
class PathCurve {
 public:
  /// At least 3 points, 5 if closed, no two in a row the same. The stiffness is chosen from the points
  /// (`chosenStiffness`) unless a smoothing length is given.
  PathCurve(const std::vector<PlanePoint>& points, bool closed,
            std::optional<double> smoothingM = std::nullopt);

  bool closed() const { return knots_->closed(); }
  double lengthM() const { return distanceM_.back(); }
  double smoothingM() const { return smoothingM_; }
  double noiseM() const { return noiseM_; }  ///< of the points, beside the line; with the chosen stiffness
  /// Along the line at each point, and once more where a closed line comes round.
  const std::vector<double>& distanceM() const { return distanceM_; }

  /// Equal stretches, as many as come nearest to `spacingM`, at least `fewest`: where each begins and, at the
  /// end, where the last one ends.
  std::vector<PathPlace> stretches(double spacingM, std::size_t fewest) const;

  /// What noise of the points, beside the line, leaves in the curvature of so many stretches, in 1/m.
  double curvatureNoisePerM(std::size_t stretches) const;

  /// The greatest curvature, without its sign, in 1/m.
  double greatestCurvaturePerM() const;

 private:
  void fit(const std::vector<std::vector<double>>& xy);
  /// Sum of the squares of how far points lie beside the line; along it their noise is not seen.
  double squaresAside(const std::vector<PlanePoint>& points) const;
  void measure();
  PathPlace place(std::size_t span, double share) const;

  std::optional<SplineKnots> knots_;
  CubicSpline x_, y_;
  std::vector<double> distanceM_;
  double smoothingM_ = 0.0, noiseM_ = 0.0;
};

}  // namespace layshaft
