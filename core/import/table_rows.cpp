// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/table_rows.h"

#include <algorithm>

#include "core/import/number_problem.h"
#include "core/limits.h"

namespace layshaft {

bool TableRows::next() {
  while (!rest_.empty())
    if (takeRow()) return true;
  return false;
}

/// What stands in the quotes that the rest begins with; the rest then begins behind them.
std::string_view TableRows::takeQuoted() {
  std::size_t end = 1;
  while (end < rest_.size()) {
    if (rest_[end] == '"') {
      if (!rest_.substr(end + 1).starts_with('"')) break;
      ++end;
    }
    nextLine_ += rest_[end] == '\n' ? 1 : 0;
    ++end;
  }
  if (end >= rest_.size()) quoteLeftOpen_ = true;
  const std::string_view cell = rest_.substr(1, std::min(end, rest_.size()) - 1);
  rest_.remove_prefix(std::min(end + 1, rest_.size()));
  return cell;
}

/// Takes one row; false if no cell of it is filled.
bool TableRows::takeRow() {
  const bool byBlanks = separator_ == ' ';
  line_ = nextLine_;
  cells_.clear();
  tooManyCells_ = false;
  bool filled = false;
  for (bool ended = false; !ended;) {
    rest_.remove_prefix(std::min(rest_.find_first_not_of(byBlanks ? " \t" : " "), rest_.size()));
    std::string_view cell;
    if (rest_.starts_with('"')) cell = takeQuoted();
    std::size_t end = 0;
    while (end < rest_.size() && rest_[end] != separator_ && rest_[end] != '\n' &&
           !(byBlanks && rest_[end] == '\t'))
      ++end;
    if (cell.data() == nullptr) cell = rest_.substr(0, end);
    cell = withoutBlanks(cell);
    endsText_ = end >= rest_.size();
    ended = endsText_ || rest_[end] == '\n';
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    filled = filled || !cell.empty();
    if (byBlanks && ended && cell.empty()) break;  // blanks at the end of a line part nothing
    if (cells_.size() < limits::kMostTableColumns)
      cells_.push_back(cell);
    else
      tooManyCells_ = true;
  }
  ++nextLine_;
  return filled;
}

}  // namespace layshaft
