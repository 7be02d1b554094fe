// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/study/speed_sums.h"

namespace layshaft {

/// By what a way through speeds is measured. Towards the fastest speed v_b of a bend the grip that is left
/// along the road goes to zero like a root, e = √(1 − (v/v_b)⁴). Measured by y = √(1 − v/v_b) instead of the
/// speed, that is smooth: e = y·√((2 − y²)(2 − 2y² + y⁴)).
class BendPace {
 public:
  /// By the speed; `bendMps` is infinite on a straight.
  explicit BendPace(double bendMps) : bendMps_(bendMps) {}
  /// By y where the way comes near to the bend's speed.
  BendPace(double bendMps, double upToMps) : bendMps_(bendMps), byRoot_(upToMps > kNear * bendMps) {}

  bool byRoot() const { return byRoot_; }
  double measure(double mps) const { return byRoot_ ? std::sqrt(std::max(0.0, 1.0 - mps / bendMps_)) : mps; }
  double mps(double measure) const { return byRoot_ ? bendMps_ * (1.0 - measure * measure) : measure; }
  /// What is left of the grip along the road, as a share.
  double left(double measure) const {
    if (byRoot_) return measure * rootOfRest(measure * measure);
    const double ratio = measure / bendMps_;
    return std::sqrt(std::max(0.0, 1.0 - ratio * ratio * ratio * ratio));
  }
  /// The rate of the measure at an acceleration; `fades` where that goes to zero with what is left.
  SpeedRate rate(double measure, double mps2, bool fades) const {
    if (!byRoot_) return {measure, mps2, mps2};
    const double rate = -mps2 / (2.0 * measure * bendMps_);
    return {mps(measure), rate, fades ? rate : mps2};
  }

 private:
  static constexpr double kNear = 0.75;

  static double rootOfRest(double y2) { return std::sqrt((2.0 - y2) * (2.0 - 2.0 * y2 + y2 * y2)); }

  double bendMps_;
  bool byRoot_ = false;
};

}  // namespace layshaft
