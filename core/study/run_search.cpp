// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run_search.h"

#include <algorithm>
#include <limits>

namespace layshaft {
namespace {

constexpr double kAlikeS = 1e-6;
constexpr double kNever = std::numeric_limits<double>::infinity();

RunPlace along(const RunPlace& entered, const RunPlace& onTrack, const RunPlace& place) {
  return {entered.timeS + (place.timeS - onTrack.timeS),
          entered.distanceM + (place.distanceM - onTrack.distanceM), place.speedMps};
}

}  // namespace

/// Where a run is to get: a distance or a speed.
class RunSearch::Target {
 public:
  static Target distance(double metres) { return {metres, true}; }
  static Target speed(double mps) { return {mps, false}; }

  bool isDistance() const { return isDistance_; }
  double value() const { return value_; }
  bool isReachedAt(const RunPlace& place) const {
    return (isDistance_ ? place.distanceM : place.speedMps) >= value_;
  }

 private:
  Target(double value, bool isDistance) : value_(value), isDistance_(isDistance) {}
  double value_;
  bool isDistance_;
};

/// The best of the plans that were tried.
class RunSearch::Choice {
 public:
  /// Whether a plan that takes at least so long may still be the best.
  bool mayWin(double seconds) const { return seconds <= leastS_ + kAlikeS; }
  void add(const RunPlan& plan, const RunPoint& end) {
    leastS_ = std::min(leastS_, end.timeS);
    tried_.push_back({plan, end});
  }
  std::optional<SoonestRun> best() const {
    const SoonestRun* best = nullptr;
    const auto simpler = [](const RunPlan& a, const RunPlan& b) {
      return a.shifts != b.shifts ? a.shifts < b.shifts : a.gear < b.gear;
    };
    for (const SoonestRun& run : tried_)
      if (mayWin(run.end.timeS) && (!best || simpler(run.plan, best->plan))) best = &run;
    return best ? std::optional(*best) : std::nullopt;
  }

