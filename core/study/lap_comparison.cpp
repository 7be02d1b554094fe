// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_comparison.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/study/fitted.h"
#include "core/study/lean.h"

namespace layshaft {
namespace {

constexpr double kRolloutOff = 0.02;  // of an estimate from the tyre size
constexpr double kGripOff = 0.05;
constexpr double kShiftTimeOffS = 0.02;

/// The conditions of a doubt, less and more of it.
std::size_t indexOf(std::size_t doubt, std::size_t side) {
  return 1 + 2 * doubt + side;
}

}  // namespace

LapComparison::LapComparison(const Circumstances& given, const Asked& asked, const Track& track) {
  const bool accelerates = asked.bike->accelerates();
  const auto allowedWith = [&](double gripFactor) {
    return std::make_shared<const AllowedSpeed>(lapCourse(given.bike, given.ride, track, gripFactor),
                                                *asked.bike);
  };
  conditions_.push_back({asked.bike, asked.road, allowedWith(1.0), 1.0});
  const Conditions& asGiven = conditions_.front();
  if (!accelerates || asGiven.allowed->stretches().empty()) return;
  conditions_.resize(1 + 2 * LapTimes::kDoubts, asGiven);
  for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
    const double sign = side == 0 ? -1.0 : 1.0;
    conditions_[indexOf(LapTimes::Rollout, side)].rolloutFactor = 1.0 + sign * kRolloutOff;
    Conditions& grip = conditions_[indexOf(LapTimes::Grip, side)];
    grip.allowed = allowedWith(1.0 + sign * kGripOff);
    if (grip.road.grip) *grip.road.grip *= 1.0 + sign * kGripOff;
    PullBike bike = *asked.bike;
    bike.shiftTimeS = std::max(0.0, bike.shiftTimeS + sign * kShiftTimeOffS);
    conditions_[indexOf(LapTimes::ShiftTime, side)].bike = std::make_shared<const PullBike>(std::move(bike));
  }
}

std::optional<double> LapComparison::secondsUnder(const Conditions& conditions, const Setup& setup,
                                                  const Fitted& fitted) const {
  if (!conditions.bike->accelerates()) return std::nullopt;
  Rollout rollout = rolloutOf(setup);
  const double crown = crownShare(setup, rollout);
  rollout.metres *= conditions.rolloutFactor;
  return lapTimeS(*conditions.allowed, RoadModel(conditions.bike, conditions.road, setup, rollout, fitted),
                  crown);
}

std::optional<LapFigures> LapComparison::figures(const Setup& stock, const Setup& setup) const {
  const Conditions& asGiven = conditions_.front();
  if (!asGiven.bike->accelerates()) return std::nullopt;
  const Rollout rollout = rolloutOf(setup);
  return lap(*asGiven.allowed, RoadModel(asGiven.bike, asGiven.road, setup, rollout, fitted(stock, setup)),
             crownShare(setup, rollout));
}

std::optional<double> LapComparison::seconds(const Setup& stock, const Setup& setup) const {
  return secondsUnder(conditions_.front(), setup, fitted(stock, setup));
}

LapTimes LapComparison::times(const Setup& stock, const Setup& setup) const {
  const Fitted changed = fitted(stock, setup);
  LapTimes times{.seconds = secondsUnder(conditions_.front(), setup, changed), .off = {}};
  if (!times.seconds || conditions_.size() == 1) return times;
  const bool estimated = rolloutOf(setup).source == RolloutSource::TyreSize;
  for (std::size_t doubt = 0; doubt < LapTimes::kDoubts; ++doubt)
    for (const std::size_t side : {std::size_t{0}, std::size_t{1}})
      times.off[doubt][side] = doubt == LapTimes::Rollout && !estimated
                                   ? times.seconds
                                   : secondsUnder(conditions_[indexOf(doubt, side)], setup, changed);
  return times;
}

std::optional<LapChange> LapComparison::change(const Setup& stock, const LapTimes& stockTimes,
                                               const Setup& setup) const {
  const LapTimes now = times(stock, setup);
  if (!stockTimes.seconds || !now.seconds) return std::nullopt;
  LapChange change{
      .seconds = *now.seconds - *stockTimes.seconds, .bandS = lapBandS(stockTimes, now), .axleS = 0.0};
  Fitted axleStays = fitted(stock, setup);
  if (axleStays.axleShiftM == 0.0) return change;
  axleStays.axleShiftM = 0.0;
  if (const auto without = secondsUnder(conditions_.front(), setup, axleStays))
    change.axleS = *now.seconds - *without;
  return change;
}

double lapBandS(const LapTimes& from, const LapTimes& to) {
  if (!from.seconds || !to.seconds) return 0.0;
  const double seconds = *to.seconds - *from.seconds;
  double squares = 0.0;
  for (std::size_t doubt = 0; doubt < LapTimes::kDoubts; ++doubt) {
    double most = 0.0;
    for (const std::size_t side : {std::size_t{0}, std::size_t{1}})
      if (from.off[doubt][side] && to.off[doubt][side])
        most = std::max(most, std::abs(*to.off[doubt][side] - *from.off[doubt][side] - seconds));
    squares += most * most;
  }
  return std::sqrt(squares);
}

}  // namespace layshaft
