#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the program promises of its speed, measured: builds the benchmarks in build/bench, runs them with
interleaved repetitions and compares the medians with their limits. Ends with 1 if one does not hold."""
import argparse
import json
import os
import statistics
import subprocess
import sys
from pathlib import Path

SOURCE = Path(__file__).resolve().parents[2]
BUILD = SOURCE / "build" / "bench"
CORE_BENCHES = ["run_bench", "plan_bench", "ladder_bench", "recording_bench", "lap_bench"]

ODE = "quarterMileByOdeint"
BARE, WINDOW = "stepInTheBareChart", "stepInTheWindow"
P50, P95, TIME = "p50_ms", "p95_ms", "real_time"

# What it is, the measure, what it is divided by (None: milliseconds as they are), which value of both, the
# limit, and on which side of it the result must be.
LIMITS = [
    # The window
    ("step, axes at rest, to the bare chart", f"{WINDOW}/axes_at_rest", f"{BARE}/axes_at_rest", P50, 1.25, "<="),
    ("step, axes move, to the bare chart", f"{WINDOW}/axes_move", f"{BARE}/axes_move", P50, 1.0, "<="),
    ("start to the bare twin", "start/window", "start/bare_twin", P50, 1.2, "<="),
    ("step of the sawtooth, p95 in ms", f"{WINDOW}/axes_at_rest", None, P95, 8.3, "<="),
    ("step of the pull, p95 in ms", f"{WINDOW}/pull_in_view", None, P95, 8.3, "<="),
    ("step of the acceleration, p95 in ms", f"{WINDOW}/run_in_view", None, P95, 8.3, "<="),
    ("step of the chain run, p95 in ms", f"{WINDOW}/chain_run_in_view", None, P95, 8.3, "<="),
    ("step of the ladder, p95 in ms", f"{WINDOW}/ladder_in_view", None, P95, 8.3, "<="),
    ("step of the comparison, p95 in ms", f"{WINDOW}/compare_in_view", None, P95, 8.3, "<="),
    ("step of the lap of segments, p95 in ms", f"{WINDOW}/lap_in_view", None, P95, 16.7, "<="),
    ("step of the lap of a recording, p95 in ms", "stepInTheRecordedLap", None, P95, 16.7, "<="),
    ("step while the map of pairs fills, p95 in ms", "stepWhileTheMapOfPairsFills", None, P95, 16.7, "<="),
    ("step with the counter view open, p95 in ms", "stepInTheCounterView", None, P95, 16.7, "<="),
    ("step while a ladder fills, p95 in ms", "stepWhileALadderFills", None, P95, 8.3, "<="),
    ("open a file with 2,000 records to one without", "openAFile/with_2000_records", "openAFile/bare", P50, 1.5, "<="),
    ("bench sheet as PDF in µs", "benchSheetAsPdf", None, TIME, 150e3, "<="),
    # The core; the ODE library works out the same quarter mile
    ("plan of both setups to the ODE library", "planOfTheSample", ODE, TIME, 4.0, "<="),
    ("plan of a changed proposal to the ODE library", "planOfAChangedProposal", ODE, TIME, 1.2, "<="),
    ("ODE library to the quarter mile", ODE, "quarterMile", TIME, 20.0, ">="),
    ("ODE library's one to the quarter mile over all plans", ODE, "quarterMileOverAllPlans", TIME, 6.0, ">="),
    ("largest ladder to the ODE library", "largestLadder", ODE, TIME, 600.0, "<="),
    ("track of 100,000 recorded points, one lap, in µs", "recordingToTrack/1", None, TIME, 500e3, "<="),
    ("track of 100,000 recorded points, ten laps, in µs", "recordingToTrack/10", None, TIME, 500e3, "<="),
    ("lap of 3 km in segments, in µs", "lapOfSegments", None, TIME, 150.0, "<="),
    ("a lap stepped through time to it", "naiveLapOfSegments", "lapOfSegments", TIME, 20.0, ">="),
    ("lap of 600 recorded stretches, in µs", "lapOfRecording", None, TIME, 1500.0, "<="),
    ("a hundred pairs on segments, one core, in µs", "hundredPairs/segments", None, TIME, 40e3, "<="),
    ("a hundred pairs on a recording, one core, in µs", "hundredPairs/recording", None, TIME, 200e3, "<="),
    ("stopping a search of 729 gearboxes, in µs", "stoppingAllGearboxes", None, TIME, 50e3, "<="),
]
MICROSECONDS = {"ns": 1e-3, "us": 1.0, "ms": 1e3, "s": 1e6}


def build():
    benches = [*CORE_BENCHES, "window_bench"]
    if not (BUILD / "CMakeCache.txt").exists():
        subprocess.run(["cmake", "-S", SOURCE, "-B", BUILD, "-DCMAKE_BUILD_TYPE=Release"], check=True)
    subprocess.run(["cmake", "--build", BUILD, "--parallel", str(os.cpu_count()), "--target", *benches],
                   check=True)


def run(bench, repetitions, seen, *options):
    """Adds one value per repetition to `seen`, by name and value."""
    command = [BUILD / "tests" / "bench" / bench, "--benchmark_enable_random_interleaving=true",
               f"--benchmark_repetitions={repetitions}", "--benchmark_format=json", *options]
    quiet = os.environ | {"QT_LOGGING_RULES": "default.warning=false"}  # without a display there are many
    result = json.loads(subprocess.run(command, check=True, stdout=subprocess.PIPE, env=quiet).stdout)
    for entry in result["benchmarks"]:
        if entry["run_type"] != "iteration":
            continue
        # Without what the library appends: .../iterations:120/manual_time.
        name = "/".join(part for part in entry["run_name"].split("/") if ":" not in part and "_time" not in part)
        entry[TIME] *= MICROSECONDS[entry["time_unit"]]
        for value in (TIME, P50, P95):
            if value in entry:
                seen.setdefault((name, value), []).append(entry[value])


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--repetitions", type=int, default=5)
    repetitions = parser.parse_args().repetitions
    build()
    seen = {}
    for _ in range(repetitions):  # in turn, for some limits compare one program with another
        for bench in CORE_BENCHES:
            run(bench, 3, seen, "--benchmark_min_time=0.1")
    run("window_bench", repetitions, seen)

    broken = 0
    print(f"\n{'':52} {'median':>8} {'limit':>9}")
    for what, measure, base, value, limit, side in LIMITS:
        median = statistics.median(seen[measure, value])
        if base:
            median /= statistics.median(seen[base, value])
        holds = median <= limit if side == "<=" else median >= limit
        broken += not holds
        print(f"{what:52} {median:8.2f} {side:>3} {limit:5g}  {'holds' if holds else 'DOES NOT HOLD'}")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
