// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/pull.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/roots.h"
#include "core/units.h"

namespace layshaft {

PullModel::PullModel(std::shared_ptr<const PullBike> shared, const Road& road, const Setup& setup,
                     const Rollout& rollout, const Fitted& fitted)
    : bike_(std::move(shared)), rollout_(rollout) {
  load_.massKg = bike_->massKg.value_or(0.0) + fitted.massKg;
  const PullBike& bike = *bike_;
  const double radius = rollout.radiusM();
  const double frontRadius =
      bike.frontRolloutM ? *bike.frontRolloutM / (2.0 * units::kPi) : radius;  // about alike on any bike
  const double asStock = bike.massKg.value_or(0.0) +
                         bike.frontWheelInertiaKgM2 / (frontRadius * frontRadius) +
                         bike.rearWheelInertiaKgM2 / (radius * radius);
  coastingMassKg_ = asStock + fitted.massKg + fitted.wheelInertiaKgM2 / (radius * radius);
  if (coastingMassKg_ < asStock / 2.0 ||
      load_.massKg < bike.massKg.value_or(0.0) /
                         2.0) {  // sprockets that weigh as much as the bike: typed in a wrong unit
    coastingMassKg_ = asStock;
    load_.massKg = bike.massKg.value_or(0.0);
  }
  const double final = finalRatio(setup.frontTeeth, setup.rearTeeth);
  gearCount_ = setup.gearRatios.count();
  for (std::size_t g = 0; g < gearCount_; ++g) {
    const double overall = setup.primaryRatio * setup.gearRatios[g] * final;
    gears_[g] = {.overall = overall,
                 .rpmAtRest = 0.0,
                 .rpmPerMps = 0.0,
                 .newtonsPerNm = 0.0,
                 .massKg = coastingMassKg_ + bike.engineInertiaKgM2 * overall * overall / (radius * radius),
                 .limitMps = 0.0};
  }
  if (bike.cgAheadM) {
    load_.cgAheadM = *bike.cgAheadM + fitted.axleShiftM;
    if (bike.wheelbaseM) load_.wheelbaseM = *bike.wheelbaseM + fitted.axleShiftM;
    if (*load_.cgAheadM <= 0.0 ||
        (load_.wheelbaseM && *load_.wheelbaseM <= 0.0)) {  // a chain that could never be fitted
      load_.cgAheadM = bike.cgAheadM;
      load_.wheelbaseM = bike.wheelbaseM;
    }
  }
  takeRoad(road);
}

void PullModel::addSlippingClutch(std::size_t gear, double rpm) {
  Gear& slip = gears_[gearCount_ + gear] = gears_[gear];
  slip.rpmAtRest = rpm;
  slip.rpmPerMps = 0.0;
  slip.massKg = coastingMassKg_;
}

void PullModel::takeRoad(const Road& road) {
  road_ = road;
  const PullBike& bike = *bike_;
  const double radius = rollout_.radiusM();
  gripShare_ = 1.0 - road.slip;
  for (Gear& gear : gears_) gear.newtonsPerNm = bike.efficiency * road.torqueFactor * gear.overall / radius;
  for (std::size_t g = 0; g < gearCount_; ++g) {
    gears_[g].rpmPerMps = 60.0 * gears_[g].overall / rollout_.metres / gripShare_;
    gears_[g].limitMps = speedMps(bike.torque->revLimitRpm(), g);
  }
  for (std::size_t g = 0; g < slippingGears(); ++g) gears_[gearCount_ + g].limitMps = gears_[g].limitMps;
  if (!bike.hasResistance()) return;
  forces_ = RoadForces(bike, load_, road);
}

PullModel PullModel::withoutGrowthOn(const Road& road) const {
  PullModel there(*this);
  there.rollout_.growthPerMps2 = 0.0;
  there.takeRoad(road);
  return there;
}

double PullModel::forceSlopeOn(std::size_t piece, double v, std::size_t gear) const {
  // F = N·T(n)/(1 + k·v²) with n = c·v/(1 + k·v²).
  const TorqueSpline& torque = *bike_->torque;
  const Gear& g = gears_[gear];
  const double k = rollout_.growthPerMps2, grown = growth(v), rpmNow = rpm(v, gear);
  const double rpmSlope = g.rpmPerMps * (1.0 - k * v * v) / (grown * grown);
  return g.newtonsPerNm / grown *
         (torque.slopeOnPiece(piece, rpmNow) * rpmSlope -
          torque.onPiece(piece, rpmNow) * 2.0 * k * v / grown);
}

std::optional<double> PullModel::boundMps2(double v) const {
  const bool fast = road_.isFast(v);
  const Stretch here{v, v, 0, fast};
  std::optional<double> bound;
  if (forces_.hasGrip()) bound = gripOn(here, v);
  if (forces_.hasLift())
    bound = std::min(bound.value_or(std::numeric_limits<double>::infinity()), liftMps2(v));
  return bound;
}

double PullModel::accelerationMps2(double v, std::size_t gear) const {
  const double free = freeAccelerationMps2(v, gear);
  const auto bound = boundMps2(v);
  return bound ? std::min(free, *bound) : free;
}

LimitedBy PullModel::limitOn(const Stretch& on, double v, std::size_t gear) const {
  const double free = freeOn(on, v, gear);
  const double infinite = std::numeric_limits<double>::infinity();
  const double grip = forces_.hasGrip() ? gripOn(on, v) : infinite,
               lift = forces_.hasLift() ? liftMps2(v) : infinite;
  if (free <= grip && free <= lift) return LimitedBy::Drag;
  return grip <= lift ? LimitedBy::Grip : LimitedBy::Lift;
}

std::optional<double> PullModel::gripLimitN(double v) const {
  if (!forces_.hasGrip()) return std::nullopt;
  const bool fast = road_.isFast(v);
  return load_.massKg * gripOn({v, v, 0, fast}, v) + resistanceN(v);
}

std::optional<double> PullModel::liftLimitN(double v) const {
  if (!forces_.hasLift()) return std::nullopt;
  return load_.massKg * liftMps2(v) + resistanceN(v);
}

std::optional<double> PullModel::greatestContactForceN(double v) const {
  const auto grip = gripLimitN(v), lift = liftLimitN(v);
  if (grip && lift) return std::min(*grip, *lift);
  return grip ? grip : lift;
}

PullModel::TakeOverSigns PullModel::takeOverSigns(const Stretch& on, std::size_t gear) const {
  TakeOverSigns signs;
  if (!forces_.hasGrip() && !forces_.hasLift()) return signs;
  const double third = (on.toMps - on.fromMps) / 3.0;
  std::array<double, 4> freeToGrip{}, freeToLift{}, gripToLift{};
  for (std::size_t i = 0; i < 4; ++i) {
    const double v = i == 3 ? on.toMps : on.fromMps + static_cast<double>(i) * third;
    const double free = freeOn(on, v, gear);
    const double grip = forces_.hasGrip() ? gripOn(on, v) : 0.0, lift = forces_.hasLift() ? liftMps2(v) : 0.0;
    freeToGrip[i] = free - grip;
    freeToLift[i] = free - lift;
    gripToLift[i] = grip - lift;
  }
  if (forces_.hasGrip()) signs.freeToGrip = cubicKeepsSign(freeToGrip);
  if (forces_.hasLift()) signs.freeToLift = cubicKeepsSign(freeToLift);
  // Which bound is the lower one counts only where the pull reaches them.
  const auto belowZero = [](double x) { return x < 0.0; };
  const bool unbounded =
      signs.freeToGrip && signs.freeToLift && belowZero(freeToGrip[0]) && belowZero(freeToLift[0]);
  if (forces_.hasGrip() && forces_.hasLift() && !unbounded) signs.gripToLift = cubicKeepsSign(gripToLift);
  return signs;
}

std::vector<PullModel::Stretch> PullModel::stretches(std::size_t gear, double from, double to) const {
  std::vector<Stretch> result;
  if (!(to > from)) return result;
  const TorqueSpline& torque = *bike_->torque;

  std::vector<double> cuts;
  cuts.reserve(torque.knotsRpm().size() + 4);
  if (gears_[gear].rpmPerMps > 0.0)
    for (const double knot : torque.knotsRpm())
      if (const double v = speedMps(knot, gear); v > from && v < to) cuts.push_back(v);
  const auto insert = [&](double v) {
    if (v > from && v < to) cuts.insert(std::upper_bound(cuts.begin(), cuts.end(), v), v);
  };
  if (road_.rolling.jumpMps) insert(*road_.rolling.jumpMps);
  if (road_.headwindMps < 0.0) insert(-road_.headwindMps);
  cuts.push_back(to);

  result.reserve(cuts.size() + 4);
  double start = from;
  for (const double end : cuts) {
    if (!(end > start)) continue;
    const double middle = start + (end - start) / 2.0;
    Stretch on{start, end, torque.pieceAt(rpm(middle, gear)), road_.isFast(middle)};
    // Cut again where another limit takes over.
    std::array<double, 9> takeOvers{};
    std::size_t count = 0;
    const TakeOverSigns signs = takeOverSigns(on, gear);
    const auto meet = [&](bool keepsSign, const auto& gap) {
      if (keepsSign) return;
      const MonotonePieces pieces = monotonePieces(gap, start, end);
      for (std::size_t p = 1; p < pieces.count; ++p)
        if (pieces.value[p - 1] * pieces.value[p] < 0.0)
          takeOvers[count++] =
              polishedRoot(gap, pieces.at[p - 1], pieces.at[p], pieces.value[p - 1], pieces.value[p]);
    };
    meet(signs.freeToGrip, [&](double v) { return freeOn(on, v, gear) - gripOn(on, v); });
    meet(signs.freeToLift, [&](double v) { return freeOn(on, v, gear) - liftMps2(v); });
    meet(signs.gripToLift, [&](double v) { return gripOn(on, v) - liftMps2(v); });
    std::sort(takeOvers.begin(), takeOvers.begin() + static_cast<std::ptrdiff_t>(count));
    for (std::size_t c = 0; c < count; ++c) {
      const double next = c + 1 < count ? takeOvers[c + 1] : end;
      if (!(takeOvers[c] > on.fromMps && takeOvers[c] < next)) continue;
      // Only where it is the smallest limit that changes.
      if (limitOn(on, on.fromMps + (takeOvers[c] - on.fromMps) / 2.0, gear) ==
          limitOn(on, takeOvers[c] + (next - takeOvers[c]) / 2.0, gear))
        continue;
      result.push_back({on.fromMps, takeOvers[c], on.piece, on.fast});
      on.fromMps = takeOvers[c];
    }
    result.push_back(on);
    start = end;
  }
  return result;
}

PullModel::Coasted PullModel::coast(double from, double seconds) const {
  // Over the tenths of a second of a shift the classical fourth-order Runge-Kutta step is exact to the last
  // digits: nothing in the resistance changes in less than some seconds.
  constexpr double kStepS = 0.05;
  const auto jump = road_.rolling.jumpMps;
  const double mass = coastingMassKg();
  Coasted state{from, 0.0};
  bool fast = jump && from > *jump;
  const auto advanced = [&](double h) {
    const auto slope = [&](double v) { return -resistanceOn(v, fast) / mass; };
    const double v0 = state.speedMps;
    const double k1 = slope(v0), k2 = slope(v0 + h / 2 * k1), k3 = slope(v0 + h / 2 * k2),
                 k4 = slope(v0 + h * k3);
    return Coasted{v0 + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4),
                   state.distanceM + h * (v0 + h / 6 * (k1 + k2 + k3))};
  };
  double left = seconds;
  while (left > 0.0) {
    const double h = std::min(left, kStepS);
    Coasted next = advanced(h);
    double used = h;
    const bool crosses = jump && (fast ? next.speedMps < *jump : next.speedMps > *jump);
    if (crosses) {
      const auto beyond = [&](double s) { return advanced(s).speedMps - *jump; };
      used = polishedRoot(beyond, 0.0, h, state.speedMps - *jump, next.speedMps - *jump);
      next = advanced(used);
      next.speedMps = *jump;
      fast = !fast;
      if (used <= 0.0 && std::abs(state.speedMps - *jump) == 0.0) {
        // The jump holds the speed: slower it would gain, faster it would lose.
        const double slower = -resistanceOn(*jump, false), faster = -resistanceOn(*jump, true);
        if (slower > 0.0 && faster < 0.0) return {*jump, state.distanceM + *jump * left};
      }
    }
    if (next.speedMps <= 0.0) return {0.0, std::max(state.distanceM, next.distanceM)};
    state = next;
    left -= used;
  }
  return state;
}

}  // namespace layshaft
