// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_search.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace layshaft {
namespace {

constexpr double kAlikeS = 1e-6;
constexpr double kBoundSlackS = 1e-3;  // far more than the steps of the bound are off
constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr std::size_t kUnknown = std::numeric_limits<std::size_t>::max();

}  // namespace

std::vector<LapChoice> lapStarts(const LapBike& bike, std::size_t stretch, double mps) {
  std::vector<LapChoice> starts;
  if (bike.rpm(stretch, mps, 0) < bike.launchRpm()) starts.push_back({.gear = 0, .slips = true});
  if (!(mps > 0.0)) return starts;
  std::optional<std::size_t> aboveIdle;
  for (std::size_t g = 0; g < bike.gearCount(); ++g) {
    const double rpm = bike.rpm(stretch, mps, g);
    if (rpm >= bike.lowestRpm() && rpm <= bike.highestRpm(g)) starts.push_back({.gear = g});
    if (rpm >= bike.model().bike().idleRpm) aboveIdle = g;
  }
  if (starts.empty() && aboveIdle) starts.push_back({.gear = *aboveIdle});
  if (starts.empty()) starts.push_back({.gear = 0, .slips = true});
  return starts;
}

LapSearch::LapSearch(const LapBike& bike) : bike_(&bike), bound_(bike) {
  const auto& stretches = bike.allowed().stretches();
  before_.reserve(stretches.size() + 1);
  before_.push_back(0.0);
  for (const auto& stretch : stretches) before_.push_back(before_.back() + stretch.seconds);
  next_.assign(stretches.size() + 1, kUnknown);
  next_.back() = stretches.size();
  pulls_.resize(stretches.size());
}

/// Whether, on the allowed speed at a joint, the bike has to pull: the speed rises there, or no gear holds
/// it.
bool LapSearch::begins(std::size_t joint) {
  const auto& stretch = bike_->allowed().stretches()[joint];
  return stretch.rises || (stretch.heldM > 0.0 && !bike_->holds(joint, stretch.entryMps));
}

std::size_t LapSearch::nextPull(std::size_t joint) {
  std::size_t next = joint;
  while (next_[next] == kUnknown && !begins(next)) ++next;
  const std::size_t found = next_[next] == kUnknown ? next : next_[next];
  for (std::size_t i = joint; i <= next; ++i) next_[i] = found;
  return found;
}

bool LapSearch::goOn(const LapPlace& start, Pull& pull) {
  if (!pull.begun) {
    pull.begun = true;
    pull.starts = lapStarts(*bike_, start.stretch, start.mps);
    // The hardest pull first: the earlier a good choice is known, the sooner others are given up.
    const double left = BendPace(bike_->bendMps(start.stretch)).left(start.mps);
    const auto push = [&](const LapChoice& choice) {
      const double rpm = bike_->rpm(start.stretch, start.mps, choice.gear);
      const LapPanel on{.gear = choice.gear,
                        .piece = bike_->torque().pieceAt(rpm),
                        .slips = choice.slips,
                        .pulls = rpm <= bike_->torque().revLimitRpm(),
                        .fast = false};
      return bike_->push(start.stretch, on, start.mps, left).free;
    };
    std::stable_sort(pull.starts.begin(), pull.starts.end(),
                     [&](const LapChoice& a, const LapChoice& b) { return push(a) < push(b); });
  }
  if (pull.starts.empty()) return false;
  const LapChoice choice = pull.starts.back();
  pull.starts.pop_back();
  tryFrom(start, choice, pull);
  return true;
}

void LapSearch::tryFrom(const LapPlace& start, LapChoice choice, Pull& pull) {
  double most = kNever;
  for (const Way& way : pull.ways) most = std::min(most, secondsOf(way) + kBoundSlackS);
  const LapRide ride(*bike_, bound_, most);
  LapPlace at = start;
  std::size_t gear = choice.gear;
  if (choice.slips) {
    const LapEvent event = ride.pull(gear, true, bike_->launchRpm(), at);
    if (event != LapEvent::Turns) return add(pull, start, choice, event, at, most);
  }
  // With every shift, and then in each of its gears to the end.
  struct Stay {
    LapChoice choice;
    std::size_t gear;
    LapPlace from;
  };
  std::vector<Stay> stays;
  for (;;) {
    const bool last = gear + 1 == bike_->gearCount();
    const auto leave = last ? std::nullopt : std::optional(bike_->leavingRpm(gear, at.mps));
    LapEvent event = ride.pull(gear, false, leave, at);
    if (event != LapEvent::Turns) {
      add(pull, start, choice, event, at, most);
      break;
    }
    stays.push_back({choice, gear, at});
    event = ride.coast(gear, at);
    ++choice.shifts;
    if (event != LapEvent::Done) {
      add(pull, start, choice, event, at, most);
      break;
    }
    if (!ride.takesOver(++gear, at)) break;
  }
  while (!stays.empty()) {
    Stay& stay = stays.back();
    const LapEvent event = ride.pull(stay.gear, false, std::nullopt, stay.from);
    add(pull, start, stay.choice, event, stay.from, most);
    stays.pop_back();
  }
}

