// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
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

/// Splits a text by the separator of the first row that has one: tab, else semicolon, else comma.
CsvTable csvTable(std::string_view text);

/// What a cell says as a number, with decimal point or comma; nothing if it is none.
std::optional<double> cellNumber(std::string text);

/// What a cell says as text: as it was before it was kept from being taken for a formula, as `csvField` does.
std::string cellText(const std::string& cell);

/// A text with the capitals of ASCII as small letters.
std::string inSmallLetters(std::string text);

}  // namespace layshaft
