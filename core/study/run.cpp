// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/study/roots.h"
#include "core/study/shifting.h"
#include "core/units.h"

namespace layshaft {
namespace {

// Nodes and weights of the seven-point Gauss-Legendre rule on −1..1: Abramowitz and Stegun, table 25.4.
constexpr std::array kNodes{-0.949107912342758524526, -0.741531185599394439864, -0.405845151377397166907, 0.0,
                            0.405845151377397166907,  0.741531185599394439864,  0.949107912342758524526};
constexpr std::array kWeights{0.129484966168869693271, 0.279705391489276667901, 0.381830050505118944950,
                              0.417959183673469387755, 0.381830050505118944950, 0.279705391489276667901,
                              0.129484966168869693271};

// Acceleration on a stretch −1..1 is about a·(1 + λt + κt² + γt³). Where |λ|R + |κ|R² + |γ|R³ stays below 1,
// 1/a has no pole within R, and the rule's error falls with the fourteenth power of R + √(R² − 1): 1e-11 and
// better. A stretch is halved until that holds.
constexpr double kPoleFreeRadius = 3.2;
constexpr int kMostHalvings = 40;
// Nearer than this to the speed where the pull runs out the rest is ridden at that speed.
constexpr double kAsGoodAsThere = 1e-12;

struct Sums {
  double timeS = 0.0, distanceM = 0.0;
  double least = 0.0;  ///< acceleration at the nodes
  bool smooth = false;
};

Sums quadrature(const PullModel& model, const PullModel::Stretch& on, std::size_t gear, double from,
                double to) {
  const double half = (to - from) / 2.0, middle = from + half;
  Sums sums;
  std::array<double, kNodes.size()> values{};
  for (std::size_t i = 0; i < kNodes.size(); ++i) {
    const double v = middle + half * kNodes[i];
    const double a = model.accelerationOn(on, v, gear);
    values[i] = a;
    sums.timeS += kWeights[i] / a;
    sums.distanceM += kWeights[i] * v / a;
  }
  sums.timeS *= half;
  sums.distanceM *= half;
  sums.least = *std::min_element(values.begin(), values.end());
  constexpr double kOuter = kNodes[6], kInner = kNodes[5], kR = kPoleFreeRadius;
  const double oddOuter = (values[6] - values[0]) / (2.0 * kOuter),
               oddInner = (values[5] - values[1]) / (2.0 * kInner);
  const double cubic = (oddOuter - oddInner) / (kOuter * kOuter - kInner * kInner);
  const double linear = oddOuter - cubic * kOuter * kOuter;
  const double square = ((values[6] + values[0]) / 2.0 - values[3]) / (kOuter * kOuter);
  sums.smooth = sums.least > 0.0 &&
                kR * (std::abs(linear) + kR * (std::abs(square) + kR * std::abs(cubic))) < values[3];
  return sums;
}

}  // namespace

Run::Run(const PullModel& model, const ShiftPoints& shifts, double fromMps, std::size_t gear, Clutch clutch,
         double untilM, double untilMps, bool stayInGear)
    : model_(&model), untilM_(untilM), untilMps_(untilMps), speed_(fromMps) {
  const std::size_t first = clutch == Clutch::Slipping ? model.slipping() : gear;
  const auto startsOn = model.stretches(first, fromMps, fromMps + 1e-3);
  if (startsOn.empty() || !(model.accelerationOn(startsOn.front(), fromMps, first) > 0.0)) return;
  legs_.reserve(64);

  if (clutch == Clutch::Slipping) {
    const double caughtUp = model.speedMps(model.launchRpm(), 0);
    if (caughtUp > speed_) pullUpTo(model.slipping(), caughtUp);
    gear = 0;
  }
  while (!stopped_ && !farEnough()) {
    const double limit = model.limitMps(gear);
    double until = limit;
    bool last = stayInGear || gear + 1 >= model.gearCount();
    if (!last) {
      until = model.speedMps(shifts.rpm[gear], gear);
      if (shifts.typed && whereItStops(gear, model.stretches(gear, speed_, until)))
        until = bestShiftMps(model, gear);
      const auto next = model.stretches(gear + 1, until, until + 1e-3);
      if (next.empty() || !(model.accelerationOn(next.front(), until, gear + 1) > 0.0)) {
        last = true;
        until = limit;
      }
    }
    pullUpTo(gear, until);
    if (stopped_ || farEnough()) break;
    if (last) {
      addHold(gear, true);
      break;
    }
    addCoast(gear);
    ++gear;
    const auto on = model.stretches(gear, speed_, speed_ + 1e-3);
    if (speed_ < model.limitMps(gear) && !(model.accelerationOn(on.front(), speed_, gear) > 0.0))
      addHold(gear, false);
  }
}

std::optional<double> Run::whereItStops(std::size_t gear,
                                        const std::vector<PullModel::Stretch>& stretches) const {
  double below = speed_, belowValue = 1.0;
  for (const auto& on : stretches) {
    const auto a = [&](double v) { return model_->accelerationOn(on, v, gear); };
    const MonotonePieces pieces = monotonePieces(a, on.fromMps, on.toMps);
    for (std::size_t p = 0; p < pieces.count; ++p) {
      const double v = pieces.at[p], value = pieces.value[p];
      if (value <= 0.0) return p == 0 ? v : polishedRoot(a, below, v, belowValue, value);
      below = v;
      belowValue = value;
    }
  }
  return std::nullopt;
}

void Run::pullUpTo(std::size_t gear, double to) {
  if (!(to > speed_)) return;
  const auto stretches = model_->stretches(gear, speed_, to);
  const auto terminal = whereItStops(gear, stretches);
  for (const auto& on : stretches) {
    if (terminal && on.toMps >= *terminal) break;
    addPull(on, gear, 0);
    if (farEnough()) return;
  }
  if (terminal) runOut(gear, *terminal);
}

void Run::runOut(std::size_t gear, double terminal) {
  // Towards the speed where the pull ends, each stretch takes half of what is left: about the same time each.
  for (const auto& whole : model_->stretches(gear, speed_, terminal)) {
    if (whole.toMps < terminal) {
      addPull(whole, gear, 0);
      if (farEnough()) return;
      continue;
    }
    while (terminal - speed_ > kAsGoodAsThere * terminal) {
      PullModel::Stretch half = whole;
      half.fromMps = speed_;
      half.toMps = speed_ + (terminal - speed_) / 2.0;
      addPull(half, gear, 0);
      if (stopped_ || farEnough()) return;
    }
  }
  speed_ = terminal;
  addHold(gear, false);
}

void Run::addPull(const PullModel::Stretch& on, std::size_t gear, int depth) {
  const Sums sums = quadrature(*model_, on, gear, on.fromMps, on.toMps);
  if (!sums.smooth && depth < kMostHalvings) {
    const double middle = on.fromMps + (on.toMps - on.fromMps) / 2.0;
    if (middle > on.fromMps && middle < on.toMps) {
      addPull({on.fromMps, middle, on.piece, on.fast}, gear, depth + 1);
      if (!stopped_) addPull({middle, on.toMps, on.piece, on.fast}, gear, depth + 1);
      return;
    }
  }
  if (!(sums.least > 0.0)) return addHold(gear, false);
  Leg leg{Kind::Pull, gear, on, time_, distance_, on.fromMps, time_ + sums.timeS, distance_ + sums.distanceM,
          on.toMps,   false};
  legs_.push_back(leg);
  time_ = leg.endTimeS;
  distance_ = leg.endDistanceM;
  speed_ = leg.endSpeedMps;
}

void Run::addCoast(std::size_t gear) {
  shifts_.push_back({time_, distance_, speed_, static_cast<int>(gear) + 1});
  const double seconds = model_->bike().shiftTimeS;
  if (seconds <= 0.0) return;
  const auto end = model_->coast(speed_, seconds);
  legs_.push_back({Kind::Coast,
                   gear,
                   {speed_, end.speedMps, 0, false},
                   time_,
                   distance_,
                   speed_,
                   time_ + seconds,
                   distance_ + end.distanceM,
                   end.speedMps,
                   false});
  time_ += seconds;
  distance_ += end.distanceM;
  speed_ = end.speedMps;
}

void Run::addHold(std::size_t gear, bool limiter) {
  legs_.push_back({Kind::Hold,
                   gear,
                   {speed_, speed_, 0, false},
                   time_,
                   distance_,
                   speed_,
                   time_,
                   distance_,
                   speed_,
                   limiter});
  stopped_ = true;
}

RunPoint Run::pointIn(const Leg& leg, double time, double distance, double speed) const {
  const bool slips = leg.gear == model_->slipping();
  const double limit = model_->bike().torque->revLimitRpm();
  return {.timeS = time,
          .distanceM = distance,
          .speedMps = speed,
          .gear = slips ? 1 : static_cast<int>(leg.gear) + 1,
          .rpm = leg.limiter ? limit : std::min(model_->rpm(speed, leg.gear), limit),
          .limiterS = leg.limiter ? time - leg.timeS : 0.0};
}

RunPoint Run::pullPoint(const Leg& leg, double speed) const {
  const Sums sums = quadrature(*model_, leg.on, leg.gear, leg.speedMps, speed);
  return pointIn(leg, leg.timeS + sums.timeS, leg.distanceM + sums.distanceM, speed);
}

std::optional<RunPoint> Run::atSpeed(double speed) const {
  for (const Leg& leg : legs_) {
    if (leg.kind == Kind::Pull && speed >= leg.speedMps && speed <= leg.endSpeedMps)
      return pullPoint(leg, speed);
    if (leg.kind == Kind::Coast && speed >= leg.speedMps && speed <= leg.endSpeedMps) {  // downhill
      const auto missing = [&](double s) { return model_->coast(leg.speedMps, s).speedMps - speed; };
      const double seconds = leg.endTimeS - leg.timeS;
      const double s = polishedRoot(missing, 0.0, seconds, leg.speedMps - speed, leg.endSpeedMps - speed);
      return pointIn(leg, leg.timeS + s, leg.distanceM + model_->coast(leg.speedMps, s).distanceM, speed);
    }
  }
  return std::nullopt;
}

std::optional<RunPoint> Run::atDistance(double distance) const {
  for (const Leg& leg : legs_) {
    if (leg.kind == Kind::Hold) {
      if (!(leg.speedMps > 0.0)) return std::nullopt;
      return pointIn(leg, leg.timeS + (distance - leg.distanceM) / leg.speedMps, distance, leg.speedMps);
    }
    if (distance > leg.endDistanceM) continue;
    if (leg.kind == Kind::Coast) {
      const auto missing = [&](double s) {
        return leg.distanceM + model_->coast(leg.speedMps, s).distanceM - distance;
      };
      const double s = polishedRoot(missing, 0.0, leg.endTimeS - leg.timeS, leg.distanceM - distance,
                                    leg.endDistanceM - distance);
      return pointIn(leg, leg.timeS + s, distance, model_->coast(leg.speedMps, s).speedMps);
    }
    // Newton on x(v) with dx/dv = v/a, kept inside the leg. The last step is taken in time and distance,
    // where it is exact even so near to the end of the pull that speeds no longer differ.
    constexpr double kNearS = 1e-7;
    constexpr int kMostSteps = 60;
    double low = leg.speedMps, high = leg.endSpeedMps;
    double v = low + (high - low) * (distance - leg.distanceM) / (leg.endDistanceM - leg.distanceM);
    RunPoint point = pullPoint(leg, v);
    double missing = distance - point.distanceM;
    for (int i = 0; i < kMostSteps && std::abs(missing) > kNearS * v; ++i) {
      (missing > 0.0 ? low : high) = v;
      double next = v + missing * model_->accelerationOn(leg.on, v, leg.gear) / v;
      if (!(next > low && next < high)) next = low + (high - low) / 2.0;
      if (next == v) break;
      v = next;
      point = pullPoint(leg, v);
      missing = distance - point.distanceM;
    }
    if (missing == 0.0) return point;
    const double step = missing / v * model_->accelerationOn(leg.on, v, leg.gear);
    return pointIn(leg, point.timeS + missing / v, distance,
                   std::clamp(v + step, leg.speedMps, leg.endSpeedMps));
  }
  return std::nullopt;
}

std::optional<RunPoint> Run::atTime(double time) const {
  for (const Leg& leg : legs_) {
    if (leg.kind == Kind::Hold)
      return pointIn(leg, time, leg.distanceM + (time - leg.timeS) * leg.speedMps, leg.speedMps);
    if (time > leg.endTimeS) continue;
    if (leg.kind == Kind::Coast) {
      const auto end = model_->coast(leg.speedMps, time - leg.timeS);
      return pointIn(leg, time, leg.distanceM + end.distanceM, end.speedMps);
    }
    const auto missing = [&](double v) { return pullPoint(leg, v).timeS - time; };
    return pullPoint(
        leg, polishedRoot(missing, leg.speedMps, leg.endSpeedMps, leg.timeS - time, leg.endTimeS - time));
  }
  return std::nullopt;
}

std::vector<RunPoint> Run::trace() const {
  constexpr int kParts = 2;  // per stretch: straight enough for the eye
  std::vector<RunPoint> points;
  if (legs_.empty()) return points;
  points.push_back(pointIn(legs_.front(), 0.0, 0.0, legs_.front().speedMps));
  const auto add = [&](const RunPoint& point) {
    if (point.distanceM < untilM_) points.push_back(point);
  };
  for (const Leg& leg : legs_) {
    if (leg.kind == Kind::Pull)
      for (int i = 1; i < kParts; ++i)
        add(pullPoint(leg, leg.speedMps + (leg.endSpeedMps - leg.speedMps) * i / kParts));
    if (leg.kind != Kind::Hold) add(pointIn(leg, leg.endTimeS, leg.endDistanceM, leg.endSpeedMps));
  }
  if (const auto end = atDistance(untilM_)) points.push_back(*end);
  return points;
}

double launchRpm(const PullBike& bike, const ShiftPoints& shifts) {
  if (bike.launchRpm) return *bike.launchRpm;
  constexpr double kShareOfLimit = 0.6;
  double rpm = std::min(bike.torque->peak().rpm, kShareOfLimit * bike.torque->revLimitRpm());
  if (!shifts.rpm.empty()) rpm = std::min(rpm, shifts.rpm.front());
  return rpm;
}

std::optional<std::size_t> bestGear(const PullModel& model, const ShiftPoints& shifts, double speed) {
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
    const double highest = g < shifts.rpm.size() ? shifts.rpm[g] : model.bike().torque->revLimitRpm();
    if (rpm >= model.bike().idleRpm && rpm <= highest) consider(g);
  }
  return best;
}

