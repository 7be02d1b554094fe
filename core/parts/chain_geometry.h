// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace layshaft {

/// A tight chain (or toothed belt) on two sprockets, exact: straight spans tangent to the pitch circles,
/// wrapped links counted as whole pitches. Handbooks print a series of it for pencil and paper.
struct ChainPair {
  double pitchM;
  int teeth1;
  int teeth2;

  /// Links (pitches) that a centre distance needs; a fraction of one is left. `centreM` must be above the
  /// difference of the pitch radii.
  double links(double centreM) const;
  /// The centre distance that makes a number of links tight, m; none if they do not reach round.
  std::optional<double> centreM(double links) const;
  /// Contact angle on the smaller sprocket, degrees: 180° − 2·asin((r2 − r1)/C).
  double smallerWrapDeg(double centreM) const;
};

/// Radius of the circle through the roller centres, m: p / (2·sin(π/N)).
double pitchRadiusM(double pitchM, int teeth);

/// Radius of the circle that is as long as its teeth's pitches, m: N·p/2π. A belt pulls at it, and so does a
/// chain on the mean of a turn.
double pullRadiusM(double pitchM, int teeth);

}  // namespace layshaft
