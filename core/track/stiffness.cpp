// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/stiffness.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace layshaft {
namespace {

// In steps of the knots; common practice. Less is no smoothing; for more the knots had better be thinned out.
constexpr double kLeastSteps = 0.4, kMostSteps = 200.0;
constexpr double kFreedomCounts = 1.4;

/// One stiffness tried.
struct Trial {
  double smoothingM;
  double score;  ///< the lower the better
  double noise;
};

class Trials {
 public:
  Trials(const SplineKnots& knots, std::span<const std::vector<double>> series)
      : knots_(knots), series_(series) {}

  Trial operator()(double smoothingM) const {
    const Smoother smoother(knots_, alphaOf(knots_, smoothingM));
    double squares = 0.0;
    for (const auto& values : series_) {
      const CubicSpline spline = smoother.smooth(values);
      for (std::size_t i = 0; i < values.size(); ++i)
        squares += (values[i] - spline.value[i]) * (values[i] - spline.value[i]);
    }
    const double all = static_cast<double>(knots_.size()), free = smoother.freedomOfNoise();
    const double counted = 1.0 - kFreedomCounts * (all - free) / all;
    const auto count = static_cast<double>(series_.size());
    return {.smoothingM = smoothingM,
            .score = counted > 0.0 ? squares / (counted * counted) : std::numeric_limits<double>::infinity(),
            .noise = free > 0.0 ? std::sqrt(squares / (count * free)) : 0.0};
  }

 private:
  const SplineKnots& knots_;
  std::span<const std::vector<double>> series_;
};

}  // namespace

double alphaOf(const SplineKnots& knots, double smoothingM) {
  return std::pow(smoothingM, 4) / knots.meanStep();
}

Stiffness chosenStiffness(const SplineKnots& knots, std::span<const std::vector<double>> series,
                          double leastM) {
  constexpr std::size_t kFewest = 16;
  constexpr int kCoarse = 12, kFine = 7;
  if (knots.size() < kFewest) return {.smoothingM = leastM, .noise = 0.0};
  const Trials trial(knots, series);
  const double meanM = knots.meanStep(), low = std::max(leastM, kLeastSteps * meanM);
  const double high =
      std::max(low, std::min(kMostSteps * meanM, meanM * static_cast<double>(knots.size()) / 8.0));
  // The score may have several valleys: look everywhere first, then into the deepest.
  const double ratio = std::pow(high / low, 1.0 / kCoarse);
  Trial best = trial(low);
  for (int k = 1; k <= kCoarse; ++k) {
    const Trial next = trial(low * std::pow(ratio, k));
    if (!(next.score >= best.score)) best = next;
  }
  double step = std::sqrt(ratio);
  for (int k = 0; k < kFine; ++k, step = std::sqrt(step)) {
    const Trial centre = best;
    for (const double smoothingM : {centre.smoothingM / step, centre.smoothingM * step}) {
      if (smoothingM < low || smoothingM > high) continue;
      const Trial next = trial(smoothingM);
      if (next.score < best.score) best = next;
    }
  }
  return {.smoothingM = best.smoothingM, .noise = best.noise};
}

}  // namespace layshaft
