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

/// A sprocket's mass as weighed, or as its material lets it be estimated; none without either. The moment of
/// inertia takes the mass as a ring from bore to pitch circle, and needs a chain size.
struct SprocketMass {
  double kg;
  bool estimated;
  double inertiaKgM2;
};
std::optional<SprocketMass> sprocketMass(const Setup& setup, SprocketPlace place);

/// What other sprockets and another chain change about the bike, against stock.
struct Fitted {
  double axleShiftM = 0.0;  ///< lengthens wheelbase and the way from the axle to the centre of gravity
  double massKg = 0.0;      ///< that the sprockets weigh more
  double wheelInertiaKgM2 =
      0.0;  ///< that they add at the wheel: the front one's by the square of the final ratio
};

/// As it acts on the road: masses only where both, old and new, were weighed.
Fitted fitted(const Setup& stock, const Setup& setup);

/// With the difference in masses also where it is estimated; none where it is not known at all.
std::optional<Fitted> fittedByEstimate(const Setup& stock, const Setup& setup);

}  // namespace layshaft
