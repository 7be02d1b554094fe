// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/csv_units.h"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <utility>
#include <vector>

#include "core/number_text.h"
#include "core/units.h"

namespace layshaft::ui {
namespace {

/// How a title ends, what that measures, and how it ends in the other units.
struct Ending {
  std::string_view core;
  Quantity quantity;
  double siPerUnit;
  std::string_view metric, imperial, mixed;

  std::string_view in(UnitSystem system) const {
    switch (system) {
      case UnitSystem::Imperial:
        return imperial;
      case UnitSystem::Mixed:
        return mixed;
      case UnitSystem::Metric:
        break;
    }
    return metric;
  }
};

/// The longer ending first where one is the end of another. Chain speed is read in lengths per second.
constexpr Ending kEndings[] = {
    {"chain_speed_mps", Quantity::Length, 1.0, "chain_speed_mps", "chain_speed_ftps", "chain_speed_mps"},
    {"_mps2", Quantity::Length, 1.0, "_mps2", "_ftps2", "_mps2"},
    {"_mps", Quantity::Speed, 1.0, "_kmh", "_mph", "_mph"},
    {"rollout_m", Quantity::SmallLength, 1.0, "rollout_mm", "rollout_in", "rollout_mm"},
    {"_mm", Quantity::SmallLength, units::metresFromMillimetres(1.0), "_mm", "_in", "_mm"},
    {"_m", Quantity::Length, 1.0, "_m", "_ft", "_m"},
    {"_n", Quantity::Force, 1.0, "_n", "_lbf", "_n"},
    {"_kg", Quantity::Mass, 1.0, "_kg", "_lb", "_kg"},
};

/// What becomes of a column.
struct Column {
  const Ending* ending = nullptr;  ///< none: its cells stay as they are
  bool dropped = false;
};

Column columnOf(std::string_view title, const UnitsShown& units) {
  const bool metric = units.system() == UnitSystem::Metric;
  const std::string_view other = metric ? "zero_to_60_mph" : "zero_to_100_kmh";
  Column column{.dropped = title.find(other) != std::string_view::npos};
  const auto* found = std::find_if(std::begin(kEndings), std::end(kEndings),
                                   [&](const Ending& ending) { return title.ends_with(ending.core); });
  if (found != std::end(kEndings) && found->in(units.system()) != found->core) column.ending = found;
  return column;
}

/// The cells of the row that begins at `at`, quotes and all; goes on to the next row.
std::vector<std::string_view> takeRow(std::string_view csv, std::size_t& at) {
  std::vector<std::string_view> cells;
  bool quoted = false;
  std::size_t from = at;
  for (; at < csv.size() && (quoted || csv[at] != '\n'); ++at) {
    if (csv[at] == '"') quoted = !quoted;
    if (quoted || csv[at] != ',') continue;
    cells.push_back(csv.substr(from, at - from));
    from = at + 1;
  }
  cells.push_back(csv.substr(from, at - from));
  ++at;
  return cells;
}

std::string titleIn(std::string_view title, const Column& column, const UnitsShown& units) {
  std::string text(title);
  if (!column.ending) return text;
  text.resize(text.size() - column.ending->core.size());
  return text += column.ending->in(units.system());
}

std::string cellIn(std::string_view cell, const Column& column, const UnitsShown& units) {
  const auto number = column.ending ? numberFromText(cell) : std::nullopt;
  if (!number) return std::string(cell);
  const Ending& ending = *column.ending;
  return numberText(withoutNoise(units.shown(ending.quantity, *number * ending.siPerUnit)));
}

}  // namespace

std::string csvInUnits(const std::string& csv, const UnitsShown& units) {
  std::vector<Column> columns;
  std::string out;
  for (std::size_t at = 0; at < csv.size();) {
    const auto cells = takeRow(csv, at);
    const bool titles = columns.empty();
    if (titles)
      for (const std::string_view title : cells) columns.push_back(columnOf(title, units));
    bool first = true;
    for (std::size_t c = 0; c < cells.size() && c < columns.size(); ++c) {
      if (columns[c].dropped) continue;
      if (!std::exchange(first, false)) out += ',';
      out += titles ? titleIn(cells[c], columns[c], units) : cellIn(cells[c], columns[c], units);
    }
    out += '\n';
  }
  return out;
}

}  // namespace layshaft::ui
