// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/setup.h"
#include "core/parts/chain_geometry.h"

namespace layshaft {

/// The chain or belt of a setup on its sprockets; none where pitch or length is missing.
struct DriveLoop {
  ChainPair pair;
  int links;  ///< of a belt: its teeth
};
std::optional<DriveLoop> driveLoop(const Setup& setup);

/// How far the axle moves when stock's pair and chain give way to the setup's, m, positive to the rear. None
/// where a chain or its length is missing or does not reach round.
std::optional<double> axleShiftM(const Setup& stock, const Setup& setup);

}  // namespace layshaft
