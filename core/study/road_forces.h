// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <optional>

#include "core/study/pull_bike.h"
#include "core/study/road.h"

namespace layshaft {

/// What a bike weighs on the road with its rider, and where: as a setup's sprockets and chain leave it.
struct BikeLoad {
  double massKg = 0.0;
  std::optional<double> cgAheadM, wheelbaseM;  ///< none where the bike lacks them
};

/// What a road does to a bike whatever its gearing: resistance, and the accelerations at which the rear wheel
/// slides and the front one lifts, upright. SI throughout.
///
/// Resistance ½ρ·CdA·u·|u| + m·g·cos θ·c(v) + m·g·sin θ; grip and lift from the balance of the wheel loads
/// (V. Cossalter, Motorcycle Dynamics; T. D. Gillespie, Fundamentals of Vehicle Dynamics; both from memory).
class RoadForces {
 public:
  RoadForces() = default;
  /// `bike` must have resistance.
  RoadForces(const PullBike& bike, const BikeLoad& load, const Road& road);

  double dragN(double speedMps) const {
    const double air = speedMps + headwindMps_;
    return dragFactor_ * air * std::abs(air);
  }
  /// `fast`: beyond the jump of the rolling resistance.
  double resistanceN(double speedMps, bool fast) const {
    const double rolling = fast ? rolling_.fastBase + rolling_.fastPerSpeed2 * speedMps * speedMps
                                : rolling_.base + rolling_.perSpeed2 * speedMps * speedMps;
    return dragN(speedMps) + weightOnRoadN_ * rolling + slopeN_;
  }
  const RollingResistance& rolling() const { return rolling_; }
  double headwindMps() const { return headwindMps_; }

  bool hasGrip() const { return hasGrip_; }
  bool hasLift() const { return hasLift_; }
  /// The acceleration at which the rear wheel slides; only where there is grip.
  double gripMps2(double speedMps, bool fast) const {
    return gripBase_ + gripPerDrag_ * dragN(speedMps) - gripPerResistance_ * resistanceN(speedMps, fast);
  }
  /// The acceleration at which the front wheel lifts; only where there is lift.
  double liftMps2(double speedMps) const { return liftBase_ - liftPerDrag_ * dragN(speedMps); }

 private:
  void takeBounds(const PullBike& bike, const BikeLoad& load, const Road& road);

  RollingResistance rolling_;
  double headwindMps_ = 0.0;
  double dragFactor_ = 0.0;  ///< ½·ρ·CdA
  double weightOnRoadN_ = 0.0, slopeN_ = 0.0;
  bool hasGrip_ = false, hasLift_ = false;
  double gripBase_ = 0.0, gripPerDrag_ = 0.0, gripPerResistance_ = 0.0;
  double liftBase_ = 0.0, liftPerDrag_ = 0.0;
};

}  // namespace layshaft
