// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "core/limits.h"
#include "core/study/fitted.h"
#include "core/study/pull_bike.h"
#include "core/study/road.h"
#include "core/study/road_forces.h"
#include "core/study/rollout.h"

namespace layshaft {

/// What stops the speed from rising.
enum class LimitedBy { Drag, RevLimit, Grip, Lift };

/// Force and acceleration of a setup on a road at every speed in every gear, full throttle, upright. SI
/// throughout; gears count from 0. Where it shifts and how it starts is `RoadModel`'s.
///
/// F = η·T·i/R less the resistance ½ρ·CdA·u·|u| + m·g·cos θ·c(v) + m·g·sin θ, over the equivalent mass
/// m + If/Rf² + Ir/R² + Ie·i²/R², and not above what grip and front lift allow (V. Cossalter, Motorcycle
/// Dynamics; T. D. Gillespie, Fundamentals of Vehicle Dynamics; both from memory). Lighter or heavier
/// sprockets than stock's count in m and Ir. On a road where the wheel slips by a share s the engine turns
/// 1/(1 − s) as fast at a road speed; force and equivalent mass at an engine speed stay.
class PullModel {
 public:
  /// A stretch of road speed on which the torque is one cubic and the resistance one form.
  struct Stretch {
    double fromMps, toMps;
    std::size_t piece;  ///< of the torque curve
    bool fast;          ///< beyond the jump of the rolling resistance
  };

  /// `bike` must have force. `fitted` is what the setup's own sprockets and chain change about it.
  PullModel(std::shared_ptr<const PullBike> bike, const Road& road, const Setup& setup,
            const Rollout& rollout, const Fitted& fitted);

  std::size_t gearCount() const { return gearCount_; }
  const PullBike& bike() const { return *bike_; }
  const Road& road() const { return road_; }
  const TorqueSpline& torque() const { return *bike_->torque; }
  /// Bike, rider and what the setup's sprockets weigh more than stock's.
  double massKg() const { return load_.massKg; }
  double rollingRadiusM() const { return rollout_.radiusM(); }
  bool tyreGrows() const { return rollout_.growthPerMps2 != 0.0; }
  // Road speed and engine speed with the wheel slip of the road: without it they are `Gearing`'s.
  double speedMps(double rpm, std::size_t gear) const {
    return rollout_.speedMps(rpm * gripShare_, gears_[gear].overall);
  }
  double rpm(double speedMps, std::size_t gear) const {
    const Gear& g = gears_[gear];
    return g.rpmAtRest + g.rpmPerMps * speedMps / growth(speedMps);
  }
  double limitMps(std::size_t gear) const { return gears_[gear].limitMps; }
  double equivalentMassKg(std::size_t gear) const { return gears_[gear].massKg; }
  double coastingMassKg() const { return coastingMassKg_; }

  /// At the wheel, unbounded, N.
  double forceN(double speedMps, std::size_t gear) const {
    const double rpmNow = rpm(speedMps, gear);
    return forceOn(gear, speedMps,
                   rpmNow > bike_->torque->revLimitRpm()
                       ? 0.0
                       : bike_->torque->onPiece(bike_->torque->pieceAt(rpmNow), rpmNow));
  }
  /// The same at an engine speed, the rev limit included.
  double forceAtRpmN(double rpmNow, std::size_t gear) const {
    return forceOn(gear, speedMps(rpmNow, gear), bike_->torque->at(rpmNow));
  }
  double forceOfTorqueN(double torqueNm, double speedMps, std::size_t gear) const {
    return forceOn(gear, speedMps, torqueNm);
  }
  /// How the unbounded force changes with speed on a piece of the torque curve, N per m/s.
  double forceSlopeOn(std::size_t piece, double speedMps, std::size_t gear) const;
  /// The same force of 1 N·m at the crankshaft on a tyre that has not grown, N.
  double newtonsPerNm(std::size_t gear) const { return gears_[gear].newtonsPerNm; }
  /// Engine turns per turn of the wheel.
  double overallRatio(std::size_t gear) const { return gears_[gear].overall; }
  const Rollout& rollout() const { return rollout_; }
  const BikeLoad& load() const { return load_; }
  double dragN(double speedMps) const { return forces_.dragN(speedMps); }
  /// N; needs resistance data, as all that follows.
  double resistanceN(double speedMps) const { return resistanceOn(speedMps, road_.isFast(speedMps)); }
  double freeAccelerationMps2(double speedMps, std::size_t gear) const {
    return (forceN(speedMps, gear) - resistanceN(speedMps)) / gears_[gear].massKg;
  }
  /// The smaller of the bounds; none where there is no bound.
  std::optional<double> boundMps2(double speedMps) const;
  double accelerationMps2(double speedMps, std::size_t gear) const;

