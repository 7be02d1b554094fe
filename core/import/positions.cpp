// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/positions.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <span>
#include <string>
#include <tuple>
#include <utility>

#include "core/import/number_problem.h"
#include "core/import/table_text.h"
#include "core/import/time_text.h"
#include "core/limits.h"
#include "core/short_text.h"
#include "core/units.h"

namespace layshaft {
namespace {

enum class Meaning { Latitude, Longitude, X, Y, Height, Time, NorthOrSouth, EastOrWest };
constexpr std::size_t kMeanings = 8;

struct Title {
  std::string_view words;
  Meaning meaning;
};
/// Whole titles: "lat g" and "long acc" are accelerations.
constexpr Title kTitles[] = {{"latitude", Meaning::Latitude},
                             {"lat", Meaning::Latitude},
                             {"gps latitude", Meaning::Latitude},
                             {"gps lat", Meaning::Latitude},
                             {"breite", Meaning::Latitude},
                             {"breitengrad", Meaning::Latitude},
                             {"latitud", Meaning::Latitude},
                             {"longitude", Meaning::Longitude},
                             {"lon", Meaning::Longitude},
                             {"lng", Meaning::Longitude},
                             {"long", Meaning::Longitude},
                             {"gps longitude", Meaning::Longitude},
                             {"gps lon", Meaning::Longitude},
                             {"gps long", Meaning::Longitude},
                             {"länge", Meaning::Longitude},
                             {"längengrad", Meaning::Longitude},
                             {"longitud", Meaning::Longitude},
                             {"x", Meaning::X},
                             {"east", Meaning::X},
                             {"easting", Meaning::X},
                             {"y", Meaning::Y},
                             {"north", Meaning::Y},
                             {"northing", Meaning::Y},
                             {"height", Meaning::Height},
                             {"altitude", Meaning::Height},
                             {"alt", Meaning::Height},
                             {"elevation", Meaning::Height},
                             {"ele", Meaning::Height},
                             {"gps altitude", Meaning::Height},
                             {"gps height", Meaning::Height},
                             {"z", Meaning::Height},
                             {"höhe", Meaning::Height},
                             {"altura", Meaning::Height},
                             {"altitud", Meaning::Height},
                             {"time", Meaning::Time},
                             {"timestamp", Meaning::Time},
                             {"t", Meaning::Time},
                             {"utc", Meaning::Time},
                             {"elapsed time", Meaning::Time},
                             {"zeit", Meaning::Time},
                             {"tiempo", Meaning::Time},
                             {"n/s", Meaning::NorthOrSouth},
                             {"e/w", Meaning::EastOrWest}};

struct UnitOf {
  std::string_view word;
  double factor;
};
constexpr UnitOf kDegrees[] = {{"", 1.0}, {"deg", 1.0}, {"°", 1.0}, {"degrees", 1.0}, {"degree", 1.0}};
constexpr UnitOf kLengths[] = {{"", 1.0},       {"m", 1.0},     {"km", 1000.0}, {"ft", units::kMetresPerFoot},
                               {"metres", 1.0}, {"meters", 1.0}};
constexpr UnitOf kTimes[] = {{"", 1.0},    {"s", 1.0},       {"ms", 1e-3},
                             {"sec", 1.0}, {"seconds", 1.0}, {"utc", 1.0}};

constexpr UnitOf kNoUnit[] = {{"", 1.0}};

std::span<const UnitOf> unitsOf(Meaning meaning) {
  switch (meaning) {
    case Meaning::Latitude:
    case Meaning::Longitude:
      return kDegrees;
    case Meaning::Time:
      return kTimes;
    case Meaning::NorthOrSouth:
    case Meaning::EastOrWest:
      return kNoUnit;
    case Meaning::X:
    case Meaning::Y:
    case Meaning::Height:
      break;
  }
  return kLengths;
}

struct Source {
  std::size_t column = 0;
  double factor = 1.0;
};

class PositionsReader {
 public:
  explicit PositionsReader(TextTable table) : table_(std::move(table)) {}

