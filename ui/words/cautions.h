// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

namespace layshaft::ui {

/// What people must know before they act on a plan; short, one per line.
QStringList cautions();

/// Stands wherever a top speed or a run is shown.
QString closedCourseCaution();

}  // namespace layshaft::ui
