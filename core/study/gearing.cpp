// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/gearing.h"

#include <algorithm>
#include <cmath>

namespace layshaft {
namespace {

std::optional<CruiseFigures> cruiseIn(const Gearing& gearing, double speedMps,
                                      const GearingConditions& conditions) {
  for (std::size_t g = gearing.gears.size(); g-- > 0;) {
    const double rpm = gearing.rpm(speedMps, g);
    if (rpm < conditions.idleRpm || rpm > conditions.revLimitRpm.value_or(rpm)) continue;
    return CruiseFigures{
        .gear = gearing.gears[g].gear,
        .rpm = rpm,
        .turnsPerKm = 1000.0 * gearing.gears[g].overallRatio / gearing.rollout.atSpeed(speedMps)};
  }
  return std::nullopt;
}

double turnsPerMetre(const Gearing& gearing, double ratio) {
  return gearing.primaryRatio * ratio * gearing.finalRatio / gearing.rollout.metres;
}

}  // namespace

Gearing gearing(const Setup& setup, const GearingConditions& conditions) {
  Gearing result{.finalRatio = finalRatio(setup.frontTeeth, setup.rearTeeth),
                 .primaryRatio = setup.primaryRatio,
                 .rollout = rolloutOf(setup),
                 .revLimitRpm = conditions.revLimitRpm,
                 .gears = {},
                 .cruiseSpeedMps = conditions.cruiseSpeedMps,
                 .cruise = {}};
  const std::size_t count = setup.gearRatios.count();
  result.gears.reserve(count);
  for (std::size_t g = 0; g < count; ++g) {
    const double ratio = setup.gearRatios[g];
    const double overall = setup.primaryRatio * ratio * result.finalRatio;
    GearFigures figures{.gear = static_cast<int>(g) + 1,
                        .ratio = ratio,
                        .overallRatio = overall,
                        .speedAtRevLimitMps = {},
                        .speedPer1000RpmMps = 1000.0 / 60.0 * result.rollout.metres / overall,
                        .shiftRpm = {},
                        .shiftSpeedMps = {},
                        .rpmAfterShift = {}};
    if (const auto& limit = conditions.revLimitRpm)
      figures.speedAtRevLimitMps = result.rollout.speedMps(*limit, overall);
    if (g + 1 < count)
      figures.shiftRpm =
          g < conditions.shiftRpm.size() ? std::optional(conditions.shiftRpm[g]) : conditions.revLimitRpm;
    if (const auto& shiftRpm = figures.shiftRpm) {
      figures.shiftSpeedMps = result.rollout.speedMps(*shiftRpm, overall);
      figures.rpmAfterShift = *shiftRpm * setup.gearRatios[g + 1] / ratio;
    }
    result.gears.push_back(figures);
  }
  if (conditions.cruiseSpeedMps) result.cruise = cruiseIn(result, *conditions.cruiseSpeedMps, conditions);
  return result;
}

StepSize stepSize(double gearingRatio) {
  const double s = std::abs(100.0 * std::log(gearingRatio));
  if (s < 0.05) return StepSize::None;
  if (s <= 5.5) return StepSize::Small;
  if (s <= 10.0) return StepSize::Moderate;
  return StepSize::Large;
}

GearingChange gearingChange(const Setup& stock, const Gearing& stockGearing, const Gearing& otherGearing) {
  const bool geared = !stockGearing.gears.empty() && !otherGearing.gears.empty();
  const auto lastGear = [&](const Gearing& gearing) { return geared ? gearing.gears.back().ratio : 1.0; };
  const double ratio = turnsPerMetre(otherGearing, lastGear(otherGearing)) /
                       turnsPerMetre(stockGearing, lastGear(stockGearing));
  const StepSize size = stepSize(ratio);
  return {.finalRatioPercent = 100.0 * (otherGearing.finalRatio / stockGearing.finalRatio - 1.0),
          .gearingPercent = 100.0 * (ratio - 1.0),
          .direction = size == StepSize::None ? Direction::Same
                       : ratio > 1.0          ? Direction::Shorter
                                              : Direction::Taller,
          .size = size,
          .rearTeethEquivalent = stock.frontTeeth.count() * otherGearing.finalRatio - stock.rearTeeth.count(),
          .wholeGearingTeethEquivalent = stock.rearTeeth.count() * (100.0 * (ratio - 1.0)) / 100.0};
}

std::vector<double> gearChangesPercent(const Gearing& stock, const Gearing& other) {
  std::vector<double> changes;
  for (std::size_t g = 0; g < std::min(stock.gears.size(), other.gears.size()); ++g)
    changes.push_back(100.0 * (stock.gears[g].speedPer1000RpmMps / other.gears[g].speedPer1000RpmMps - 1.0));
  return changes;
}

}  // namespace layshaft
