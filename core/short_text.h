// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace layshaft {

/// At most `longest` bytes of UTF-8 text for a message, never cut inside a character; an ellipsis marks the
/// cut.
inline std::string shortText(std::string_view text, std::size_t longest = 60) {
  if (text.size() <= longest) return std::string(text);
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return std::string(text.substr(0, end)) + "…";
}

/// The text without what a terminal would obey: control characters but for tabs and line ends, and those that
/// turn the direction of writing (The Unicode Standard, annex 9). UTF-8.
inline std::string withoutControls(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const unsigned first = byte(i), second = byte(i + 1), third = byte(i + 2);
    if (first == 0xC2 && second >= 0x80 && second <= 0x9F) {  // U+0080 to U+009F
      ++i;
    } else if (first == 0xE2 && ((second == 0x80 && third >= 0xAA && third <= 0xAE) ||
                                 (second == 0x81 && third >= 0xA6 && third <= 0xA9))) {
      i += 2;
    } else if (first == 0x7F || (first < 0x20 && first != '\t' && first != '\n' && first != '\r')) {
      plain += ' ';
    } else {
      plain += text[i];
    }
  }
  return plain;
}

}  // namespace layshaft
