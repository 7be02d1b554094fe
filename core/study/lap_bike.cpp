// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_bike.h"

#include <algorithm>
#include <cmath>

#include "core/roots.h"
#include "core/units.h"

namespace layshaft {
namespace {

/// The highest speed up to `to` at which a gear does not accelerate; none if it always does.
std::optional<double> lastStallMps(const PullModel& model, std::size_t gear, double from, double to) {
  const auto stretches = model.stretches(gear, from, to);
  double above = to, aboveValue = 1.0;
  for (auto on = stretches.rbegin(); on != stretches.rend(); ++on) {
    const auto a = [&](double v) { return model.accelerationOn(*on, v, gear); };
    const MonotonePieces pieces = monotonePieces(a, on->fromMps, on->toMps);
    for (std::size_t p = pieces.count; p-- > 0;) {
      const double v = pieces.at[p], value = pieces.value[p];
      if (value <= 0.0) return p + 1 == pieces.count ? v : polishedRoot(a, v, above, value, aboveValue);
      above = v;
      aboveValue = value;
    }
  }
  return std::nullopt;
}

}  // namespace

LapBike::LapBike(const RoadModel& model, double crownShare, const AllowedSpeed& allowed)
    : model_(&model),
      torque_(&model.torque()),
      allowed_(&allowed),
      crownShare_(crownShare),
      growthPerMps2_(model.rollout().growthPerMps2),
      loadKg_(model.massKg()),
      launchRpm_(model.launchRpm()),
      launchNm_(model.torque().at(model.launchRpm())),
      lowestRpm_(std::max(model.bike().idleRpm, model.torque().firstRpm())) {
  const PullBike& bike = model.bike();
  const double front = bike.frontRolloutM ? *bike.frontRolloutM / (2.0 * units::kPi) : model.rollingRadiusM();
  massKg_ = loadKg_ + bike.frontWheelInertiaKgM2 / (front * front);
  turningKg_ = model.coastingMassKg() - massKg_;
  takeGears();
  const LapCourse& course = allowed.course();
  forces_.reserve(course.roads.size());
  for (const Road& road : course.roads) forces_.emplace_back(bike, model.load(), road);
  ways_.reserve(allowed.stretches().size());
  for (const auto& stretch : allowed.stretches()) {
    const LapStretch& here = stretch.here;
    const Road& road = course.roads[here.road];
    const bool grips = forces_[here.road].hasGrip();
    ways_.push_back(
        {.road = here.road,
         .leanPerMps2 = here.curvaturePerM / (units::kStandardGravityMps2 * std::cos(road.slopeRad)),
         .wheelPerRoad = 1.0 / (1.0 - road.slip),
         .bendMps = grips ? here.bendMps : std::numeric_limits<double>::infinity()});
  }
}

void LapBike::takeGears() {
  for (std::size_t g = 0; g < gearCount(); ++g) {
    Gear& gear = gears_[g];
    gear = {.rpmPerMps = 60.0 * model_->overallRatio(g) / model_->rollout().metres,
            .newtonsPerNm = model_->newtonsPerNm(g),
            .engineKg = model_->equivalentMassKg(g) - model_->coastingMassKg(),
            .shiftRpm = model_->highestRpm(g),
            .runsOutFromMps = -1.0,
            .bestRpm = model_->highestRpm(g)};
    if (!model_->shifts().typed || g + 1 >= gearCount()) continue;
    const auto stall = lastStallMps(*model_, g, 0.0, model_->speedMps(gear.shiftRpm, g));
    if (!stall) continue;
    gear.runsOutFromMps = *stall;
    gear.bestRpm = std::min(model_->rpm(bestShiftMps(*model_, g), g), torque_->revLimitRpm());
  }
}

double LapBike::speedMps(std::size_t stretch, double rpm, std::size_t gear, double nearMps) const {
  const Way& way = ways_[stretch];
  const double walking = rpm / (gears_[gear].rpmPerMps * way.wheelPerRoad);
  if (way.leanPerMps2 == 0.0) {
    const double k = growthPerMps2_;
    if (k == 0.0) return walking;
    return 2.0 * walking / (1.0 + std::sqrt(std::max(0.0, 1.0 - 4.0 * k * walking * walking)));
  }
  // ln of v/(growth·share) against ln of what it must be: nearly straight, so Newton is there in a few steps.
  double v = nearMps > 0.0 ? nearMps : walking;
  for (int step = 0; step < 30; ++step) {
    const double tan = way.leanPerMps2 * v * v, cos = 1.0 / std::sqrt(1.0 + tan * tan);
    const double share = 1.0 - crownShare_ * (1.0 - cos), grown = 1.0 + growthPerMps2_ * v * v;
    const double ratio = v / (grown * share) / walking;
    const double slope =
        1.0 - 2.0 * growthPerMps2_ * v * v / grown + 2.0 * crownShare_ * tan * tan * cos * cos * cos / share;
    const double next = v * std::exp(-std::log(ratio) / std::max(slope, 0.1));
    const bool there = std::abs(next - v) <= 4e-16 * v;
    v = next;
    if (there || std::abs(ratio - 1.0) < 1e-9) break;
  }
  return v;
}

double LapBike::greatestMps2(std::size_t stretch, double mps) const {
  const Way& way = ways_[stretch];
  const RoadForces& forces = forces_[way.road];
  const bool fast = forces.rolling().jumpMps && mps > *forces.rolling().jumpMps;
  const double rolled = rolledShare(stretch, mps), perKg = 1.0 / (rolled * rolled);
  const double turns = 1.0 / ((1.0 + growthPerMps2_ * mps * mps) * rolled);
  const double wheel = way.wheelPerRoad * mps * turns, resistance = forces.resistanceN(mps, fast);
  // Coasting downhill is one way; and at the limiter the speed stays.
  double most = -resistance / (massKg_ + turningKg_ * perKg);
  if (resistance > 0.0)
    most = gears_[gearCount() - 1].rpmPerMps * wheel < torque_->revLimitRpm()
               ? -std::numeric_limits<double>::infinity()
               : 0.0;
  const auto take = [&](const Gear& gear, double torque, double engineKg) {
    most = std::max(most, (torque * gear.newtonsPerNm * turns - resistance) /
                              (massKg_ + (turningKg_ + engineKg) * perKg));
  };
  for (std::size_t g = 0; g < gearCount(); ++g) {
    const Gear& gear = gears_[g];
    const double rpmNow = gear.rpmPerMps * wheel;
    take(gear, torque_->at(rpmNow), gear.engineKg);
    if (g == 0 && rpmNow < launchRpm_) take(gear, launchNm_, 0.0);
  }
  const double ratio = mps / way.bendMps, square = ratio * ratio;
  const double left = std::sqrt(std::max(0.0, 1.0 - square * square));
  if (forces.hasGrip()) most = std::min(most, gripMps2(forces, mps, fast, resistance, left));
  if (forces.hasLift()) most = std::min(most, forces.liftMps2(mps));
  return most;
}

double LapBike::coastMps2(std::size_t stretch, double mps, bool fast) const {
  const double rolled = rolledShare(stretch, mps);
  return -forces(stretch).resistanceN(mps, fast) / (massKg_ + turningKg_ / (rolled * rolled));
}

bool LapBike::holds(std::size_t stretch, double mps) const {
  const RoadForces& forces = this->forces(stretch);
  const double resistance = forces.resistanceN(mps, allowed_->road(stretch).isFast(mps));
  const double turns = turnsPerMetre(stretch, mps);
  for (std::size_t g = 0; g < gearCount(); ++g) {
    const double rpmNow = rpm(stretch, mps, g);
    if (rpmNow > torque_->revLimitRpm()) continue;
    const double torque =
        g == 0 && rpmNow < launchRpm_ ? std::max(launchNm_, torque_->at(rpmNow)) : torque_->at(rpmNow);
    if (torque * gears_[g].newtonsPerNm * turns >= resistance) return true;
  }
  return false;
}

}  // namespace layshaft
