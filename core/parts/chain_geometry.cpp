// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/chain_geometry.h"

#include <algorithm>
#include <cmath>

#include "core/roots.h"
#include "core/units.h"

namespace layshaft {

double pitchRadiusM(double pitchM, int teeth) {
  return pitchM / (2.0 * std::sin(units::kPi / teeth));
}

double pullRadiusM(double pitchM, int teeth) {
  return teeth * pitchM / (2.0 * units::kPi);
}

double ChainPair::links(double centreM) const {
  const int small = std::min(teeth1, teeth2), large = std::max(teeth1, teeth2);
  const double across = pitchRadiusM(pitchM, large) - pitchRadiusM(pitchM, small);
  const double alpha = std::asin(std::min(1.0, across / centreM));
  return 2.0 * centreM * std::cos(alpha) / pitchM + small * (0.5 - alpha / units::kPi) +
         large * (0.5 + alpha / units::kPi);
}

std::optional<double> ChainPair::centreM(double wanted) const {
  const int small = std::min(teeth1, teeth2), large = std::max(teeth1, teeth2);
  const double r1 = pitchRadiusM(pitchM, small), r2 = pitchRadiusM(pitchM, large);
  // Nearer than touching pitch circles no chain runs; further than half its length none reaches.
  const double nearest = r1 + r2, farthest = pitchM * wanted / 2.0;
  if (!(farthest > nearest)) return std::nullopt;
  const auto missing = [&](double centre) { return links(centre) - wanted; };
  const double low = missing(nearest), high = missing(farthest);
  if (!(low <= 0.0 && high >= 0.0)) return std::nullopt;
  return polishedRoot(missing, nearest, farthest, low, high);
}

double ChainPair::smallerWrapDeg(double centreM) const {
  const double across = std::abs(pitchRadiusM(pitchM, teeth2) - pitchRadiusM(pitchM, teeth1));
  return 180.0 - 2.0 * units::degreesFromRadians(std::asin(std::min(1.0, across / centreM)));
}

}  // namespace layshaft
