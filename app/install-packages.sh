#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# What app/start.sh and tests/run.sh share: the Debian packages that Layshaft needs, and a build that stays quiet unless
# it fails. Sourced it only defines functions; run as a script it installs what is missing from the lists it is given:
#
#   app/install-packages.sh run          what building and running needs
#   app/install-packages.sh run test     and what the tests need on top; with style, what tests/style.sh needs

layshaft_root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)

# The one place that names packages. Lists are independent: the tests need `run` and `test`.
packages_in() {
  case $1 in
    run)
      echo cmake ninja-build g++
      echo qt6-base-dev qt6-charts-dev qt6-svg-dev
      echo qt6-l10n-tools # compiles the catalogue of English plurals
      echo libqt6opengl6-dev # Qt Charts is not found without it, yet it is only recommended by qt6-base-dev
      echo libqt6svg6 qt6-qpa-plugins # loaded at run time: SVG icons and the window system
      echo qt6-translations-l10n      # the toolkit's own words in the desktop's language
      echo libboost1.81-dev nlohmann-json3-dev
      echo libexpat1-dev libgeographiclib-dev # recordings: XML, and the earth's shape
      echo fonts-dejavu-core
      ;;
    wayland) echo qt6-wayland ;; # only where there is no X server to fall back on
    test)
      echo libgtest-dev libgmock-dev libbenchmark-dev
      echo python3-jsonschema units libgsl-dev libsundials-dev python3-gpxpy # second opinions on the numbers and the files
      echo locales
      echo xvfb xauth openbox xdotool dbus-daemon at-spi2-core python3-gi gir1.2-atspi-2.0 # the window as a screen reader has it
      echo desktop-file-utils appstream shared-mime-info dpkg-dev file poppler-utils
      ;;
    style) echo clang-format clang-tidy qt6-l10n-tools ;; # run-clang-tidy comes with clang-tidy
    *)
      echo "install-packages.sh: no list named '$1' (there are: run, wayland, test, style)" >&2
      return 2
      ;;
  esac
}

# quietly LOG COMMAND...: output goes to LOG, and is shown only if the command fails.
quietly() {
  local log=$1 status=0
  shift
  mkdir -p -- "$(dirname -- "$log")"
  "$@" >"$log" 2>&1 </dev/null || status=$?
  if ((status != 0)); then
    tail -n 200 -- "$log" >&2
    printf 'Failed: %s\nThe full log is %s\n' "$*" "$log" >&2
  fi
  return "$status"
}

# install_packages LIST...: installs what is missing; prints nothing and calls no apt-get when nothing is.
install_packages() {
  local list names wanted=() missing=() have package
  for list in "$@"; do
    names=$(packages_in "$list") || return
    read -r -d '' -a names <<<"$names" || true
    wanted+=("${names[@]}")
  done

  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    printf 'This is no Debian system. Install what these packages hold, then build with cmake:\n  %s\n' "${wanted[*]}" >&2
    return 1
  fi
  # dpkg-query fails for a name it has never heard of, which is an answer here too.
  have=$(dpkg-query -W -f '${Package}=${db:Status-Status}\n' "${wanted[@]}" 2>/dev/null || true)
  for package in "${wanted[@]}"; do
    grep -qxF -- "$package=installed" <<<"$have" || missing+=("$package")
  done
  ((${#missing[@]})) || return 0

  local as_root=(env DEBIAN_FRONTEND=noninteractive)
  if ((EUID != 0)); then
    if ! command -v sudo >/dev/null; then
      printf 'These Debian packages are missing. As root, install them and try again:\n  apt-get install --no-install-recommends %s\n' \
        "${missing[*]}" >&2
      return 1
    fi
    as_root=(sudo "${as_root[@]}")
  fi
  printf 'Installing Debian packages%s: %s\n' "$( ((EUID == 0)) || echo ' (with sudo)')" "${missing[*]}"
  # A package source that cannot be reached need not be one of those wanted, so only the second step decides.
  quietly "$layshaft_root/build/apt-update.log" "${as_root[@]}" apt-get -qq -o Acquire::Retries=3 update ||
    echo 'Going on with the package lists at hand.' >&2
  quietly "$layshaft_root/build/apt-install.log" "${as_root[@]}" apt-get -qq -y -o Acquire::Retries=3 \
    -o DPkg::Lock::Timeout=600 install --no-install-recommends "${missing[@]}"
}

# build_in FOLDER 'TARGET...' CMAKE-OPTION...: configures FOLDER if it never was, or was with other options or for another
# place, and builds what changed of the targets, if any.
build_in() {
  local folder=$1 targets stamp hint=''
  read -r -a targets <<<"$2" || true
  shift 2
  stamp=$(printf '%s\n' "$layshaft_root" "$@")
  if [[ ! -f $folder/build.ninja || $(cat -- "$folder/configured-with.txt" 2>/dev/null) != "$stamp" ]]; then
    echo "Configuring ${folder#"$layshaft_root"/}"
    mkdir -p -- "$folder"
    rm -f -- "$folder/configured-with.txt"
    quietly "$folder/configure.log" cmake --fresh -S "$layshaft_root" -B "$folder" -G Ninja "$@" || return
    printf '%s\n' "$stamp" >"$folder/configured-with.txt"
    hint=' (the first time takes some minutes)'
  fi
  ((${#targets[@]})) || return 0
  if [[ $(ninja -C "$folder" -n "${targets[@]}" 2>&1) != *'no work to do'* ]]; then
    echo "Building ${folder#"$layshaft_root"/}$hint"
    quietly "$folder/build.log" cmake --build "$folder" --parallel "$(nproc)" --target "${targets[@]}" || return
  fi
}

if [[ ${BASH_SOURCE[0]} == "$0" ]]; then
  set -euo pipefail
  if (($# == 0)) || [[ $1 == -h || $1 == --help ]]; then
    echo 'usage: app/install-packages.sh LIST...    (lists: run, wayland, test, style)'
    (($#)) || exit 2
    exit 0
  fi
  install_packages "$@"
fi
