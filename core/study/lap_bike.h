// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "core/limits.h"
#include "core/study/allowed_speed.h"
#include "core/study/road_model.h"

namespace layshaft {

/// How a setup pulls at a moment: what stays the same until the next kink of a force.
struct LapPanel {
  std::size_t gear = 0;
  std::size_t piece = 0;  ///< of the torque curve
  bool slips = false;     ///< the clutch, at the launch engine speed
  bool pulls = true;      ///< else the engine turns above the limiter
  bool fast = false;      ///< beyond the jump of the rolling resistance
};

/// An acceleration and what it is limited by, m/s².
struct LapPush {
  double mps2;
  LimitedBy by;
  double free, grip, lift;  ///< of which it is the least; infinite where there is no bound
  bool gripFades;           ///< grip goes to zero with what a bend leaves of it
  bool fades() const { return by == LimitedBy::Grip && gripFades; }
  double of(LimitedBy limit) const {
    return limit == LimitedBy::Grip ? grip : limit == LimitedBy::Lift ? lift : free;
  }
};

/// A setup as it laps a track: force and acceleration on every stretch, leaned over in its bend.
///
/// In a bend tan φ = v²κ/(g·cos θ), and the wheel rolls on R − rc·(1 − cos φ): engine speed, force and
/// equivalent mass follow. Grip leaves along the road what the bend does not take, √(1 − (v/v_bend)⁴), so
/// that holding the bend's own speed needs nothing.
class LapBike {
 public:
  /// `model` must accelerate and, with `allowed`, outlive this. `crownShare` is of the setup's tyre.
  LapBike(const RoadModel& model, double crownShare, const AllowedSpeed& allowed);

  const RoadModel& model() const { return *model_; }
  const TorqueSpline& torque() const { return *torque_; }
  const AllowedSpeed& allowed() const { return *allowed_; }
  std::size_t gearCount() const { return model_->gearCount(); }
  const RoadForces& forces(std::size_t stretch) const { return forces_[ways_[stretch].road]; }
  /// Infinite where no grip is taken by the bend.
  double bendMps(std::size_t stretch) const { return ways_[stretch].bendMps; }

  double rpm(std::size_t stretch, double mps, std::size_t gear) const {
    return gears_[gear].rpmPerMps * ways_[stretch].wheelPerRoad * mps * turnsPerMetre(stretch, mps);
  }
  /// The road speed at an engine speed; `nearMps` is a first guess.
  double speedMps(std::size_t stretch, double rpm, std::size_t gear, double nearMps) const;

  LapPush push(std::size_t stretch, const LapPanel& on, double mps, double left) const;
  /// At least the greatest acceleration in any gear, with the slipping clutch or none, m/s².
  double greatestMps2(std::size_t stretch, double mps) const;
  /// Coasting with the clutch drawn, m/s².
  double coastMps2(std::size_t stretch, double mps, bool fast) const;
  /// Whether some gear, or the slipping clutch, has the force to hold a speed.
  bool holds(std::size_t stretch, double mps) const;

  /// The engine speed at which a gear is left that was entered at a speed: its shift point; where the pull on
  /// the ride's road runs out below a typed one, the best one.
  double leavingRpm(std::size_t gear, double enteredMps) const {
    const Gear& g = gears_[gear];
    return enteredMps <= g.runsOutFromMps ? g.bestRpm : g.shiftRpm;
  }
  double highestRpm(std::size_t gear) const { return model_->highestRpm(gear); }
  double launchRpm() const { return launchRpm_; }
  double lowestRpm() const { return lowestRpm_; }

 private:
  struct Gear {
    double rpmPerMps;  ///< upright, at walking pace, of a wheel that does not slip
    double newtonsPerNm;
    double engineKg;  ///< what the engine adds to the equivalent mass
    double shiftRpm;
    double runsOutFromMps, bestRpm;
  };
  /// A stretch to this bike.
  struct Way {
    std::size_t road;
    double leanPerMps2;   ///< tan φ over v²
    double wheelPerRoad;  ///< speed of the wheel over the road's
    double bendMps;
  };

  double rolledShare(std::size_t stretch, double mps) const {
    const double perMps2 = ways_[stretch].leanPerMps2;
    if (perMps2 == 0.0) return 1.0;
    const double tan = perMps2 * mps * mps;
    return 1.0 - crownShare_ * (1.0 - 1.0 / std::sqrt(1.0 + tan * tan));
  }
  double turnsPerMetre(std::size_t stretch, double mps) const {
    return 1.0 / ((1.0 + growthPerMps2_ * mps * mps) * rolledShare(stretch, mps));
  }
  /// The grip bound in a bend that leaves a share of it along the road.
  double gripMps2(const RoadForces& forces, double mps, bool fast, double resistanceN, double left) const {
    const double upright = forces.gripMps2(mps, fast);
    if (!(upright > 0.0)) return upright;
    if (resistanceN >= 0.0) return left * upright;
    return (left * (loadKg_ * upright + resistanceN) - resistanceN) / loadKg_;
  }
  void takeGears();

  const RoadModel* model_;
  const TorqueSpline* torque_;
  const AllowedSpeed* allowed_;
  double crownShare_;
  double growthPerMps2_;
  double massKg_;     ///< that does not change with lean: bike, rider and front wheel
  double turningKg_;  ///< of the rear wheel, upright
  double loadKg_;
  double launchRpm_, launchNm_, lowestRpm_;
  std::array<Gear, limits::kMostGears> gears_{};
  std::vector<RoadForces> forces_;
  std::vector<Way> ways_;
};

inline LapPush LapBike::push(std::size_t stretch, const LapPanel& on, double mps, double left) const {
  const Way& way = ways_[stretch];
  const Gear& gear = gears_[on.gear];
  const RoadForces& forces = forces_[way.road];
  const double rolled = rolledShare(stretch, mps);
  const double turns = 1.0 / ((1.0 + growthPerMps2_ * mps * mps) * rolled);
  double torque = 0.0;
  if (on.slips)
    torque = launchNm_;
  else if (on.pulls)
    torque = torque_->onPiece(on.piece, gear.rpmPerMps * way.wheelPerRoad * mps * turns);
  const double turning = turningKg_ + (on.slips ? 0.0 : gear.engineKg);
  const double resistance = forces.resistanceN(mps, on.fast);
  constexpr double kNone = std::numeric_limits<double>::infinity();
  LapPush push{
      .mps2 = 0.0, .by = LimitedBy::Drag, .free = 0.0, .grip = kNone, .lift = kNone, .gripFades = false};
  push.mps2 = push.free =
      (torque * gear.newtonsPerNm * turns - resistance) / (massKg_ + turning / (rolled * rolled));
  if (forces.hasGrip()) {
    push.grip = gripMps2(forces, mps, on.fast, resistance, left);
    push.gripFades = resistance >= 0.0 && push.grip > 0.0;
    if (push.grip < push.mps2) {
      push.mps2 = push.grip;
      push.by = LimitedBy::Grip;
    }
  }
  if (forces.hasLift()) {
    push.lift = forces.liftMps2(mps);
    if (push.lift < push.mps2) {
      push.mps2 = push.lift;
      push.by = LimitedBy::Lift;
    }
  }
  return push;
}

}  // namespace layshaft
