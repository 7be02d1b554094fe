// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run.h"

#include <algorithm>

namespace layshaft {

RunPoint runPoint(const RoadModel& model, std::size_t gear, const RunPlace& place) {
  return {.timeS = place.timeS,
          .distanceM = place.distanceM,
          .speedMps = place.speedMps,
          .gear = static_cast<int>(model.geared(gear)) + 1,
          .rpm = std::min(model.rpm(place.speedMps, gear), model.torque().revLimitRpm()),
          .limiterS = 0.0};
}

RunPoint runPoint(const RoadModel& model, const RunLeg& leg, const RunPlace& place) {
  RunPoint point = runPoint(model, leg.gear, place);
  if (!leg.limiter) return point;
  point.rpm = model.torque().revLimitRpm();
  point.limiterS = place.timeS - leg.start.timeS;
  return point;
}

Run::Run(const RoadModel& model, double fromMps, const RunPlan& plan, double untilM, double untilMps)
    : model_(&model), untilM_(untilM), untilMps_(untilMps), place_{0.0, 0.0, fromMps} {
  const std::size_t first = plan.slips ? model.slipping(plan.gear) : plan.gear;
  if (!pullsAt(model, first, fromMps)) return;
  legs_.reserve(64);
  if (plan.slips) {
    const double caughtUp = model.fastestMps(first);
    if (caughtUp > fromMps && pullTo(first, caughtUp) != PullEnd::Speed) return;
  }
  go(plan.gear, plan.shifts);
}

void Run::go(std::size_t gear, int shifts) {
  const auto farEnough = [this] { return place_.distanceM >= untilM_ && place_.speedMps >= untilMps_; };
  for (; !farEnough(); ++gear, --shifts) {
    const auto shift = shifts > 0 ? leavingMps(*model_, gear, place_.speedMps) : std::nullopt;
    if (pullTo(gear, shift.value_or(model_->limitMps(gear))) != PullEnd::Speed || farEnough()) return;
    if (!shift) {
      legs_.push_back(holdLeg(gear, place_, true));
      return;
    }
    coast(gear);
    if (takesOver(*model_, gear + 1, place_.speedMps)) continue;
    legs_.push_back(holdLeg(gear + 1, place_, false));
    return;
  }
}

PullEnd Run::pullTo(std::size_t gear, double mps) {
  const PullEnd end =
      pullOn(*model_, gear, {.mostMps = mps, .untilM = untilM_, .untilMps = untilMps_}, place_, legs_);
  if (end == PullEnd::NoPull) legs_.push_back(holdLeg(gear, place_, false));
  return end;
}

void Run::coast(std::size_t gear) {
  shifts_.push_back({place_.timeS, place_.distanceM, place_.speedMps, static_cast<int>(gear) + 1});
  if (model_->bike().shiftTimeS <= 0.0) return;
  legs_.push_back(shiftLeg(*model_, gear, place_));
  place_ = legs_.back().end;
}

std::optional<RunPoint> Run::atSpeed(double speed) const {
  for (const RunLeg& leg : legs_)
    if (const auto place = leg.atSpeed(*model_, speed)) return runPoint(*model_, leg, *place);
  return std::nullopt;
}

std::optional<RunPoint> Run::atDistance(double distance) const {
  for (const RunLeg& leg : legs_)
    if (const auto place = leg.atDistance(*model_, distance)) return runPoint(*model_, leg, *place);
  return std::nullopt;
}

std::optional<RunPoint> Run::atTime(double time) const {
  for (const RunLeg& leg : legs_)
    if (const auto place = leg.atTime(*model_, time)) return runPoint(*model_, leg, *place);
  return std::nullopt;
}

std::vector<RunPoint> Run::trace() const {
  constexpr int kParts = 2;  // per stretch: straight enough for the eye
  std::vector<RunPoint> points;
  if (legs_.empty()) return points;
  points.push_back(runPoint(*model_, legs_.front(), legs_.front().start));
  const auto add = [&](const RunPoint& point) {
    if (point.distanceM < untilM_) points.push_back(point);
  };
  for (const RunLeg& leg : legs_) {
    const double from = leg.start.speedMps, gained = leg.end.speedMps - from;
    if (leg.kind == RunLeg::Kind::Pull)
      for (int i = 1; i < kParts; ++i)
        add(runPoint(*model_, leg, leg.pulledTo(*model_, from + gained * i / kParts)));
    if (leg.kind != RunLeg::Kind::Hold) add(runPoint(*model_, leg, leg.end));
  }
  if (const auto end = atDistance(untilM_)) points.push_back(*end);
  return points;
}

}  // namespace layshaft
