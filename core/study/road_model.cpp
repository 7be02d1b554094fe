// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/road_model.h"

#include <algorithm>

namespace layshaft {
namespace {

double usualLaunchRpm(const RoadModel& model) {
  const TorqueSpline& torque = model.torque();
  return std::min(
      {torque.peak().rpm, defaults::kLaunchShareOfLimit * torque.revLimitRpm(), model.highestRpm(0)});
}

}  // namespace

RoadModel::RoadModel(std::shared_ptr<const PullBike> shared, const Road& road, const Setup& setup,
                     const Rollout& rollout, const Fitted& fitted)
    : PullModel(std::move(shared), road, setup, rollout, fitted),
      shifts_(shiftPoints(bike().shiftRpm, gearCount(), this)) {
  const double rpm = bike().launchRpm.value_or(usualLaunchRpm(*this));
  for (std::size_t g = 0; g < startGears(); ++g) addSlippingClutch(g, std::min(rpm, highestRpm(g)));
}

RoadModel RoadModel::onRoad(const Road& road) const {
  RoadModel there(*this);
  there.takeRoad(road);
  return there;
}

}  // namespace layshaft