  // The same on a known stretch, for the studies that integrate.
  double freeOn(const Stretch& on, double speedMps, std::size_t gear) const {
    return (forceOn(gear, speedMps, bike_->torque->onPiece(on.piece, rpm(speedMps, gear))) -
            resistanceOn(speedMps, on.fast)) /
           gears_[gear].massKg;
  }
  double gripOn(const Stretch& on, double speedMps) const { return forces_.gripMps2(speedMps, on.fast); }
  double liftMps2(double speedMps) const { return forces_.liftMps2(speedMps); }
  double accelerationOn(const Stretch& on, double speedMps, std::size_t gear) const {
    double a = freeOn(on, speedMps, gear);
    if (forces_.hasGrip()) a = std::min(a, gripOn(on, speedMps));
    if (forces_.hasLift()) a = std::min(a, liftMps2(speedMps));
    return a;
  }
  LimitedBy limitOn(const Stretch& on, double speedMps, std::size_t gear) const;
  /// At the bound: the force at the contact patch that grip or lift allows, N; none without a bound.
  std::optional<double> greatestContactForceN(double speedMps) const;
  std::optional<double> gripLimitN(double speedMps) const;
  std::optional<double> liftLimitN(double speedMps) const;

  /// Cuts a range of speeds in a gear where torque, resistance or the active bound change form. Rising,
  /// without gaps; empty if `toMps` is not above `fromMps`.
  std::vector<Stretch> stretches(std::size_t gear, double fromMps, double toMps) const;

  /// The same bike and gearing on another road, on a tyre that does not grow with speed.
  PullModel withoutGrowthOn(const Road& road) const;

  /// Coasting with the clutch drawn for a time: speed and distance at its end. Never backwards.
  struct Coasted {
    double speedMps, distanceM;
  };
  Coasted coast(double fromMps, double seconds) const;

 protected:
  /// Gears that a start from rest may slip the clutch in: first, and second where there is one.
  std::size_t slippingGears() const { return std::min<std::size_t>(gearCount_, kMostSlippingGears); }
  /// The pseudo gear behind the last for one of them: the clutch slips and the engine is held at its speed.
  void addSlippingClutch(std::size_t gear, double rpm);
  double rpmAtRest(std::size_t gear) const { return gears_[gear].rpmAtRest; }
  /// Puts the same bike on another road.
  void takeRoad(const Road& road);

 private:
  struct Gear {
    double overall;
    double rpmAtRest;     ///< the slipping clutch's; 0 in a gear
    double rpmPerMps;     ///< on the road, at walking pace; 0 with the clutch slipping
    double newtonsPerNm;  ///< in the road's air
    double massKg;
    double limitMps;
  };

  static constexpr std::size_t kMostSlippingGears = 2;

  /// Which of two accelerations stays the smaller one over a stretch; true too where there is no bound.
  struct TakeOverSigns {
    bool freeToGrip = true, freeToLift = true, gripToLift = true;
  };
  TakeOverSigns takeOverSigns(const Stretch& on, std::size_t gear) const;

  double growth(double v) const { return 1.0 + rollout_.growthPerMps2 * v * v; }
  double forceOn(std::size_t gear, double v, double torqueNm) const {
    return torqueNm * gears_[gear].newtonsPerNm / growth(v);
  }
  double resistanceOn(double v, bool fast) const { return forces_.resistanceN(v, fast); }

  std::shared_ptr<const PullBike> bike_;
  Road road_;
  Rollout rollout_;
  std::size_t gearCount_ = 0;
  std::array<Gear, limits::kMostGears + kMostSlippingGears> gears_{};  ///< the slipping ones behind the last
  BikeLoad load_;  ///< with the setup's sprockets and chain
  double coastingMassKg_;
  double gripShare_ = 1.0;  ///< road speed over the wheel's
  RoadForces forces_;
};

}  // namespace layshaft
