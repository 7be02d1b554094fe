// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "core/study/lap_bike.h"

namespace layshaft {

/// What no gear choice can beat: how long the rest of a lap takes at least, for a bike that is always in the
/// gear that accelerates hardest and shifts in no time, from the allowed speed at the start on. A choice that
/// with it is later than another with what really follows is given up.
class LapBound {
 public:
  explicit LapBound(const LapBike& bike);

  /// From a joint to the end of the lap, seconds.
  double restS(std::size_t joint) const { return rest_[joint]; }

 private:
  std::vector<double> rest_;
};

}  // namespace layshaft
