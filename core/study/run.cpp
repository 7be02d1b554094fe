// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run.h"

#include <algorithm>

#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kEighthMileM = units::kMetresPerMile / 8.0, kQuarterMileM = units::kMetresPerMile / 4.0;

/// Whether a gear accelerates from a speed on: what holds just above it counts.
bool pullsAt(const PullModel& model, std::size_t gear, double mps) {
  const double above = mps + 5e-4;
  const PullModel::Stretch on{mps, above, model.torque().pieceAt(model.rpm(above, gear)),
                              model.road().isFast(above)};
  return model.accelerationOn(on, mps, gear) > 0.0;
}

}  // namespace

Run::Run(const RoadModel& model, double fromMps, std::size_t gear, Clutch clutch, double untilM,
         double untilMps, bool stayInGear)
    : model_(&model), untilM_(untilM), untilMps_(untilMps), place_{0.0, 0.0, fromMps} {
  const bool slips = clutch == Clutch::Slipping;
  if (!pullsAt(model, slips ? model.slipping() : gear, fromMps)) return;
  legs_.reserve(64);
  if (slips) {
    gear = 0;
    const double caughtUp = model.speedMps(model.launchRpm(), 0);
    if (caughtUp > fromMps && pullTo(model.slipping(), caughtUp) != PullEnd::Speed) return;
  }
  go(gear, stayInGear);
}

void Run::go(std::size_t gear, bool stayInGear) {
  const auto farEnough = [this] { return place_.distanceM >= untilM_ && place_.speedMps >= untilMps_; };
  while (!farEnough()) {
    const auto shift = stayInGear ? std::nullopt : shiftMps(gear);
    if (pullTo(gear, shift.value_or(model_->limitMps(gear))) != PullEnd::Speed || farEnough()) return;
    if (!shift) return hold(gear, true);
    coast(gear);
    ++gear;
    if (place_.speedMps < model_->limitMps(gear) && !pullsAt(*model_, gear, place_.speedMps))
      return hold(gear, false);
  }
}

std::optional<double> Run::shiftMps(std::size_t gear) const {
  if (gear + 1 >= model_->gearCount()) return std::nullopt;
  double mps = model_->speedMps(model_->highestRpm(gear), gear);
  if (model_->shifts().typed && pullRunsOut(*model_, gear, place_.speedMps, mps))
    mps = bestShiftMps(*model_, gear);
  return pullsAt(*model_, gear + 1, mps) ? std::optional(mps) : std::nullopt;
}

PullEnd Run::pullTo(std::size_t gear, double mps) {
  const PullEnd end =
      pullOn(*model_, gear, {.mostMps = mps, .untilM = untilM_, .untilMps = untilMps_}, place_, legs_);
  if (end == PullEnd::NoPull) hold(gear, false);
  return end;
}

void Run::coast(std::size_t gear) {
  shifts_.push_back({place_.timeS, place_.distanceM, place_.speedMps, static_cast<int>(gear) + 1});
  const double seconds = model_->bike().shiftTimeS;
  if (seconds <= 0.0) return;
  const auto coasted = model_->coast(place_.speedMps, seconds);
  const RunPlace start = place_;
  place_ = {start.timeS + seconds, start.distanceM + coasted.distanceM, coasted.speedMps};
  legs_.push_back(
      {RunLeg::Kind::Coast, gear, {start.speedMps, place_.speedMps, 0, false}, start, place_, false});
}

void Run::hold(std::size_t gear, bool limiter) {
  const double mps = place_.speedMps;
  legs_.push_back({RunLeg::Kind::Hold, gear, {mps, mps, 0, false}, place_, place_, limiter});
}

RunPoint Run::pointIn(const RunLeg& leg, const RunPlace& place) const {
  const bool slips = leg.gear == model_->slipping();
  const double limit = model_->torque().revLimitRpm();
  return {.timeS = place.timeS,
          .distanceM = place.distanceM,
          .speedMps = place.speedMps,
          .gear = slips ? 1 : static_cast<int>(leg.gear) + 1,
          .rpm = leg.limiter ? limit : std::min(model_->rpm(place.speedMps, leg.gear), limit),
          .limiterS = leg.limiter ? place.timeS - leg.start.timeS : 0.0};
}

std::optional<RunPoint> Run::atSpeed(double speed) const {
  for (const RunLeg& leg : legs_)
    if (const auto place = leg.atSpeed(*model_, speed)) return pointIn(leg, *place);
  return std::nullopt;
}

std::optional<RunPoint> Run::atDistance(double distance) const {
  for (const RunLeg& leg : legs_)
    if (const auto place = leg.atDistance(*model_, distance)) return pointIn(leg, *place);
  return std::nullopt;
}

std::optional<RunPoint> Run::atTime(double time) const {
  for (const RunLeg& leg : legs_)
    if (const auto place = leg.atTime(*model_, time)) return pointIn(leg, *place);
  return std::nullopt;
}

std::vector<RunPoint> Run::trace() const {
  constexpr int kParts = 2;  // per stretch: straight enough for the eye
  std::vector<RunPoint> points;
  if (legs_.empty()) return points;
  points.push_back(pointIn(legs_.front(), legs_.front().start));
  const auto add = [&](const RunPoint& point) {
    if (point.distanceM < untilM_) points.push_back(point);
  };
  for (const RunLeg& leg : legs_) {
    const double from = leg.start.speedMps, gained = leg.end.speedMps - from;
    if (leg.kind == RunLeg::Kind::Pull)
      for (int i = 1; i < kParts; ++i) add(pointIn(leg, leg.pulledTo(*model_, from + gained * i / kParts)));
    if (leg.kind != RunLeg::Kind::Hold) add(pointIn(leg, leg.end));
  }
  if (const auto end = atDistance(untilM_)) points.push_back(*end);
  return points;
}

