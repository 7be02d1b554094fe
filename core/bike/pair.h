// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bike/profile.h"

namespace layshaft {

/// A sprocket of the spares box with that many teeth that runs with the setup's chain and is not worn; null
/// if there is none. A spare without a size is taken to suit.
const SpareSprocket* spareSprocket(const std::vector<SpareSprocket>& spares, int teeth, const Setup& setup);

/// A change of stock on another pair. A sprocket with other teeth is another one: it brings what is known of
/// the one on hand, and nothing of the mass of the one before.
SetupChange withPair(SetupChange change, const Setup& stock, const std::vector<SpareSprocket>& fronts,
                     const std::vector<SpareSprocket>& rears, Teeth front, Teeth rear);

/// The profile's proposal on another pair, out of its spares box.
SetupChange proposalWithPair(const Profile& profile, Teeth front, Teeth rear);

}  // namespace layshaft
