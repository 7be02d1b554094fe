// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/extras.h"
#include "core/problem.h"

namespace layshaft {

struct TorquePoint {
  double rpm = 0.0;
  double torqueNm = 0.0;
  Extras extras{};
  bool operator==(const TorquePoint&) const = default;
};

/// An engine's full-throttle torque over engine speed. Invariant: at least two points, engine speed strictly
/// rising, torque never negative and somewhere above 0.
class TorqueCurve {
 public:
  /// A problem's path is `[i].rpm` or `[i].torque_nm` for the point at fault, or empty for the whole list.
  static Result<TorqueCurve> make(std::vector<TorquePoint> points);

  const std::vector<TorquePoint>& points() const { return points_; }
  bool operator==(const TorqueCurve&) const = default;

 private:
  explicit TorqueCurve(std::vector<TorquePoint> points) : points_(std::move(points)) {}
  std::vector<TorquePoint> points_;
};

}  // namespace layshaft
