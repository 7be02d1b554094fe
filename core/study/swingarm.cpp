// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/swingarm.h"

#include <algorithm>
#include <cmath>

#include "core/units.h"

namespace layshaft {
using units::metresFromMillimetres;

std::optional<SwingarmFigures> swingarm(const Bike& bike, const ChainPair& pair, double rollingRadiusM,
                                        double axleShiftM, bool belt) {
  const ChainRun run = bike.chainRun.value_or(ChainRun{});
  if (!run.swingarmLengthMm || !run.swingarmAngleDeg || !run.countershaftAheadOfPivotMm ||
      !run.countershaftAbovePivotMm)
    return std::nullopt;
  const double arm = metresFromMillimetres(*run.swingarmLengthMm) + axleShiftM;
  const double angle = units::radiansFromDegrees(*run.swingarmAngleDeg);
  const double ahead = metresFromMillimetres(*run.countershaftAheadOfPivotMm);
  const double above = metresFromMillimetres(*run.countershaftAbovePivotMm);
  const double offset = std::hypot(ahead, above);
  const auto radius = belt ? pullRadiusM : pitchRadiusM;
  const double r1 = radius(pair.pitchM, pair.teeth1), r2 = radius(pair.pitchM, pair.teeth2);

  // From the axle to the countershaft.
  const double dx = arm * std::cos(angle) + ahead, dy = arm * std::sin(angle) + above;
  const double distance = std::hypot(dx, dy), farthest = arm + offset;
  if (distance <= std::abs(r2 - r1)) return std::nullopt;
  const double direction = std::atan2(dy, dx);
  const double upperRun = direction - std::asin((r2 - r1) / distance);

  SwingarmFigures figures{.axleToCountershaftDeg = units::degreesFromRadians(direction),
                          .upperRunDeg = units::degreesFromRadians(upperRun),
                          .antiSquatPercent = {},
                          .tightSpot = {}};
  constexpr double kTravel = units::radiansFromDegrees(30.0);  // common practice: the longest swing about 25°
  if (ahead > 0.0 && std::abs(std::atan2(above, ahead) - angle) <= kTravel) {
    const double span = std::sqrt(distance * distance - (r2 - r1) * (r2 - r1));
    // All of the chain's spare length hangs in one run; its middle moves up and down on two sides of a
    // triangle.
    const double spare = std::max(0.0, (pair.links(farthest) - pair.links(distance)) * pair.pitchM);
    figures.tightSpot = TightSpot{.angleDeg = units::degreesFromRadians(std::atan2(above, ahead)),
                                  .gainM = std::max(0.0, farthest - distance),
                                  .leastPlayM = std::sqrt((span + spare) * (span + spare) - span * span)};
  }

  const Chassis chassis = bike.chassis.value_or(Chassis{});
  if (!chassis.wheelbaseMm || !chassis.cgHeightMm) return figures;
  const double wheelbase = metresFromMillimetres(*chassis.wheelbaseMm) + axleShiftM;
  const double height = metresFromMillimetres(*chassis.cgHeightMm);
  if (wheelbase <= 0.0) return figures;
  // Moments about the pivot for a thrust of one: thrust at the contact patch, chain pull along the upper run,
  // load transfer under the wheel.
  const double pull = rollingRadiusM / r2;
  const double held = rollingRadiusM + arm * std::sin(angle) - pull * (r2 - arm * std::sin(angle - upperRun));
  const double transferred = height / wheelbase * arm * std::cos(angle);
  if (transferred > 0.0) figures.antiSquatPercent = 100.0 * held / transferred;
  return figures;
}

}  // namespace layshaft
