// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/study/lap.h"
#include "core/study/lap_search.h"

namespace layshaft {

/// A chosen lap ridden once more, piece by piece.
struct RiddenLap {
  /// The legs of one pull.
  struct Pull {
    std::size_t firstLeg, legs;
    LapChoice choice;
  };
  std::vector<LapLeg> legs;  ///< of the whole lap, without gaps
  std::vector<Pull> pulls;
  double startMps;

  /// The pull that a leg is of, or the next one; the first one behind the last of a closed lap.
  const Pull* pullAt(std::size_t leg, bool closed) const;
};
RiddenLap riddenLap(const LapBike& bike, const ChosenLap& chosen, double startMps);

/// For drawing: the ends of all legs and what bends between them.
std::vector<LapPoint> lapPoints(const LapBike& bike, const RiddenLap& lap);

}  // namespace layshaft
