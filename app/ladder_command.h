// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

namespace layshaft::app {

/// `layshaft ladder FILE …`: every pair in reach without a window. Returns the exit code.
int ladder(const QStringList& arguments);

}  // namespace layshaft::app
