// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/bike/track.h"
#include "core/problem.h"
#include "core/track/segment_columns.h"

/// The segments of a track as a table of text, as one types it or copies it out of a spreadsheet.
namespace layshaft {

/// How a table is meant where it does not say so itself.
struct SegmentTableTerms {
  double metresPerLength = 1.0;  ///< one unit of lengths and radii
  double kmhPerSpeed = 1.0;      ///< one unit of speeds
  std::size_t firstColumn = 0;   ///< of `kSegmentKeys`, where the table has no titles
  std::vector<SegmentWord> words{};
};

struct SegmentsRead {
  std::vector<TrackSegment> segments;
  std::vector<std::string> ignored;  ///< titles of columns that nothing is known of
};

/// Why a table was not read: the first thing that is wrong.
struct SegmentTableRefusal {
  int row = 0;      ///< as spreadsheets count, from 1; 0 where it is about the whole text
  int column = 0;   ///< from 1; 0 where it is about the whole row
  Problem problem;  ///< `path` is the key of the column
  bool operator==(const SegmentTableRefusal&) const = default;
};

/// Reads a table, all of it or nothing: columns separated by tabs, semicolons or commas, numbers with decimal
/// point or comma (between commas only if quoted), a number with a unit behind it or without. A row of titles
/// may stand first, in any order, and a row of units below it; without titles the columns are in the order of
/// `kSegmentKeys`. Problems: NotUtf8, FileTooLarge and WrongCount of the text; QuoteLeftOpen; NotOneOf of a
/// title, unit, surface or turn that is not known, DuplicateKey of a title that stands twice, WrongCount of a
/// row with more cells than columns, WrongType and OutOfRange of a cell, NotASegment of a row.
std::variant<SegmentsRead, SegmentTableRefusal> readSegments(std::string_view text,
                                                             const SegmentTableTerms& terms = {});

}  // namespace layshaft
