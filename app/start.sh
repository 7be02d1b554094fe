#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds Layshaft and opens its window. See usage below.
set -euo pipefail
# shellcheck source=app/install-packages.sh
source "$(dirname -- "${BASH_SOURCE[0]}")/install-packages.sh"

usage() {
  cat <<'TEXT'
usage: app/start.sh [FILE]

Opens Layshaft on FILE, a .bike.json profile, or on a sample profile. On Debian 12, packages that are missing are
installed first (asking through sudo unless run as root) and the program is built in build/release.
Without a display it prints the report instead and writes it as a picture and a PDF to the current folder.
TEXT
}

file=$layshaft_root/sample-profiles/club-600.bike.json
case ${1-} in
  -h | --help)
    usage
    exit 0
    ;;
  -*)
    printf 'start.sh: unknown option %s\n' "$1" >&2
    usage >&2
    exit 2
    ;;
esac
if (($# > 1)); then
  usage >&2
  exit 2
elif (($# == 1)); then
  file=$1
fi
if [[ ! -f $file || ! -r $file ]]; then
  printf 'start.sh: cannot read the file %s\n' "$file" >&2
  exit 1
fi

lists=(run)
[[ -n ${DISPLAY-} || -z ${WAYLAND_DISPLAY-} ]] || lists+=(wayland)
install_packages "${lists[@]}"
build=$layshaft_root/build/release
build_in "$build" all -DCMAKE_BUILD_TYPE=Release -DLAYSHAFT_BUILD_TESTS=OFF
layshaft=$build/app/layshaft

if [[ -n ${DISPLAY-} || -n ${WAYLAND_DISPLAY-} ]]; then
  exec "$layshaft" "$file"
fi

echo 'There is no display (neither DISPLAY nor WAYLAND_DISPLAY is set), so here is the report instead of the window.'
echo
"$layshaft" report "$file" --format text
folder=$PWD
[[ -w $folder ]] || folder=$(mktemp -d)
name=$(basename -- "$file")
name=${name%.json}
name=${name%.bike}
echo
for format in png pdf; do
  picture=${folder%/}/$name.report.$format
  "$layshaft" report "$file" --format "$format" --output "$picture"
  printf 'Written: %s\n' "$picture"
done
