// SPDX-License-Identifier: GPL-3.0-or-later
// A recording of 100,000 points with heights and times: GPX text to track. Target: under 0.5 s, whether it is
// one long lap or ten.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <random>
#include <string>

#include "core/track/recorded_track.h"
#include "core/units.h"

namespace {

using namespace layshaft;

constexpr int kPoints = 100000;

std::string gpxOfLaps(double laps) {
  std::mt19937 random(1);
  std::normal_distribution<> noiseDeg(0.0, 3e-6);
  std::string text =
      "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"bench\" "
      "xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n";
  for (int i = 0; i < kPoints; ++i) {
    const double t = 2.0 * units::kPi * (laps + 0.05) * i / kPoints;
    char point[200];
    std::snprintf(
        point, sizeof point,
        "<trkpt lat=\"%.7f\" lon=\"%.7f\"><ele>%.1f</ele><time>2026-05-12T%02d:%02d:%06.3fZ</time></trkpt>\n",
        48.0 + 0.01 * std::sin(t) + noiseDeg(random), 11.0 + 0.02 * std::cos(t) + noiseDeg(random),
        400.0 + 20.0 * std::sin(3.0 * t), i / 360000, i / 6000 % 60, i % 6000 * 0.01);
    text += point;
  }
  return text + "</trkseg></trk></gpx>\n";
}

void recordingToTrack(benchmark::State& state) {
  const std::string text = gpxOfLaps(static_cast<double>(state.range(0)));
  for (auto _ : state) {
    const auto recording = readRecording(text, "bench");
    const auto track = recordedTrack(*recording);
    if (!track || track->laps != static_cast<std::size_t>(state.range(0)))
      state.SkipWithError("no such laps");
    benchmark::DoNotOptimize(track);
  }
}
BENCHMARK(recordingToTrack)->Arg(1)->Arg(10)->Unit(benchmark::kMillisecond);

void readingAlone(benchmark::State& state) {
  const std::string text = gpxOfLaps(1.0);
  for (auto _ : state) benchmark::DoNotOptimize(readRecording(text, "bench"));
}
BENCHMARK(readingAlone)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
