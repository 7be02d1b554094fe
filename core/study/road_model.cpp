// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/road_model.h"

#include <algorithm>

namespace layshaft {
namespace {

double launchRpmOf(const PullBike& bike, const ShiftPoints& shifts) {
  if (bike.launchRpm) return *bike.launchRpm;
  double rpm = std::min(bike.torque->peak().rpm, defaults::kLaunchShareOfLimit * bike.torque->revLimitRpm());
  if (!shifts.rpm.empty()) rpm = std::min(rpm, shifts.rpm.front());
  return rpm;
}

}  // namespace

RoadModel::RoadModel(std::shared_ptr<const PullBike> shared, const Road& road, const Setup& setup,
                     const Rollout& rollout, const Fitted& fitted)
    : PullModel(std::move(shared), road, setup, rollout, fitted),
      shifts_(shiftPoints(bike().shiftRpm, gearCount(), this)) {
  addSlippingClutch(launchRpmOf(bike(), shifts_));
}

RoadModel RoadModel::onRoad(const Road& road) const {
  RoadModel there(*this);
  there.takeRoad(road);
  return there;
}

}  // namespace layshaft
