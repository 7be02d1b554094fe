// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/segment_rows.h"

#include <QCoreApplication>
#include <QHash>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "core/csv_table.h"
#include "core/profile_file/entry_access.h"
#include "core/track/segment_table.h"
#include "ui/words/plain_text.h"
#include "ui/words/segment_words.h"
#include "ui/words/typed_units.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(SegmentRows)
};

constexpr std::size_t kColumns = kSegmentKeys.size();

/// A number without groups, as both the table and the core read it back.
QString plainNumber(double x) {
  constexpr int kDigits = 12;  // as many as the file keeps
  return QLocale::c().toString(x, 'g', kDigits);
}

/// A pasted cell, on one line.
QString tidy(const std::string& cell) {
  return QString::fromStdString(cellText(cell)).simplified();
}

/// How a pasted table names its columns.
struct Titles {
  std::array<std::optional<std::size_t>, kColumns> at;  ///< where each column of ours is in it
  std::array<std::string, kColumns> units;              ///< as it names them; empty where it does not
  QStringList unknown;                                  ///< titles that nothing is known of
  bool any = false;
};

bool hasNumber(const std::vector<std::string>& row) {
  return std::any_of(row.begin(), row.end(), [](const std::string& cell) {
    const QString text = tidy(cell);
    return typedNumber(text).has_value() || numberAndUnit(text).has_value();
  });
}

Titles titlesIn(const std::vector<std::string>& row) {
  Titles titles;
  const auto words = segmentWords();
  for (std::size_t c = 0; c < row.size(); ++c) {
    if (row[c].empty()) continue;
    const auto title = segmentTitle(row[c], words);
    const auto column = title ? segmentColumn(title->key) : std::nullopt;
    if (!column || titles.at[*column]) {
      titles.unknown << onOneLine(tidy(row[c]));
      continue;
    }
    titles.any = true;
    titles.at[*column] = c;
    titles.units[*column] = title->unit;
  }
  return titles;
}

/// Takes the units of a row that has nothing else; false if it is no such row.
bool takeUnits(Titles& titles, const std::vector<std::string>& row) {
  if (hasNumber(row)) return false;
  bool any = false;
  std::array<std::string, kColumns> units = titles.units;
  for (std::size_t k = 0; k < kColumns; ++k) {
    if (!titles.at[k] || *titles.at[k] >= row.size() || segmentUnits(kSegmentKeys[k]).empty()) continue;
    const std::string& cell = row[*titles.at[k]];
    if (cell.empty()) continue;
    any = any || segmentUnit(kSegmentKeys[k], cell);
    units[k] = cell;
  }
  if (any) titles.units = units;
  return any;
}

/// Puts the unit behind the numbers of a column that is not in the unit shown.
void nameUnit(std::vector<QStringList>& rows, std::size_t column, const std::string& unit,
              const UnitsShown& units) {
  const std::string_view key = kSegmentKeys[column];
  const auto shown = segmentUnit(key, segmentUnitShown(column, units)), given = segmentUnit(key, unit);
  if (unit.empty() || !shown || given == shown) return;
  // What the limit allows is so many of the pasted unit.
  const double highest = *highestOfSegment(column, units) * *shown / given.value_or(*shown);
  std::vector<QString> cells;
  for (const QStringList& row : rows) cells.push_back(row[static_cast<qsizetype>(column)]);
  const auto numbers = columnNumbers(cells, highest);
  for (std::size_t r = 0; r < rows.size(); ++r)
    if (numbers[r])
      rows[r][static_cast<qsizetype>(column)] =
          plainNumber(*numbers[r]) + QLatin1Char(' ') + QString::fromStdString(unit).simplified();
}

