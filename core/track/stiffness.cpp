// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/stiffness.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace layshaft {
namespace {

// In steps of the knots; common practice. Less is no smoothing; for more the knots had better be thinned out.
constexpr double kLeastSteps = 0.4, kMostSteps = 200.0;
constexpr double kFreedomCounts = 1.4;

/// One stiffness tried.
struct Trial {
  Stiffness stiffness;
  double score;  ///< the lower the better
};

class Trials {
 public:
  Trials(const SplineKnots& knots, std::span<const std::vector<double>> series) : knots_(knots) {
    for (const auto& values : series) differences_.push_back(knots.differences(values));
  }

  Trial operator()(double smoothingM) const {
    const double alpha = alphaOf(knots_, smoothingM), all = static_cast<double>(knots_.size());
    const Smoother smoother(knots_, alpha);
    double squares = 0.0;
    for (const auto& differences : differences_) {
      std::vector<double> bends = differences, residuals(knots_.size());
      smoother.bends(bends);
      knots_.takeOff(residuals, alpha, bends);
      squares += std::inner_product(residuals.begin(), residuals.end(), residuals.begin(), 0.0);
    }
    const double free = smoother.freedomOfNoise(), counted = 1.0 - kFreedomCounts * (all - free) / all;
    return {.stiffness = {.smoothingM = smoothingM, .freedom = free},
            .score = counted > 0.0 ? squares / (counted * counted) : std::numeric_limits<double>::infinity()};
  }

 private:
  const SplineKnots& knots_;
  std::vector<std::vector<double>> differences_;
};

}  // namespace

double alphaOf(const SplineKnots& knots, double smoothingM) {
  return std::pow(smoothingM, 4) / knots.meanStep();
}

Stiffness chosenStiffness(const SplineKnots& knots, std::span<const std::vector<double>> series,
                          double leastM, Search search) {
  constexpr std::size_t kFewest = 16;
  constexpr int kCoarse = 10, kFine = 3;
  if (knots.size() < kFewest) return {.smoothingM = leastM, .freedom = 0.0};
  const Trials trial(knots, series);
  const double meanM = knots.meanStep();
  const double low = std::max(leastM, kLeastSteps * meanM);
  const double high = std::max(low, meanM * std::min(kMostSteps, static_cast<double>(knots.size()) / 8.0));
  // The score may have several valleys: look everywhere first, then into the deepest.
  const double ratio = std::pow(high / low, 1.0 / kCoarse);
  Trial best = trial(low);
  const auto look = [&](double smoothingM) {
    if (smoothingM < low || smoothingM > high) return;
    const Trial next = trial(smoothingM);
    if (next.score < best.score || std::isinf(best.score)) best = next;
  };
  for (int k = 1; k <= kCoarse; ++k) look(low * std::pow(ratio, k));
  if (search == Search::Rough) return best.stiffness;
  double step = std::sqrt(ratio);
  for (int k = 0; k < kFine; ++k, step = std::sqrt(step)) {
    const double centre = best.stiffness.smoothingM;
    look(centre / step);
    look(centre * step);
  }
  return best.stiffness;
}

}  // namespace layshaft
