// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/shifting.h"

#include <algorithm>

#include "core/roots.h"

namespace layshaft {

double bestShiftMps(const PullModel& model, std::size_t gear) {
  const std::size_t next = gear + 1;
  const TorqueSpline& torque = model.torque();
  const RollingResistance& rolling = model.road().rolling;
  const double limit = model.limitMps(gear);
  const double lowest = std::min(limit, model.speedMps(model.bike().idleRpm, next));

  std::vector<double> cuts;
  cuts.reserve(2 * torque.knotsRpm().size() + 3);
  const auto cut = [&](double v) {
    if (v > lowest && v < limit) cuts.push_back(v);
  };
  for (const double rpm : torque.knotsRpm()) {
    cut(model.speedMps(rpm, gear));
    cut(model.speedMps(rpm, next));
  }
  if (rolling.jumpMps) cut(*rolling.jumpMps);
  cut(-model.road().headwindMps);
  cuts.push_back(limit);
  cuts.push_back(lowest);
  std::sort(cuts.begin(), cuts.end(), std::greater<>());

  // From the limit down to the first sign that the gear is still at least as good as the next.
  double above = limit, aboveGain = 0.0;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const double high = cuts[i], low = cuts[i + 1], middle = low + (high - low) / 2.0;
    const bool fast = model.road().isFast(middle);
    const PullModel::Stretch here{low, high, torque.pieceAt(model.rpm(middle, gear)), fast};
    const PullModel::Stretch there{low, high, torque.pieceAt(model.rpm(middle, next)), fast};
    const auto gain = [&](double v) { return model.freeOn(here, v, gear) - model.freeOn(there, v, next); };
    const MonotonePieces pieces = monotonePieces(gain, low, high);
    for (std::size_t p = pieces.count; p-- > 0;) {
      const double v = pieces.at[p], value = pieces.value[p];
      if (value >= 0.0) return p + 1 == pieces.count ? high : polishedRoot(gain, v, above, value, aboveGain);
      above = v;
      aboveGain = value;
    }
  }
  return lowest;
}

std::vector<double> bestShiftRpm(const PullModel& model) {
  std::vector<double> result;
  for (std::size_t g = 0; g + 1 < model.gearCount(); ++g)
    result.push_back(std::min(model.rpm(bestShiftMps(model, g), g), model.torque().revLimitRpm()));
  return result;
}

ShiftPoints shiftPoints(const std::optional<double>& typedRpm, std::size_t gears, const PullModel* model) {
  if (gears == 0) return {};
  if (typedRpm) return {std::vector<double>(gears - 1, *typedRpm), true};
  if (model && model->bike().accelerates()) return {bestShiftRpm(*model), false};
  return {};
}

}  // namespace layshaft
