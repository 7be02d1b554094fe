// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/allowed_speed.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/roots.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr int kMostPanels = 200, kMostHalvings = 40;
constexpr double kRises = 1e-9;  // of the speed
constexpr double kThere = 1e-9;  // of the speed: so near to a kink is on it

bool fastBetween(const RollingResistance& rolling, double a, double b) {
  return rolling.jumpMps && a + (b - a) / 2.0 > *rolling.jumpMps;
}

}  // namespace

AllowedSpeed::AllowedSpeed(LapCourse course, const PullBike& bike)
    : course_(std::move(course)), massKg_(*bike.massKg) {
  if (!course_.lacks.empty()) return;
  const BikeLoad stock{.massKg = massKg_, .cgAheadM = bike.cgAheadM, .wheelbaseM = bike.wheelbaseM};
  brakes_.reserve(course_.roads.size());
  for (const Road& road : course_.roads) {
    double most = *road.grip;
    if (bike.cgHeightM && bike.cgAheadM && bike.wheelbaseM)
      most = std::min(most, (*bike.wheelbaseM - *bike.cgAheadM) / *bike.cgHeightM);
    brakes_.push_back({RoadForces(bike, stock, road), course_.brakeShare * units::kStandardGravityMps2 *
                                                          std::cos(road.slopeRad) * std::max(0.0, most)});
  }
  if (refuse()) return;
  turnToStart();
  workBackwards();
}

bool AllowedSpeed::refuse() {
  const auto& all = course_.stretches;
  if (all.empty()) {
    refusal_ = LapRefusal{LapRefusal::Why::Empty};
    return true;
  }
  const bool bends =
      std::any_of(all.begin(), all.end(), [](const LapStretch& s) { return s.limitMps < kFastestMps; });
  if (course_.closed && !bends) {
    refusal_ = LapRefusal{LapRefusal::Why::NoBend};
    return true;
  }
  // Resistance grows with speed: brakes that slow the bike at walking pace slow it at any.
  for (const LapStretch& stretch : all) {
    const Brakes& brakes = brakes_[stretch.road];
    if (slowing(brakes, 0.0, 1.0, false) > 0.0) continue;
    refusal_ = LapRefusal{LapRefusal::Why::BrakesTooWeak, stretch.segment};
    return true;
  }
  return false;
}

void AllowedSpeed::turnToStart() {
  auto& all = course_.stretches;
  const auto slower = [](const LapStretch& a, const LapStretch& b) { return a.limitMps < b.limitMps; };
  if (course_.closed) std::rotate(all.begin(), std::min_element(all.begin(), all.end(), slower), all.end());
  stretches_.reserve(all.size());
  for (const LapStretch& stretch : all) {
    stretches_.push_back({.here = stretch,
                          .startM = lengthM_,
                          .entryMps = 0.0,
                          .exitMps = 0.0,
                          .heldM = 0.0,
                          .seconds = 0.0,
                          .rises = false,
                          .firstKnot = 0,
                          .knots = 0});
    lengthM_ += stretch.lengthM;
  }
}

void AllowedSpeed::workBackwards() {
  knots_.reserve(4 * stretches_.size());
  double after = course_.closed ? stretches_.front().here.limitMps : kFastestMps;
  for (std::size_t i = stretches_.size(); i-- > 0;) {
    Stretch& stretch = stretches_[i];
    const double limit = stretch.here.limitMps;
    stretch.exitMps = std::min(limit, after);
    stretch.firstKnot = knots_.size();
    const double braked = addBrakes(i, stretch.exitMps);
    stretch.knots = knots_.size() - stretch.firstKnot;
    stretch.entryMps = stretch.knots > 0 ? knots_.back().mps : stretch.exitMps;
    stretch.heldM = std::max(0.0, stretch.here.lengthM - braked);
    stretch.seconds = stretch.heldM / stretch.entryMps + (stretch.knots > 0 ? knots_.back().left.timeS : 0.0);
    after = stretch.entryMps;
  }
  double before = course_.closed ? stretches_.back().exitMps : kFastestMps;
  for (Stretch& stretch : stretches_) {
    stretch.rises = stretch.entryMps > before * (1.0 + kRises);
    before = stretch.exitMps;
  }
}

