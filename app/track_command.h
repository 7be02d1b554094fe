// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

namespace layshaft::app {

/// `layshaft track FILE [--smooth METRES] [--format json|csv|gpx] [--output FILE]`: one lap of a recording as
/// stretches of curvature and slope; `arguments` are those behind `track`. Errors go to standard error, one
/// line each. Returns the exit code.
int track(const QStringList& arguments);

}  // namespace layshaft::app
