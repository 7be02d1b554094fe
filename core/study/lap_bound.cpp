// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_bound.h"

#include <algorithm>
#include <cmath>

namespace layshaft {
namespace {

// On fewer stretches the steps of the bound cost more than they save: there the allowed speed is the bound.
constexpr std::size_t kWorthStretches = 40;
constexpr double kStepS = 0.06, kLeastStepM = 1.0;
constexpr double kOnAllowed = 1e-9;

/// Seconds through a stretch, in steps that take the greater acceleration of their two ends; `mps` becomes
/// the speed at its end.
double through(const LapBike& bike, std::size_t index, double& mps) {
  const auto& stretch = bike.allowed().stretches()[index];
  // On the allowed speed the bike may follow it, whatever the wheel could pass on.
  if (mps >= stretch.entryMps * (1.0 - kOnAllowed)) {
    mps = stretch.exitMps;
    return stretch.seconds;
  }
  const double limit = stretch.here.limitMps;
  double seconds = 0.0, now = bike.greatestMps2(index, mps);
  for (double left = stretch.here.lengthM; left > 0.0;) {
    double step = std::min(left, std::max(kLeastStepM, kStepS * mps));
    const auto after = [&](double mps2) { return std::sqrt(std::max(0.0, mps * mps + 2.0 * step * mps2)); };
    const double then = bike.greatestMps2(index, std::min(after(now), limit)), most = std::max(now, then);
    double end = after(most);
    const bool held = end >= limit;  // a bend's own speed may be held
    if (held) {
      step = std::min(step, (limit * limit - mps * mps) / (2.0 * most));
      end = limit;
    }
    if (!(mps + end > 0.0)) break;
    seconds += 2.0 * step / (mps + end);
    mps = end;
    now = then;
    left -= step;
    if (!held) continue;
    seconds += left / mps;
    break;
  }
  mps = std::min(mps, stretch.exitMps);
  return std::max(seconds, stretch.seconds);
}

}  // namespace

LapBound::LapBound(const LapBike& bike) {
  const auto& stretches = bike.allowed().stretches();
  rest_.resize(stretches.size() + 1, 0.0);
  double mps = stretches.front().entryMps;
  for (std::size_t i = 0; i < stretches.size(); ++i)
    rest_[i] = stretches.size() < kWorthStretches ? stretches[i].seconds : through(bike, i, mps);
  for (std::size_t i = stretches.size(); i-- > 0;) rest_[i] += rest_[i + 1];
}

}  // namespace layshaft