 private:
  double leastS_ = kNever;
  std::vector<SoonestRun> tried_;
};

RunSearch::RunSearch(const RoadModel& model, double fromMps, const std::vector<RunPlan>& starts)
    : model_(&model), fastestMps_(0.0) {
  for (std::size_t g = 0; g < model.gearCount(); ++g) fastestMps_ = std::max(fastestMps_, model.limitMps(g));
  // Downhill or with the wind a shift gains speed; nowhere more than at rest, where the resistance is least.
  fastestMps_ += std::max(0.0, -model.resistanceN(0.0)) / model.coastingMassKg() * model.bike().shiftTimeS;
  trunks_.reserve(starts.size());
  for (const RunPlan& start : starts) {
    const std::size_t gear = start.slips ? model.slipping(start.gear) : start.gear;
    if (!pullsAt(model, gear, fromMps)) continue;
    Trunk& trunk = trunks_.emplace_back(Trunk{.start = start, .stages = {}});
    trunk.stages.reserve(model.gearCount() + 1);
    trunk.stages.push_back(stageAt(gear, {0.0, 0.0, fromMps}));
  }
}

std::optional<SoonestRun> RunSearch::toDistance(double metres) {
  return soonest(Target::distance(metres));
}

std::optional<SoonestRun> RunSearch::toSpeed(double mps) {
  return soonest(Target::speed(mps));
}

std::optional<SoonestRun> RunSearch::soonest(const Target& target) {
  Choice choice;
  // The highest gear first: it is entered at the lowest speed there, and the others come upon its track.
  for (std::size_t i = trunks_.size(); i-- > 0;) ride(trunks_[i], target, choice);
  return choice.best();
}

void RunSearch::ride(Trunk& trunk, const Target& target, Choice& choice) {
  const auto planUpTo = [&](const Stage& stage) {
    const auto shifts = static_cast<int>(model_->geared(stage.track->gear()) - trunk.start.gear);
    return RunPlan{.gear = trunk.start.gear, .slips = trunk.start.slips, .shifts = shifts};
  };
  // As often up as it can, until it is there.
  std::size_t i = 0;
  for (;; ++i) {
    if (i == trunk.stages.size() && !goOn(trunk)) break;
    const Stage& stage = trunk.stages[i];
    if (!choice.mayWin(leastTime(stage.entered, fastestMps_, target))) break;
    if (const auto end = onTheWay(stage, target)) {
      choice.add(planUpTo(stage), *end);
      break;
    }
  }
  // And in each of its gears to the end.
  while (i-- > 0) {
    const Stage& stage = trunk.stages[i];
    const double most = std::max(model_->fastestMps(stage.track->gear()), stage.entered.speedMps);
    if (!choice.mayWin(leastTime(stage.entered, most, target))) continue;
    if (const auto end = staying(stage, target)) choice.add(planUpTo(stage), *end);
  }
}

RunSearch::Stage RunSearch::stageAt(std::size_t gear, const RunPlace& entered) {
  const double mps = entered.speedMps;
  Stage stage{.track = nullptr, .entered = entered, .onTrack = {}, .leave = {}, .shift = {}};
  for (PullTrack& track : tracks_) {
    if (track.gear() != gear || track.fromMps() > mps) continue;
    const auto place = track.atSpeed(mps);
    if (!place) continue;
    stage.track = &track;
    stage.onTrack = *place;
    break;
  }
  if (!stage.track) {
    stage.track = &tracks_.emplace_back(*model_, gear, mps);
    stage.onTrack = {0.0, 0.0, mps};
  }
  stage.leave =
      gear < model_->gearCount() ? leavingMps(*model_, gear, mps) : std::optional(model_->fastestMps(gear));
  return stage;
}

bool RunSearch::goOn(Trunk& trunk) {
  if (trunk.complete) return false;
  trunk.complete = true;
  const Stage& last = trunk.stages.back();
  if (!last.leave) return false;
  RunPlace left = last.entered;
  if (*last.leave > left.speedMps) {
    const auto place = last.track->atSpeed(*last.leave);
    if (!place) return false;
    left = along(last.entered, last.onTrack, *place);
  }
  const std::size_t gear = last.track->gear();
  if (gear >= model_->gearCount()) {  // the road speed has caught up
    trunk.stages.push_back(stageAt(model_->geared(gear), left));
  } else {
    const RunLeg shift = shiftLeg(*model_, gear, left);
    if (!takesOver(*model_, gear + 1, shift.end.speedMps)) return false;
    trunk.stages.push_back(stageAt(gear + 1, shift.end));
    trunk.stages.back().shift = shift;
  }
  trunk.complete = false;
  return true;
}

double RunSearch::leastTime(const RunPlace& place, double mostMps, const Target& target) const {
  if (!target.isDistance()) return target.value() > mostMps ? kNever : place.timeS;
  return place.timeS + std::max(0.0, target.value() - place.distanceM) / mostMps;
}

std::optional<RunPoint> RunSearch::onTheWay(const Stage& stage, const Target& target) const {
  if (target.isReachedAt(stage.entered)) {
    if (!stage.shift) return runPoint(*model_, stage.track->gear(), stage.entered);
    const auto place = target.isDistance() ? stage.shift->atDistance(*model_, target.value())
                                           : stage.shift->atSpeed(*model_, target.value());
    return place ? std::optional(runPoint(*model_, stage.shift->gear, *place)) : std::nullopt;
  }
  if (!stage.leave) return staying(stage, target);
  if (*stage.leave <= stage.entered.speedMps) return std::nullopt;
  std::optional<RunPlace> place;
  if (target.isDistance())
    place = stage.track->atDistance(stage.onTrack.distanceM + (target.value() - stage.entered.distanceM),
                                    *stage.leave);
  else if (target.value() <= *stage.leave)
    place = stage.track->atSpeed(target.value());
  if (!place) return std::nullopt;
  return runPoint(*model_, stage.track->gear(), along(stage.entered, stage.onTrack, *place));
}

std::optional<RunPoint> RunSearch::staying(const Stage& stage, const Target& target) const {
  PullTrack& track = *stage.track;
  const std::size_t gear = track.gear();
  if (gear >= model_->gearCount() && !track.runsOut()) return std::nullopt;  // the clutch: it goes on in gear
  const auto point = [&](const RunPlace& place) {
    return runPoint(*model_, gear, along(stage.entered, stage.onTrack, place));
  };
  if (!target.isDistance()) {
    const auto place = track.atSpeed(target.value());
    return place ? std::optional(point(*place)) : std::nullopt;
  }
  const double metres = stage.onTrack.distanceM + (target.value() - stage.entered.distanceM);
  if (const auto place = track.atDistance(metres, model_->fastestMps(gear))) return point(*place);
  const RunLeg hold = holdLeg(gear, along(stage.entered, stage.onTrack, track.end()), !track.runsOut());
  const auto place = hold.atDistance(*model_, target.value());
  return place ? std::optional(runPoint(*model_, hold, *place)) : std::nullopt;
}

}  // namespace layshaft
