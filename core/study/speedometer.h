// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/bike.h"
#include "core/study/gearing.h"

namespace layshaft {

/// How a speedometer stands to UN Regulation 39.
enum class SpeedometerVerdict { Within, ReadsLow, ReadsHigh };

/// What the speedometer shows against the road.
struct SpeedometerFigures {
  double indicatedOverTrue;                   ///< at any speed, with what the instrument reads high by itself
  double odometerOverTrue;                    ///< distance counted over distance covered
  double at100KmhIndicatedKmh;                ///< shown at a true 100 km/h
  double correctorPercent;                    ///< what a signal corrector would be set to, to undo the change
  std::optional<SpeedometerVerdict> verdict;  ///< none where the bike reaches none of the test speeds
};

/// UN Regulation 39: 0 ≤ V1 − V2 ≤ V2/10 + 4 km/h for V1 shown and V2 true, ends included to 1e-9 km/h.
SpeedometerVerdict unR39(double shownKmh, double trueKmh);

/// A sensor on the gearbox output counts countershaft turns, one on a wheel that wheel's turns; the
/// instrument is taken to be right (but for `reads_high`) with stock's gearing and rear tyre. `topSpeedMps`
/// bounds the test speeds 40, 80 and 120 km/h, itself included to 1e-9 km/h, as far as it is known; none
/// without a sensor given.
std::optional<SpeedometerFigures> speedometer(const Speedometer& instrument, const Gearing& stock,
                                              const Gearing& setup, std::optional<double> topSpeedMps);

}  // namespace layshaft