  Result<Recording> read() {
    if (auto problem = findColumns()) return *problem;
    while (table_.values.next()) {
      if (isComment(table_.values)) continue;
      if (auto problem = takeRow()) return *problem;
    }
    return std::move(recording_);
  }

 private:
  std::optional<Source>& source(Meaning meaning) { return sources_[static_cast<std::size_t>(meaning)]; }
  bool has(Meaning meaning) { return source(meaning).has_value(); }

  std::optional<Problem> findColumns() {
    for (std::size_t c = 0; c < table_.columns.size(); ++c) {
      const TextTable::Column& column = table_.columns[c];
      const auto* title = std::find_if(std::begin(kTitles), std::end(kTitles),
                                       [&](const Title& known) { return column.title == known.words; });
      if (title == std::end(kTitles)) continue;
      if (has(title->meaning)) return inTitles(c, {.kind = Problem::Kind::ColumnTwice});
      const auto known = unitsOf(title->meaning);
      const auto unit = std::find_if(known.begin(), known.end(),
                                     [&](const UnitOf& one) { return column.unit == one.word; });
      if (unit == known.end()) {
        Problem problem{.kind = Problem::Kind::NotOneOf, .given = shortText(column.unit)};
        for (const UnitOf& one : known)
          if (!one.word.empty()) problem.allowed.emplace_back(one.word);
        return inTitles(c, std::move(problem));
      }
      source(title->meaning) = Source{.column = c, .factor = unit->factor};
    }
    const bool onEarth = has(Meaning::Latitude) || has(Meaning::Longitude);
    east_ = onEarth ? Meaning::Longitude : Meaning::X;
    north_ = onEarth ? Meaning::Latitude : Meaning::Y;
    recording_.onEarth = onEarth;
    Problem missing{.kind = Problem::Kind::MissingColumn, .line = table_.titlesLine, .column = 1};
    if (!has(east_) && !has(north_)) {
      missing.allowed = {"latitude", "longitude", "x", "y"};
    } else if (!has(east_) || !has(north_)) {
      missing.allowed = {has(north_) ? onEarth ? "longitude" : "x" : onEarth ? "latitude" : "y"};
    } else {
      needed_ = std::max(source(east_)->column, source(north_)->column) + 1;
      return std::nullopt;
    }
    return missing;
  }

  Problem inTitles(std::size_t column, Problem problem) const {
    problem.path = table_.columns[column].written;
    problem.line = table_.titlesLine;
    problem.column = column + 1;
    return problem;
  }

  Problem inCell(std::size_t column, Problem problem) const {
    problem.path = column < table_.columns.size() ? table_.columns[column].written : std::string();
    problem.line = table_.values.line();
    problem.column = column + 1;
    return problem;
  }

  std::optional<Problem> takeRow() {
    const auto cells = table_.values.cells();
    const auto beyond = cells.subspan(std::min(cells.size(), table_.columns.size()));
    // A decimal comma where commas separate makes two cells of one number.
    if (std::any_of(beyond.begin(), beyond.end(), [](std::string_view text) { return !text.empty(); }))
      return inCell(table_.columns.size(), {.kind = Problem::Kind::WrongCount,
                                            .given = std::to_string(cells.size()),
                                            .low = static_cast<double>(needed_),
                                            .high = static_cast<double>(table_.columns.size())});
    if (table_.values.quoteLeftOpen()) return inCell(0, {.kind = Problem::Kind::QuoteLeftOpen});
    if (cells.size() < needed_ || table_.values.tooManyCells()) {
      if (cells.size() < needed_ && table_.values.endsText()) {
        ++recording_.damaged;
        return std::nullopt;
      }
      return inCell(cells.size(),
                    {.kind = Problem::Kind::WrongCount,
                     .given = std::to_string(cells.size() + (table_.values.tooManyCells() ? 1 : 0)),
                     .low = static_cast<double>(needed_),
                     .high = limits::kMostTableColumns});
    }
    if (cells[source(east_)->column].empty() || cells[source(north_)->column].empty()) {
      ++recording_.noFix;
      return std::nullopt;
    }
    if (recording_.fixes.size() >= limits::kMostFixes)
      return inCell(0, {.kind = Problem::Kind::WrongCount,
                        .given = std::to_string(recording_.fixes.size() + 1),
                        .low = limits::kFewestFixes,
                        .high = limits::kMostFixes});
    Fix fix;
    std::optional<double> east, north;
    const bool onEarth = recording_.onEarth;
    for (const auto& [meaning, limit, into] :
         {std::tuple{east_, onEarth ? limits::kLongitudeDeg : limits::kPlaneM, &east},
          std::tuple{north_, onEarth ? limits::kLatitudeDeg : limits::kPlaneM, &north},
          std::tuple{Meaning::Height, limits::kHeightM, &fix.heightM}})
      if (auto problem = takeNumber(meaning, limit, *into)) return problem;
    if (auto problem = takeTime(fix.timeS)) return problem;
    if (auto problem = takeHalf(Meaning::NorthOrSouth, "NS", north)) return problem;
    if (auto problem = takeHalf(Meaning::EastOrWest, "EW", east)) return problem;
    fix.east = east.value_or(0.0);
    fix.north = north.value_or(0.0);
    recording_.fixes.push_back(fix);
    return std::nullopt;
  }

