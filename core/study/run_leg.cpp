// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run_leg.h"

#include <algorithm>
#include <cmath>

#include "core/roots.h"

namespace layshaft {
namespace {

RunPlace coastedFor(const RoadModel& model, const RunPlace& start, double seconds) {
  const auto end = model.coast(start.speedMps, seconds);
  return {start.timeS + seconds, start.distanceM + end.distanceM, end.speedMps};
}

/// Newton on x(v) with dx/dv = v/a, kept inside the leg. The last step is taken in time and distance, where
/// it is exact even so near to the end of the pull that speeds no longer differ.
RunPlace pulledFor(const RoadModel& model, const RunLeg& leg, double distance) {
  constexpr double kNearS = 1e-7;
  constexpr int kMostSteps = 60;
  double low = leg.start.speedMps, high = leg.end.speedMps;
  double v =
      low + (high - low) * (distance - leg.start.distanceM) / (leg.end.distanceM - leg.start.distanceM);
  RunPlace place = leg.pulledTo(model, v);
  double missing = distance - place.distanceM;
  for (int i = 0; i < kMostSteps && std::abs(missing) > kNearS * v; ++i) {
    (missing > 0.0 ? low : high) = v;
    double next = v + missing * model.accelerationOn(leg.on, v, leg.gear) / v;
    if (!(next > low && next < high)) next = low + (high - low) / 2.0;
    if (next == v) break;
    v = next;
    place = leg.pulledTo(model, v);
    missing = distance - place.distanceM;
  }
  if (missing == 0.0) return place;
  const double step = missing / v * model.accelerationOn(leg.on, v, leg.gear);
  return {place.timeS + missing / v, distance, std::clamp(v + step, leg.start.speedMps, leg.end.speedMps)};
}

}  // namespace

PullSums pullSums(const PullModel& model, const PullModel::Stretch& on, std::size_t gear, double from,
                  double to) {
  const auto at = [&](double v) {
    const double a = model.accelerationOn(on, v, gear);
    return SpeedRate{v, a, a};
  };
  return speedSums(at, from, to);
}

RunLeg shiftLeg(const RoadModel& model, std::size_t gear, const RunPlace& start) {
  const RunPlace end = coastedFor(model, start, model.bike().shiftTimeS);
  return {RunLeg::Kind::Coast, gear, {start.speedMps, end.speedMps, 0, false}, start, end, false};
}

RunLeg holdLeg(std::size_t gear, const RunPlace& start, bool limiter) {
  const double mps = start.speedMps;
  return {RunLeg::Kind::Hold, gear, {mps, mps, 0, false}, start, start, limiter};
}

RunPlace RunLeg::pulledTo(const RoadModel& model, double speed) const {
  const PullSums sums = pullSums(model, on, gear, start.speedMps, speed);
  return {start.timeS + sums.timeS, start.distanceM + sums.distanceM, speed};
}

std::optional<RunPlace> RunLeg::atSpeed(const RoadModel& model, double speed) const {
  if (kind == Kind::Hold || speed < start.speedMps || speed > end.speedMps) return std::nullopt;
  if (kind == Kind::Pull) return pulledTo(model, speed);
  // Downhill a shift gains speed.
  const auto missing = [&](double s) { return model.coast(start.speedMps, s).speedMps - speed; };
  const double seconds =
      polishedRoot(missing, 0.0, end.timeS - start.timeS, start.speedMps - speed, end.speedMps - speed);
  RunPlace place = coastedFor(model, start, seconds);
  place.speedMps = speed;
  return place;
}

std::optional<RunPlace> RunLeg::atDistance(const RoadModel& model, double distance) const {
  if (kind == Kind::Hold) {
    if (!(start.speedMps > 0.0)) return std::nullopt;
    return RunPlace{start.timeS + (distance - start.distanceM) / start.speedMps, distance, start.speedMps};
  }
  if (distance > end.distanceM) return std::nullopt;
  if (kind == Kind::Pull) return pulledFor(model, *this, distance);
  const auto missing = [&](double s) { return coastedFor(model, start, s).distanceM - distance; };
  const double seconds = polishedRoot(missing, 0.0, end.timeS - start.timeS, start.distanceM - distance,
                                      end.distanceM - distance);
  RunPlace place = coastedFor(model, start, seconds);
  place.distanceM = distance;
  return place;
}

std::optional<RunPlace> RunLeg::atTime(const RoadModel& model, double time) const {
  if (kind == Kind::Hold)
    return RunPlace{time, start.distanceM + (time - start.timeS) * start.speedMps, start.speedMps};
  if (time > end.timeS) return std::nullopt;
  if (kind == Kind::Coast) {
    const auto coasted = model.coast(start.speedMps, time - start.timeS);
    return RunPlace{time, start.distanceM + coasted.distanceM, coasted.speedMps};
  }
  const auto missing = [&](double v) { return pulledTo(model, v).timeS - time; };
  return pulledTo(model,
                  polishedRoot(missing, start.speedMps, end.speedMps, start.timeS - time, end.timeS - time));
}

}  // namespace layshaft
