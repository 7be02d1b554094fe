// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the titles, units and words of a table of segments mean.
namespace layshaft {

/// The keys of a segment in the profile file, in the order of a table without titles.
inline constexpr std::array<std::string_view, 8> kSegmentKeys{
    "name", "length_m", "radius_m", "angle_deg", "corner_speed_kmh", "slope_percent", "surface", "turn"};

/// A word of the user's language: for a column (`key` is one of `kSegmentKeys`), or for a choice (`key` is
/// the file's word for it).
struct SegmentWord {
  std::string word;
  std::string_view key;
};

/// A title that is understood.
struct SegmentTitle {
  std::string_view key;
  std::string unit{};  ///< as it stands in the title; empty if it has none
};

/// What a title means: a key, or a usual word for it, alone or with a unit behind it, as in "Length (ft)",
/// "corner speed, mph" or "radius_m". Nothing for any other title.
std::optional<SegmentTitle> segmentTitle(const std::string& title, const std::vector<SegmentWord>& words);

/// How many of the file's units one of this unit is, for the column of this key: 0.3048 for "ft" of
/// `length_m`. Nothing if it is no unit of such a column.
std::optional<double> segmentUnit(std::string_view key, std::string unit);

/// The units that a column knows; empty for columns without unit.
std::vector<std::string> segmentUnits(std::string_view key);

/// The file's word for a choice: itself, a usual word for it, or one of the user's; else `cell` as it is.
std::string segmentChoice(const std::string& cell, const std::vector<SegmentWord>& words);

}  // namespace layshaft
