// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gear_limits.h"

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
  for (const auto& on : model.stretches(gear, from, to)) {
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
                        .toMps = on.fromMps};
    limit->gaps = limit->gaps || on.fromMps > limit->toMps;
    limit->toMps = on.toMps;
    limit->toEnd = on.toMps == to;
  }
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

}  // namespace layshaft
