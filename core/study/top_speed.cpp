// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/top_speed.h"

#include "core/roots.h"

namespace layshaft {

namespace {

/// Engine speeds between which the torque only rises or falls, to the limit.
std::vector<double> turningRpms(const TorqueSpline& torque) {
  std::vector<double> rpms = torque.knotsRpm();
  rpms.push_back(torque.revLimitRpm());
  return rpms;
}

/// Engine speeds inside the pieces of the curve at which the force in a gear is greatest because the tyre
/// grows as fast as the torque does.
std::vector<double> balancedRpms(const PullModel& model, std::size_t gear) {
  std::vector<double> balanced;
  const std::vector<double> rpms = turningRpms(model.torque());
  for (std::size_t i = 1; i < rpms.size(); ++i) {
    const std::size_t piece = model.torque().pieceAt(rpms[i - 1]);
    const auto slope = [&](double v) { return model.forceSlopeOn(piece, v, gear); };
    const MonotonePieces pieces =
        monotonePieces(slope, model.speedMps(rpms[i - 1], gear), model.speedMps(rpms[i], gear));
    for (std::size_t p = 1; p < pieces.count; ++p)
      if (pieces.value[p - 1] > 0.0 && pieces.value[p] < 0.0)
        balanced.push_back(model.rpm(
            polishedRoot(slope, pieces.at[p - 1], pieces.at[p], pieces.value[p - 1], pieces.value[p]), gear));
  }
  return balanced;
}

}  // namespace

std::vector<GearPull> peakPull(const PullModel& model) {
  std::vector<GearPull> result;
  for (std::size_t g = 0; g < model.gearCount(); ++g) {
    GearPull best{.gear = static_cast<int>(g) + 1, .peakForceN = -1.0, .peakForceSpeedMps = 0.0};
    const auto take = [&](double rpm) {
      const double force = model.forceAtRpmN(rpm, g);
      if (force > best.peakForceN) {
        best.peakForceN = force;
        best.peakForceSpeedMps = model.speedMps(rpm, g);
      }
    };
    for (const double rpm : turningRpms(model.torque())) take(rpm);
    if (model.tyreGrows())
      for (const double rpm : balancedRpms(model, g)) take(rpm);
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
