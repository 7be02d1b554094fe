#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# The rules of the house that a tool can check. See usage below.
set -euo pipefail
# shellcheck source=app/install-packages.sh
source "$(dirname -- "${BASH_SOURCE[0]}")/../app/install-packages.sh"

usage() {
  cat <<'TEXT'
usage: tests/style.sh [CHECK...]

Checks the sources, all of it or what is named, and stops at the first check that fails:
  layout    every C++ file is laid out as .clang-format says, and every test is part of a program
  includes  they go down the house only, and in no circle
  strings   lupdate finds every string of ui/ and app/ in a class that it knows
  headers   every header of core/, ui/ and app/ compiles alone
  tidy      nothing that .clang-tidy asks for is found in core/, ui/ and app/ (some minutes)
TEXT
}

all_checks=(layout includes strings headers tidy)
folder=$layshaft_root/build/style

# failed ADVICE: what to do about what was printed above.
failed() {
  printf '%s\n' "$1" >&2
  return 1
}

# build TARGET: without precompiled headers, which would hide what a header lacks and which clang-tidy cannot read.
build() {
  build_in "$folder" "$1" -DCMAKE_BUILD_TYPE=Debug '-DCMAKE_CXX_FLAGS_DEBUG=-O0 -g0' -DLAYSHAFT_BUILD_TESTS=ON \
    -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON -DCMAKE_EXPORT_COMPILE_COMMANDS=ON
}

check_layout() {
  find core ui app tests \( -name '*.cpp' -o -name '*.h' \) -print0 |
    xargs -0 clang-format --dry-run -Werror ||
    failed 'Lay these files out: clang-format -i FILE'
  # A test that no program is made of passes for ever.
  local test lost=()
  for test in tests/core/*_test.cpp tests/reference/*_test.cpp tests/ui/*_test.cpp; do
    grep -qsF -- "${test##*/}" tests/CMakeLists.txt tests/ui/CMakeLists.txt || lost+=("$test")
  done
  ((${#lost[@]} == 0)) || failed "In no CMakeLists.txt: ${lost[*]}"
}

check_includes() {
  /usr/bin/python3 tests/style/includes.py . || failed 'What may use what stands in DEVELOPERS.md, "The house".'
}

check_strings() {
  local said count
  mkdir -p -- "$folder"
  # lupdate succeeds whatever it warns of; what it writes is of no use here.
  said=$("$(qtpaths6 --query QT_INSTALL_BINS)"/lupdate ui app -I . -silent -ts "$folder/strings.ts" 2>&1) ||
    said+=$'\nlupdate failed.'
  rm -f -- "$folder/strings.ts"
  said=$(sed '/^Scanning directory/d' <<<"$said")
  [[ -n $said ]] || return 0
  printf '%s\n' "$said" >&2
  count=$(wc -l <<<"$said")
  failed "lupdate warns $count times: strings there are filed under a class that the program never asks. In a class with
tr() write Q_OBJECT or Q_DECLARE_TR_FUNCTIONS; elsewhere QCoreApplication::translate with the context spelt out."
}

check_headers() {
  build headers_alone || failed 'A header has to include what it uses itself.'
}

check_tidy() {
  build ''
  /usr/bin/python3 tests/style/tidy.py "$folder" && return
  failed "Mend what .clang-tidy asks for, or where the code is right, say why beside a NOLINT of that check.
The full log is $folder/tidy.log"
}

checks=("$@")
((${#checks[@]})) || checks=("${all_checks[@]}")
for check in "${checks[@]}"; do
  if [[ $check == -h || $check == --help ]]; then
    usage
    exit 0
  fi
  [[ " ${all_checks[*]} " == *" $check "* ]] || {
    usage >&2
    exit 2
  }
done

install_packages run test style
cd -- "$layshaft_root"
for check in "${checks[@]}"; do
  printf 'Checking %s\n' "$check"
  "check_$check"
done
