#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds Layshaft with its tests and runs them. See usage below.
set -euo pipefail
# shellcheck source=app/install-packages.sh
source "$(dirname -- "${BASH_SOURCE[0]}")/../app/install-packages.sh"

usage() {
  cat <<'TEXT'
usage: tests/run.sh [--sanitize | --threads] [CTEST-ARGUMENT...]
       tests/run.sh --style [CHECK...]

Builds in build/tests and runs every test; warnings are errors. With --sanitize it builds in build/sanitize with the
address, leak and undefined-behaviour sanitizers; with --threads in build/tsan with the thread sanitizer, and runs the
tests of the core, the planner and the background lane. Further arguments go to ctest, for example -R chain, which then
runs each test as a program of its own; without any, all tests of a program run in a few of them, which is faster.

With --style nothing is run: it checks the sources against the rules of the house, as tests/style.sh --help says.
TEXT
}

way=plain
case ${1-} in
  -h | --help)
    usage
    exit 0
    ;;
  --style)
    shift
    exec bash "$layshaft_root/tests/style.sh" "$@"
    ;;
  --sanitize | --threads)
    way=${1#--}
    shift
    ;;
esac

install_packages run test
# See layshaft_know_tests in tests/CMakeLists.txt.
tested=(-LE '^whole')
(($#)) || tested=(-LE '^each')
# Under a sanitizer line tables are enough for a stack trace and build faster. Warnings stay warnings: instrumented code
# makes the compiler report uninitialised values that are none, and build/tests already refuses every true one.
instrumented=(-DCMAKE_BUILD_TYPE=Debug '-DCMAKE_CXX_FLAGS_DEBUG=-O1 -g1 -fno-omit-frame-pointer'
  -DLAYSHAFT_BUILD_TESTS=ON -DLAYSHAFT_WERROR=OFF)
case $way in
  plain)
    build=$layshaft_root/build/tests
    build_in "$build" all -DCMAKE_BUILD_TYPE=RelWithDebInfo '-DCMAKE_CXX_FLAGS_RELWITHDEBINFO=-O2 -g1' \
      -DLAYSHAFT_BUILD_TESTS=ON -DLAYSHAFT_WERROR=ON
    ;;
  sanitize)
    build=$layshaft_root/build/sanitize
    build_in "$build" all "${instrumented[@]}" -DLAYSHAFT_SANITIZE=address,undefined
    export ASAN_OPTIONS=halt_on_error=1:detect_leaks=1:detect_stack_use_after_return=1:strict_string_checks=1
    export UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
    # Without this Qt's event loop runs inside GLib, and the line for GLib in lsan.supp would cover what our own slots leak.
    export QT_NO_GLIB=1
    export LSAN_OPTIONS="suppressions='$layshaft_root/tests/lsan.supp':print_suppressions=0"
    ;;
  threads)
    build=$layshaft_root/build/tsan
    # What starts no thread would be instrumented for nothing.
    build_in "$build" 'core_tests lane_tests' "${instrumented[@]}" -DLAYSHAFT_SANITIZE=thread
    tested+=(-L threads)
    # Qt and GLib are not instrumented, so that their locks are not seen: what is tested here hands over by the standard
    # library's, and needs no suppressions.
    export QT_NO_GLIB=1
    export TSAN_OPTIONS=second_deadlock_stack=1
    ;;
esac

export QT_QPA_PLATFORM=offscreen
progress=()
[[ ! -t 1 ]] || progress=(--progress)
# Exec: ctest's summary stays the last thing printed, and its exit code is this script's.
exec ctest --test-dir "$build" --output-on-failure --no-tests=error --no-label-summary -j2 "${progress[@]}" "${tested[@]}" "$@"
