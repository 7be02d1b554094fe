// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/bike.h"
#include "core/study/fitted.h"

namespace layshaft {

/// Where the chain is tightest as the wheel moves up and down: countershaft, pivot and axle in one line.
struct TightSpot {
  double angleDeg;  ///< of the swingarm
  double gainM;     ///< by how much the sprockets' centres are further apart than in the profile's posture
  /// Up and down play in the middle of a run, in the profile's posture, of a chain that is just tight at its
  /// tight spot: less than this strains it.
  double leastPlayM;
};

/// The rear suspension as the chain sees it, in the posture that the profile gives: swingarm from axle to
/// pivot, and where the countershaft sits beside the pivot. SI, angles in degrees.
struct SwingarmFigures {
  double axleToCountershaftDeg;  ///< rise of the line from the axle to the countershaft
  double upperRunDeg;            ///< rise of the pulling run towards the front
  /// Share of the load transfer under power that thrust and chain pull hold up, per cent: 100 neither squats
  /// nor rises. None without wheelbase and height of the centre of gravity. V. Cossalter, Motorcycle
  /// Dynamics, chapter 6; the per cent as T. Foale gives it (both from memory).
  std::optional<double> antiSquatPercent;
  /// None where the countershaft is not ahead of the pivot, or the spot is further away than a wheel travels.
  std::optional<TightSpot> tightSpot;
};

/// Where the swingarm's length, angle or the countershaft's place is missing: none. `axleShiftM` lengthens
/// swingarm and wheelbase; the angle stays. A belt's run lies on its pulleys at N·p/2π, a chain's at its
/// rollers.
std::optional<SwingarmFigures> swingarm(const Bike& bike, const ChainPair& pair, double rollingRadiusM,
                                        double axleShiftM, bool belt = false);

}  // namespace layshaft
