// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/adopted.h"

#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "core/study/fitted.h"
#include "core/units.h"

namespace layshaft {
namespace {

/// Adds to a number that is given, as far as its limits go; without more digits than a file is written with
/// by hand.
void add(std::optional<double>& value, double by, const Limit& limit, double grain) {
  if (!value || by == 0.0) return;
  value = std::clamp(std::round((*value + by) / grain) * grain, limit.low, limit.high);
}

}  // namespace

Profile adopted(const Profile& profile) {
  Profile result = profile;
  Setup stock = applied(profile.proposed, profile.stock);
  stock.options.extras = profile.stock.options.extras;
  const Fitted change = fitted(profile.stock, stock);

  constexpr double kGrainMm = 0.01, kGrainKg = 0.001, kGrainKgM2 = 0.0001;
  const double shiftMm = units::millimetresFromMetres(change.axleShiftM);
  if (auto& run = result.bike.chainRun) {
    add(run->centreDistanceMm, shiftMm, limits::kCentreDistanceMm, kGrainMm);
    add(run->adjusterForwardMm, shiftMm, limits::kAdjusterMm, kGrainMm);
    add(run->adjusterBackMm, -shiftMm, limits::kAdjusterMm, kGrainMm);
    add(run->swingarmLengthMm, shiftMm, limits::kSwingarmLengthMm, kGrainMm);
  }
  if (auto& chassis = result.bike.chassis) {
    add(chassis->wheelbaseMm, shiftMm, limits::kWheelbaseMm, kGrainMm);
    add(chassis->cgAheadOfRearAxleMm, shiftMm, limits::kCgAheadMm, kGrainMm);
    add(chassis->massKg, change.massKg, limits::kMassKg, kGrainKg);
    if (change.wheelInertiaKgM2 != 0.0 && !chassis->rearWheelInertiaKgm2) chassis->rearWheelInertiaKgm2 = 0.0;
    add(chassis->rearWheelInertiaKgm2, change.wheelInertiaKgM2, limits::kWheelInertiaKgm2, kGrainKgM2);
  }
  for (Pin& pin : result.pins) pin.change = changeTo(applied(pin.change, profile.stock), stock);
  result.stock = std::move(stock);
  result.proposed = SetupChange{.options = {.extras = profile.proposed.options.extras}};
  return result;
}

}  // namespace layshaft
