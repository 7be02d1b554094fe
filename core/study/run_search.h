// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <vector>

#include "core/study/pull_track.h"
#include "core/study/run.h"

namespace layshaft {

/// The plan that gets somewhere soonest, and where it stands then.
struct SoonestRun {
  RunPlan plan;
  RunPoint end;
};

/// Looks for the plan with the least time among all that begin in one of some ways: every figure is what the
/// bike can do, so it is continuous as a ratio is turned, and two pairs can be compared by it. Of plans
/// within 1e-6 s the one with fewer shifts counts, then the one with the lower first gear.
///
/// Where plans use the same gear they ride along one track, and a plan is given up once nothing in it can win
/// any more. Asking several figures of one search is cheaper than several searches. Keeps a pointer to its
/// model.
class RunSearch {
 public:
  RunSearch(const RoadModel& model, double fromMps, const std::vector<RunPlan>& starts);
  RunSearch(const RunSearch&) = delete;  // its plans point into its own tracks
  RunSearch& operator=(const RunSearch&) = delete;

  /// None where no plan ever gets there, or none begins to move.
  std::optional<SoonestRun> toDistance(double metres);
  std::optional<SoonestRun> toSpeed(double mps);

 private:
  class Target;
  class Choice;

  /// One gear of a plan that shifts as often as it can, or the clutch slipping into its first.
  struct Stage {
    PullTrack* track;
    RunPlace entered;             ///< of the run
    RunPlace onTrack;             ///< the same place, counted along the track
    std::optional<double> leave;  ///< the speed at which the next stage is due; none in the last one
    std::optional<RunLeg> shift;  ///< the coast that led here
  };
  struct Trunk {
    RunPlan start;
    std::vector<Stage> stages;
    bool complete = false;
  };

  std::optional<SoonestRun> soonest(const Target& target);
  void ride(Trunk& trunk, const Target& target, Choice& choice);
  Stage stageAt(std::size_t gear, const RunPlace& entered);
  /// Makes the stage that follows; false if the last one cannot be left.
  bool goOn(Trunk& trunk);
  /// The shortest time a run could still take that has come to a place and gets no faster than `mostMps`.
  double leastTime(const RunPlace& place, double mostMps, const Target& target) const;
  std::optional<RunPoint> onTheWay(const Stage& stage, const Target& target) const;
  std::optional<RunPoint> staying(const Stage& stage, const Target& target) const;

  const RoadModel* model_;
  double fastestMps_;  ///< of any plan
  std::deque<PullTrack> tracks_;
  std::vector<Trunk> trunks_;
};

}  // namespace layshaft
