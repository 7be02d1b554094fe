// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/table_text.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <optional>
#include <utility>

#include "core/import/number_problem.h"
#include "core/import/time_text.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/short_text.h"

namespace layshaft {
namespace {

constexpr char kBlank = ' ';
constexpr std::array kSeparators = {'\t', ';', '|', ',', kBlank};
constexpr std::size_t kLookedAt = 200;  ///< rows by which a table is told

/// Units by which the last word of a title is known to be one: speed_kmh, but not gps_time.
constexpr std::string_view kUnits[] = {"s",    "ms",  "m",  "km", "ft", "deg", "°",   "kmh",
                                       "km/h", "mph", "kn", "kt", "ns", "us",  "mps", "m/s"};

/// The first rows of a text, and where each begins.
struct Head {
  struct Row {
    std::vector<std::string_view> cells;
    TableRows from;  ///< stands before it
    std::size_t line;
  };
  std::vector<Row> rows;
  std::optional<std::size_t> openQuoteLine;
};

Head headOf(std::string_view text, char separator) {
  Head head;
  TableRows rows(text, separator);
  while (head.rows.size() < kLookedAt) {
    const TableRows before(rows.rest(), separator, rows.nextLine());
    if (!rows.next()) break;
    head.rows.push_back({{rows.cells().begin(), rows.cells().end()}, before, rows.line()});
    if (rows.quoteLeftOpen()) head.openQuoteLine = rows.line();
  }
  return head;
}

struct UsualCount {
  std::size_t cells = 0;  ///< that most rows have
  std::size_t rows = 0;   ///< that have so many
};
UsualCount usualCount(const Head& head) {
  std::map<std::size_t, std::size_t> rowsOf;
  for (const Head::Row& row : head.rows)
    if (row.cells.size() > 1) ++rowsOf[row.cells.size()];
  UsualCount usual;
  for (const auto& [cells, rows] : rowsOf)
    if (rows > usual.rows) usual = {cells, rows};
  return usual;
}

char separatorOf(std::string_view text) {
  char best = ',';
  std::size_t agree = 0;
  for (const char separator : kSeparators) {
    const std::size_t rows = usualCount(headOf(text, separator)).rows;
    if (rows > agree) {
      best = separator;
      agree = rows;
    }
  }
  return best;
}

bool isComment(const std::vector<std::string_view>& cells) {
  return cells.front().starts_with('#');
}

bool isValue(std::string_view cell, char separator) {
  return numberFromText(withDecimalPoint(cell, separator)) || secondsFromClock(cell) ||
         secondsFromMoment(cell);
}

/// More than half of what is filled are numbers or times: what stands above a table may have one of them,
/// too.
bool holdsValues(const std::vector<std::string_view>& row, char separator) {
  std::size_t values = 0, filled = 0;
  for (const std::string_view cell : row) {
    filled += cell.empty() ? 0 : 1;
    values += isValue(cell, separator) ? 1 : 0;
  }
  return values * 2 > filled || (values >= 2 && values * 2 == filled);
}

bool isUnit(std::string_view word) {
  return std::find(std::begin(kUnits), std::end(kUnits), word) != std::end(kUnits);
}

std::string inSmallLetters(std::string_view text) {
  std::string small(text);
  std::transform(small.begin(), small.end(), small.begin(), [](unsigned char c) {
    return c < 0x80 ? static_cast<char>(std::tolower(c)) : static_cast<char>(c);
  });
  return small;
}

/// A title taken apart: "GPS Speed [km/h]" is "gps speed" in "km/h", and "x_m" is "x" in "m".
TextTable::Column columnOf(std::string_view written) {
  TextTable::Column column{.title = {}, .unit = {}, .written = shortText(written)};
  std::string title = inSmallLetters(written);
  if (const auto open = title.find_first_of("[("); open != std::string::npos) {
    const auto close = title.find_first_of("])", open);
    column.unit = withoutBlanks(std::string_view(title).substr(open + 1, close - open - 1));
    title.resize(open);
  }
  std::string& words = column.title;
  for (const char c : title) {
    const bool parts = c == ' ' || c == '_' || c == '-' || c == '.' || c == '#';
    if (!parts)
      words += c;
    else if (!words.empty() && words.back() != ' ')
      words += ' ';
  }
  if (words.ends_with(' ')) words.pop_back();
  const auto last = words.rfind(' ');
  if (column.unit.empty() && last != std::string::npos && isUnit(std::string_view(words).substr(last + 1))) {
    column.unit = words.substr(last + 1);
    words.resize(last);
  }
  return column;
}

/// Half of the words and more are units or stand in brackets; a title may be the word of a unit, too.
bool holdsUnits(const std::vector<std::string_view>& row) {
  std::size_t known = 0, filled = 0;
  for (const std::string_view cell : row) {
    const std::string word = inSmallLetters(cell);
    filled += word.empty() ? 0 : 1;
    known += isUnit(word) || word.starts_with('[') || word.starts_with('(') ? 1 : 0;
  }
  return known > 0 && 2 * known >= filled;
}

/// Fills in the units that the titles leave open.
void takeUnits(std::vector<TextTable::Column>& columns, const std::vector<std::string_view>& units) {
  for (std::size_t c = 0; c < std::min(columns.size(), units.size()); ++c) {
    if (!columns[c].unit.empty()) continue;
    columns[c].unit = inSmallLetters(units[c]);
    std::erase_if(columns[c].unit,
                  [](char x) { return std::string_view("[]() ").find(x) != std::string_view::npos; });
  }
}

/// The first row of numbers with as many cells as most rows have.
std::optional<std::size_t> firstOfValues(const Head& head, char separator) {
  const std::size_t usual = usualCount(head).cells;
  for (std::size_t r = 0; r < head.rows.size(); ++r) {
    const auto& cells = head.rows[r].cells;
    if (cells.size() == usual && !isComment(cells) && holdsValues(cells, separator)) return r;
  }
  return std::nullopt;
}

}  // namespace

std::string withDecimalPoint(std::string_view cell, char separator) {
  std::string number(cell);
  if (separator == ',' || number.find('.') != std::string::npos) return number;
  if (const auto comma = number.find(','); comma != std::string::npos) number[comma] = '.';
  return number;
}

bool isComment(const TableRows& row) {
  return row.cells().front().starts_with('#');
}

Result<TextTable> textTable(std::string_view text) {
  const char separator = separatorOf(text);
  const Head head = headOf(text, separator);
  if (head.openQuoteLine)
    return Problem{.kind = Problem::Kind::QuoteLeftOpen, .line = *head.openQuoteLine, .column = 1};
  const auto first = firstOfValues(head, separator);
  if (!first)
    return Problem{.kind = Problem::Kind::NotARecording,
                   .allowed = {"GPX 1.1", "NMEA 0183", "CSV"},
                   .line = 1,
                   .column = 1};
  const auto cellsAbove = [&](std::size_t above) {
    return *first >= above ? head.rows[*first - above].cells : std::vector<std::string_view>();
  };
  const bool hasUnits = holdsUnits(cellsAbove(1)) && cellsAbove(2).size() > 1;
  const std::size_t above = hasUnits ? 2 : 1;
  const auto titles = cellsAbove(above);
  if (titles.size() < 2)
    return Problem{.kind = Problem::Kind::MissingColumn,
                   .allowed = {"latitude", "longitude", "x", "y"},
                   .line = head.rows[*first].line,
                   .column = 1};
  TextTable table{.separator = separator,
                  .columns = {},
                  .titlesLine = head.rows[*first - above].line,
                  .values = head.rows[*first].from};
  for (const std::string_view title : titles) table.columns.push_back(columnOf(title));
  if (hasUnits) takeUnits(table.columns, cellsAbove(1));
  return table;
}

}  // namespace layshaft
