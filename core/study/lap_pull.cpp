// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_pull.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/roots.h"

namespace layshaft {
namespace {

constexpr int kMostPanels = 2000;
constexpr int kMostHalvings = 40;
constexpr double kSameTurns = 1e-11;      // of an engine speed
constexpr double kSameMps = 1e-12;        // of a speed
constexpr double kAsGoodAsThere = 1e-12;  // of the speed where the pull runs out
constexpr double kThere = 1e-9;           // of a speed: so near to a kink is on it
constexpr double kStandsMps = 1e-5;
constexpr int kMostSteps = 60;
constexpr double kNearS = 3e-6;  // so near in time the rest is a straight line

}  // namespace

LapPull::LapPull(const LapBike& bike, std::size_t gear, bool slips, std::optional<double> leaveRpm,
                 LapPlace& at, std::vector<LapLeg>* legs)
    : bike_(bike),
      stretch_(bike.allowed().stretches()[at.stretch]),
      index_(at.stretch),
      gear_(gear),
      slips_(slips),
      leaveRpm_(leaveRpm),
      at_(at),
      legs_(legs),
      bendMps_(bike.bendMps(at.stretch)) {}

LapEvent LapPull::ride() {
  for (int panel = 0; panel < kMostPanels; ++panel)
    if (const auto event = step()) return *event;
  return LapEvent::Stopped;
}

LapPush LapPull::push(const LapPanel& on, double mps) const {
  return bike_.push(index_, on, mps, BendPace(bendMps_).left(mps));
}

SpeedRate LapPull::rateAt(const LapPanel& on, const BendPace& pace, double measure) const {
  const LapPush push = bike_.push(index_, on, pace.mps(measure), pace.left(measure));
  return pace.rate(measure, push.mps2, push.fades());
}

SpeedSums LapPull::sums(const Panel& panel, const BendPace& pace, double toMeasure) const {
  const auto at = [&](double q) { return rateAt(panel.on, pace, q); };
  const double from = pace.measure(panel.fromMps);
  return panel.even ? evenSums(at, from, toMeasure, panel.start.mps2) : speedSums(at, from, toMeasure);
}

/// What holds just above the speed, or just below it.
LapPanel LapPull::panelTowards(bool faster, double rpmNow) const {
  const double rpm = rpmNow * (faster ? 1.0 + kSameTurns : 1.0 - kSameTurns);
  const auto& jump = bike_.forces(index_).rolling().jumpMps;
  return {.gear = gear_,
          .piece = bike_.torque().pieceAt(rpm),
          .slips = slips_,
          .pulls = slips_ || rpm < bike_.torque().revLimitRpm(),
          .fast = jump && (faster ? at_.mps >= *jump : at_.mps > *jump)};
}

std::optional<LapEvent> LapPull::step() {
  const double missing = stretch_.here.lengthM - at_.offsetM;
  if (!(missing > 0.0)) return LapEvent::Stretch;
  const double rpm = bike_.rpm(index_, at_.mps, gear_), limit = bike_.torque().revLimitRpm();
  if (leaveRpm_ && rpm >= *leaveRpm_ * (1.0 - kSameTurns)) return LapEvent::Turns;
  const bool limiter = !slips_ && std::abs(rpm - limit) <= kSameTurns * limit;
  if (!limiter) {
    const LapPanel faster = panelTowards(true, rpm);
    const LapPush now = push(faster, at_.mps);
    const double rises = now.mps2;
    const bool fastest = at_.mps >= stretch_.here.limitMps * (1.0 - kSameMps);
    if (fastest && rises >= 0.0) return LapEvent::Allowed;
    if (rises > 0.0) {
      const double reach = std::sqrt(at_.mps * at_.mps + 2.0 * rises * missing);
      return go({faster, at_.mps, std::min(reach * 1.002 + 1e-9, stretch_.here.limitMps), now});
    }
  }
  const LapPanel slower = panelTowards(false, rpm);
  const LapPush now = push(slower, at_.mps);
  const double falls = now.mps2;
  if (limiter && falls > 0.0) return hold(slower, true);
  if (!(falls < 0.0)) return hold(slower, limiter);
  if (at_.mps <= kStandsMps) return LapEvent::Stopped;
  const double reach = at_.mps * at_.mps + 2.0 * falls * missing;
  return go({slower, at_.mps, reach > 0.0 ? std::max(std::sqrt(reach) * 0.998, at_.mps / 2.0) : at_.mps / 2.0,
             now});
}

/// Shortens a panel to the next place where a force changes form.
void LapPull::cutAtKinks(Panel& panel) const {
  const bool rises = panel.rises();
  const auto cut = [&](double v) {
    if (rises ? v > panel.fromMps && v < panel.toMps : v < panel.fromMps && v > panel.toMps) panel.toMps = v;
  };
  const RoadForces& forces = bike_.forces(index_);
  if (forces.rolling().jumpMps) cut(*forces.rolling().jumpMps);
  if (forces.headwindMps() < 0.0) cut(-forces.headwindMps());
  const TorqueSpline& torque = bike_.torque();
  const auto& knots = torque.knotsRpm();
  const double limit = torque.revLimitRpm(), rpm = bike_.rpm(index_, panel.toMps, gear_);
  std::optional<double> bound;
  if (rises) {
    if (!slips_ && panel.on.pulls) bound = panel.on.piece < knots.size() ? knots[panel.on.piece] : limit;
    if (leaveRpm_) bound = std::min(bound.value_or(*leaveRpm_), *leaveRpm_);
  } else if (!slips_) {
    if (!panel.on.pulls)
      bound = limit;
    else if (panel.on.piece > 0)
      bound = knots[panel.on.piece - 1];
  }
  if (bound && (rises ? rpm > *bound : rpm < *bound)) cut(bike_.speedMps(index_, *bound, gear_, panel.toMps));
  if (!std::isfinite(bendMps_) || !forces.hasGrip()) return;
  // Grip in a bend has another form where the road drives the bike on.
  const auto resistance = [&](double v) { return forces.resistanceN(v, panel.on.fast); };
  const double from = resistance(panel.fromMps), to = resistance(panel.toMps);
  if (!(from < 0.0 && to > 0.0) && !(from > 0.0 && to < 0.0)) return;
  const double root = polishedRoot(resistance, panel.fromMps, panel.toMps, from, to);
  if (std::abs(root - panel.fromMps) > kThere * panel.fromMps) cut(root);
}

/// Seconds and metres of a panel, and what limits its beginning, its nodes and its end.
LapPull::Ridden LapPull::ridden(Panel& panel, const BendPace& pace, const LapPush& end) const {
  Ridden result;
  const double from = pace.measure(panel.fromMps), to = pace.measure(panel.toMps);
  result.measure[0] = from;
  result.push[0] = panel.start;
  result.count = 1;
  const auto at = [&](double q) {
    const LapPush push = bike_.push(index_, panel.on, pace.mps(q), pace.left(q));
    result.measure[result.count] = q;
    result.push[result.count++] = push;
    return pace.rate(q, push.mps2, push.fades());
  };
  panel.even = !pace.byRoot() && std::abs(panel.toMps - panel.fromMps) <= kShortWay * panel.fromMps &&
               std::abs(end.mps2 - panel.start.mps2) <= kEven * std::abs(panel.start.mps2);
  if (panel.even) {
    result.sums = evenSums(at, from, to, panel.start.mps2);
    panel.even = result.sums.smooth;
  }
  if (!panel.even) {
    result.count = 1;
    result.sums = speedSums(at, from, to);
  }
  result.measure[result.count] = to;
  result.push[result.count++] = end;
  return result;
}

bool LapPull::cutAtTakeOver(Panel& panel, const BendPace& pace, const Ridden& ridden) const {
  for (std::size_t i = 1; i < ridden.count; ++i) {
    const LapPush &last = ridden.push[i - 1], &now = ridden.push[i];
    if (now.by == last.by) continue;
    const auto gap = [&](double q) {
      const LapPush there = bike_.push(index_, panel.on, pace.mps(q), pace.left(q));
      return there.of(now.by) - there.of(last.by);
    };
    const double cut =
        pace.mps(polishedRoot(gap, ridden.measure[i - 1], ridden.measure[i],
                              last.of(now.by) - last.of(last.by), now.of(now.by) - now.of(last.by)));
    const bool inside =
        panel.rises() ? cut > panel.fromMps && cut < panel.toMps : cut < panel.fromMps && cut > panel.toMps;
    if (!inside || std::abs(cut - panel.toMps) <= kThere * panel.fromMps ||
        std::abs(cut - panel.fromMps) <= kThere * panel.fromMps)
      continue;
    panel.toMps = cut;
    return true;
  }
  return false;
}

std::optional<LapEvent> LapPull::go(Panel panel) {
  cutAtKinks(panel);
  const bool rises = panel.rises();
  // In a bend nothing is left at its own speed, yet that is reached: only what comes before it ends a pull.
  const bool toTheBend = std::isfinite(bendMps_) && panel.toMps >= bendMps_;
  LapPush end = push(panel.on, panel.toMps);
  const double value = rises ? end.mps2 : -end.mps2;
  if (value <= 0.0 && !(toTheBend && end.by == LimitedBy::Grip)) {
    const auto a = [&](double v) { return mps2(panel.on, v); };
    const double out = polishedRoot(a, panel.fromMps, panel.toMps, panel.start.mps2, end.mps2);
    if (std::abs(out - panel.fromMps) <= kAsGoodAsThere * out) {
      at_.mps = out;
      return hold(panel.on, false);
    }
    panel.toMps = panel.fromMps + (out - panel.fromMps) / 2.0;
    end = push(panel.on, panel.toMps);
  }
  for (int halvings = 0;; ++halvings) {
    const BendPace pace(bendMps_, std::max(panel.fromMps, panel.toMps));
    const Ridden whole = ridden(panel, pace, end);
    if (halvings < kMostHalvings) {
      const bool cut = cutAtTakeOver(panel, pace, whole);
      if (!cut && !whole.sums.smooth) {
        const double from = pace.measure(panel.fromMps);
        panel.toMps = pace.mps(from + (pace.measure(panel.toMps) - from) / 2.0);
      }
      if (cut || !whole.sums.smooth) {
        end = push(panel.on, panel.toMps);
        continue;
      }
    }
    if (!(whole.sums.least > 0.0)) return hold(panel.on, false);
    return finish(panel, pace, whole.sums, end.mps2);
  }
}

bool LapPull::meetsBrakes(double offsetM, double mps) const {
  if (stretch_.knots < 2 || !(mps > stretch_.exitMps)) return false;
  const double left = stretch_.here.lengthM - offsetM;
  const double braked = std::min(mps, stretch_.entryMps);
  if (bike_.allowed().brakingAtMostM(index_, braked) < left) return false;
  return bike_.allowed().braking(index_, braked).distanceM >= left;
}

std::optional<LapEvent> LapPull::finish(const Panel& panel, const BendPace& pace, const SpeedSums& whole,
                                        double endMps2) {
  LapPlace end{at_.timeS + whole.timeS, index_, at_.offsetM + whole.distanceM, panel.toMps};
  const bool ends = end.offsetM >= stretch_.here.lengthM;
  if (ends) end = placeAtEnd(panel, pace, whole, endMps2);
  const bool brakes = meetsBrakes(end.offsetM, end.mps);
  if (brakes) end = placeOnBrakes(panel, pace, end);
  add(LapLeg::Kind::Pull, panel.on, !panel.on.pulls, end);
  if (brakes) return LapEvent::Allowed;
  return ends ? std::optional(LapEvent::Stretch) : std::nullopt;
}

LapPlace LapPull::placeAtEnd(const Panel& panel, const BendPace& pace, const SpeedSums& whole,
                             double endMps2) const {
  const double missing = stretch_.here.lengthM - at_.offsetM;
  const double guess = speedOnWay({panel.fromMps, panel.start.mps2}, {panel.toMps, endMps2}, whole.distanceM,
                                  missing / whole.distanceM);
  const ReachedOnWay end = reachedOnWay(
      [&](double q) { return rateAt(panel.on, pace, q); }, [&](double q) { return sums(panel, pace, q); },
      pace.measure(panel.fromMps), pace.measure(panel.toMps), missing, pace.measure(guess));
  return {at_.timeS + end.timeS, index_, stretch_.here.lengthM,
          std::clamp(pace.mps(end.measure), std::min(panel.fromMps, panel.toMps),
                     std::max(panel.fromMps, panel.toMps))};
}

/// Where the way through the speeds meets the brakes: Newton inside the panel, the last step in time.
LapPlace LapPull::placeOnBrakes(const Panel& panel, const BendPace& pace, const LapPlace& beyond) const {
  const AllowedSpeed& allowed = bike_.allowed();
  const double left = stretch_.here.lengthM - at_.offsetM;
  double low = pace.measure(panel.fromMps), high = pace.measure(beyond.mps);
  // What is left to the brakes at the panel's beginning, and how far its end is beyond them.
  const double before =
      left -
      allowed.braking(index_, std::clamp(panel.fromMps, stretch_.exitMps, stretch_.entryMps)).distanceM;
  const double behind = allowed.braking(index_, std::min(beyond.mps, stretch_.entryMps)).distanceM -
                        (stretch_.here.lengthM - beyond.offsetM);
  const double part = before > 0.0 && behind > 0.0 ? before / (before + behind) : 1.0;
  double q = pace.measure(panel.fromMps + part * (beyond.mps - panel.fromMps));
  for (int step = 0;; ++step) {
    const SpeedSums ridden = sums(panel, pace, q);
    const SpeedRate here = rateAt(panel.on, pace, q);
    double over = ridden.distanceM - left, closes = here.mps;
    if (here.mps > stretch_.exitMps) {
      const double mps = std::min(here.mps, stretch_.entryMps);
      over += allowed.braking(index_, mps).distanceM;
      closes *= 1.0 + mps2(panel.on, mps) / allowed.brakesMps2(index_, mps);
    }
    const double seconds = -over / closes, next = q + seconds * here.rate;
    // At the bend's own speed neither pull nor brakes have anything left.
    const bool known = std::isfinite(next) && std::isfinite(closes);
    if ((known && std::abs(seconds) <= kNearS) || step >= kMostSteps) {
      const double mps = std::clamp(pace.mps(known ? next : q), stretch_.exitMps, stretch_.entryMps);
      return {at_.timeS + ridden.timeS + (known ? seconds : 0.0), index_,
              stretch_.here.lengthM - allowed.braking(index_, mps).distanceM, mps};
    }
    (over < 0.0 ? low : high) = q;
    const bool inside = low < high ? next > low && next < high : next < low && next > high;
    q = known && inside ? next : low + (high - low) / 2.0;
  }
}

std::optional<LapEvent> LapPull::hold(const LapPanel& on, bool limiter) {
  if (at_.mps <= kStandsMps) return LapEvent::Stopped;
  double until = stretch_.here.lengthM;
  bool brakes = false;
  if (stretch_.knots >= 2 && at_.mps > stretch_.exitMps) {
    until -= bike_.allowed().braking(index_, std::min(at_.mps, stretch_.entryMps)).distanceM;
    until = std::max(until, at_.offsetM);
    brakes = true;
  }
  add(LapLeg::Kind::Hold, on, limiter, {at_.timeS + (until - at_.offsetM) / at_.mps, index_, until, at_.mps});
  return brakes ? LapEvent::Allowed : LapEvent::Stretch;
}

void LapPull::add(LapLeg::Kind kind, const LapPanel& on, bool limiter, const LapPlace& end) {
  if (legs_) legs_->push_back({kind, on, limiter, at_, end});
  at_ = end;
}

}  // namespace layshaft
