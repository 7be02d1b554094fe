// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>

#include "core/input.h"
#include "core/study/gearing.h"
#include "core/study/pull.h"
#include "core/study/run.h"

namespace layshaft {

/// What bike, ride and rider ask of the studies whatever the setup, in their own terms.
struct Asked {
  std::shared_ptr<const PullBike> bike;
  Road road;
  std::optional<DriveRequest> drive;  ///< none unless both its exit speed and its length are given
  RollOnRequest rollOn;               ///< the usual speeds in the last gear where they are left open
  std::optional<double> leanDeg;
};

Asked asked(const Circumstances& given);

GearingConditions gearingConditions(const Circumstances& given, const ShiftPoints& shifts);

}  // namespace layshaft
