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
  /// The pseudo gear for first gear with the clutch slipping at the launch engine speed.
  std::size_t slipping() const { return gearCount(); }
  /// As typed, else the lowest of the torque peak's, 60 % of the limit and first gear's shift point.
  double launchRpm() const { return rpmAtRest(slipping()); }

 private:
  ShiftPoints shifts_;
};

}  // namespace layshaft
