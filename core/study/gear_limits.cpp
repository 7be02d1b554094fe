// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gear_limits.h"

#include <algorithm>

namespace layshaft {
namespace {

double usedFromMps(const RoadModel& model, std::size_t gear) {
  if (gear == 0) return model.fastestMps(model.slipping());
  const std::size_t before = gear - 1;
  const double shiftMps = model.speedMps(model.highestRpm(before), before);
  return model.coast(shiftMps, model.bike().shiftTimeS).speedMps;
}

std::optional<GearLimit> limitOf(const RoadModel& model, std::size_t gear, double peakMps) {
  const double from = usedFromMps(model, gear), to = model.speedMps(model.highestRpm(gear), gear);
  std::optional<GearLimit> limit;
  bool grip = false, lift = false;
  double usableN = 0.0, contactN = 0.0;
  for (const auto& on : model.stretches(gear, from, to)) {
    for (const double v : {on.fromMps, on.toMps}) {
      const double a = model.accelerationOn(on, v, gear), resistance = model.resistanceN(v);
      usableN = std::max(usableN, a * model.equivalentMassKg(gear) + resistance);
      contactN = std::max(contactN, a * model.massKg() + resistance);
    }
    const LimitedBy by = model.limitOn(on, on.fromMps + (on.toMps - on.fromMps) / 2.0, gear);
    if (by == LimitedBy::Drag) continue;
    (by == LimitedBy::Grip ? grip : lift) = true;
    if (!limit)
      limit = GearLimit{.by = by,
                        .fromStart = on.fromMps == from,
                        .toEnd = false,
                        .gaps = false,
                        .both = false,
                        .fromMps = on.fromMps,
                        .toMps = on.fromMps,
                        .usableN = 0.0,
                        .contactN = 0.0};
    limit->gaps = limit->gaps || on.fromMps > limit->toMps;
    limit->toMps = on.toMps;
    limit->toEnd = on.toMps == to;
  }
  if (!limit) return limit;
  limit->usableN = usableN;
  limit->contactN = contactN;
  if (!grip || !lift) return limit;
  limit->both = true;
  limit->by = *model.gripLimitN(peakMps) <= *model.liftLimitN(peakMps) ? LimitedBy::Grip : LimitedBy::Lift;
  return limit;
}

}  // namespace

std::vector<std::optional<GearLimit>> gearLimits(const RoadModel& model, const std::vector<GearPull>& pull) {
  std::vector<std::optional<GearLimit>> limits(model.gearCount());
  if (!model.bike().hasResistance()) return limits;
  for (std::size_t g = 0; g < limits.size(); ++g) limits[g] = limitOf(model, g, pull[g].peakForceSpeedMps);
  return limits;
}

ComparedPull comparedPull(const SetupPull& from, std::size_t fromGear, const SetupPull& to,
                          std::size_t toGear) {
  const auto limitIn = [](const SetupPull& setup, std::size_t gear) {
    return gear < setup.limits.size() && setup.limits[gear] ? &*setup.limits[gear] : nullptr;
  };
  const GearLimit *was = limitIn(from, fromGear), *is = limitIn(to, toGear);
  if (was && is) return {was->contactN, is->contactN};
  const auto atWheel = [](const SetupPull& setup, std::size_t gear, const GearLimit* limit) {
    const double peak = setup.pull[gear].peakForceN;
    return limit ? std::min(limit->usableN, peak) : peak;
  };
  return {atWheel(from, fromGear, was), atWheel(to, toGear, is)};
}

}  // namespace layshaft
