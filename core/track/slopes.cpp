// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/slopes.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/limits.h"
#include "core/track/smoothing_spline.h"
#include "core/track/stiffness.h"

namespace layshaft {
namespace {

constexpr double kLeastSmoothingM = 20.0;

/// Height along a line.
class HeightSpline {
 public:
  HeightSpline(std::vector<double> distanceM, const std::vector<double>& heightM,
               std::optional<double> period)
      : knots_(std::move(distanceM), period), lengthM_(period.value_or(0.0)) {
    const std::vector<std::vector<double>> series{heightM};
    const Stiffness chosen = knots_.closed()
                                 ? chosenStiffness(SplineKnots(knots_.at()), series, kLeastSmoothingM)
                                 : chosenStiffness(knots_, series, kLeastSmoothingM);
    spline_ = Smoother(knots_, alphaOf(knots_, chosen.smoothingM)).smooth(heightM);
  }

  /// Ask with rising distances.
  double at(double distanceM) {
    const auto& knots = knots_.at();
    if (knots_.closed() && distanceM < knots.front())
      return heightIn(knots_.spans() - 1, distanceM + lengthM_ - knots.back());
    while (span_ + 1 < knots_.spans() && knots[span_ + 1] <= distanceM) ++span_;
    return heightIn(span_, distanceM - knots[span_]);
  }

 private:
  /// Beyond the ends of an open line it goes on straight.
  double heightIn(std::size_t span, double insideM) const {
    const double stepM = knots_.steps()[span], share = std::clamp(insideM / stepM, 0.0, 1.0);
    const SplineAt there = knots_.in(spline_, span, share);
    return there.value + (insideM - share * stepM) * there.slope;
  }

  SplineKnots knots_;
  double lengthM_;
  CubicSpline spline_;
  std::size_t span_ = 0;
};

}  // namespace

std::vector<double> slopesPercent(const std::vector<RidePoint>& points, const PathCurve& curve,
                                  std::size_t count) {
  constexpr std::size_t kFewest = 5;
  constexpr double kPercent = 100.0;
  std::vector<double> distanceM, heightM;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].heightM) {
      distanceM.push_back(curve.distanceM()[i]);
      heightM.push_back(*points[i].heightM);
    }
  if (heightM.size() < kFewest || 2 * heightM.size() < points.size()) return {};
  HeightSpline height(std::move(distanceM), heightM,
                      curve.closed() ? std::optional(curve.lengthM()) : std::nullopt);
  const double spacingM = curve.lengthM() / static_cast<double>(count);
  std::vector<double> slopes;
  double before = height.at(0.0);
  const double first = before;
  for (std::size_t k = 1; k <= count; ++k) {
    const bool round = curve.closed() && k == count;
    const double here = round ? first : height.at(static_cast<double>(k) * spacingM);
    slopes.push_back((here - before) / spacingM * kPercent);
    before = here;
    if (!limits::kSlopePercent.contains(slopes.back())) return {};
  }
  return slopes;
}

}  // namespace layshaft
