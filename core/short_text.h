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

}  // namespace layshaft