/// Rows that have something, by the separator of a spreadsheet. A comma that only marks decimals separates
/// nothing.
std::vector<std::vector<std::string>> pastedRows(const QString& text) {
  std::vector<std::vector<std::string>> rows;
  const QStringList lines = text.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
  const bool numbers = std::all_of(lines.begin(), lines.end(), [](const QString& line) {
    return line.trimmed().isEmpty() || typedNumber(line.trimmed()).has_value();
  });
  if (!numbers || text.contains(QLatin1Char('\t'))) {
    auto table = csvTable(text.toStdString());
    std::erase_if(table.rows, [](const auto& row) { return row.empty(); });
    if (!table.quoteLeftOpen) return table.rows;
  }
  // Numbers alone, or a quotation mark that belongs to a name.
  for (const QString& line : lines) {
    std::vector<std::string> row;
    for (const QString& cell : line.split(QLatin1Char('\t'))) row.push_back(cell.trimmed().toStdString());
    if (!line.trimmed().isEmpty()) rows.push_back(std::move(row));
  }
  return rows;
}

/// The numbers of one column as the core reads them, whatever the desktop's decimal sign.
void makePlain(std::vector<QStringList>& rows, std::size_t column, const UnitsShown& units) {
  const auto highest = highestOfSegment(column, units);
  if (!highest) return;
  const auto at = static_cast<qsizetype>(column);
  std::vector<QString> cells;
  for (const QStringList& row : rows) cells.push_back(row.value(at));
  const auto numbers = columnNumbers(cells, *highest);
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (numbers[r]) {
      rows[r][at] = plainNumber(*numbers[r]);
    } else if (const auto parts = numberAndUnit(cells[r])) {
      if (const auto number = typedNumber(parts->number))
        rows[r][at] = plainNumber(*number) + QLatin1Char(' ') + parts->unit;
    }
  }
}

std::string quoted(const QString& cell) {
  return '"' + cell.simplified().replace(QLatin1Char('"'), QLatin1String("\"\"")).toStdString() + '"';
}

/// Titles and units of the table, so that a row below them is nothing but a segment.
std::string headOf(const UnitsShown& units) {
  std::string titles, unitRow;
  for (std::size_t c = 0; c < kColumns; ++c) {
    titles += (c == 0 ? "" : "\t") + std::string(kSegmentKeys[c]);
    unitRow += (c == 0 ? "" : "\t") + segmentUnitShown(c, units);
  }
  return titles + '\n' + unitRow + '\n';
}

/// What the rows of a table say, so that each finds the segment that it was made of: one that is as it was
/// wherever it stands now, one that was changed in its place.
class ShownRows {
 public:
  ShownRows(const std::vector<TrackSegment>& segments, const UnitsShown& units) : segments_(segments) {
    for (const TrackSegment& segment : segments) {
      cells_.push_back(segmentCells(segment, units));
      if (const QString row = cells_.back().join(kBetween); !rows_.contains(row))
        rows_.insert(row, cells_.size() - 1);
    }
  }

  /// Cells that nobody touched keep every digit and letter.
  void keep(TrackSegment& segment, const QStringList& cells, std::size_t row) const {
    const std::size_t from = placeOf(cells, row);
    if (from >= cells_.size()) return;
    for (std::size_t c = 0; c < kColumns; ++c) {
      const QString cell = cells.value(static_cast<qsizetype>(c));
      if (!cell.isEmpty() && cell == cells_[from][static_cast<qsizetype>(c)])
        setEntryField(segment, kSegmentKeys[c], entryValue(segments_[from], kSegmentKeys[c]));
    }
  }

 private:
  static constexpr QLatin1Char kBetween{'\t'};

  std::size_t placeOf(const QStringList& cells, std::size_t row) const {
    if (row < cells_.size() && cells_[row] == cells) return row;
    return rows_.value(cells.join(kBetween), row);
  }

  const std::vector<TrackSegment>& segments_;
  std::vector<QStringList> cells_;
  QHash<QString, std::size_t> rows_;
};

/// What the table does not show of a segment stays with the one in its row, or with its like.
void keepExtras(TrackSegment& segment, std::size_t row, bool sameRows,
                const std::vector<TrackSegment>& before) {
  if (sameRows) {
    segment.extras = before[row].extras;
    return;
  }
  for (const TrackSegment& old : before) {
    segment.extras = old.extras;
    if (segment == old) return;
  }
  segment.extras = {};
}

}  // namespace

