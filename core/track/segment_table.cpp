// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/segment_table.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/bike/track_rules.h"
#include "core/csv_table.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/profile_file/entry_access.h"
#include "core/short_text.h"
#include "core/utf8.h"

namespace layshaft {
namespace {

struct Column {
  std::size_t at;  ///< in the table
  std::string_view key;
  double inFile;  ///< one of the column's units in the unit of the file
};

struct Measure {
  double value;
  std::string unit;
};

/// A number, with or without a unit behind it.
std::optional<Measure> measureIn(std::string cell) {
  constexpr std::string_view kMinus = "\xE2\x88\x92", kOfNumbers = "0123456789+-.,";
  if (cell.starts_with(kMinus)) cell.replace(0, kMinus.size(), "-");
  if (const auto number = cellNumber(cell)) return Measure{*number, {}};
  const std::size_t end = std::min(cell.find_first_not_of(kOfNumbers), cell.size());
  const auto number = cellNumber(cell.substr(0, end));
  const std::size_t unit = cell.find_first_not_of(' ', end);
  if (!number || unit == std::string::npos) return std::nullopt;
  if (cell.find_first_of("0123456789", unit) != std::string::npos) return std::nullopt;
  return Measure{*number, cell.substr(unit)};
}

bool isMeasured(std::string_view key) {
  return !segmentUnits(key).empty();
}

double usualUnit(std::string_view key, const SegmentTableTerms& terms) {
  if (key == "length_m" || key == "radius_m") return terms.metresPerLength;
  return key == "corner_speed_kmh" ? terms.kmhPerSpeed : 1.0;
}

Problem notAUnit(std::string_view key, const std::string& unit) {
  return {.kind = Problem::Kind::NotOneOf,
          .path = std::string(key),
          .given = shortText(unit),
          .allowed = segmentUnits(key)};
}

class Reading {
 public:
  Reading(const CsvTable& table, const SegmentTableTerms& terms) : table_(table), terms_(terms) {}

  std::variant<SegmentsRead, SegmentTableRefusal> read() {
    while (row_ < table_.rows.size() && table_.rows[row_].empty()) ++row_;
    if (table_.quoteLeftOpen)
      refuse(table_.rows.size() - 1, {}, {.kind = Problem::Kind::QuoteLeftOpen});
    else if (row_ < table_.rows.size())
      readTitles();
    for (; row_ < table_.rows.size() && !refusal_; ++row_)
      if (!table_.rows[row_].empty()) readSegment();
    if (const auto count = read_.segments.size(); !refusal_ && count == 0) refuseCount();
    if (refusal_) return *refusal_;
    return std::move(read_);
  }

 private:
  void refuse(std::size_t row, std::optional<std::size_t> column, Problem problem) {
    if (!refusal_)
      refusal_ = {.row = static_cast<int>(row) + 1,
                  .column = column ? static_cast<int>(*column) + 1 : 0,
                  .problem = std::move(problem)};
  }
  void refuseCount() {
    refusal_ = {.problem = {.kind = Problem::Kind::WrongCount,
                            .path = "segments",
                            .given = std::to_string(read_.segments.size()),
                            .low = 1,
                            .high = limits::kMostSegments}};
  }

  /// Finds the columns: by the titles, if the first row has no number, else in their usual order.
  void readTitles() {
    const auto& first = table_.rows[row_];
    if (std::any_of(first.begin(), first.end(), measureIn)) {
      for (std::size_t k = terms_.firstColumn; k < kSegmentKeys.size(); ++k)
        columns_.push_back({k - terms_.firstColumn, kSegmentKeys[k], usualUnit(kSegmentKeys[k], terms_)});
      width_ = columns_.size();
      return;
    }
    width_ = first.size();
    for (std::size_t c = 0; c < first.size(); ++c) readTitle(c, first[c]);
    if (columns_.empty()) {
      const auto filled = std::find_if(first.begin(), first.end(), [](const auto& c) { return !c.empty(); });
      Problem problem{.kind = Problem::Kind::NotOneOf, .path = {}, .given = shortText(*filled)};
      for (const std::string_view key : kSegmentKeys) problem.allowed.emplace_back(key);
      return refuse(row_, filled - first.begin(), std::move(problem));
    }
    if (++row_ < table_.rows.size() && namesUnits(table_.rows[row_])) readUnits();
  }

