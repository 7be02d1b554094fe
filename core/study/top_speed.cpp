// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/top_speed.h"

#include "core/roots.h"

namespace layshaft {

std::vector<GearPull> peakPull(const PullModel& model) {
  const TorqueSpline& torque = *model.bike().torque;
  std::vector<double> candidates = torque.knotsRpm();
  candidates.push_back(torque.revLimitRpm());
  std::vector<GearPull> result;
  for (std::size_t g = 0; g < model.gearCount(); ++g) {
    GearPull best{.gear = static_cast<int>(g) + 1, .peakForceN = -1.0, .peakForceSpeedMps = 0.0};
    for (const double rpm : candidates) {
      const double force = model.forceAtRpmN(rpm, g);
      if (force > best.peakForceN) {
        best.peakForceN = force;
        best.peakForceSpeedMps = model.speedMps(rpm, g);
      }
    }
    result.push_back(best);
  }
  return result;
}

namespace {

/// The greatest speed in a gear at which the bounded acceleration is not negative.
std::optional<TopSpeed> topSpeedIn(const PullModel& model, std::size_t gear) {
  const double limit = model.limitMps(gear);
  const auto stretches = model.stretches(gear, 0.0, limit);
  const int number = static_cast<int>(gear) + 1;
  double above = limit, aboveValue = 0.0;
  for (std::size_t i = stretches.size(); i-- > 0;) {
    const auto& on = stretches[i];
    const auto a = [&](double v) { return model.accelerationOn(on, v, gear); };
    const MonotonePieces pieces = monotonePieces(a, on.fromMps, on.toMps);
    for (std::size_t p = pieces.count; p-- > 0;) {
      const double v = pieces.at[p], value = pieces.value[p];
      if (value >= 0.0) {
        if (v == limit) return TopSpeed{limit, number, LimitedBy::RevLimit};
        // At a jump of the resistance the speed stands where it jumps.
        const double top = p + 1 == pieces.count ? v : polishedRoot(a, v, above, value, aboveValue);
        return TopSpeed{top, number, model.limitOn(on, top, gear)};
      }
      above = v;
      aboveValue = value;
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<TopSpeed> topSpeed(const PullModel& model) {
  constexpr double kAlike = 1.0 - 1e-9;  // a bound or a jump of the resistance is the same in every gear
  std::optional<TopSpeed> best;
  for (std::size_t g = 0; g < model.gearCount(); ++g)
    if (const auto top = topSpeedIn(model, g); top && (!best || top->speedMps >= best->speedMps * kAlike))
      best = top;
  return best;
}

}  // namespace layshaft
