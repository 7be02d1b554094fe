// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gear_reading.h"

namespace layshaft {

double gearRatioOf(const GearReading& reading, const Rollout& rollout, double primaryRatio,
                   double finalRatio) {
  // One turn of the wheel for each overall ratio of the engine, so the revs at ratio 1 divide what was read.
  return reading.rpm / rollout.rpm(reading.speedMps, primaryRatio * finalRatio);
}

}  // namespace layshaft
