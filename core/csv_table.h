// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Tables of text with separators, as spreadsheets write them (RFC 4180, and what is usual beside it).
namespace layshaft {

struct CsvTable {
  /// Rows of cells without their quotes and the blanks around them; a row without a filled cell has none.
  std::vector<std::vector<std::string>> rows;
  char separator = ',';
  bool quoteLeftOpen = false;  ///< the text ends inside a quoted cell
};

/// Splits a text by the separator that its first row has: tab, else semicolon, else comma.
CsvTable csvTable(std::string_view text);

}  // namespace layshaft
