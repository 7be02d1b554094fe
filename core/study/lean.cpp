// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lean.h"

#include <algorithm>
#include <cmath>

#include "core/units.h"

namespace layshaft {

double crownShare(const Setup& setup, const Rollout& rollout) {
  const double upright = rollout.radiusM();
  const double crown = setup.options.crownRadiusMm
                           ? units::metresFromMillimetres(*setup.options.crownRadiusMm)
                           : setup.rearTyre.widthM() / 2.0;
  // A crown wider than the wheel is round is a slip of the pen; the radius stays positive.
  return std::min(crown, upright) / upright;
}

double leanFactor(const Setup& setup, const Rollout& rollout, double leanDeg) {
  return 1.0 / (1.0 - crownShare(setup, rollout) * (1.0 - std::cos(units::radiansFromDegrees(leanDeg))));
}

}  // namespace layshaft
