// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

namespace layshaft::ui {

/// Rows of cells as lines of text of equal columns, the first to the left and the others to the right.
QString alignedTable(const std::vector<QStringList>& rows);

}  // namespace layshaft::ui