void LapSearch::add(Pull& pull, const LapPlace& start, const LapChoice& choice, LapEvent event,
                    const LapPlace& end, double mostS) {
  if (event == LapEvent::Stopped) furthestStop_ = std::max(furthestStop_.value_or(0), end.stretch);
  if (event == LapEvent::Stopped || event == LapEvent::Beaten) return;
  const std::size_t count = before_.size() - 1;
  const double allowedEnd = bike_->allowed().stretches().back().exitMps;
  double seconds = end.timeS;
  std::size_t joint = event == LapEvent::Lap ? count : end.stretch;
  // A pull that got nowhere is followed through.
  if (event != LapEvent::Lap && (end.offsetM > 0.0 || joint == start.stretch)) {
    seconds += bike_->allowed().secondsToTheEnd(joint, end.offsetM, end.mps);
    ++joint;
  }
  if (seconds + bound_.restS(joint) > mostS) return;
  const std::size_t next = nextPull(joint);
  pull.ways.push_back(
      {choice, seconds + followed(joint, next), next, event == LapEvent::Lap ? end.mps : allowedEnd});
}

void LapSearch::decide(Pull& pull) const {
  pull.decided = true;
  pull.seconds = kNever;
  double least = kNever;
  for (const Way& way : pull.ways) least = std::min(least, secondsOf(way));
  const Way* best = nullptr;
  for (const Way& way : pull.ways) {
    if (!(secondsOf(way) <= least + kAlikeS)) continue;
    const auto rank = [&](const Way& w) { return std::tuple(w.choice.shifts, w.choice.gear, secondsOf(w)); };
    if (!best || rank(way) < rank(*best)) best = &way;
  }
  if (!best) return;
  pull.best = static_cast<std::size_t>(best - pull.ways.data());
  pull.seconds = secondsOf(*best);
}

/// With all that its choices lead to, deepest first: each start is tried when what follows the others is
/// known, so that it can be given up early.
void LapSearch::workOut(const LapPlace& start, Pull& pull) {
  struct Waiting {
    LapPlace start;
    Pull* pull;
  };
  const auto& stretches = bike_->allowed().stretches();
  std::vector<Waiting> waiting{{start, &pull}};
  while (!waiting.empty()) {
    const Waiting here = waiting.back();
    if (here.pull->decided || !goOn(here.start, *here.pull)) {
      if (!here.pull->decided) decide(*here.pull);
      waiting.pop_back();
      continue;
    }
    for (const Way& way : here.pull->ways)
      if (way.next < pulls_.size() && !pulls_[way.next].decided) {
        const double mps = way.next > 0 ? stretches[way.next - 1].exitMps : stretches.front().entryMps;
        waiting.push_back({{0.0, way.next, 0.0, mps}, &pulls_[way.next]});
      }
  }
}

std::optional<ChosenLap> LapSearch::from(double mps) {
  const auto& stretches = bike_->allowed().stretches();
  const bool allowed = mps >= stretches.front().entryMps * (1.0 - 1e-9);
  ChosenLap lap{.seconds = 0.0, .endMps = stretches.back().exitMps, .pulls = {}};
  std::size_t joint = 0;
  Pull first;
  if (allowed) {
    joint = nextPull(0);
    lap.seconds = followed(0, joint);
  } else {
    workOut({0.0, 0, 0.0, mps}, first);
    if (first.ways.empty() || first.seconds == kNever) return std::nullopt;
    const Way& way = first.ways[first.best];
    lap.pulls.push_back({{0.0, 0, 0.0, mps}, way.choice});
    lap.seconds += way.seconds;
    lap.endMps = way.endMps;
    joint = way.next;
  }
  if (joint < pulls_.size())
    workOut({0.0, joint, 0.0, joint > 0 ? stretches[joint - 1].exitMps : stretches[joint].entryMps},
            pulls_[joint]);
  while (joint < pulls_.size()) {
    const Pull& pull = pulls_[joint];
    if (pull.seconds == kNever) return std::nullopt;
    const Way& way = pull.ways[pull.best];
    lap.pulls.push_back(
        {{0.0, joint, 0.0, joint > 0 ? stretches[joint - 1].exitMps : stretches[joint].entryMps},
         way.choice});
    lap.seconds += way.seconds;
    lap.endMps = way.endMps;
    joint = way.next;
  }
  return lap;
}

}  // namespace layshaft
