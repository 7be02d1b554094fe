// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/torque_curve.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "core/limits.h"
#include "core/number_text.h"

namespace layshaft {
namespace {

std::optional<Problem> outside(double x, const Limit& limit, std::string path) {
  if (limit.contains(x)) return std::nullopt;
  return Problem{.kind = std::isfinite(x) ? Problem::Kind::OutOfRange : Problem::Kind::NotFinite,
                 .path = std::move(path),
                 .given = numberText(x),
                 .low = limit.low,
                 .high = limit.high,
                 .unit = limit.unit};
}

}  // namespace

Result<TorqueCurve> TorqueCurve::make(std::vector<TorquePoint> points) {
  if (points.size() < limits::kFewestCurvePoints || points.size() > limits::kMostCurvePoints)
    return Problem{.kind = Problem::Kind::WrongCount,
                   .given = std::to_string(points.size()),
                   .low = limits::kFewestCurvePoints,
                   .high = limits::kMostCurvePoints};
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::string at = "[" + std::to_string(i) + "]";
    if (auto problem = outside(points[i].rpm, limits::kCurveRpm, at + ".rpm")) return *problem;
    if (auto problem = outside(points[i].torqueNm, limits::kCurveTorqueNm, at + ".torque_nm"))
      return *problem;
    if (i > 0 && points[i].rpm <= points[i - 1].rpm)
      return Problem{.kind = Problem::Kind::NotRising,
                     .path = at + ".rpm",
                     .given = numberText(points[i].rpm),
                     .low = points[i - 1].rpm,
                     .high = limits::kCurveRpm.high,
                     .unit = limits::kCurveRpm.unit};
  }
  if (std::all_of(points.begin(), points.end(), [](const TorquePoint& p) { return p.torqueNm == 0.0; }))
    return Problem{.kind = Problem::Kind::TorqueAllZero};
  return TorqueCurve(std::move(points));
}

}  // namespace layshaft
