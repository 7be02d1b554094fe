// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/segment_columns.h"

#include <algorithm>
#include <iterator>
#include <span>
#include <utility>

#include "core/csv_table.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr std::string_view kName = "name", kLength = "length_m", kRadius = "radius_m", kAngle = "angle_deg",
                           kSpeed = "corner_speed_kmh", kSlope = "slope_percent", kSurface = "surface",
                           kTurn = "turn";

/// What people call the columns: common usage, no source.
constexpr std::pair<std::string_view, std::string_view> kTitles[] = {{"name", kName},
                                                                     {"segment", kName},
                                                                     {"section", kName},
                                                                     {"corner", kName},
                                                                     {"bend", kName},
                                                                     {"length", kLength},
                                                                     {"distance", kLength},
                                                                     {"len", kLength},
                                                                     {"radius", kRadius},
                                                                     {"corner radius", kRadius},
                                                                     {"bend radius", kRadius},
                                                                     {"r", kRadius},
                                                                     {"angle", kAngle},
                                                                     {"corner angle", kAngle},
                                                                     {"bend angle", kAngle},
                                                                     {"degrees", kAngle},
                                                                     {"corner speed", kSpeed},
                                                                     {"speed", kSpeed},
                                                                     {"apex speed", kSpeed},
                                                                     {"minimum speed", kSpeed},
                                                                     {"slope", kSlope},
                                                                     {"gradient", kSlope},
                                                                     {"grade", kSlope},
                                                                     {"incline", kSlope},
                                                                     {"surface", kSurface},
                                                                     {"ground", kSurface},
                                                                     {"turn", kTurn},
                                                                     {"direction", kTurn},
                                                                     {"side", kTurn},
                                                                     {"left/right", kTurn},
                                                                     {"l/r", kTurn}};

constexpr std::pair<std::string_view, std::string_view> kChoices[] = {{"l", "left"},
                                                                      {"r", "right"},
                                                                      {"tarmac", "asphalt"},
                                                                      {"wet", "wet_asphalt"},
                                                                      {"wet tarmac", "wet_asphalt"},
                                                                      {"hard", "hardpack"},
                                                                      {"soil", "loam"}};

constexpr std::string_view kLengths[] = {kLength, kRadius}, kAngles[] = {kAngle}, kSpeeds[] = {kSpeed},
                           kSlopes[] = {kSlope};

struct Unit {
  std::string_view word;
  double inFile;  ///< one of it in the unit of the file
  std::span<const std::string_view> of;
};

constexpr double kMetresPerYard = 3.0 * units::kMetresPerFoot;
constexpr double kKmhPerKnot = 1.852;  // exact: the international nautical mile
constexpr double kKmhPerMps = 3.6;

constexpr Unit kUnits[] = {{"m", 1.0, kLengths},
                           {"metre", 1.0, kLengths},
                           {"metres", 1.0, kLengths},
                           {"meter", 1.0, kLengths},
                           {"meters", 1.0, kLengths},
                           {"km", units::kMetresPerKilometre, kLengths},
                           {"ft", units::kMetresPerFoot, kLengths},
                           {"feet", units::kMetresPerFoot, kLengths},
                           {"yd", kMetresPerYard, kLengths},
                           {"mi", units::kMetresPerMile, kLengths},
                           {"miles", units::kMetresPerMile, kLengths},
                           {"°", 1.0, kAngles},
                           {"deg", 1.0, kAngles},
                           {"degree", 1.0, kAngles},
                           {"degrees", 1.0, kAngles},
                           {"rad", 180.0 / units::kPi, kAngles},
                           {"km/h", 1.0, kSpeeds},
                           {"kmh", 1.0, kSpeeds},
                           {"kph", 1.0, kSpeeds},
                           {"mph", units::kMetresPerMile / units::kMetresPerKilometre, kSpeeds},
                           {"m/s", kKmhPerMps, kSpeeds},
                           {"mps", kKmhPerMps, kSpeeds},
                           {"kn", kKmhPerKnot, kSpeeds},
                           {"%", 1.0, kSlopes},
                           {"percent", 1.0, kSlopes},
                           {"per cent", 1.0, kSlopes}};

bool isOf(const Unit& unit, std::string_view key) {
  return std::find(unit.of.begin(), unit.of.end(), key) != unit.of.end();
}

/// The words of a title or a unit, without what only sets them off.
std::vector<std::string> wordsOf(const std::string& text) {
  constexpr std::string_view kBetween = " _()[],:;\t";
  std::vector<std::string> words(1);
  for (const char c : inSmallLetters(text))
    if (kBetween.find(c) == std::string_view::npos)
      words.back() += c;
    else if (!words.back().empty())
      words.emplace_back();
  if (words.back().empty()) words.pop_back();
  return words;
}

std::string joined(std::span<const std::string> words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

std::optional<std::string_view> keyOf(const std::string& words, const std::vector<SegmentWord>& own) {
  for (const auto& [title, key] : kTitles)
    if (words == title) return key;
  for (const SegmentWord& word : own)
    if (words == joined(wordsOf(word.word)))
      for (const std::string_view key : kSegmentKeys)
        if (word.key == key) return key;
  return std::nullopt;
}

}  // namespace

std::optional<SegmentTitle> segmentTitle(const std::string& title, const std::vector<SegmentWord>& words) {
  const std::vector<std::string> all = wordsOf(title);
  const std::span<const std::string> parts(all);
  for (std::size_t named = parts.size(); named > 0; --named) {
    const auto key = keyOf(joined(parts.first(named)), words);
    if (!key) continue;
    auto unit = parts.subspan(named);
    if (!unit.empty() && unit.front() == "in") unit = unit.subspan(1);
    return SegmentTitle{.key = *key, .unit = joined(unit)};
  }
  return std::nullopt;
}

std::optional<double> segmentUnit(std::string_view key, std::string unit) {
  unit = joined(wordsOf(unit));
  const auto* found = std::find_if(std::begin(kUnits), std::end(kUnits),
                                   [&](const Unit& known) { return known.word == unit && isOf(known, key); });
  return found == std::end(kUnits) ? std::nullopt : std::optional(found->inFile);
}

std::vector<std::string> segmentUnits(std::string_view key) {
  std::vector<std::string> words;
  for (const Unit& unit : kUnits)
    if (isOf(unit, key)) words.emplace_back(unit.word);
  return words;
}

std::string segmentChoice(const std::string& cell, const std::vector<SegmentWord>& words) {
  const std::string small = inSmallLetters(cell);
  for (const SegmentWord& word : words)
    if (small == inSmallLetters(word.word)) return std::string(word.key);
  for (const auto& [usual, choice] : kChoices)
    if (small == usual) return std::string(choice);
  std::string inFile = small;
  std::replace(inFile.begin(), inFile.end(), ' ', '_');
  return inFile;
}

}  // namespace layshaft
