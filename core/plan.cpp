// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan.h"

#include "core/units.h"

namespace layshaft {
namespace {

GearingConditions conditionsFor(const Profile& profile, std::size_t gears) {
  const Engine& engine = profile.bike.engine;
  GearingConditions conditions{.revLimitRpm = engine.revLimitRpm,
                               .idleRpm = engine.idleRpm.value_or(0.0),
                               .shiftRpm = {},
                               .cruiseSpeedMps = {}};
  if (engine.shiftRpm && gears > 1) conditions.shiftRpm.assign(gears - 1, *engine.shiftRpm);
  if (profile.cruiseSpeedKmh) conditions.cruiseSpeedMps = units::mpsFromKmh(*profile.cruiseSpeedKmh);
  return conditions;
}

SetupPlan planOf(const Profile& profile, Setup setup, const SetupPlan* stock, std::string name = {}) {
  Gearing figures = gearing(setup, conditionsFor(profile, setup.gearRatios.count()));
  const Setup& stockSetup = stock ? stock->setup : setup;
  const Gearing& stockGearing = stock ? stock->gearing : figures;
  SetupPlan result{.name = std::move(name),
                   .setup = setup,
                   .gearing = figures,
                   .change = gearingChange(stockSetup, stockGearing, figures),
                   .speedometer = {}};
  if (profile.bike.speedometer)
    result.speedometer = speedometer(*profile.bike.speedometer, stockGearing, figures,
                                     figures.gears.back().speedAtRevLimitMps);
  return result;
}

}  // namespace

Plan plan(const Profile& profile) {
  SetupPlan stock = planOf(profile, profile.stock, nullptr);
  SetupPlan proposed = planOf(profile, applied(profile.proposed, profile.stock), &stock);
  Plan result{
      .bikeName = profile.name,
      .revLimitRpm = profile.bike.engine.revLimitRpm,
      .idleRpm = profile.bike.engine.idleRpm.value_or(0.0),
      .shiftPoints = profile.bike.engine.shiftRpm ? ShiftPointSource::Typed : ShiftPointSource::RevLimit,
      .stock = std::move(stock),
      .proposed = std::move(proposed),
      .pins = {}};
  for (const Pin& pin : profile.pins)
    result.pins.push_back(planOf(profile, applied(pin.change, profile.stock), &result.stock, pin.name));
  return result;
}

}  // namespace layshaft
