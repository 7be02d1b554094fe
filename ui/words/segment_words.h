// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <string>
#include <string_view>
#include <vector>

#include "core/bike/track.h"
#include "core/track/segment_table.h"
#include "ui/words/units_shown.h"

/// The segments of a track as a table for people, in the units shown. Columns are in the order of
/// `kSegmentKeys`.
namespace layshaft::ui {

QStringList segmentTitles(const UnitsShown& units);

/// What a column is for.
QString segmentHelp(std::size_t column, const UnitsShown& units);

/// How a cell says what a segment has in a column; empty where it has nothing. Numbers are not grouped: they
/// are typed over.
QString segmentCell(const TrackSegment& segment, std::size_t column, const UnitsShown& units);
QStringList segmentCells(const TrackSegment& segment, const UnitsShown& units);

/// The longest of a column's title and choices, for its width.
QString widestInSegments(std::size_t column, const UnitsShown& units);

/// The unit that a column is shown in, as tables of segments are read; empty for columns without one.
std::string segmentUnitShown(std::size_t column, const UnitsShown& units);

/// The most that a number of a column can be, in the unit shown; none for columns of words.
std::optional<double> highestOfSegment(std::size_t column, const UnitsShown& units);

/// The user's words for columns and choices.
std::vector<SegmentWord> segmentWords();

/// Why a row is not read: "Row 3, Radius: 0.2 is out of range (1 to 20,000 m)". `row` counts from 1; `cells`
/// is what stands in it.
QString segmentRefusalWords(int row, const QStringList& cells, const SegmentTableRefusal& refusal,
                            const UnitsShown& units);

/// Where a key stands among the columns.
std::optional<std::size_t> segmentColumn(std::string_view key);

}  // namespace layshaft::ui
