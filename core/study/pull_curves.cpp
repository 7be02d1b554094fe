// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/pull_curves.h"

#include <algorithm>

namespace layshaft {
namespace {

constexpr int kPartsOfAStretch = 3;
constexpr int kPartsOfAParabola = 24;

PullPoint pointAt(const PullModel& model, const PullModel::Stretch& on, double v, std::size_t gear) {
  const double torque = model.torque().onPiece(on.piece, model.rpm(v, gear));
  PullPoint point{v, model.forceOfTorqueN(torque, v, gear), 0.0};
  if (model.bike().hasResistance()) point.accelerationMps2 = model.freeOn(on, v, gear);
  return point;
}

void append(std::vector<PullPoint>& points, const PullModel& model, std::size_t gear, double from,
            double to) {
  for (const auto& on : model.stretches(gear, from, to)) {
    if (points.empty() || points.back().speedMps < on.fromMps || on.fromMps == from)
      points.push_back(pointAt(model, on, on.fromMps, gear));
    const bool assumed = model.torque().isBeyond(on.piece);
    for (int i = 1; i <= kPartsOfAStretch; ++i) {
      points.push_back(pointAt(model, on, on.fromMps + (on.toMps - on.fromMps) * i / kPartsOfAStretch, gear));
      points.back().assumed = assumed;
    }
  }
}

}  // namespace

PullCurves pullCurves(const RoadModel& model) {
  PullCurves curves;
  double fastest = 0.0;
  for (std::size_t g = 0; g < model.gearCount(); ++g) {
    append(curves.gears.emplace_back(), model, g, model.speedMps(model.bike().idleRpm, g), model.limitMps(g));
    fastest = std::max(fastest, model.limitMps(g));
  }

  double from = 0.0;
  if (model.launchRpm() > 0.0) {
    from = model.speedMps(model.launchRpm(), 0);
    append(curves.followed, model, model.slipping(), 0.0, from);
  }
  for (std::size_t g = 0; g < model.gearCount(); ++g) {
    const bool last = g >= model.shifts().rpm.size();
    const double to = last ? model.limitMps(g) : model.speedMps(model.shifts().rpm[g], g);
    if (to <= from) continue;
    append(curves.followed, model, g, from, to);
    if (!last) curves.shifts.push_back(curves.followed.back());
    from = to;
  }

  if (!model.bike().hasResistance()) return curves;
  for (int i = 0; i <= kPartsOfAParabola; ++i) {
    const double v = fastest * i / kPartsOfAParabola;
    const double resistance = model.resistanceN(v), mass = model.massKg();
    curves.resistance.push_back({v, resistance, 0.0});
    if (const auto force = model.gripLimitN(v))
      curves.grip.push_back({v, *force, (*force - resistance) / mass});
    if (const auto force = model.liftLimitN(v))
      curves.lift.push_back({v, *force, (*force - resistance) / mass});
  }
  return curves;
}

}  // namespace layshaft
