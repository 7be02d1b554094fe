// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/pull_track.h"

#include <algorithm>
#include <limits>

namespace layshaft {
namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();

}  // namespace

PullTrack::PullTrack(const RoadModel& model, std::size_t gear, double fromMps)
    : model_(&model), gear_(gear), fromMps_(fromMps), reached_{0.0, 0.0, fromMps} {}

void PullTrack::extend(double mostMps, double untilM) {
  const double most = std::min(mostMps, model_->fastestMps(gear_));
  if (ranOut_ || most <= reached_.speedMps || untilM <= reached_.distanceM) return;
  ranOut_ = pullOn(*model_, gear_, {.mostMps = most, .untilM = untilM}, reached_, legs_) == PullEnd::NoPull;
}

std::optional<RunPlace> PullTrack::atSpeed(double mps) {
  if (mps == fromMps_) return RunPlace{0.0, 0.0, fromMps_};
  extend(mps, kFar);
  const auto leg =
      std::partition_point(legs_.begin(), legs_.end(), [&](const RunLeg& l) { return l.end.speedMps < mps; });
  return leg == legs_.end() ? std::nullopt : leg->atSpeed(*model_, mps);
}

std::optional<RunPlace> PullTrack::atDistance(double metres, double mostMps) {
  if (metres == 0.0) return RunPlace{0.0, 0.0, fromMps_};
  extend(mostMps, metres);
  const auto leg = std::partition_point(legs_.begin(), legs_.end(),
                                        [&](const RunLeg& l) { return l.end.distanceM < metres; });
  if (leg == legs_.end()) return std::nullopt;
  const auto place = leg->atDistance(*model_, metres);
  return place && place->speedMps <= mostMps ? place : std::nullopt;
}

RunPlace PullTrack::end() {
  extend(kFar, kFar);
  return reached_;
}

bool PullTrack::runsOut() {
  extend(kFar, kFar);
  return ranOut_;
}

}  // namespace layshaft