/// Backwards from the end of a stretch until the bend's speed or its beginning; how many metres it brakes.
double AllowedSpeed::addBrakes(std::size_t index, double exitMps) {
  const LapStretch& here = stretches_[index].here;
  const Brakes& brakes = brakesOf(index);
  const RollingResistance& rolling = brakes.forces.rolling();
  if (!(here.limitMps > exitMps)) return 0.0;
  knots_.push_back({exitMps, {0.0, 0.0}});
  double mps = exitMps, braked = 0.0, seconds = 0.0;
  for (int panel = 0; panel < kMostPanels && mps < here.limitMps; ++panel) {
    const double missing = here.lengthM - braked;
    const double ratio = mps / here.bendMps;
    const double left = std::sqrt(std::max(0.0, 1.0 - ratio * ratio * ratio * ratio));
    const double now = slowing(brakes, mps, left, rolling.jumpMps && mps >= *rolling.jumpMps);
    double to = std::min(here.limitMps, std::sqrt(mps * mps + 2.0 * now * missing) * 1.02 + 1e-3);
    const auto cut = [&](double v) {
      if (v > mps && v < to) to = v;
    };
    if (rolling.jumpMps) cut(*rolling.jumpMps);
    if (brakes.forces.headwindMps() < 0.0) cut(-brakes.forces.headwindMps());
    const bool fast = fastBetween(rolling, mps, to);
    const auto resistance = [&](double v) { return brakes.forces.resistanceN(v, fast); };
    if (const double a = resistance(mps), b = resistance(to); a < 0.0 && b > 0.0) {
      const double root = polishedRoot(resistance, mps, to, a, b);
      if (root - mps > kThere * mps) cut(root);
    }
    BendPace pace(here.bendMps, to);
    SpeedSums sums = brakingSums(brakes, pace, fast, mps, to);
    for (int halvings = 0; !sums.smooth && halvings < kMostHalvings; ++halvings) {
      const double from = pace.measure(mps);
      to = pace.mps(from + (pace.measure(to) - from) / 2.0);
      pace = BendPace(here.bendMps, to);
      sums = brakingSums(brakes, pace, fast, mps, to);
    }
    if (sums.distanceM >= missing) {
      const double then = slowing(brakes, to, BendPace(here.bendMps).left(to), fast);
      const double guess = speedOnWay({mps, now}, {to, then}, sums.distanceM, missing / sums.distanceM);
      const auto at = [&](double q) { return brakingAt(brakes, pace, fast, q); };
      const double from = pace.measure(mps);
      const auto sumsTo = [&](double q) { return speedSums(at, from, q); };
      const ReachedOnWay beginning =
          reachedOnWay(at, sumsTo, from, pace.measure(to), missing, pace.measure(guess));
      knots_.push_back({std::clamp(pace.mps(beginning.measure), mps, here.limitMps),
                        {seconds + beginning.timeS, here.lengthM}});
      return here.lengthM;
    }
    mps = to;
    braked += sums.distanceM;
    seconds += sums.timeS;
    knots_.push_back({mps, {seconds, braked}});
  }
  return braked;
}

double AllowedSpeed::slowing(const Brakes& brakes, double mps, double left, bool fast) const {
  const double resistance = brakes.forces.resistanceN(mps, fast) / massKg_;
  return resistance < 0.0 ? left * (brakes.fullMps2 + resistance) : left * brakes.fullMps2 + resistance;
}

SpeedRate AllowedSpeed::brakingAt(const Brakes& brakes, const BendPace& pace, bool fast,
                                  double measure) const {
  const double mps = pace.mps(measure);
  const bool fades = brakes.forces.resistanceN(mps, fast) <= 0.0;
  return pace.rate(measure, slowing(brakes, mps, pace.left(measure), fast), fades);
}

SpeedSums AllowedSpeed::brakingSums(const Brakes& brakes, const BendPace& pace, bool fast, double from,
                                    double to) const {
  return speedSums([&](double q) { return brakingAt(brakes, pace, fast, q); }, pace.measure(from),
                   pace.measure(to));
}

std::size_t AllowedSpeed::knotBelow(const Stretch& stretch, double mps) const {
  const auto first = knots_.begin() + static_cast<std::ptrdiff_t>(stretch.firstKnot);
  const auto above = std::upper_bound(first + 1, first + static_cast<std::ptrdiff_t>(stretch.knots - 1), mps,
                                      [](double v, const Knot& knot) { return v < knot.mps; });
  return static_cast<std::size_t>(above - knots_.begin()) - 1;
}

ToTheEnd AllowedSpeed::braking(std::size_t index, double mps) const {
  const Stretch& stretch = stretches_[index];
  if (stretch.knots < 2) return {0.0, 0.0};
  const std::size_t below = knotBelow(stretch, mps);
  const Knot &low = knots_[below], &high = knots_[below + 1];
  const Brakes& brakes = brakesOf(index);
  const SpeedSums sums = brakingSums(brakes, BendPace(stretch.here.bendMps, high.mps),
                                     fastBetween(brakes.forces.rolling(), low.mps, high.mps), low.mps, mps);
  return {low.left.timeS + sums.timeS, low.left.distanceM + sums.distanceM};
}

double AllowedSpeed::brakingAtMostM(std::size_t index, double mps) const {
  const Stretch& stretch = stretches_[index];
  if (stretch.knots < 2) return 0.0;
  return knots_[knotBelow(stretch, mps) + 1].left.distanceM;
}

double AllowedSpeed::brakesMps2(std::size_t index, double mps) const {
  const Stretch& stretch = stretches_[index];
  const Brakes& brakes = brakesOf(index);
  return slowing(brakes, mps, BendPace(stretch.here.bendMps).left(mps),
                 brakes.forces.rolling().jumpMps && mps > *brakes.forces.rolling().jumpMps);
}

double AllowedSpeed::secondsToTheEnd(std::size_t index, double offsetM, double mps) const {
  const Stretch& stretch = stretches_[index];
  if (offsetM >= stretch.heldM) return braking(index, mps).timeS;
  const double brakes = stretch.knots > 0 ? knots_[stretch.firstKnot + stretch.knots - 1].left.timeS : 0.0;
  return (stretch.heldM - offsetM) / stretch.entryMps + brakes;
}

}  // namespace layshaft
