// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/gears_taken.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/limits.h"
#include "core/number_text.h"

namespace layshaft {
namespace {

Problem outside(const char* key, double given, const Limit& limit) {
  return {.kind = Problem::Kind::OutOfRange,
          .path = key,
          .given = numberText(given),
          .low = limit.low,
          .high = limit.high,
          .unit = limit.unit};
}

}  // namespace

Result<SetupChange> withGears(SetupChange change, const Setup& stock, const GearsTaken& taken) {
  std::vector<double> ratios = applied(change, stock).gearRatios.values();
  bool gears = false;
  for (const SpareGearPair& pair : taken) {
    const GearTeeth teeth = teethIn(pair);
    if (pair.gear == 0) {
      if (!limits::kPrimaryRatio.contains(teeth.ratio()))
        return outside("primary_ratio", teeth.ratio(), limits::kPrimaryRatio);
      change.primaryRatio = teeth.ratio();
      change.options.primaryTeeth = teeth;
      continue;
    }
    const auto index = static_cast<std::size_t>(pair.gear - 1);
    if (index >= ratios.size())
      return outside("gear_ratios", pair.gear, {1.0, static_cast<double>(ratios.size()), ""});
    ratios[index] = teeth.ratio();
    setTeethOf(change.options.gearTeeth, index, teeth);
    gears = true;
  }
  if (!gears) return change;
  auto made = GearRatios::make(std::move(ratios));
  if (!made) {
    Problem problem = made.problem();
    problem.path = "gear_ratios" + problem.path;
    return problem;
  }
  change.gearRatios = std::move(made).value();
  return change;
}

SetupChange onStocksGearbox(SetupChange change, const Setup& stock,
                            const std::vector<SpareGearPair>& onHand) {
  const auto isOnHand = [&](int gear, double ratio, double stocks) {
    return ratio == stocks || std::any_of(onHand.begin(), onHand.end(), [&](const SpareGearPair& pair) {
             return pair.gear == gear && teethIn(pair).make(ratio);
           });
  };
  const Setup own = applied(change, stock);
  if (own.gearRatios.count() != stock.gearRatios.count()) return change;
  if (!isOnHand(0, own.primaryRatio, stock.primaryRatio)) return change;
  for (std::size_t i = 0; i < own.gearRatios.count(); ++i)
    if (!isOnHand(static_cast<int>(i) + 1, own.gearRatios[i], stock.gearRatios[i])) return change;
  change.primaryRatio.reset();
  change.gearRatios.reset();
  change.options.primaryTeeth.reset();
  change.options.gearTeeth.clear();
  return change;
}

}  // namespace layshaft
