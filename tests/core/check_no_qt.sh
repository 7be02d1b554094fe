#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check_no_qt.sh CORE PROGRAM: the sources in the folder CORE include nothing of Qt and do not link to it, and PROGRAM, which
# is made from them, loads and asks for nothing of Qt.
set -euo pipefail

[[ $# == 2 && -d $1 && -x $2 ]] || {
  echo 'usage: check_no_qt.sh CORE PROGRAM' >&2
  exit 2
}
core=$1
program=$2
status=0

# finds PATTERN FILE...: like grep, but an error of grep itself is no "not found".
finds() {
  local code=0
  grep -E "$@" || code=$?
  ((code <= 1)) || exit 2
  return "$code"
}
# clean WHAT PATTERN TEXT: fails if the pattern is in the text, and if there is no text to look at.
clean() {
  [[ -n $3 ]] || {
    echo "$1: nothing to look at" >&2
    status=1
    return
  }
  ! finds "$2" <<<"$3" || {
    echo "$1: something of Qt" >&2
    status=1
  }
}

clean 'includes' '#[[:space:]]*include[[:space:]]*[<"]Q' "$(grep -rE '#[[:space:]]*include' "$core")"
clean 'CMake' 'Qt[0-9]?(::|[[:space:]])' "$(cat "$core"/CMakeLists.txt)"
clean 'libraries' 'libQt' "$(ldd "$program")"
clean 'symbols' ' (Q[A-Z][A-Za-z]*::|qt_|qVersion)' "$(nm --demangle --undefined-only "$program")"
exit "$status"
