// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

namespace layshaft {

/// The rows of a table in a text, one after another, so that a long one needs no room. The text has to stay.
class TableRows {
 public:
  /// `separator` is one character; a blank stands for any number of blanks and tabs. `line` is that in which
  /// the text begins.
  TableRows(std::string_view text, char separator, std::size_t line = 1)
      : rest_(text), separator_(separator), nextLine_(line) {}

  /// Goes to the next row with a filled cell; false if there is none.
  bool next();
  std::size_t line() const { return line_; }  ///< in which the row begins
  /// Its cells, without quotes and the blanks around them; doubled quotes stay doubled. Of too many those
  /// that are allowed.
  std::span<const std::string_view> cells() const { return cells_; }
  bool tooManyCells() const { return tooManyCells_; }
  bool quoteLeftOpen() const { return quoteLeftOpen_; }  ///< the text ends inside a quoted cell
  bool endsText() const { return endsText_; }            ///< no line end follows the row

  std::string_view rest() const { return rest_; }  ///< behind the row
  std::size_t nextLine() const { return nextLine_; }

 private:
  bool takeRow();
  std::string_view takeQuoted();

  std::string_view rest_;
  char separator_;
  std::size_t nextLine_;
  std::size_t line_ = 0;
  std::vector<std::string_view> cells_;
  bool tooManyCells_ = false, quoteLeftOpen_ = false, endsText_ = false;
};

}  // namespace layshaft