std::optional<Run> bestRun(const PullModel& model, const ShiftPoints& shifts, double from, double untilM,
                           double untilMps) {
  const auto gear = bestGear(model, shifts, from);
  if (!gear) return std::nullopt;
  const bool slips = *gear == model.slipping();
  return Run(model, shifts, from, slips ? 0 : *gear, slips ? Run::Clutch::Slipping : Run::Clutch::Engaged,
             untilM, untilMps);
}

namespace {

std::optional<double> timeTo(const std::optional<Run>& run, double speed) {
  if (!run) return std::nullopt;
  const auto point = run->atSpeed(speed);
  return point ? std::optional(point->timeS) : std::nullopt;
}

std::optional<double> rollOnIn(const PullModel& model, std::size_t gear, double from, double to) {
  if (gear >= model.gearCount() || !(to > from)) return std::nullopt;
  if (model.rpm(from, gear) < model.bike().idleRpm || to > model.limitMps(gear)) return std::nullopt;
  return timeTo(Run(model, {}, from, gear, Run::Clutch::Engaged, 0.0, to, true), to);
}

DriveFigures driveFigures(const RunPoint& end, double revLimit) {
  return {.timeS = end.timeS,
          .endSpeedMps = end.speedMps,
          .endGear = end.gear,
          .endRpm = end.rpm,
          .revRangeLeftRpm = revLimit - end.rpm,
          .secondsOnLimiter = end.limiterS};
}

}  // namespace

