// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_bound.h"

#include <algorithm>
#include <cmath>

namespace layshaft {

LapBound::LapBound(const LapBike& bike, std::size_t joint, double mps)
    : bike_(&bike), joint_(joint), mps_(mps), seconds_{0.0} {}

/// Through one stretch more, in steps that take the greater acceleration of their two ends.
void LapBound::rideOn() {
  constexpr double kStepS = 0.06, kLeastStepM = 1.0;
  const std::size_t index = joint_ + seconds_.size() - 1;
  const auto& stretch = bike_->allowed().stretches()[index];
  const double most = stretch.here.limitMps;
  double mps = mps_, seconds = 0.0, now = bike_->greatestMps2(index, mps);
  for (double left = stretch.here.lengthM; left > 0.0;) {
    const double step = std::min(left, std::max(kLeastStepM, kStepS * mps));
    const auto after = [&](double mps2) {
      return std::min(std::sqrt(std::max(0.0, mps * mps + 2.0 * step * mps2)), most);
    };
    const double then = bike_->greatestMps2(index, after(now)), end = after(std::max(now, then));
    seconds += mps + end > 0.0 ? 2.0 * step / (mps + end) : kNever;
    mps = end;
    now = then;
    left -= step;
  }
  mps_ = std::min(mps, stretch.exitMps);
  seconds_.push_back(seconds_.back() + std::max(seconds, stretch.seconds));
}

double LapBound::secondsTo(std::size_t joint) {
  while (joint_ + seconds_.size() <= joint) rideOn();
  return seconds_[joint - joint_];
}

void LapBound::finished(std::size_t joint, double seconds) {
  if (soonest_.seconds == kNever || joint < soonest_.joint ||
      (joint == soonest_.joint && seconds < soonest_.seconds))
    soonest_ = {joint, seconds};
  if (joint - joint_ < kWorthStretches) return;
  leastLossS_ = std::min(leastLossS_, seconds - secondsTo(joint));
}

bool LapBound::isBeatenBelow(double mps, std::size_t stretch, double offsetM, double seconds) const {
  if (stretch + 1 != soonest_.joint) return false;
  constexpr double kAlikeS = 1e-5;
  const double left = bike_->allowed().stretches()[stretch].here.lengthM - offsetM;
  return seconds + left / mps > soonest_.seconds + kAlikeS;
}

}  // namespace layshaft
