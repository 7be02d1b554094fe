// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/bike/setup.h"
#include "core/bike/track.h"

namespace layshaft {

/// Gears out of the spares box that are put in; empty: the gearbox stays as it is.
using GearsTaken = std::vector<SpareGearPair>;

inline GearTeeth teethIn(const SpareGearPair& pair) {
  return {.driving = pair.driving, .driven = pair.driven};
}

/// The change with those gears in it, and their teeth. A problem's path begins behind the setup's own: a gear
/// that the setup does not have, a ratio outside its limit, ratios that do not fall.
Result<SetupChange> withGears(SetupChange change, const Setup& stock, const GearsTaken& taken);

/// The change with stock's gearbox in place of its own, where every gear of its own is stock's or on hand:
/// what gears to put in is then asked of the same gearbox, whichever of them are proposed. Else as it is.
SetupChange onStocksGearbox(SetupChange change, const Setup& stock, const std::vector<SpareGearPair>& onHand);

}  // namespace layshaft
