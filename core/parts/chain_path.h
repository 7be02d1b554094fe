// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/parts/chain_geometry.h"
#include "core/parts/sprocket_body.h"

namespace layshaft {

/// Where the links of a tight chain are, seen from the left of the bike: front sprocket (teeth1) round the
/// origin, rear one (teeth2) at (centre, 0), y up, m. Everything turns counter-clockwise as the bike rolls
/// forward. Places along the chain are counted in pitches from where it runs onto the front sprocket.
class ChainPath {
 public:
  /// `centreM` must be above the difference of the pitch radii.
  ChainPath(const ChainPair& pair, double centreM);

  double links() const { return links_; }
  double centreM() const { return centreM_; }
  /// The roller's place; any number of pitches, the chain is endless.
  ChainPoint at(double pitches) const;
  /// Angle of one of the sprocket's seats once the chain has moved on by `travel` pitches, rad.
  double frontSeatRad(double travel) const;
  double rearSeatRad(double travel) const;

  /// The whole line as a closed polygon: half a tooth at a time round the sprockets, straight between them.
  std::vector<ChainPoint> polygon() const;

  // Ends of the upper run.
  ChainPoint topFront() const { return at(0.0); }
  ChainPoint topRear() const { return at(frontWrap_ + straight_ + rearWrap_); }

 private:
  double frontAngleRad(double pitches) const;
  double rearAngleRad(double pitches) const;

  double centreM_, frontRadiusM_, rearRadiusM_, alphaRad_;
  int frontTeeth_, rearTeeth_;
  double frontWrap_, straight_, rearWrap_, links_;  // in pitches
};

}  // namespace layshaft