  std::string_view cell(Meaning meaning) {
    const auto cells = table_.values.cells();
    return has(meaning) && source(meaning)->column < cells.size() ? cells[source(meaning)->column]
                                                                  : std::string_view();
  }

  std::optional<Problem> takeNumber(Meaning meaning, const Limit& limit, std::optional<double>& into) {
    const std::string_view text = cell(meaning);
    if (text.empty()) return std::nullopt;
    const double factor = source(meaning)->factor;
    const auto number = numberWithin(withDecimalPoint(text, table_.separator),
                                     {limit.low / factor, limit.high / factor, limit.unit}, {});
    if (!number) {
      Problem problem = number.problem();
      problem.given = shortText(text);
      if (!table_.columns[source(meaning)->column].unit.empty() && !problem.unit.empty())
        problem.unit = table_.columns[source(meaning)->column].unit;
      return inCell(source(meaning)->column, std::move(problem));
    }
    into = *number * factor;
    return std::nullopt;
  }

  /// The half of the world that a degree is in, if it stands in a column of its own, the positive one of
  /// `signs` first.
  std::optional<Problem> takeHalf(Meaning meaning, std::string_view signs, std::optional<double>& degrees) {
    const std::string_view text = cell(meaning);
    if (text.empty() || !recording_.onEarth || !degrees) return std::nullopt;
    if (text.size() != 1 || signs.find(text) == std::string_view::npos)
      return inCell(source(meaning)->column,
                    {.kind = Problem::Kind::NotOneOf,
                     .given = shortText(text),
                     .allowed = {std::string(signs.substr(0, 1)), std::string(signs.substr(1))}});
    if (text == signs.substr(1)) degrees = -std::abs(*degrees);
    return std::nullopt;
  }

  std::optional<Problem> takeTime(std::optional<double>& into) {
    const std::string_view text = cell(Meaning::Time);
    if (text.empty()) return std::nullopt;
    const std::string written = withDecimalPoint(text, table_.separator);
    if ((into = secondsFromMoment(written)) || (into = secondsFromClock(written))) return std::nullopt;
    constexpr Limit kAny{-1e15, 1e15};
    const auto number = numberWithin(written, kAny, {});
    if (!number)
      return inCell(source(Meaning::Time)->column,
                    {.kind = Problem::Kind::NotATime,
                     .given = shortText(text),
                     .allowed = {"12.5", "0:00:12.5", "2026-05-12T10:11:12.5Z"}});
    into = *number * source(Meaning::Time)->factor;
    return std::nullopt;
  }

  TextTable table_;
  Recording recording_{.kind = Recording::Kind::Table};
  std::array<std::optional<Source>, kMeanings> sources_;
  Meaning east_{}, north_{};
  std::size_t needed_ = 0;  ///< cells that a row with a position has
};

}  // namespace

Result<Recording> readPositions(std::string_view text) {
  auto table = textTable(text);
  if (!table) return table.problem();
  return PositionsReader(std::move(table).value()).read();
}

}  // namespace layshaft
