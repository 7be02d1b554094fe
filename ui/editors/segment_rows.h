// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <optional>
#include <vector>

#include "core/bike/track.h"
#include "ui/editors/columns_table.h"
#include "ui/words/units_shown.h"

/// Rows of a table of segments, between what is typed or pasted and the segments of a track.
namespace layshaft::ui {

/// A pasted table in the order of the table's columns: by its titles where it has some, with the unit that
/// they name behind the numbers where that is not the one shown. `notes`: what was passed over.
struct ArrangedPaste {
  PastedColumns columns;
  QStringList notes;
};
ArrangedPaste arrangedPaste(const QString& text, int firstColumn, const UnitsShown& units);

/// A row: what it says, or why it says nothing.
struct ReadSegment {
  std::optional<TrackSegment> segment;
  QString complaint;  ///< empty if there is a segment
};

/// Reads rows of cells. `numbers`: how each row is counted for the user, from 1. A cell that says what a
/// segment of `before` says keeps all of that one's digits.
std::vector<ReadSegment> readSegmentRows(const std::vector<QStringList>& rows,
                                         const std::vector<int>& numbers,
                                         const std::vector<TrackSegment>& before, const UnitsShown& units);

}  // namespace layshaft::ui
