// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/segment_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/bike/words.h"
#include "core/profile_file/entry_access.h"
#include "ui/words/choice_words.h"
#include "ui/words/field_table.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(SegmentWords)
};

constexpr const char* kTitles[] = {
    QT_TRANSLATE_NOOP("SegmentWords", "Name"),    QT_TRANSLATE_NOOP("SegmentWords", "Length"),
    QT_TRANSLATE_NOOP("SegmentWords", "Radius"),  QT_TRANSLATE_NOOP("SegmentWords", "Angle"),
    QT_TRANSLATE_NOOP("SegmentWords", "Speed"),   QT_TRANSLATE_NOOP("SegmentWords", "Slope"),
    QT_TRANSLATE_NOOP("SegmentWords", "Surface"), QT_TRANSLATE_NOOP("SegmentWords", "Turn")};
static_assert(std::size(kTitles) == kSegmentKeys.size());

const Field& fieldOf(std::size_t column) {
  return *fieldRow("tracks[].segments[]." + std::string(kSegmentKeys[column]));
}

FieldRule ruleOf(std::size_t column) {
  return entryRule<TrackSegment>(kSegmentKeys[column]).value_or(FieldRule());
}

bool isMeasured(std::size_t column) {
  return !segmentUnits(kSegmentKeys[column]).empty();
}

QString bareTitle(std::size_t column) {
  return Say::tr(kTitles[column]);
}

/// What is wrong with one cell.
QString cellWords(std::size_t column, const QString& cell, const Problem& problem, const UnitsShown& units) {
  const QString quoted = Say::tr("“%1”", "what was typed").arg(onOneLine(cell));
  if (problem.kind == Problem::Kind::OutOfRange && isMeasured(column)) {
    const auto shown = [&](double inFile) {
      constexpr double kWhole = 1000.0;  // from here on nobody asks for a tenth
      const double x = shownNumber(fieldOf(column), inFile, units);
      return std::abs(x) < kWhole ? QLocale().toString(x, 'g', 4) : number(x, 0);
    };
    return Say::tr("%1 is out of range (%2 to %3 %4)", "numbers and their unit")
        .arg(quoted, shown(problem.low), shown(problem.high),
             shownUnit(fieldOf(column), ruleOf(column), units));
  }
  if (problem.kind == Problem::Kind::WrongType || problem.kind == Problem::Kind::NotFinite)
    return Say::tr("%1 is not understood; a number is expected").arg(quoted);
  if (problem.kind == Problem::Kind::NotOneOf && isMeasured(column))
    return Say::tr("the unit of %1 is not known; a number in %2 is expected")
        .arg(quoted, shownUnit(fieldOf(column), ruleOf(column), units));
  if (problem.kind == Problem::Kind::NotOneOf) {
    std::vector<std::string_view> words(problem.allowed.begin(), problem.allowed.end());
    return Say::tr("%1 is not understood; one of these is expected: %2").arg(quoted, choiceList(words));
  }
  Problem bare = problem;
  bare.path.clear();
  return spokenSentence(bare);
}

}  // namespace

QStringList segmentTitles(const UnitsShown& units) {
  QStringList titles;
  for (std::size_t c = 0; c < kSegmentKeys.size(); ++c)
    titles << nameWithUnit(bareTitle(c), isMeasured(c) ? shownUnit(fieldOf(c), ruleOf(c), units) : QString());
  return titles;
}

QString segmentHelp(std::size_t column, const UnitsShown& units) {
  return fieldHelp(fieldOf(column), ruleOf(column), units);
}

QString segmentCell(const TrackSegment& segment, std::size_t column, const UnitsShown& units) {
  const FieldValue value = entryValue(segment, kSegmentKeys[column]);
  if (const auto* inFile = std::get_if<double>(&value)) {
    QLocale plain;
    plain.setNumberOptions(QLocale::OmitGroupSeparator);
    return plain.toString(shownValue(fieldOf(column), *inFile, units), 'f', QLocale::FloatingPointShortest);
  }
  const auto* text = std::get_if<std::string>(&value);
  if (!text) return {};
  return column == 0 ? shownName(*text) : choiceWord(*text);
}

QStringList segmentCells(const TrackSegment& segment, const UnitsShown& units) {
  QStringList cells;
  for (std::size_t c = 0; c < kSegmentKeys.size(); ++c) cells << segmentCell(segment, c, units);
  return cells;
}

QString widestInSegments(std::size_t column, const UnitsShown& units) {
  QStringList texts{segmentTitles(units)[static_cast<qsizetype>(column)]};
  for (const std::string_view word : ruleOf(column).words) texts << choiceWord(word);
  return *std::max_element(texts.begin(), texts.end(),
                           [](const QString& a, const QString& b) { return a.size() < b.size(); });
}

std::string segmentUnitShown(std::size_t column, const UnitsShown& units) {
  const std::string_view key = kSegmentKeys[column];
  const bool imperial = units.system() == UnitSystem::Imperial;
  if (key == "length_m" || key == "radius_m") return imperial ? "ft" : "m";
  if (key == "corner_speed_kmh") return units.inMiles() ? "mph" : "km/h";
  if (key == "angle_deg") return "°";
  return key == "slope_percent" ? "%" : std::string();
}

std::optional<double> highestOfSegment(std::size_t column, const UnitsShown& units) {
  if (!isMeasured(column)) return std::nullopt;
  return shownNumber(fieldOf(column), ruleOf(column).limit.high, units);
}

std::vector<SegmentWord> segmentWords() {
  std::vector<SegmentWord> words;
  for (std::size_t c = 0; c < kSegmentKeys.size(); ++c)
    words.push_back({.word = bareTitle(c).toStdString(), .key = kSegmentKeys[c]});
  for (const auto& choice : kSurfaceWords)
    words.push_back({.word = choiceWord(choice.second).toStdString(), .key = choice.second});
  for (const auto& choice : kTurnWords)
    words.push_back({.word = choiceWord(choice.second).toStdString(), .key = choice.second});
  return words;
}

QString segmentRefusalWords(int row, const QStringList& cells, const SegmentTableRefusal& refusal,
                            const UnitsShown& units) {
  const auto column = refusal.column > 0 ? segmentColumn(refusal.problem.path) : std::nullopt;
  if (!column) {
    Problem bare = refusal.problem;
    bare.path.clear();
    return Say::tr("Row %1: %2", "of a table, and what is wrong there").arg(row).arg(spokenSentence(bare));
  }
  return Say::tr("Row %1, %2: %3", "of a table, its column, and what is wrong there")
      .arg(row)
      .arg(bareTitle(*column),
           cellWords(*column, cells.value(static_cast<qsizetype>(*column)), refusal.problem, units));
}

std::optional<std::size_t> segmentColumn(std::string_view key) {
  const auto* found = std::find(kSegmentKeys.begin(), kSegmentKeys.end(), key);
  if (found == kSegmentKeys.end()) return std::nullopt;
  return static_cast<std::size_t>(found - kSegmentKeys.begin());
}

}  // namespace layshaft::ui
