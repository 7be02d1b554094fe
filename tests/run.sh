#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds Layshaft with its tests and runs them. See usage below.
set -euo pipefail
# shellcheck source=app/install-packages.sh
source "$(dirname -- "${BASH_SOURCE[0]}")/../app/install-packages.sh"

usage() {
  cat <<'TEXT'
usage: tests/run.sh [--sanitize] [CTEST-ARGUMENT...]

Builds in build/tests and runs every test; warnings are errors. With --sanitize it builds in build/sanitize with the
address, leak and undefined-behaviour sanitizers. Further arguments go to ctest, for example -R chain.
TEXT
}

sanitize=0
case ${1-} in
  -h | --help)
    usage
    exit 0
    ;;
  --sanitize)
    sanitize=1
    shift
    ;;
esac

install_packages run test
if ((sanitize)); then
  build=$layshaft_root/build/sanitize
  # Line tables are enough for a stack trace and build faster. Warnings stay warnings: instrumented code makes the
  # compiler report uninitialised values that are none, and build/tests already refuses every true one.
  build_in "$build" -DCMAKE_BUILD_TYPE=Debug '-DCMAKE_CXX_FLAGS_DEBUG=-O1 -g1 -fno-omit-frame-pointer' \
    -DLAYSHAFT_BUILD_TESTS=ON -DLAYSHAFT_WERROR=OFF -DLAYSHAFT_SANITIZE=ON
  export ASAN_OPTIONS=halt_on_error=1:detect_leaks=1:detect_stack_use_after_return=1:strict_string_checks=1
  export UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
  # Without this Qt's event loop runs inside GLib, and the line for GLib in lsan.supp would cover what our own slots leak.
  export QT_NO_GLIB=1
  export LSAN_OPTIONS="suppressions='$layshaft_root/tests/lsan.supp':print_suppressions=0"
else
  build=$layshaft_root/build/tests
  build_in "$build" -DCMAKE_BUILD_TYPE=RelWithDebInfo '-DCMAKE_CXX_FLAGS_RELWITHDEBINFO=-O2 -g1' \
    -DLAYSHAFT_BUILD_TESTS=ON -DLAYSHAFT_WERROR=ON
fi

export QT_QPA_PLATFORM=offscreen
progress=()
[[ ! -t 1 ]] || progress=(--progress)
# Exec: ctest's summary stays the last thing printed, and its exit code is this script's.
exec ctest --test-dir "$build" --output-on-failure --no-tests=error -j2 "${progress[@]}" "$@"
