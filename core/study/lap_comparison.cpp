// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/lap_comparison.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <utility>

#include "core/study/fitted.h"
#include "core/study/lean.h"
#include "core/track/line_noise.h"

namespace layshaft {
namespace {

constexpr double kRolloutOff = 0.02;  // of an estimate from the tyre size
constexpr double kGripOff = 0.05;
constexpr double kShiftTimeOffS = 0.02;

}  // namespace

/// What the doubts are made of, and they themselves once they are.
struct LapComparison::Source {
  Source(const Circumstances& theGiven, const Track& theTrack) : given(theGiven), track(theTrack) {}

  Circumstances given;
  Track track;
  std::once_flag once;
  Doubts doubts;

  std::shared_ptr<const AllowedSpeed> allowed(const PullBike& bike, const Track& on,
                                              double gripFactor) const {
    return std::make_shared<const AllowedSpeed>(lapCourse(given.bike, given.ride, on, gripFactor), bike);
  }
  void make(const Conditions& asGiven);
};

LapComparison::LapComparison(const Circumstances& given, const Asked& asked, const Track& track)
    : source_(std::make_shared<Source>(given, track)) {
  asGiven_ = {asked.bike, asked.road, source_->allowed(*asked.bike, track, 1.0), 1.0};
}

void LapComparison::Source::make(const Conditions& asGiven) {
  for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
    const double sign = side == 0 ? -1.0 : 1.0;
    for (auto& sides : doubts.off) sides[side] = asGiven;
    doubts.off[LapTimes::Rollout][side].rolloutFactor = 1.0 + sign * kRolloutOff;
    Conditions& grip = doubts.off[LapTimes::Grip][side];
    grip.allowed = allowed(*asGiven.bike, track, 1.0 + sign * kGripOff);
    if (grip.road.grip) *grip.road.grip *= 1.0 + sign * kGripOff;
    PullBike bike = *asGiven.bike;
    bike.shiftTimeS = std::max(0.0, bike.shiftTimeS + sign * kShiftTimeOffS);
    doubts.off[LapTimes::ShiftTime][side].bike = std::make_shared<const PullBike>(std::move(bike));
  }
  if (!track.path || track.path->curvatureNoisePerKm.value_or(0.0) == 0.0) return;
  doubts.otherDays.assign(LapTimes::kDays, asGiven);
  for (std::size_t day = 0; day < LapTimes::kDays; ++day) {
    Track other = track;
    other.path = SharedPath(recordedAnotherDay(*track.path, track.closed.value_or(false), day + 1));
    doubts.otherDays[day].allowed = allowed(*asGiven.bike, other, 1.0);
  }
}

const LapComparison::Doubts& LapComparison::doubts() const {
  std::call_once(source_->once, [this] { source_->make(asGiven_); });
  return source_->doubts;
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

RoadModel LapComparison::asGiven(const Setup& stock, const Setup& setup) const {
  return {asGiven_.bike, asGiven_.road, setup, rolloutOf(setup), fitted(stock, setup)};
}

std::optional<LapFigures> LapComparison::figures(const Setup& stock, const Setup& setup) const {
  if (!asGiven_.bike->accelerates()) return std::nullopt;
  return lap(*asGiven_.allowed, asGiven(stock, setup), crownShare(setup, rolloutOf(setup)));
}

std::optional<std::size_t> LapComparison::stop(const Setup& stock, const Setup& setup) const {
  if (!asGiven_.bike->accelerates()) return std::nullopt;
  return lapStop(*asGiven_.allowed, asGiven(stock, setup), crownShare(setup, rolloutOf(setup)));
}

std::optional<double> LapComparison::seconds(const Setup& stock, const Setup& setup) const {
  return secondsUnder(asGiven_, setup, fitted(stock, setup));
}

LapTimes LapComparison::times(const Setup& stock, const Setup& setup) const {
  const Fitted changed = fitted(stock, setup);
  LapTimes times{.seconds = secondsUnder(asGiven_, setup, changed), .off = {}, .otherDays = {}};
  if (!times.seconds) return times;
  const Doubts& doubts = this->doubts();
  const bool estimated = rolloutOf(setup).source == RolloutSource::TyreSize;
  for (std::size_t doubt = 0; doubt < LapTimes::kDoubts; ++doubt)
    for (const std::size_t side : {std::size_t{0}, std::size_t{1}})
      times.off[doubt][side] = doubt == LapTimes::Rollout && !estimated
                                   ? times.seconds
                                   : secondsUnder(doubts.off[doubt][side], setup, changed);
  for (std::size_t day = 0; day < doubts.otherDays.size(); ++day)
    times.otherDays[day] = secondsUnder(doubts.otherDays[day], setup, changed);
  return times;
}

std::optional<LapChange> LapComparison::change(const Setup& stock, const LapTimes& stockTimes,
                                               const Setup& setup) const {
  const LapTimes now = times(stock, setup);
  if (!stockTimes.seconds || !now.seconds) return std::nullopt;
  LapChange change{.seconds = *now.seconds - *stockTimes.seconds,
                   .bandS = lapBandS(stockTimes, now),
                   .axleS = 0.0,
                   .noiseS = lapNoiseS(stockTimes, now)};
  Fitted axleStays = fitted(stock, setup);
  if (axleStays.axleShiftM == 0.0) return change;
  axleStays.axleShiftM = 0.0;
  if (const auto without = secondsUnder(asGiven_, setup, axleStays)) change.axleS = *now.seconds - *without;
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
  return std::hypot(std::sqrt(squares), lapNoiseS(from, to));
}

double lapNoiseS(const LapTimes& from, const LapTimes& to) {
  if (!from.seconds || !to.seconds) return 0.0;
  const double seconds = *to.seconds - *from.seconds;
  double squares = 0.0;
  int days = 0;
  for (std::size_t day = 0; day < LapTimes::kDays; ++day) {
    if (!from.otherDays[day] || !to.otherDays[day]) continue;
    const double off = *to.otherDays[day] - *from.otherDays[day] - seconds;
    squares += off * off;
    ++days;
  }
  return days == 0 ? 0.0 : std::sqrt(squares / days);
}

}  // namespace layshaft
