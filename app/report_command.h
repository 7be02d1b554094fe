// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

namespace layshaft::app {

/// `layshaft report FILE [--format text|json|csv|png|pdf]
/// [--units metric|imperial|mixed] [--output FILE]`; `arguments` are those behind
/// `report`. Errors go to standard error, one line each. Returns the exit code.
int report(const QStringList& arguments);

/// Whether the report asked for is a picture and so needs fonts and a painter, though never a display.
bool reportNeedsPainter(const QStringList& arguments);

}  // namespace layshaft::app