  void readTitle(std::size_t c, const std::string& text) {
    const auto title = segmentTitle(text, terms_.words);
    if (!title) {
      if (!text.empty()) read_.ignored.push_back(text);
      return;
    }
    const auto same = [&](const Column& column) { return column.key == title->key; };
    if (std::any_of(columns_.begin(), columns_.end(), same))
      return refuse(
          row_, c,
          {.kind = Problem::Kind::DuplicateKey, .path = std::string(title->key), .given = shortText(text)});
    const auto unit = title->unit.empty() ? std::optional(usualUnit(title->key, terms_))
                                          : segmentUnit(title->key, title->unit);
    if (!unit) return refuse(row_, c, notAUnit(title->key, title->unit));
    columns_.push_back({c, title->key, *unit});
  }

  const std::string& cell(const Column& column) const {
    static const std::string kNone;
    const auto& row = table_.rows[row_];
    return column.at < row.size() ? row[column.at] : kNone;
  }

  bool namesUnits(const std::vector<std::string>& row) const {
    if (std::any_of(row.begin(), row.end(), measureIn)) return false;
    return std::any_of(columns_.begin(), columns_.end(), [&](const Column& column) {
      return segmentUnit(column.key, cell(column)).has_value();
    });
  }

  void readUnits() {
    for (Column& column : columns_) {
      if (cell(column).empty() || !isMeasured(column.key)) continue;
      const auto unit = segmentUnit(column.key, cell(column));
      if (!unit) return refuse(row_, column.at, notAUnit(column.key, cell(column)));
      column.inFile = *unit;
    }
    ++row_;
  }

  void readSegment() {
    const auto& row = table_.rows[row_];
    for (std::size_t c = width_; c < row.size(); ++c)
      if (!row[c].empty())
        return refuse(row_, c,
                      {.kind = Problem::Kind::WrongCount,
                       .path = {},
                       .given = std::to_string(row.size()),
                       .high = static_cast<double>(width_)});
    TrackSegment segment;
    bool any = false;
    for (const Column& column : columns_) {
      if (cell(column).empty()) continue;
      any = true;
      if (auto problem = put(segment, column)) return refuse(row_, column.at, std::move(*problem));
    }
    if (!any) return;  // only what nothing is known of
    if (auto problem = segmentProblem(segment)) return refuse(row_, {}, std::move(*problem));
    if (read_.segments.size() == static_cast<std::size_t>(limits::kMostSegments))
      return refuse(row_, {},
                    {.kind = Problem::Kind::WrongCount,
                     .path = "segments",
                     .given = std::to_string(limits::kMostSegments + 1),
                     .low = 1,
                     .high = limits::kMostSegments});
    read_.segments.push_back(std::move(segment));
  }

  std::optional<Problem> put(TrackSegment& segment, const Column& column) const {
    const std::string& text = cell(column);
    if (column.key == "name") return setEntryField(segment, column.key, cellText(text));
    if (!isMeasured(column.key)) return setEntryField(segment, column.key, segmentChoice(text, terms_.words));
    const auto measure = measureIn(text);
    if (!measure)
      return Problem{.kind = Problem::Kind::WrongType,
                     .path = std::string(column.key),
                     .given = shortText(text),
                     .allowed = {"number"}};
    const auto unit =
        measure->unit.empty() ? std::optional(column.inFile) : segmentUnit(column.key, measure->unit);
    if (!unit) return notAUnit(column.key, measure->unit);
    const double value = *unit == 1.0 ? measure->value : withoutNoise(measure->value * *unit);
    return setEntryField(segment, column.key, value);
  }

  const CsvTable& table_;
  const SegmentTableTerms& terms_;
  std::size_t row_ = 0, width_ = 0;
  std::vector<Column> columns_;
  SegmentsRead read_;
  std::optional<SegmentTableRefusal> refusal_;
};

}  // namespace

std::variant<SegmentsRead, SegmentTableRefusal> readSegments(std::string_view text,
                                                             const SegmentTableTerms& terms) {
  if (text.size() > static_cast<std::size_t>(limits::kLargestTableBytes))
    return SegmentTableRefusal{
        .problem = {.kind = Problem::Kind::FileTooLarge, .high = limits::kLargestTableBytes}};
  if (const auto bad = firstBadUtf8(text))
    return SegmentTableRefusal{.problem = {.kind = Problem::Kind::NotUtf8, .given = std::to_string(*bad)}};
  return Reading(csvTable(text), terms).read();
}

}  // namespace layshaft
