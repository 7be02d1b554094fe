// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/chain_tension.h"

#include <algorithm>
#include <limits>

#include "core/roots.h"

namespace layshaft {
namespace {

/// The greatest value on a stretch of the smallest of three functions, each of which only rises or only falls
/// there: at an end, or where two of them meet.
template <class A, class B, class C>
double greatestOfSmallest(double from, double to, const A& a, const B& b, const C& c) {
  double greatest = 0.0;
  const auto take = [&](double v) { greatest = std::max(greatest, std::min({a(v), b(v), c(v)})); };
  const auto meet = [&](const auto& one, const auto& other) {
    const auto gap = [&](double v) { return one(v) - other(v); };
    const double left = gap(from), right = gap(to);
    if (left * right < 0.0) take(polishedRoot(gap, from, to, left, right));
  };
  take(from);
  take(to);
  meet(a, b);
  meet(a, c);
  meet(b, c);
  return greatest;
}

}  // namespace

double greatestTreadForceN(const PullModel& today) {
  constexpr double kNoBound = std::numeric_limits<double>::max();
  const PullModel model = today.withoutGrowthOn(today.bike().dryAsphalt);
  const bool bounded = model.bike().hasResistance();
  double greatest = 0.0;
  for (std::size_t g = 0; g < model.gearCount(); ++g)
    for (const auto& on : model.stretches(g, model.speedMps(model.bike().idleRpm, g), model.limitMps(g))) {
      const auto force = [&](double v) {
        return model.forceOfTorqueN(model.torque().onPiece(on.piece, model.rpm(v, g)), v, g);
      };
      const auto grip = [&](double v) { return bounded ? model.gripLimitN(v).value_or(kNoBound) : kNoBound; };
      const auto lift = [&](double v) { return bounded ? model.liftLimitN(v).value_or(kNoBound) : kNoBound; };
      greatest = std::max(greatest, greatestOfSmallest(on.fromMps, on.toMps, force, grip, lift));
    }
  return greatest;
}

}  // namespace layshaft
