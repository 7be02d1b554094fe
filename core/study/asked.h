// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/profile.h"
#include "core/study/gearing.h"
#include "core/study/pull.h"
#include "core/study/run.h"

/// What a profile asks of the studies, in their own terms: the plan and the ladder ask alike.
namespace layshaft {

/// Typed shift points for every gear, else the best ones where `model` can tell them, else none: then the rev
/// limit counts.
ShiftPoints shiftPointsOf(const Engine& engine, const std::optional<PullModel>& model, std::size_t gears);

GearingConditions gearingConditionsOf(const Profile& profile, const ShiftPoints& shifts);

/// The profile's straight; none unless both its exit speed and its length are given.
std::optional<DriveRequest> driveOf(const Profile& profile);

/// The profile's roll-on; 80 to 120 km/h in the last gear where it leaves them open.
RollOnRequest rollOnOf(const Profile& profile);

}  // namespace layshaft
