// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/pull_along.h"

#include <algorithm>

#include "core/roots.h"

namespace layshaft {
namespace {

using Stretches = std::vector<PullModel::Stretch>;

constexpr int kMostHalvings = 40;
// Nearer than this to the speed where the pull runs out the rest is ridden at that speed.
constexpr double kAsGoodAsThere = 1e-12;

std::optional<double> runsOutOn(const PullModel& model, std::size_t gear, double fromMps,
                                const Stretches& stretches) {
  double below = fromMps, belowValue = 1.0;
  for (const auto& on : stretches) {
    const auto a = [&](double v) { return model.accelerationOn(on, v, gear); };
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

/// Adds the legs of one pull. Each step says why the pull has ended with it, none if it goes on.
class Puller {
 public:
  Puller(const RoadModel& model, std::size_t gear, const PullGoal& goal, RunPlace& place,
         std::vector<RunLeg>& legs)
      : model_(model), gear_(gear), goal_(goal), place_(place), legs_(legs) {}

  PullEnd pull() {
    if (!(goal_.mostMps > place_.speedMps)) return PullEnd::Speed;
    const Stretches stretches = model_.stretches(gear_, place_.speedMps, goal_.mostMps);
    const auto terminal = runsOutOn(model_, gear_, place_.speedMps, stretches);
    for (const auto& on : stretches) {
      if (terminal && on.toMps >= *terminal) break;
      if (const auto end = add(on, 0)) return *end;
    }
    return terminal ? runOut(*terminal) : PullEnd::Speed;
  }

 private:
  using Step = std::optional<PullEnd>;

  /// Towards the speed where the pull ends, each leg takes half of what is left: about the same time each.
  PullEnd runOut(double terminal) {
    for (const auto& whole : model_.stretches(gear_, place_.speedMps, terminal)) {
      if (whole.toMps < terminal) {
        if (const auto end = add(whole, 0)) return *end;
        continue;
      }
      while (terminal - place_.speedMps > kAsGoodAsThere * terminal) {
        PullModel::Stretch half = whole;
        half.fromMps = place_.speedMps;
        half.toMps = place_.speedMps + (terminal - place_.speedMps) / 2.0;
        if (const auto end = add(half, 0)) return *end;
      }
    }
    place_.speedMps = terminal;
    return PullEnd::NoPull;
  }

  Step add(const PullModel::Stretch& on, int depth) {
    const PullSums sums = pullSums(model_, on, gear_, on.fromMps, on.toMps);
    if (!sums.smooth && depth < kMostHalvings) {
      const double middle = on.fromMps + (on.toMps - on.fromMps) / 2.0;
      if (middle > on.fromMps && middle < on.toMps) {
        const Step end = add({on.fromMps, middle, on.piece, on.fast}, depth + 1);
        if (end == PullEnd::NoPull) return end;
        return add({middle, on.toMps, on.piece, on.fast}, depth + 1);
      }
    }
    if (!(sums.least > 0.0)) return PullEnd::NoPull;
    const RunPlace start{place_.timeS, place_.distanceM, on.fromMps};
    place_ = {start.timeS + sums.timeS, start.distanceM + sums.distanceM, on.toMps};
    legs_.push_back({RunLeg::Kind::Pull, gear_, on, start, place_, false});
    const bool there = place_.distanceM >= goal_.untilM && place_.speedMps >= goal_.untilMps;
    return there ? Step(PullEnd::Distance) : std::nullopt;
  }

  const RoadModel& model_;
  std::size_t gear_;
  const PullGoal& goal_;
  RunPlace& place_;
  std::vector<RunLeg>& legs_;
};

}  // namespace

bool pullsAt(const PullModel& model, std::size_t gear, double mps) {
  const double above = mps + 5e-4;
  const PullModel::Stretch on{mps, above, model.torque().pieceAt(model.rpm(above, gear)),
                              model.road().isFast(above)};
  return model.accelerationOn(on, mps, gear) > 0.0;
}

std::optional<double> pullRunsOut(const PullModel& model, std::size_t gear, double from, double to) {
  return runsOutOn(model, gear, from, model.stretches(gear, from, to));
}

PullEnd pullOn(const RoadModel& model, std::size_t gear, const PullGoal& goal, RunPlace& place,
               std::vector<RunLeg>& legs) {
  return Puller(model, gear, goal, place, legs).pull();
}

Pulled pullAlong(const RoadModel& model, std::size_t gear, double from, double length, double most) {
  RunPlace place{0.0, 0.0, from};
  std::vector<RunLeg> legs;
  const PullEnd end =
      pullOn(model, gear, {.mostMps = std::min(most, model.fastestMps(gear)), .untilM = length}, place, legs);
  if (end == PullEnd::Distance) {
    const auto last = std::find_if(legs.begin(), legs.end(),
                                   [&](const RunLeg& leg) { return leg.end.distanceM >= length; });
    if (const auto there = last->atDistance(model, length)) place = *there;
  }
  return {place.timeS, place.distanceM, place.speedMps, end};
}

}  // namespace layshaft
