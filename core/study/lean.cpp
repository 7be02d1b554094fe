// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lean.h"

#include <algorithm>
#include <cmath>

#include "core/units.h"

namespace layshaft {

double leanFactor(const Setup& setup, const Rollout& rollout, double leanDeg) {
  const double upright = rollout.radiusM();
  const double crown = setup.options.crownRadiusMm
                           ? units::metresFromMillimetres(*setup.options.crownRadiusMm)
                           : setup.rearTyre.widthM() / 2.0;
  // A crown wider than the wheel is round is a slip of the pen; the radius stays positive.
  const double leaned =
      upright - std::min(crown, upright) * (1.0 - std::cos(units::radiansFromDegrees(leanDeg)));
  return upright / leaned;
}

}  // namespace layshaft
