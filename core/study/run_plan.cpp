// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run_plan.h"

#include <algorithm>

#include "core/study/pull_along.h"

namespace layshaft {

std::optional<double> leavingMps(const RoadModel& model, std::size_t gear, double from) {
  if (gear + 1 >= model.gearCount()) return std::nullopt;
  const double mps = model.speedMps(model.highestRpm(gear), gear);
  return model.shifts().typed && pullRunsOut(model, gear, from, mps) ? bestShiftMps(model, gear) : mps;
}

bool takesOver(const RoadModel& model, std::size_t gear, double mps) {
  return mps < model.limitMps(gear) && pullsAt(model, gear, mps);
}

std::vector<RunPlan> standingStarts(const RoadModel& model) {
  std::vector<RunPlan> starts;
  for (std::size_t g = 0; g < model.startGears(); ++g) starts.push_back({.gear = g, .slips = true});
  return starts;
}

std::vector<RunPlan> startsAt(const RoadModel& model, double mps) {
  std::vector<RunPlan> starts;
  if (mps == 0.0)
    starts = standingStarts(model);
  else if (mps < model.fastestMps(model.slipping()))
    starts.push_back({.gear = 0, .slips = true});
  const double lowest = std::max(model.bike().idleRpm, model.torque().firstRpm());
  for (std::size_t g = 0; g < model.gearCount(); ++g)
    if (const double rpm = model.rpm(mps, g); rpm >= lowest && rpm <= model.highestRpm(g))
      starts.push_back({.gear = g});
  for (std::size_t g = model.gearCount(); starts.empty() && g-- > 0;) starts = startsIn(model, g, mps);
  return starts;
}

std::vector<RunPlan> startsIn(const RoadModel& model, std::size_t gear, double mps) {
  if (gear >= model.gearCount()) return {};
  const double rpm = model.rpm(mps, gear);
  if (rpm < model.bike().idleRpm || rpm > model.torque().revLimitRpm()) return {};
  std::vector<RunPlan> starts;
  const bool slips = mps == 0.0 ? gear < model.startGears() : gear == 0;
  if (slips && mps < model.fastestMps(model.slipping(gear))) starts.push_back({.gear = gear, .slips = true});
  starts.push_back({.gear = gear});
  return starts;
}

}  // namespace layshaft
