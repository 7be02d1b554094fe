// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_trace.h"

#include <algorithm>

namespace layshaft {
namespace {

constexpr int kParts = 3;  // of a leg: straight enough for the eye

void followTo(const AllowedSpeed& allowed, LapPlace& at, std::size_t joint, std::vector<LapLeg>& legs) {
  const auto& stretches = allowed.stretches();
  const auto add = [&](const LapPlace& end) {
    if (end.timeS > at.timeS) legs.push_back({LapLeg::Kind::Follow, {}, false, at, end});
    at = end;
  };
  while (at.stretch < joint) {
    const auto& stretch = stretches[at.stretch];
    if (at.offsetM < stretch.heldM)
      add({at.timeS + (stretch.heldM - at.offsetM) / stretch.entryMps, at.stretch, stretch.heldM,
           stretch.entryMps});
    if (at.offsetM < stretch.here.lengthM)
      add({at.timeS + allowed.braking(at.stretch, at.mps).timeS, at.stretch, stretch.here.lengthM,
           stretch.exitMps});
    at = {at.timeS, at.stretch + 1, 0.0, stretch.exitMps};
  }
}

void pull(const LapBike& bike, LapChoice choice, LapPlace& at, std::vector<LapLeg>& legs) {
  const LapRide ride(bike, &legs);
  if (choice.slips && ride.pull(choice.gear, true, bike.launchRpm(), at) != LapEvent::Turns) return;
  for (std::size_t gear = choice.gear;; ++gear, --choice.shifts) {
    const auto leave = choice.shifts > 0 ? std::optional(bike.leavingRpm(gear, at.mps)) : std::nullopt;
    if (ride.pull(gear, false, leave, at) != LapEvent::Turns) return;
    if (ride.coast(gear, at) != LapEvent::Done) return;
  }
}

class Points {
 public:
  Points(const LapBike& bike, const RiddenLap& lap) : bike_(bike), lap_(lap) {}

  std::vector<LapPoint> all() {
    const bool closed = bike_.allowed().course().closed;
    for (std::size_t i = 0; i < lap_.legs.size(); ++i) {
      const LapLeg& leg = lap_.legs[i];
      const RiddenLap::Pull* pull = lap_.pullAt(i, closed);
      add(leg, pull, leg.start);
      if (leg.kind == LapLeg::Kind::Pull)
        inside(leg, pull);
      else if (leg.kind == LapLeg::Kind::Follow && leg.end.mps < leg.start.mps)
        insideBrakes(leg, pull);
      add(leg, pull, leg.end);
    }
    return std::move(points_);
  }

 private:
  void inside(const LapLeg& leg, const RiddenLap::Pull* pull) {
    const std::size_t stretch = leg.start.stretch;
    const BendPace pace(bike_.bendMps(stretch), std::max(leg.start.mps, leg.end.mps));
    const double from = pace.measure(leg.start.mps), to = pace.measure(leg.end.mps);
    const auto at = [&](double q) {
      const LapPush push = bike_.push(stretch, leg.on, pace.mps(q), pace.left(q));
      return pace.rate(q, push.mps2, push.fades());
    };
    for (int part = 1; part < kParts; ++part) {
      const double q = from + (to - from) * part / kParts;
      const SpeedSums sums = speedSums(at, from, q);
      add(leg, pull,
          {leg.start.timeS + sums.timeS, stretch, leg.start.offsetM + sums.distanceM, pace.mps(q)});
    }
  }

  void insideBrakes(const LapLeg& leg, const RiddenLap::Pull* pull) {
    const AllowedSpeed& allowed = bike_.allowed();
    const std::size_t stretch = leg.start.stretch;
    for (int part = 1; part < kParts; ++part) {
      const double mps = leg.start.mps + (leg.end.mps - leg.start.mps) * part / kParts;
      const ToTheEnd left = allowed.braking(stretch, mps);
      add(leg, pull,
          {leg.end.timeS - left.timeS, stretch, allowed.stretches()[stretch].here.lengthM - left.distanceM,
           mps});
    }
  }

  void add(const LapLeg& leg, const RiddenLap::Pull* pull, const LapPlace& place) {
    LapPoint point{.distanceM = bike_.allowed().stretches()[place.stretch].startM + place.offsetM,
                   .timeS = place.timeS,
                   .speedMps = place.mps,
                   .gear = {},
                   .rpm = {},
                   .limiter = leg.limiter};
    const double limit = bike_.torque().revLimitRpm();
    if (leg.kind != LapLeg::Kind::Follow) {
      const double rpm = bike_.rpm(place.stretch, place.mps, leg.on.gear);
      point.gear = static_cast<int>(leg.on.gear) + 1;
      point.rpm = leg.on.slips ? bike_.launchRpm() : rpm;
    } else if (pull) {
      // On the way down the gears: the lowest that the engine bears, not below the one that is to pull.
      std::size_t gear = pull->choice.gear;
      while (gear + 1 < bike_.gearCount() && bike_.rpm(place.stretch, place.mps, gear) > limit) ++gear;
      point.gear = static_cast<int>(gear) + 1;
      point.rpm = bike_.rpm(place.stretch, place.mps, gear);
    }
    points_.push_back(point);
  }

  const LapBike& bike_;
  const RiddenLap& lap_;
  std::vector<LapPoint> points_;
};

}  // namespace

const RiddenLap::Pull* RiddenLap::pullAt(std::size_t leg, bool closed) const {
  for (const Pull& pull : pulls)
    if (leg < pull.firstLeg + pull.legs) return &pull;
  return closed && !pulls.empty() ? &pulls.front() : nullptr;
}

RiddenLap riddenLap(const LapBike& bike, const ChosenLap& chosen, double startMps) {
  RiddenLap lap{.legs = {}, .pulls = {}, .startMps = startMps};
  LapPlace at{.timeS = 0.0, .stretch = 0, .offsetM = 0.0, .mps = startMps};
  for (const ChosenLap::Pull& next : chosen.pulls) {
    followTo(bike.allowed(), at, next.from.stretch, lap.legs);
    const std::size_t first = lap.legs.size();
    pull(bike, next.choice, at, lap.legs);
    lap.pulls.push_back({first, lap.legs.size() - first, next.choice});
    // The pull may have met the allowed speed at the very end of a stretch.
  }
  const bool there = !lap.legs.empty() && at.stretch + 1 == bike.allowed().stretches().size() &&
                     at.offsetM >= bike.allowed().stretches().back().here.lengthM;
  if (!there) followTo(bike.allowed(), at, bike.allowed().stretches().size(), lap.legs);
  return lap;
}

std::vector<LapPoint> lapPoints(const LapBike& bike, const RiddenLap& lap) {
  return Points(bike, lap).all();
}

}  // namespace layshaft
