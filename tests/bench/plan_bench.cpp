// SPDX-License-Identifier: GPL-3.0-or-later
// What the core costs: a plan of one profile and reading a profile. Targets: without an engine curve under
// 50 µs; of stock and proposal at most four times an ODE library's quarter mile (run_bench), after a step of
// the proposal at most 1.2 times.
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
  std::ifstream in(LAYSHAFT_SOURCE_DIR "/tests/reference/data/club-600.bike.json");
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

// One step of the rear sprocket's spin box, with what the plan before knows.
void planOfAChangedProposal(benchmark::State& state) {
  Profile profile = sample();
  Plan shown = plan(profile);
  int teeth = 44;
  for (auto _ : state) {
    teeth = teeth == 44 ? 46 : 44;
    profile.proposed.rearTeeth = Teeth::rear(teeth).value();
    shown = plan(planInput(profile), &shown);
    benchmark::DoNotOptimize(shown);
  }
}
BENCHMARK(planOfAChangedProposal)->Unit(benchmark::kMicrosecond);

// Typing in the notes.
void planOfNothingNew(benchmark::State& state) {
  const Profile profile = sample();
  const Plan shown = plan(profile);
  for (auto _ : state) benchmark::DoNotOptimize(plan(planInput(profile), &shown));
}
BENCHMARK(planOfNothingNew)->Unit(benchmark::kMicrosecond);

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
