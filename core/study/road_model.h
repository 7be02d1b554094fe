// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>

#include "core/study/pull.h"
#include "core/study/shifting.h"

namespace layshaft {

/// A setup as it is ridden on a road, complete once it is made: its pull, where it shifts and how it starts.
/// Every study of the road takes this one value.
class RoadModel : public PullModel {
 public:
  /// `bike` must have force. Shift points are the bike's typed one, else the best ones where they can be
  /// told, else none.
  RoadModel(std::shared_ptr<const PullBike> bike, const Road& road, const Setup& setup,
            const Rollout& rollout, const Fitted& fitted);

  /// The same on another stretch of road: shift points and launch stay, as a rider's do.
  RoadModel onRoad(const Road& road) const;

  const ShiftPoints& shifts() const { return shifts_; }
  /// The engine speed up to which a gear is used: its shift point, the rev limit in the last one.
  double highestRpm(std::size_t gear) const {
    return gear < shifts_.rpm.size() ? shifts_.rpm[gear] : torque().revLimitRpm();
  }
  /// Gears that a start from rest may begin in, with the clutch slipping: first, and second if there is one.
  std::size_t startGears() const { return slippingGears(); }
  /// The pseudo gear for one of them while the clutch slips at the launch engine speed.
  std::size_t slipping(std::size_t gear = 0) const { return gearCount() + gear; }
  /// As typed, else the lowest of the torque peak's, 60 % of the limit and first gear's shift point; never
  /// above the shift point of the gear.
  double launchRpm(std::size_t gear = 0) const { return rpmAtRest(slipping(gear)); }
  /// The gear behind a pseudo gear; any other is itself.
  std::size_t geared(std::size_t gear) const { return gear < gearCount() ? gear : gear - gearCount(); }
  /// The fastest that a gear turns: at the limit, of a slipping clutch where the road speed has caught up.
  double fastestMps(std::size_t gear) const {
    return gear < gearCount() ? limitMps(gear) : speedMps(rpmAtRest(gear), geared(gear));
  }

 private:
  ShiftPoints shifts_;
};

}  // namespace layshaft
