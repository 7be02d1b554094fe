#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check_package_files.sh RESOURCES: asks the desktop's own validators about the files in the folder RESOURCES that tell a
# desktop of Layshaft, whether they agree with each other, and whether a profile's name leads to its MIME type.
set -euo pipefail

[[ $# == 1 && -d $1 ]] || {
  echo 'usage: check_package_files.sh RESOURCES' >&2
  exit 2
}
resources=$1
app=org.layshaft.Layshaft
desktop=$resources/$app.desktop
metainfo=$resources/$app.metainfo.xml
mime=$resources/layshaft-mime.xml
type=application/vnd.layshaft.bike+json

passed=0
failed=0
# check WHAT COMMAND...: prints the command's output only if it fails.
check() {
  local what=$1 output
  shift
  if output=$("$@" 2>&1); then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    printf 'FAILED: %s\n' "$what"
    [[ -z $output ]] || printf '%s\n' "$output" | sed 's/^/    /'
  fi
}

# The validator exits 0 on a mere warning, but says it.
desktop_entry_is_valid() {
  local output status=0
  output=$(desktop-file-validate "$desktop" 2>&1) || status=$?
  printf '%s' "$output"
  [[ $status == 0 && -z $output ]]
}

# type_of NAME: the type that the glob list in the MIME database gives a file name: the highest weight wins, then the
# longest pattern.
type_of() {
  local name=$1 weight found pattern best_weight=-1 best='' best_pattern=''
  while IFS=: read -r weight found pattern _; do
    # shellcheck disable=SC2053 # the right side is meant as a pattern
    [[ $weight == '#'* || $name != $pattern ]] && continue
    if ((weight > best_weight || (weight == best_weight && ${#pattern} > ${#best_pattern}))); then
      best_weight=$weight best=$found best_pattern=$pattern
    fi
  done <"$data/mime/globs2"
  printf '%s\n' "$best"
}
resolves_to() {
  local got
  got=$(type_of "$1")
  [[ $got == "$2" ]] || {
    printf '%s is taken for "%s", not "%s"\n' "$1" "$got" "$2"
    return 1
  }
}

data=$(mktemp -d)
trap 'rm -rf -- "$data"' EXIT
export XDG_DATA_HOME=$data
mkdir -p -- "$data/mime/packages"
cp -- "$mime" "$data/mime/packages/layshaft.xml"
# Beside the desktop's own types, or nothing competes for the name.
cp -- /usr/share/mime/packages/freedesktop.org.xml "$data/mime/packages/"

check 'the desktop entry is valid' desktop_entry_is_valid
check 'the metainfo is valid' appstreamcli validate --no-net --no-color "$metainfo"
check 'the MIME database takes the type' update-mime-database "$data/mime"
check 'a profile has our type' resolves_to x.bike.json "$type"
check 'a profile with spaces and dots has our type' resolves_to 'my 2. bike.bike.json' "$type"
check 'other JSON stays JSON' resolves_to x.json application/json
check 'a profile is still JSON to others' grep -qxF "$type application/json" "$data/mime/subclasses"
check 'the desktop entry opens the type' grep -qxF "MimeType=$type;" "$desktop"
check 'the desktop entry takes files' grep -qE '^Exec=layshaft %[FU]$' "$desktop"
check 'the metainfo names the type' grep -qF "<mediatype>$type</mediatype>" "$metainfo"
check 'the metainfo starts the desktop entry' grep -qF ">$app.desktop</launchable>" "$metainfo"
icon=$(sed -n 's/^Icon=//p' "$desktop")
check 'the icon of the desktop entry is there' test -s "$resources/$icon.svg"
check 'the icon is SVG' grep -qxF 'image/svg+xml' <(file --brief --mime-type -- "$resources/$icon.svg")

printf '%d passed, %d failed\n' "$passed" "$failed"
((failed == 0))
