// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_ride.h"

#include <algorithm>
#include <cmath>

#include "core/roots.h"
#include "core/study/lap_pull.h"

namespace layshaft {
namespace {

constexpr double kSameAtJoint = 1e-12;  // of a speed

/// The gap of a shift through one stretch, in steps of time.
class Coast {
 public:
  Coast(const LapBike& bike, LapPlace& at)
      : bike_(bike),
        stretch_(bike.allowed().stretches()[at.stretch]),
        jump_(bike.forces(at.stretch).rolling().jumpMps),
        at_(at),
        fast_(jump_ && at.mps > *jump_) {}

  /// `left`: seconds of the shift, less what this takes.
  LapEvent ride(double& left) {
    // The classical fourth-order Runge-Kutta step is exact to the last digits over so short a time: nothing
    // in the resistance changes in less than some seconds.
    constexpr double kStepS = 0.05;
    while (left > 0.0) {
      const double whole = std::min(left, kStepS);
      double step = whole;
      LapEvent event = LapEvent::Done;
      const auto earlier = [&](LapEvent what, const auto& beyond) {
        const double start = beyond(0.0), end = beyond(step);
        if (!(end >= 0.0)) return;
        step = start >= 0.0 ? 0.0 : polishedRoot(beyond, 0.0, step, start, end);
        event = what;
      };
      earlier(LapEvent::Stretch, [&](double s) { return after(s).offsetM - stretch_.here.lengthM; });
      earlier(LapEvent::Allowed, [&](double s) { return overAllowed(after(s)); });
      const bool crosses = jump_ && takeJump(step, event);
      at_ = after(step);
      left -= step;
      if (crosses) {
        at_.mps = *jump_;
        fast_ = !fast_;
        if (step <= 0.0 && standsAtJump()) left = std::max(0.0, left - stay(left));
      }
      if (at_.mps <= 0.0) return LapEvent::Stopped;
      if (event == LapEvent::Stretch) at_.offsetM = stretch_.here.lengthM;
      if (!crosses && event != LapEvent::Done) return event;
    }
    return LapEvent::Done;
  }

 private:
  LapPlace after(double seconds) const {
    const auto slope = [&](double v) { return bike_.coastMps2(at_.stretch, v, fast_); };
    const double v0 = at_.mps, h = seconds;
    const double k1 = slope(v0), k2 = slope(v0 + h / 2 * k1), k3 = slope(v0 + h / 2 * k2),
                 k4 = slope(v0 + h * k3);
    return {at_.timeS + h, at_.stretch, at_.offsetM + h * (v0 + h / 6 * (k1 + k2 + k3)),
            v0 + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)};
  }

  /// Positive where a place is beyond the allowed speed.
  double overAllowed(const LapPlace& place) const {
    if (place.mps >= stretch_.here.limitMps) return place.mps - stretch_.here.limitMps;
    double over = (place.mps - stretch_.here.limitMps);
    if (stretch_.knots >= 2 && place.mps > stretch_.exitMps) {
      const double mps = std::min(place.mps, stretch_.entryMps), left = stretch_.here.lengthM - place.offsetM;
      const double most = bike_.allowed().brakingAtMostM(at_.stretch, mps);
      const double braked = most < left ? most : bike_.allowed().braking(at_.stretch, mps).distanceM;
      over = std::max(over, braked - left);
    }
    return over;
  }

  bool takeJump(double& step, LapEvent& event) {
    const auto beyond = [&](double s) { return after(s).mps - *jump_; };
    const double end = beyond(step);
    if (fast_ ? !(end < 0.0) : !(end > 0.0)) return false;
    step = polishedRoot(beyond, 0.0, step, at_.mps - *jump_, end);
    event = LapEvent::Done;
    return true;
  }

  /// The jump holds the speed: slower it would gain, faster it would lose.
  bool standsAtJump() const {
    return bike_.coastMps2(at_.stretch, *jump_, false) > 0.0 &&
           bike_.coastMps2(at_.stretch, *jump_, true) < 0.0;
  }
  double stay(double seconds) {
    const double most = (stretch_.here.lengthM - at_.offsetM) / at_.mps;
    const double spent = std::min(seconds, most);
    at_.timeS += spent;
    at_.offsetM += spent * at_.mps;
    return spent;
  }

  const LapBike& bike_;
  const AllowedSpeed::Stretch& stretch_;
  std::optional<double> jump_;
  LapPlace& at_;
  bool fast_;
};

}  // namespace

LapEvent LapRide::pull(std::size_t gear, bool slips, std::optional<double> leaveRpm, LapPlace& at) const {
  const auto& stretches = bike_->allowed().stretches();
  for (;;) {
    const LapEvent event = LapPull(*bike_, gear, slips, leaveRpm, at, legs_).ride();
    if (event != LapEvent::Stretch) return event;
    if (at.stretch + 1 == stretches.size()) return LapEvent::Lap;
    at = {at.timeS, at.stretch + 1, 0.0, at.mps};
    // On the allowed speed at the joint: met, whatever comes next.
    if (at.mps >= stretches[at.stretch - 1].exitMps * (1.0 - kSameAtJoint)) return LapEvent::Allowed;
    if (bound_ && at.timeS + bound_->restS(at.stretch) > mostS_) return LapEvent::Beaten;
  }
}

LapEvent LapRide::coast(std::size_t gear, LapPlace& at) const {
  const auto& stretches = bike_->allowed().stretches();
  double left = bike_->model().bike().shiftTimeS;
  for (;;) {
    const LapPlace start = at;
    const LapEvent event = Coast(*bike_, at).ride(left);
    if (legs_ && at.timeS > start.timeS)
      legs_->push_back({LapLeg::Kind::Coast, {.gear = gear}, false, start, at});
    if (event != LapEvent::Stretch) return event;
    if (at.stretch + 1 == stretches.size()) return LapEvent::Lap;
    at = {at.timeS, at.stretch + 1, 0.0, at.mps};
    if (at.mps >= stretches[at.stretch - 1].exitMps * (1.0 - kSameAtJoint)) return LapEvent::Allowed;
  }
}

bool LapRide::takesOver(std::size_t gear, const LapPlace& at) const {
  const TorqueSpline& torque = bike_->torque();
  const double rpm = bike_->rpm(at.stretch, at.mps, gear);
  if (!(rpm < torque.revLimitRpm())) return false;
  const auto& jump = bike_->forces(at.stretch).rolling().jumpMps;
  const LapPanel on{.gear = gear, .piece = torque.pieceAt(rpm), .fast = jump && at.mps >= *jump};
  return bike_->push(at.stretch, on, at.mps, BendPace(bike_->bendMps(at.stretch)).left(at.mps)).mps2 > 0.0;
}

}  // namespace layshaft
