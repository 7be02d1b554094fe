// SPDX-License-Identifier: GPL-3.0-or-later
// The quarter mile of the club bike beside Boost.odeint's Dormand-Prince steps at an error of 1e-9 s or
// better. Targets: at least 20 times faster with the shift points given, at least 10 times with all of them
// found too.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <memory>

#include "core/plan.h"
#include "core/profile_file.h"
#include "core/study/shifting.h"
#include "tests/reference/second_opinion.h"

namespace {

using namespace layshaft;

constexpr double kQuarterMileM = 402.336;
constexpr double kOdeTolerance = 5e-12;

struct Bench {
  Profile profile = *loadProfile(LAYSHAFT_SOURCE_DIR "/sample-profiles/club-600.bike.json");
  std::shared_ptr<const PullBike> bike =
      std::make_shared<const PullBike>(pullBike(profile.bike, profile.ride.value_or(Ride{})));
  PullModel model{bike, profile.stock, rolloutOf(profile.stock), Fitted{}};
  ShiftPoints shifts{bestShiftRpm(model), false};
  Bench() { model.setLaunchRpm(launchRpm(*bike, shifts)); }

  RunPoint quarterMile() const {
    return *Run(model, shifts, 0.0, 0, Run::Clutch::Slipping, kQuarterMileM, 0.0).atDistance(kQuarterMileM);
  }
};

void quarterMile(benchmark::State& state) {
  const Bench bench;
  for (auto _ : state) benchmark::DoNotOptimize(bench.quarterMile());
}
BENCHMARK(quarterMile)->Unit(benchmark::kMicrosecond);

void quarterMileWithShiftPoints(benchmark::State& state) {
  Bench bench;
  for (auto _ : state) {
    bench.shifts.rpm = bestShiftRpm(bench.model);
    bench.model.setLaunchRpm(launchRpm(*bench.bike, bench.shifts));
    benchmark::DoNotOptimize(bench.quarterMile());
  }
}
BENCHMARK(quarterMileWithShiftPoints)->Unit(benchmark::kMicrosecond);

void quarterMileByOdeint(benchmark::State& state) {
  const Bench bench;
  const test::SecondOpinion other(bench.profile, bench.profile.stock);
  const auto run = [&](double tolerance) {
    return *other.run(0.0, 0, bench.model.launchRpm(), bench.shifts.rpm, kQuarterMileM, tolerance);
  };
  for (auto _ : state) benchmark::DoNotOptimize(run(kOdeTolerance));
  state.counters["error_s"] = std::abs(run(kOdeTolerance).time - bench.quarterMile().timeS);
}
BENCHMARK(quarterMileByOdeint)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