RunFigures runFigures(const PullModel& model, const ShiftPoints& shifts,
                      const std::optional<DriveRequest>& drive, const std::optional<RollOnRequest>& rollOn,
                      bool rollOns) {
  constexpr double kEighthMileM = units::kMetresPerMile / 8.0, kQuarterMileM = units::kMetresPerMile / 4.0;
  const double hundredKmh = units::mpsFromKmh(100.0);
  const double from = units::mpsFromKmh(80.0), to = units::mpsFromKmh(120.0);
  RunFigures figures;
  const Run start(model, shifts, 0.0, 0, Run::Clutch::Slipping, kQuarterMileM, hundredKmh);
  if (start.moves()) {
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
  if (rollOns) figures.rollOnTopS = rollOnIn(model, model.gearCount() - 1, from, to);
  if (rollOns) figures.rollOnBestS = timeTo(bestRun(model, shifts, from, 0.0, to), to);
  if (rollOn)
    figures.askedRollOnS =
        rollOnIn(model, rollOn->gear ? static_cast<std::size_t>(*rollOn->gear - 1) : model.gearCount() - 1,
                 rollOn->fromMps, rollOn->toMps);
  if (drive)
    if (const auto run = bestRun(model, shifts, drive->exitMps, drive->lengthM, 0.0))
      if (const auto end = run->atDistance(drive->lengthM))
        figures.drive = driveFigures(*end, model.bike().torque->revLimitRpm());
  return figures;
}

}  // namespace layshaft
