// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/csv_table.h"

#include <algorithm>
#include <utility>

#include "core/number_text.h"

namespace layshaft {
namespace {

char separatorOf(std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size() - 1);
    const std::string_view line = text.substr(0, end + 1);
    if (line.find_first_not_of(" \t\r\n") != std::string_view::npos)
      for (const char separator : {'\t', ';', ','})
        if (line.find(separator) != std::string_view::npos) return separator;
    text.remove_prefix(end + 1);
  }
  return ',';
}

std::string trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const auto first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(kBlanks) - first + 1));
}

}  // namespace

CsvTable csvTable(std::string_view text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  CsvTable table{.rows = {}, .separator = separatorOf(text)};
  std::vector<std::string> row;
  std::string cell;
  bool quoted = false;
  const auto endCell = [&] { row.push_back(trimmed(std::exchange(cell, {}))); };
  const auto endRow = [&] {
    endCell();
    const bool filled = std::any_of(row.begin(), row.end(), [](const auto& c) { return !c.empty(); });
    table.rows.push_back(filled ? std::move(row) : std::vector<std::string>());
    row.clear();
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
      cell += '"';
      ++i;
    } else if (c == '"' && (quoted || trimmed(cell).empty())) {
      quoted = !quoted;
    } else if (!quoted && c == table.separator) {
      endCell();
    } else if (!quoted && c == '\n') {
      endRow();
    } else {
      cell += c;
    }
  }
  if (!cell.empty() || !row.empty()) endRow();
  table.quoteLeftOpen = quoted;
  return table;
}

std::optional<double> cellNumber(std::string text) {
  if (const auto comma = text.find(','); comma != std::string::npos && text.find('.') == std::string::npos)
    text[comma] = '.';
  return numberFromText(text);
}

std::string cellText(const std::string& cell) {
  constexpr std::string_view kFormula = "=+-@";
  const bool guarded = cell.size() > 1 && cell[0] == '\'' && kFormula.find(cell[1]) != std::string_view::npos;
  return guarded ? cell.substr(1) : cell;
}

std::string inSmallLetters(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : static_cast<char>(c);
  });
  return text;
}

}  // namespace layshaft
