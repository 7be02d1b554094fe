// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/road_forces.h"

#include "core/units.h"

namespace layshaft {

RoadForces::RoadForces(const PullBike& bike, const BikeLoad& load, const Road& road)
    : rolling_(road.rolling), headwindMps_(road.headwindMps) {
  dragFactor_ = 0.5 * road.airDensityKgM3 * *bike.dragAreaM2;
  weightOnRoadN_ = load.massKg * units::kStandardGravityMps2 * std::cos(road.slopeRad);
  slopeN_ = load.massKg * units::kStandardGravityMps2 * std::sin(road.slopeRad);
  takeBounds(bike, load, road);
}

void RoadForces::takeBounds(const PullBike& bike, const BikeLoad& load, const Road& road) {
  if (!bike.cgHeightM || !load.cgAheadM) return;
  const double m = load.massKg, h = *bike.cgHeightM, dragHeight = *bike.dragHeightM, b = *load.cgAheadM;
  hasLift_ = true;
  liftBase_ = weightOnRoadN_ * b / (m * h) - units::kStandardGravityMps2 * std::sin(road.slopeRad);
  liftPerDrag_ = dragHeight / (m * h);
  if (!load.wheelbaseM || !road.grip) return;
  const double mu = *road.grip, l = *load.wheelbaseM;
  if (mu * h >= l) return;  // the front lifts long before the rear slides
  hasGrip_ = true;
  const double perAcceleration = m * (1.0 - mu * h / l);
  gripBase_ = mu * (weightOnRoadN_ * (l - b) + slopeN_ * h) / l / perAcceleration;
  gripPerDrag_ = mu * dragHeight / l / perAcceleration;
  gripPerResistance_ = 1.0 / perAcceleration;
}

}  // namespace layshaft
