// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bike/setup.h"

namespace layshaft {

enum class RolloutSource { TyreSize, Measured };

/// The distance the bike moves for one turn of the rear wheel, upright.
struct Rollout {
  double metres;               ///< at walking pace
  RolloutSource source;        ///< an estimate from the tyre size is good to about ±2 %
  double growthPerMps2 = 0.0;  ///< grows with speed v as metres·(1 + growth·v²)

  double radiusM() const;                                  ///< rolling radius, rollout / 2π
  double atSpeed(double speedMps) const;                   ///< m
  double speedMps(double rpm, double overallRatio) const;  ///< road speed at an engine speed
  double rpm(double speedMps, double overallRatio) const;  ///< engine speed at a road speed
};

/// The setup's rollout: measured if it has been, else π·D·(1 − allowance) of the nominal tyre diameter D,
/// less the tread worn off it: dC/C = −dh/R. A measured rollout has wear and allowance in it already. The
/// allowance is the setup's, else the default's.
Rollout rolloutOf(const Setup& setup);

}  // namespace layshaft