ArrangedPaste arrangedPaste(const QString& text, int firstColumn, const UnitsShown& units) {
  const auto rows = pastedRows(text);
  ArrangedPaste paste;
  if (rows.empty()) return paste;
  Titles titles = hasNumber(rows.front()) ? Titles() : titlesIn(rows.front());
  std::size_t first = 0;
  const auto left = titles.any ? 0 : static_cast<std::size_t>(firstColumn);
  if (titles.any) {
    first = rows.size() > 1 && takeUnits(titles, rows[1]) ? 2 : 1;
    if (!titles.unknown.isEmpty())
      paste.notes << Say::tr("Columns that were passed over: %1.")
                         .arg(titles.unknown.join(Say::tr(", ", "in a list")));
  } else {
    for (std::size_t k = left; k < kColumns; ++k) titles.at[k] = k - left;
  }
  int lost = 0;
  std::vector<bool> used(rows.front().size(), false);  // under a title, or named as passed over
  for (std::size_t c = 0; c < used.size(); ++c) used[c] = titles.any && !rows.front()[c].empty();
  for (std::size_t r = first; r < rows.size(); ++r) {
    QStringList cells;
    for (std::size_t k = left; k < kColumns; ++k)
      cells << (titles.at[k] && *titles.at[k] < rows[r].size() ? tidy(rows[r][*titles.at[k]]) : QString());
    for (std::size_t c = 0; c < rows[r].size(); ++c) {
      const bool taken = titles.any ? c < used.size() && used[c] : c < kColumns - left;
      if (!taken && !rows[r][c].empty()) ++lost;
    }
    paste.columns.rows.push_back(cells);
  }
  if (lost > 0)
    paste.notes << Say::tr("%n cells that stand under no column were passed over.", nullptr, lost);
  paste.columns.firstColumn = static_cast<int>(left);
  if (titles.any)
    for (std::size_t k = 0; k < kColumns; ++k) nameUnit(paste.columns.rows, k, titles.units[k], units);
  return paste;
}

std::vector<ReadSegment> readSegmentRows(const std::vector<QStringList>& rows,
                                         const std::vector<int>& numbers,
                                         const std::vector<TrackSegment>& before, const UnitsShown& units) {
  auto plain = rows;
  for (std::size_t c = 0; c < kColumns; ++c) makePlain(plain, c, units);
  std::vector<std::string> texts;
  std::string all = headOf(units);
  for (const QStringList& row : plain) {
    std::string text;
    for (qsizetype c = 0; c < static_cast<qsizetype>(kColumns); ++c)
      text += (c == 0 ? "" : "\t") + quoted(row.value(c));
    texts.push_back(text + '\n');
    all += texts.back();
  }
  SegmentTableTerms terms;
  terms.words = segmentWords();
  std::vector<ReadSegment> result(rows.size());
  const auto whole = readSegments(all, terms);
  if (const auto* read = std::get_if<SegmentsRead>(&whole); read && read->segments.size() == rows.size()) {
    for (std::size_t r = 0; r < rows.size(); ++r) result[r].segment = read->segments[r];
  } else {
    // Something is wrong: each row on its own tells all that is.
    const std::string head = headOf(units);
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const auto one = readSegments(head + texts[r], terms);
      if (const auto* refusal = std::get_if<SegmentTableRefusal>(&one))
        result[r].complaint = segmentRefusalWords(numbers[r], rows[r], *refusal, units);
      else
        result[r].segment = std::get<SegmentsRead>(one).segments.front();
    }
  }
  const ShownRows shown(before, units);
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (!result[r].segment) continue;
    shown.keep(*result[r].segment, rows[r], r);
    keepExtras(*result[r].segment, r, before.size() == rows.size(), before);
  }
  return result;
}

}  // namespace layshaft::ui
