// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/study/lap_bike.h"
#include "core/study/lap_place.h"
#include "core/study/lap_search.h"
#include "core/study/lap_trace.h"

namespace layshaft {
namespace {

struct Started {
  double startMps;
  ChosenLap lap;
};

/// The lap of an open track; of a closed one that which begins as fast as it ends.
std::optional<Started> chosenLap(const AllowedSpeed& allowed, LapSearch& search) {
  constexpr std::size_t kMostLaps = 100;
  constexpr double kSameMps = 1e-9;
  const bool closed = allowed.course().closed;
  const double most = allowed.stretches().front().entryMps;
  double start = closed ? most : std::min(allowed.course().startMps, most);
  std::vector<Started> laps;
  while (laps.size() < kMostLaps) {
    auto lap = search.from(start);
    if (!lap) return std::nullopt;
    laps.push_back({start, *std::move(lap)});
    const double end = std::min(laps.back().lap.endMps, most);
    if (!closed || std::abs(end - start) < kSameMps) break;
    start = end;
    // Where laps take turns the last of them is known by now.
    const auto again =
        std::find_if(laps.begin(), laps.end(), [&](const Started& s) { return s.startMps == start; });
    if (again == laps.end()) continue;
    const auto turns = static_cast<std::size_t>(laps.end() - again);
    return *(again + static_cast<std::ptrdiff_t>((kMostLaps - laps.size() + turns - 1) % turns));
  }
  return laps.back();
}

bool canLap(const AllowedSpeed& allowed, const RoadModel& model) {
  return !allowed.stretches().empty() && model.bike().accelerates();
}

/// The figures of a lap that was ridden.
class Figures {
 public:
  Figures(const LapBike& bike, const RiddenLap& lap)
      : bike_(bike), lap_(lap), closed_(bike.allowed().course().closed) {}

  LapFigures all(double lapS) {
    LapFigures figures{.timeS = lapS,
                       .topMps = lap_.startMps,
                       .shifts = 0,
                       .limiterS = 0.0,
                       .fullThrottleS = 0.0,
                       .segments = segments(),
                       .pulls = {},
                       .points = lapPoints(bike_, lap_)};
    for (const LapLeg& leg : lap_.legs) {
      figures.topMps = std::max({figures.topMps, leg.start.mps, leg.end.mps});
      const double seconds = leg.end.timeS - leg.start.timeS;
      if (leg.limiter) figures.limiterS += seconds;
      if (leg.kind == LapLeg::Kind::Pull || leg.kind == LapLeg::Kind::Hold) figures.fullThrottleS += seconds;
    }
    for (const RiddenLap::Pull& pull : lap_.pulls) {
      if (pull.legs == 0) continue;
      figures.pulls.push_back(pullOf(pull));
      figures.shifts += figures.pulls.back().endGear - figures.pulls.back().firstGear;
    }
    return figures;
  }

 private:
  double distance(const LapPlace& place) const {
    return bike_.allowed().stretches()[place.stretch].startM + place.offsetM;
  }

  LapPullFigures pullOf(const RiddenLap::Pull& pull) const {
    const LapLeg& first = lap_.legs[pull.firstLeg];
    const LapLeg& last = lap_.legs[pull.firstLeg + pull.legs - 1];
    return {
        .fromM = distance(first.start),
        .toM = distance(last.end),
        .fromMps = first.start.mps,
        .endMps = last.end.mps,
        .firstGear = static_cast<int>(pull.choice.gear) + 1,
        .endGear = static_cast<int>(last.on.gear) + 1,
        .endRpm = last.on.slips ? bike_.launchRpm() : bike_.rpm(last.end.stretch, last.end.mps, last.on.gear),
        .seconds = last.end.timeS - first.start.timeS};
  }

  std::vector<LapSegment> segments() const {
    std::vector<LapSegment> result(bike_.allowed().course().segments,
                                   {.timeS = 0.0,
                                    .entryMps = 0.0,
                                    .minMps = std::numeric_limits<double>::infinity(),
                                    .exitMps = 0.0,
                                    .gearAtMin = {},
                                    .rpmAtMin = {}});
    if (result.empty()) return result;
    for (std::size_t i = 0; i < lap_.legs.size(); ++i) {
      const LapLeg& leg = lap_.legs[i];
      LapSegment& segment = result[bike_.allowed().stretches()[leg.start.stretch].here.segment];
      if (leg.start.offsetM == 0.0) segment.entryMps = leg.start.mps;
      segment.exitMps = leg.end.mps;
      segment.timeS += leg.end.timeS - leg.start.timeS;
      takeLowest(segment, i, leg.start);
      takeLowest(segment, i, leg.end);
    }
    return result;
  }

  void takeLowest(LapSegment& segment, std::size_t index, const LapPlace& place) const {
    constexpr double kLower = 1e-9;  // of the speed: what only rounding makes lower is not
    if (!(place.mps < segment.minMps * (1.0 - kLower))) return;
    segment.minMps = place.mps;
    const LapLeg& leg = lap_.legs[index];
    std::size_t gear = leg.on.gear;
    if (leg.kind == LapLeg::Kind::Follow) {
      const RiddenLap::Pull* pull = lap_.pullAt(index, closed_);
      segment.gearAtMin.reset();
      segment.rpmAtMin.reset();
      if (!pull) return;
      gear = pull->choice.gear;
    }
    segment.gearAtMin = static_cast<int>(gear) + 1;
    segment.rpmAtMin = leg.on.slips ? bike_.launchRpm() : bike_.rpm(place.stretch, place.mps, gear);
  }

  const LapBike& bike_;
  const RiddenLap& lap_;
  bool closed_;
};

}  // namespace

std::optional<double> lapTimeS(const AllowedSpeed& allowed, const RoadModel& model, double crownShare) {
  if (!canLap(allowed, model)) return std::nullopt;
  const LapBike bike(model, crownShare, allowed);
  LapSearch search(bike);
  const auto chosen = chosenLap(allowed, search);
  return chosen ? std::optional(chosen->lap.seconds) : std::nullopt;
}

std::optional<LapFigures> lap(const AllowedSpeed& allowed, const RoadModel& model, double crownShare) {
  if (!canLap(allowed, model)) return std::nullopt;
  const LapBike bike(model, crownShare, allowed);
  LapSearch search(bike);
  const auto chosen = chosenLap(allowed, search);
  if (!chosen) return std::nullopt;
  const RiddenLap ridden = riddenLap(bike, chosen->lap, chosen->startMps);
  return Figures(bike, ridden).all(chosen->lap.seconds);
}

std::optional<std::size_t> lapStop(const AllowedSpeed& allowed, const RoadModel& model, double crownShare) {
  if (!canLap(allowed, model)) return std::nullopt;
  const LapBike bike(model, crownShare, allowed);
  LapSearch search(bike);
  if (chosenLap(allowed, search) || !search.furthestStop()) return std::nullopt;
  return allowed.stretches()[*search.furthestStop()].here.segment;
}

std::vector<LapDifference> lapDifference(const LapFigures& from, const LapFigures& to) {
  return lapDifference(from.points, to.points);
}

}  // namespace layshaft
