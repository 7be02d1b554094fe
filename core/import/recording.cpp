// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/recording.h"

#include <algorithm>
#include <utility>

#include "core/file.h"
#include "core/import/gpx.h"
#include "core/import/nmea.h"
#include "core/import/positions.h"
#include "core/limits.h"

namespace layshaft {
namespace {

bool isXml(std::string_view text) {
  // UTF-16 is XML's alone: receivers and tables write bytes.
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) return true;
  const auto first = text.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && text[first] == '<';
}

Problem notARecording() {
  return {.kind = Problem::Kind::NotARecording,
          .allowed = {"GPX 1.1", "NMEA 0183", "CSV"},
          .line = 1,
          .column = 1};
}

Result<Recording> readByContent(std::string_view text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  constexpr std::size_t kBeginning = 4096;
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  if (isXml(text)) return readGpx(text);
  if (text.substr(0, kBeginning).find('\0') != std::string_view::npos) return notARecording();
  if (holdsNmea(text)) return readNmea(text);
  return readPositions(text);
}

/// Receivers without a position write that they are at 0° N 0° E.
void leaveOutNowhere(Recording& recording) {
  if (!recording.onEarth) return;
  recording.noFix +=
      std::erase_if(recording.fixes, [](const Fix& fix) { return fix.east == 0.0 && fix.north == 0.0; });
}

}  // namespace

Result<Recording> readRecording(std::string_view text, std::string source) {
  auto read = readByContent(text);
  if (!read) return read;
  Recording recording = std::move(read).value();
  leaveOutNowhere(recording);
  const std::size_t count = recording.fixes.size();
  if (count < limits::kFewestFixes || count > limits::kMostFixes)
    return Problem{.kind = Problem::Kind::WrongCount,
                   .path = "points",
                   .given = std::to_string(count),
                   .low = limits::kFewestFixes,
                   .high = limits::kMostFixes,
                   .line = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1,
                   .column = 1};
  recording.source = std::move(source);
  return recording;
}

Result<Recording> loadRecording(const std::filesystem::path& file) {
  const auto text = readFile(file, kLargestRecordingBytes);
  if (!text) return text.problem();
  return readRecording(*text, file.filename().string());
}

}  // namespace layshaft
