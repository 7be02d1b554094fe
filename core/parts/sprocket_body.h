// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/parts/chain.h"
#include "core/parts/sprocket.h"

namespace layshaft {

enum class SprocketPlace { Front, Rear };

/// What a sprocket for a chain size measures, m.
struct SprocketShape {
  double pitchRadiusM;
  double tipRadiusM;   ///< half of p·(0.6 + cot(180°/N)), the outside diameter of ASME B29.1
  double rootRadiusM;  ///< pitch radius less half a roller, ISO 606
  double boreRadiusM;  ///< common practice, no source: 0.4 of the pitch radius
  double
      thicknessM;  ///< 0.93 of the chain's inner width up to 12.7 mm pitch, 0.95 above (ISO 606, from memory)
};
SprocketShape sprocketShape(const ChainSize& size, int teeth);

/// What a sprocket of that size and material weighs, kg: a ring from bore to pitch circle. A rear one is half
/// cut away (fill factor 0.5, common practice); a front one is solid. Densities 7850 kg/m³ (carbon steel) and
/// 2810 kg/m³ (aluminium 7075-T6), from memory. An estimate: makers' sprockets differ by a quarter either
/// way.
double estimatedMassKg(const SprocketShape& shape, SprocketPlace place, SprocketMaterial material);

/// Moment of inertia about its axle, kg·m², of a ring from bore to pitch circle: ½·m·(r1² + r2²).
double sprocketInertiaKgM2(double pitchRadiusM, double massKg);

/// A point in the plane of the chain, m.
struct ChainPoint {
  double x, y;
};

/// The sprocket's outline for a true picture, round the origin, closed: round seats for the rollers on the
/// pitch circle, flanks up to the tip circle. The first seat lies on the x axis; seats follow
/// counter-clockwise.
std::vector<ChainPoint> sprocketOutline(const ChainSize& size, int teeth);

}  // namespace layshaft
