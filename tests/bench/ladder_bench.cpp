// SPDX-License-Identifier: GPL-3.0-or-later
// The largest ladder: every front of 9 to 24 teeth with every rear of 25 to 70, all run figures. Target: at
// most 600 times an ODE library's quarter mile (run_bench) on two cores; a chain's centre distance under 1
// µs.
#include <benchmark/benchmark.h>

#include <future>

#include "core/parts/chain_geometry.h"
#include "core/profile_file.h"
#include "core/study/ladder.h"

namespace {

using namespace layshaft;

void largestLadder(benchmark::State& state) {
  const Ladder ladder(
      ladderInput(*loadProfile(LAYSHAFT_SOURCE_DIR "/tests/reference/data/club-600.bike.json")));
  for (auto _ : state) {
    auto lower = std::async(std::launch::async, [&] { return ladder.rows({9, 16, 25, 70}); });
    benchmark::DoNotOptimize(ladder.rows({17, 24, 25, 70}));
    benchmark::DoNotOptimize(lower.get());
  }
}
BENCHMARK(largestLadder)->Unit(benchmark::kMillisecond)->UseRealTime();

void chainCentre(benchmark::State& state) {
  const ChainPair pair{0.015875, 16, 43};
  int links = 108;
  for (auto _ : state) {
    benchmark::DoNotOptimize(pair.centreM(links));
    links = links < 120 ? links + 2 : 108;
  }
}
BENCHMARK(chainCentre)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
