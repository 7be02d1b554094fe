// SPDX-License-Identifier: GPL-3.0-or-later
// Laps of the club bike, beside a naive lap stepped through time. Targets: less than 0.15 ms on a track of 3
// km in segments and less than 1.5 ms on a recorded one of 600 stretches; a hundred pairs in less than 20 ms
// and 100 ms on two cores; a search of 729 gearboxes stops within 50 ms.
#include <benchmark/benchmark.h>

#include <atomic>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <thread>
#include <vector>

#include "core/profile_file.h"
#include "core/study/gearbox_search.h"
#include "core/study/lap_ladder.h"
#include "core/study/lean.h"
#include "core/study/shifting.h"
#include "core/units.h"
#include "tests/reference/lap_second_opinion.h"

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
  explicit Bench(const Track& track) : course(lapCourse(profile.bike, *profile.ride, track)) {}

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

/// The same lap of segments as a check steps it through time, every gear choice for itself.
void naiveLapOfSegments(benchmark::State& state) {
  const Track track = longTrack(3000.0);
  const Bench bench(track);
  const RoadModel& model = bench.model;
  std::vector<double> best;
  for (std::size_t g = 0; g + 1 < model.gearCount(); ++g)
    best.push_back(model.rpm(bestShiftMps(model, g), g));
  for (auto _ : state)
    benchmark::DoNotOptimize(test::LapOpinion(bench.profile, bench.profile.stock, 0.0, track,
                                              model.shifts().rpm, best, model.launchRpm())
                                 .seconds());
}
BENCHMARK(naiveLapOfSegments)->Unit(benchmark::kMicrosecond)->Iterations(1);

/// On one core: two share them out.
void hundredPairs(benchmark::State& state, const Track& track) {
  const LapLadder ladder(ladderInput(lapProfile()), track);
  for (auto _ : state) benchmark::DoNotOptimize(ladder.rows({13, 17, 36, 55}, LapLadder::Bands::None));
}
BENCHMARK_CAPTURE(hundredPairs, segments, longTrack(3000.0))->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(hundredPairs, recording, recordedTrack(600))->Unit(benchmark::kMillisecond);

/// Two other pairs of teeth for each of six gears: 3⁶ gearboxes, whose ratios keep falling.
std::vector<SpareGearPair> twoOthersForEachGear(const GearRatios& ratios) {
  std::vector<SpareGearPair> pairs;
  for (std::size_t g = 0; g < ratios.count(); ++g)
    for (const int driving : {40, 41}) {
      const double driven = std::round(ratios[g] * 40.0);
      pairs.push_back({.gear = static_cast<int>(g) + 1,
                       .driving = driving,
                       .driven = static_cast<int>(driven) + (driving == 40 ? 1 : 0)});
    }
  return pairs;
}

GearboxSearch gearboxSearch(const Track& track) {
  const LadderInput input = ladderInput(lapProfile());
  return {input, track, twoOthersForEachGear(input.stock.gearRatios)};
}

std::vector<PairTeeth> twentyPairs() {
  std::vector<PairTeeth> pairs;
  for (int front = 14; front <= 17; ++front)
    for (int rear = 41; rear <= 45; ++rear) pairs.push_back({front, rear});
  return pairs;
}

/// 729 gearboxes with 20 pairs each, on one core.
void allGearboxes(benchmark::State& state) {
  const GearboxSearch search = gearboxSearch(longTrack(3000.0));
  const auto pairs = twentyPairs();
  if (search.choices().gearboxes.size() != 729) return state.SkipWithError("not 729 gearboxes");
  for (auto _ : state) benchmark::DoNotOptimize(search.rows(pairs));
}
BENCHMARK(allGearboxes)->Unit(benchmark::kMillisecond)->Iterations(1);

/// From the word to the search's end, on the track whose laps take longest.
void stoppingAllGearboxes(benchmark::State& state) {
  using Clock = std::chrono::steady_clock;
  const GearboxSearch search = gearboxSearch(recordedTrack(600));
  const auto pairs = twentyPairs();
  for (auto _ : state) {
    std::atomic<bool> stop = false;
    Clock::time_point ended;
    std::thread other([&] {
      benchmark::DoNotOptimize(search.rows(pairs, [&](std::size_t) { return stop.load(); }));
      ended = Clock::now();
    });
    std::this_thread::sleep_for(std::chrono::milliseconds(30));
    const Clock::time_point said = Clock::now();
    stop = true;
    other.join();
    state.SetIterationTime(std::chrono::duration<double>(ended - said).count());
  }
}
BENCHMARK(stoppingAllGearboxes)->UseManualTime()->Iterations(30)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
