// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/adopted.h"

#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "core/study/fitted.h"
#include "core/study/speedometer.h"
#include "core/units.h"

namespace layshaft {
namespace {

/// Adds to a number that is given, as far as its limits go; without more digits than one types by hand,
/// `perUnit` parts of a unit.
void add(std::optional<double>& value, double by, const Limit& limit, double perUnit) {
  if (!value || by == 0.0) return;
  value = std::clamp(std::round((*value + by) * perUnit) / perUnit, limit.low, limit.high);
}

/// A sprocket that stays while the chain's size changes is still cut for the old one.
void keepSize(std::optional<SprocketDetails>& details, const std::optional<ChainSize>& cutFor,
              const std::optional<ChainSize>& chain) {
  if (!cutFor || !chain || *cutFor == *chain) return;
  if (!details) details.emplace();
  details->size = cutFor;
}

}  // namespace

Profile adopted(const Profile& profile) {
  Profile result = profile;
  Setup stock = applied(profile.proposed, profile.stock);
  stock.options.extras = profile.stock.options.extras;
  const Fitted change = fitted(profile.stock, stock);

  keepSize(stock.options.frontSprocket, cutFor(profile.stock, stock, SprocketPlace::Front),
           stock.options.chainSize);
  keepSize(stock.options.rearSprocket, cutFor(profile.stock, stock, SprocketPlace::Rear),
           stock.options.chainSize);

  constexpr double kPerMm = 100, kPerKg = 1000, kPerKgM2 = 10000;
  const double shiftMm = units::millimetresFromMetres(change.axleShiftM);
  if (auto& run = result.bike.chainRun) {
    add(run->centreDistanceMm, shiftMm, limits::kCentreDistanceMm, kPerMm);
    const bool outside = (run->adjusterForwardMm && *run->adjusterForwardMm + shiftMm < 0.0) ||
                         (run->adjusterBackMm && *run->adjusterBackMm - shiftMm < 0.0);
    if (outside) {  // it did not fit; how it was made to is to be measured
      run->adjusterForwardMm.reset();
      run->adjusterBackMm.reset();
    }
    add(run->adjusterForwardMm, shiftMm, limits::kAdjusterMm, kPerMm);
    add(run->adjusterBackMm, -shiftMm, limits::kAdjusterMm, kPerMm);
    add(run->swingarmLengthMm, shiftMm, limits::kSwingarmLengthMm, kPerMm);
  }
  if (auto& chassis = result.bike.chassis) {
    add(chassis->wheelbaseMm, shiftMm, limits::kWheelbaseMm, kPerMm);
    add(chassis->cgAheadOfRearAxleMm, shiftMm, limits::kCgAheadMm, kPerMm);
    add(chassis->massKg, change.massKg, limits::kMassKg, kPerKg);
    add(chassis->rearWheelInertiaKgm2, change.wheelInertiaKgM2, limits::kWheelInertiaKgm2, kPerKgM2);
  }
  for (Pin& pin : result.pins) {
    const SetupChange own = pin.change;
    pin.change = changeTo(applied(own, profile.stock), stock);
    if (own.frontTeeth) pin.change.frontTeeth = own.frontTeeth;  // also where stock's are the same now
    if (own.rearTeeth) pin.change.rearTeeth = own.rearTeeth;
  }
  result.stock = std::move(stock);
  result.proposed = SetupChange{.options = {.extras = profile.proposed.options.extras}};
  return result;
}

std::optional<double> readsHighPercentCarried(const Profile& profile) {
  const auto& instrument = profile.bike.speedometer;
  if (!instrument) return std::nullopt;
  const GearingConditions conditions{.revLimitRpm = profile.bike.engine.revLimitRpm};
  const Gearing stock = gearing(profile.stock, conditions),
                proposed = gearing(applied(profile.proposed, profile.stock), conditions);
  constexpr double kAnySpeedMps = 0.0, kNothing = 1e-9, kPerPercent = 1000.0;
  const auto figures = speedometer(*instrument, stock, proposed, kAnySpeedMps);
  if (!figures || std::abs(figures->odometerOverTrue - 1.0) < kNothing) return std::nullopt;
  return std::round(100.0 * (figures->indicatedOverTrue - 1.0) * kPerPercent) / kPerPercent;
}

}  // namespace layshaft
