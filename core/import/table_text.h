// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/import/table_rows.h"
#include "core/problem.h"

/// Tables of numbers as loggers and spreadsheets write them: some lines about the ride, perhaps; a row of
/// titles; a row of units, perhaps; then numbers.
namespace layshaft {

struct TextTable {
  struct Column {
    std::string title;  ///< in small letters, without its unit; words parted by one blank
    std::string unit;   ///< from brackets behind the title, its last word, or the row of units; empty if none
    std::string written;  ///< the title as it stands there
  };
  char separator = ',';
  std::vector<Column> columns;
  std::size_t titlesLine = 0;
  TableRows values;  ///< stands before the first row of numbers; refers to the text, which has to stay
};

/// Finds titles, units and numbers in a table. The separator is the tab, semicolon, bar, comma or blank that
/// most of the first lines agree on. Problems, with line and column: QuoteLeftOpen; NotARecording where the
/// first lines hold no rows of numbers; MissingColumn where no row of titles stands above them.
Result<TextTable> textTable(std::string_view text);

/// Whether a row says something to people and nothing to the table: it begins with #.
bool isComment(const TableRows& row);

/// A number as a cell of such a table has it, its decimal comma made a point where the comma separates
/// nothing.
std::string withDecimalPoint(std::string_view cell, char separator);

}  // namespace layshaft
