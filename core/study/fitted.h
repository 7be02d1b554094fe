// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/setup.h"
#include "core/parts/chain_geometry.h"
#include "core/parts/sprocket_body.h"

namespace layshaft {

/// The chain or belt of a setup on its sprockets; none where pitch or length is missing.
struct DriveLoop {
  ChainPair pair;  ///< a worn chain's pitch is longer
  int links;       ///< of a belt: its teeth
};
std::optional<DriveLoop> driveLoop(const Setup& setup);

bool isBelt(const Setup& setup);

/// How far the axle moves when stock's pair and chain give way to the setup's, m, positive to the rear. None
/// where a chain or its length is missing or does not reach round.
std::optional<double> axleShiftM(const Setup& stock, const Setup& setup);

/// The chain size that a sprocket is cut for: what its details name; else stock's if it has stock's teeth and
/// so is stock's; else that of the chain, which it is bought to suit. None on belts and where nothing is
/// known.
std::optional<ChainSize> cutFor(const Setup& stock, const Setup& setup, SprocketPlace place);

/// A sprocket's or pulley's mass, kg, as weighed or as its material and chain size let it be estimated; none
/// without either.
struct SprocketMass {
  double kg;
  bool estimated;
};
std::optional<SprocketMass> sprocketMass(const Setup& stock, const Setup& setup, SprocketPlace place);

/// By how much one sprocket is heavier than stock's, and what that adds at the wheel; what turns counts only
/// where both pitches are known.
struct SprocketDifference {
  double kg;
  double wheelInertiaKgM2;
  bool weighed;  ///< both were; else both are estimates
};
/// Weighed where both were, else estimated for both alike; none where it is not known at all.
std::optional<SprocketDifference> sprocketDifference(const Setup& stock, const Setup& setup,
                                                     SprocketPlace place);

/// What other sprockets and another chain change about the bike, against stock.
struct Fitted {
  double axleShiftM = 0.0;  ///< lengthens wheelbase and the way from the axle to the centre of gravity
  double massKg = 0.0;      ///< that the sprockets weigh more
  double wheelInertiaKgM2 =
      0.0;  ///< that they add at the wheel: the front one's by the square of the final ratio

  bool operator==(const Fitted&) const = default;
  void add(const SprocketDifference& difference) {
    massKg += difference.kg;
    wheelInertiaKgM2 += difference.wheelInertiaKgM2;
  }
};

/// As it acts on the road: masses only where both, old and new, were weighed.
Fitted fitted(const Setup& stock, const Setup& setup);

}  // namespace layshaft
