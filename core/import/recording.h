// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/problem.h"

/// What a receiver or a logger wrote of a ride: positions in the order in which they were taken.
namespace layshaft {

inline constexpr std::size_t kLargestRecordingBytes = std::size_t{512} << 20;

/// One reading of a position.
struct Fix {
  double east = 0.0;   ///< longitude in degrees, or x in metres
  double north = 0.0;  ///< latitude in degrees, or y in metres
  std::optional<double> heightM;
  std::optional<double> timeS;  ///< since 1970 in UTC, or since whatever moment the logger counts from
  std::optional<double> speedMps;
  bool operator==(const Fix&) const = default;
};

struct Recording {
  enum class Kind { Gpx, Nmea, Table };
  Kind kind{};
  bool onEarth = true;  ///< longitude and latitude (WGS 84); otherwise x and y in a plane
  std::vector<Fix> fixes;
  std::string source;       ///< what it was read from
  std::size_t noFix = 0;    ///< left out: the receiver had no position
  std::size_t damaged = 0;  ///< left out: sentences with a wrong checksum, a last row cut short
  bool operator==(const Recording&) const = default;
};

/// Reads a recording, whose kind shows in its content: GPX 1.1 (or 1.0), NMEA 0183, or a table with columns
/// for latitude and longitude or for x and y. Problems name line and column: NotARecording, what `readGpx`,
/// `readNmea` and `readPositions` refuse, and WrongCount for fewer or more fixes than `core/limits.h` allows.
Result<Recording> readRecording(std::string_view text, std::string source);

/// Reads a file, and calls the recording by the file's name without its folder. Problems: those of `readFile`
/// and of `readRecording`.
Result<Recording> loadRecording(const std::filesystem::path& file);

}  // namespace layshaft
