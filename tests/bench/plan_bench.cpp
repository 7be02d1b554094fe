// SPDX-License-Identifier: GPL-3.0-or-later
// What the core costs: a plan of one profile (target without engine curve: under 50 µs) and reading a
// profile.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

#include "core/plan.h"
#include "core/profile_file.h"
#include "core/report.h"

namespace {

using namespace layshaft;

std::string sampleText() {
  std::ifstream in(LAYSHAFT_SOURCE_DIR "/sample-profiles/club-600.bike.json");
  return {std::istreambuf_iterator<char>(in), {}};
}

Profile sample() {
  return readProfile(sampleText()).value();
}

void planWithoutCurve(benchmark::State& state) {
  Profile profile = sample();
  profile.bike.engine.torqueCurve.reset();
  for (auto _ : state) benchmark::DoNotOptimize(plan(profile));
}
BENCHMARK(planWithoutCurve)->Unit(benchmark::kMicrosecond);

void planOfTheSample(benchmark::State& state) {
  const Profile profile = sample();
  for (auto _ : state) benchmark::DoNotOptimize(plan(profile));
}
BENCHMARK(planOfTheSample)->Unit(benchmark::kMicrosecond);

void readTheSample(benchmark::State& state) {
  const std::string text = sampleText();
  for (auto _ : state) benchmark::DoNotOptimize(readProfile(text));
}
BENCHMARK(readTheSample)->Unit(benchmark::kMicrosecond);

void writeTheSample(benchmark::State& state) {
  const Profile profile = sample();
  for (auto _ : state) benchmark::DoNotOptimize(writeProfile(profile));
}
BENCHMARK(writeTheSample)->Unit(benchmark::kMicrosecond);

void reportOfTheSample(benchmark::State& state) {
  const Plan result = plan(sample());
  for (auto _ : state) benchmark::DoNotOptimize(reportJson(result));
}
BENCHMARK(reportOfTheSample)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
