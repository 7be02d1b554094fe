// SPDX-License-Identifier: GPL-3.0-or-later
// Laps of the club bike. Targets: less than 0.15 ms on a track of 3 km in segments and less than 1.5 ms on a
// recorded one of 600 stretches; a hundred pairs on segments in less than 20 ms on two cores.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstddef>

#include "core/profile_file.h"
#include "core/study/lap_ladder.h"
#include "core/study/lean.h"
#include "core/units.h"

namespace {

using namespace layshaft;

Profile lapProfile() {
  return *loadProfile(LAYSHAFT_SOURCE_DIR "/tests/reference/data/lap-club-600.bike.json");
}

/// The example's track, ridden again and again until it is so long.
Track longTrack(double metres) {
  Track track = lapProfile().tracks.front();
  const auto once = track.segments;
  const auto lengthOf = [](const TrackSegment& segment) {
    return segment.angleDeg ? *segment.radiusM * units::radiansFromDegrees(*segment.angleDeg)
                            : *segment.lengthM;
  };
  double length = 0.0;
  track.segments.clear();
  for (std::size_t i = 0; length < metres; ++i) {
    track.segments.push_back(once[i % once.size()]);
    length += lengthOf(track.segments.back());
  }
  return track;
}

/// A line that bends and rises little by little, in stretches of 5 m, as a recording is cut.
Track recordedTrack(std::size_t stretches) {
  Track track = lapProfile().tracks.front();
  TrackPath path;
  path.spacingM = 5.0;
  for (std::size_t i = 0; i < stretches; ++i) {
    const double round = 2.0 * units::kPi * static_cast<double>(i) / static_cast<double>(stretches);
    path.curvaturePerKm.push_back(25.0 * std::pow(std::sin(4.0 * round), 8) + 0.5 * std::sin(97.0 * round));
    path.slopePercent.push_back(3.0 * std::sin(3.0 * round));
  }
  track.segments.clear();
  track.path = SharedPath(std::move(path));
  return track;
}

struct Bench {
  explicit Bench(Track track) : course(lapCourse(profile.bike, *profile.ride, std::move(track))) {}

  Profile profile = lapProfile();
  LapCourse course;
  Asked question = asked(planInput(profile).shared);
  AllowedSpeed allowed{course, *question.bike};
  Rollout rollout = rolloutOf(profile.stock);
  RoadModel model{question.bike, question.road, profile.stock, rollout, Fitted{}};
  double crown = crownShare(profile.stock, rollout);
};

void rideLaps(benchmark::State& state, const Track& track) {
  const Bench bench(track);
  for (auto _ : state) benchmark::DoNotOptimize(lapTimeS(bench.allowed, bench.model, bench.crown));
}

void lapOfSegments(benchmark::State& state) {
  rideLaps(state, longTrack(3000.0));
}
BENCHMARK(lapOfSegments)->Unit(benchmark::kMicrosecond);

void lapOfRecording(benchmark::State& state) {
  rideLaps(state, recordedTrack(600));
}
BENCHMARK(lapOfRecording)->Unit(benchmark::kMicrosecond);

void allowedSpeedOfRecording(benchmark::State& state) {
  const Bench bench(recordedTrack(600));
  for (auto _ : state) benchmark::DoNotOptimize(AllowedSpeed(bench.course, *bench.question.bike));
}
BENCHMARK(allowedSpeedOfRecording)->Unit(benchmark::kMicrosecond);

/// On one core: two share them out.
void hundredPairs(benchmark::State& state) {
  const LapLadder ladder(ladderInput(lapProfile()), longTrack(3000.0));
  for (auto _ : state) benchmark::DoNotOptimize(ladder.rows({13, 17, 36, 55}, LapLadder::Bands::None));
}
BENCHMARK(hundredPairs)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