std::optional<std::size_t> bestGear(const RoadModel& model, double speed) {
  std::optional<std::size_t> best;
  double hardest = 0.0;
  const auto consider = [&](std::size_t gear) {
    const double a = model.accelerationMps2(speed, gear);
    if (!best || a >= hardest) {
      best = gear;
      hardest = a;
    }
  };
  if (speed < model.speedMps(model.launchRpm(), 0)) consider(model.slipping());
  for (std::size_t g = 0; g < model.gearCount(); ++g) {
    if (g == 0 && best) continue;  // the clutch slips
    const double rpm = model.rpm(speed, g);
    if (rpm >= model.bike().idleRpm && rpm <= model.highestRpm(g)) consider(g);
  }
  return best;
}

Run standingStart(const RoadModel& model, double untilM, double untilMps) {
  return Run(model, 0.0, 0, Run::Clutch::Slipping, untilM, untilMps);
}

std::optional<Run> bestRun(const RoadModel& model, double from, double untilM, double untilMps) {
  const auto gear = bestGear(model, from);
  if (!gear) return std::nullopt;
  const bool slips = *gear == model.slipping();
  return Run(model, from, slips ? 0 : *gear, slips ? Run::Clutch::Slipping : Run::Clutch::Engaged, untilM,
             untilMps);
}

namespace {

std::optional<double> timeTo(const std::optional<Run>& run, double speed) {
  if (!run) return std::nullopt;
  const auto point = run->atSpeed(speed);
  return point ? std::optional(point->timeS) : std::nullopt;
}

std::optional<double> rollOnIn(const RoadModel& model, std::size_t gear, double from, double to) {
  if (gear >= model.gearCount() || !(to > from)) return std::nullopt;
  if (model.rpm(from, gear) < model.bike().idleRpm || to > model.limitMps(gear)) return std::nullopt;
  return timeTo(Run(model, from, gear, Run::Clutch::Engaged, 0.0, to, true), to);
}

DriveFigures driveFigures(const RunPoint& end, double revLimit) {
  return {.timeS = end.timeS,
          .endSpeedMps = end.speedMps,
          .endGear = end.gear,
          .endRpm = end.rpm,
          .revRangeLeftRpm = revLimit - end.rpm,
          .secondsOnLimiter = end.limiterS};
}

void addStandingStart(RunFigures& figures, const RoadModel& model) {
  const double hundredKmh = units::mpsFromKmh(100.0);
  const Run start = standingStart(model, kQuarterMileM, hundredKmh);
  if (!start.moves()) return;
  if (const auto p = start.atSpeed(units::mpsFromMph(60.0))) figures.zeroTo60MphS = p->timeS;
  if (const auto p = start.atSpeed(hundredKmh)) figures.zeroTo100KmhS = p->timeS;
  if (const auto p = start.atDistance(100.0)) figures.hundredMetresS = p->timeS;
  if (const auto p = start.atDistance(kEighthMileM)) {
    figures.eighthMileS = p->timeS;
    figures.eighthMileSpeedMps = p->speedMps;
  }
  if (const auto p = start.atDistance(kQuarterMileM)) {
    figures.quarterMileS = p->timeS;
    figures.quarterMileSpeedMps = p->speedMps;
  }
}

void addDrive(RunFigures& figures, const RoadModel& model, const DriveRequest& drive) {
  const auto run = bestRun(model, drive.exitMps, drive.lengthM, 0.0);
  if (!run) return;
  if (const auto start = run->atTime(0.0)) figures.driveStartGear = start->gear;
  if (const auto end = run->atDistance(drive.lengthM))
    figures.drive = driveFigures(*end, model.torque().revLimitRpm());
}

}  // namespace

RunFigures runFigures(const RoadModel& model, const std::optional<DriveRequest>& drive,
                      const std::optional<RollOnRequest>& rollOn, bool rollOns) {
  const double from = units::mpsFromKmh(defaults::kRollOnFromKmh),
               to = units::mpsFromKmh(defaults::kRollOnToKmh);
  const std::size_t top = model.gearCount() - 1;
  RunFigures figures;
  addStandingStart(figures, model);
  if (rollOns) {
    figures.rollOnTopS = rollOnIn(model, top, from, to);
    figures.rollOnBestS = timeTo(bestRun(model, from, 0.0, to), to);
  }
  if (rollOn)
    figures.askedRollOnS = rollOnIn(model, rollOn->gear ? static_cast<std::size_t>(*rollOn->gear - 1) : top,
                                    rollOn->fromMps, rollOn->toMps);
  if (drive) addDrive(figures, model, *drive);
  return figures;
}

RunTrace standingStartTrace(const RoadModel& model) {
  const Run run = standingStart(model, kQuarterMileM, 0.0);
  return {run.trace(), run.shifts()};
}

RunTrace driveTrace(const RoadModel& model, const DriveRequest& drive) {
  const auto run = bestRun(model, drive.exitMps, drive.lengthM, 0.0);
  return run ? RunTrace{run->trace(), run->shifts()} : RunTrace{};
}

}  // namespace layshaft
