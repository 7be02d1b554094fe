#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: run.sh PROGRAM PROFILE
#
# Opens PROGRAM on PROFILE on a display and a message bus of its own and reads the window as a screen reader does.
# Exit code 77 says that no display or no bus could be had; where LAYSHAFT_NEEDS_BUS is set that is a failure.
set -euo pipefail
here=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")" && pwd -P)
program=$1 profile=$2

skip() {
  printf 'Not tested: %s\n' "$1" >&2
  [[ -n ${LAYSHAFT_NEEDS_BUS-} ]] && exit 1
  exit 77
}

# Inside the bus and the display: the registry is started by the bus when it is first asked for.
if [[ ${3-} == --inside ]]; then
  openbox >/dev/null 2>&1 &
  # A window that is there before its manager would not get the keys.
  for _ in {1..200}; do
    xdotool get_desktop >/dev/null 2>&1 && break
    sleep 0.05
  done
  exec /usr/bin/python3 "$here/read_window.py" "$program" "$profile"
fi

for tool in Xvfb xvfb-run dbus-run-session openbox xdotool; do
  command -v "$tool" >/dev/null || skip "there is no $tool"
done
/usr/bin/python3 -c "import gi; gi.require_version('Atspi', '2.0')" 2>/dev/null || skip 'there is no Atspi for Python'

home=$(mktemp -d)
trap 'rm -rf -- "$home"' EXIT
chmod 700 "$home"
# Nothing of the person who runs this: no settings, no desktop, no session. The server starts afresh when its last client
# goes, which may be the xdotool that asks for the desktop, and then knows nobody for a moment; not with -noreset.
env -u DISPLAY -u WAYLAND_DISPLAY -u DBUS_SESSION_BUS_ADDRESS -u AT_SPI_BUS_ADDRESS \
  HOME="$home" XDG_CONFIG_HOME="$home/config" XDG_DATA_HOME="$home/data" XDG_STATE_HOME="$home/state" \
  XDG_RUNTIME_DIR="$home" LC_ALL=C.UTF-8 QT_QPA_PLATFORM=xcb QT_LINUX_ACCESSIBILITY_ALWAYS_ON=1 \
  xvfb-run --auto-servernum --server-args='-screen 0 1280x720x24 -noreset' \
  dbus-run-session -- bash "${BASH_SOURCE[0]}" "$program" "$profile" --inside
