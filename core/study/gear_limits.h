// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/study/road_model.h"
#include "core/study/top_speed.h"

namespace layshaft {

/// Where the tyre or the front wheel, not the engine, says how hard a gear may pull: there a shorter gearing
/// brings nothing.
struct GearLimit {
  LimitedBy by;           ///< grip or lift; where both cut, the lower one at the gear's peak force
  bool fromStart, toEnd;  ///< whether it cuts where the use of the gear begins, and where it ends
  bool gaps;              ///< whether the gear pulls freely somewhere in between
  bool both;              ///< whether the other one cuts somewhere too
  double fromMps, toMps;  ///< the lowest and the highest speed at which it cuts
  /// The greatest force that is left where the gear is used, at the wheel and, without what spins up wheels
  /// and engine, at the contact patch.
  double usableN, contactN;
  bool operator==(const GearLimit&) const = default;
};

/// Of every gear, where it is used: from the speed at which the shift into it ends, in first from where the
/// slipping clutch has caught up, to its shift point or the rev limit. `pull` is what `peakPull` gives for
/// the model; none where nothing cuts. Needs resistance data, without them or without bounds there is no
/// limit.
std::vector<std::optional<GearLimit>> gearLimits(const RoadModel& model, const std::vector<GearPull>& pull);

/// What pulls and limits of a setup are.
struct SetupPull {
  const std::vector<GearPull>& pull;
  const std::vector<std::optional<GearLimit>>& limits;
};

/// The greatest force in a gear, counted from 0, of two setups that a rider can compare: as far as tyre and
/// front wheel let it through, at the contact patch where both are limited. Both must have pull.
struct ComparedPull {
  double fromN, toN;
};
ComparedPull comparedPull(const SetupPull& from, std::size_t fromGear, const SetupPull& to,
                          std::size_t toGear);

}  // namespace layshaft
