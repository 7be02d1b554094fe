// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include "core/study/lap_bike.h"

namespace layshaft {

/// What no gear choice of a pull can beat: a bike that is always in the gear that accelerates hardest and
/// shifts in no time. A choice that has lost more against it than another one loses in all is given up.
class LapBound {
 public:
  /// Of a pull that begins at a joint at a speed.
  LapBound(const LapBike& bike, std::size_t joint, double mps);

  /// Seconds from the beginning of the pull to a joint behind it, at least.
  double secondsTo(std::size_t joint);
  /// A choice was at a joint after so many seconds, and on the allowed speed.
  void finished(std::size_t joint, double seconds);
  /// Whether one that is at a joint after so many seconds is later than another will be.
  bool isBeaten(std::size_t joint, double seconds) {
    return leastLossS_ < kNever && seconds - secondsTo(joint) > leastLossS_ + kSlackS;
  }
  /// Whether one that gets no faster than a speed is later at the end of its stretch than another, which is
  /// on the allowed speed there.
  bool isBeatenBelow(double mps, std::size_t stretch, double offsetM, double seconds) const;

 private:
  static constexpr double kNever = std::numeric_limits<double>::infinity();
  static constexpr double kSlackS = 1e-3;  // far more than the steps of this bound are off

  /// Over fewer stretches the bound costs more than it saves.
  static constexpr std::size_t kWorthStretches = 4;

  void rideOn();

  const LapBike* bike_;
  std::size_t joint_;
  double mps_;
  std::vector<double> seconds_;  ///< to each joint from the first one on
  double leastLossS_ = kNever;
  struct {
    std::size_t joint;
    double seconds;
  } soonest_{0, kNever};  ///< to the nearest joint at which a choice was on the allowed speed
};

}  // namespace layshaft
