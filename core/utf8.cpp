// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/utf8.h"

namespace layshaft {

std::optional<std::size_t> firstBadUtf8(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  for (std::size_t i = 0; i < text.size();) {
    const unsigned char lead = byte(i);
    if (lead < 0x80) {
      ++i;
      continue;
    }
    std::size_t more = 0;
    unsigned low = 0x80, high = 0xBF;  // of the second byte; the leads below narrow it
    if (lead >= 0xC2 && lead <= 0xDF)
      more = 1;
    else if (lead >= 0xE0 && lead <= 0xEF)
      more = 2;
    else if (lead >= 0xF0 && lead <= 0xF4)
      more = 3;
    else
      return i;
    if (lead == 0xE0) low = 0xA0;
    if (lead == 0xED) high = 0x9F;
    if (lead == 0xF0) low = 0x90;
    if (lead == 0xF4) high = 0x8F;
    if (i + more >= text.size()) return i;
    if (byte(i + 1) < low || byte(i + 1) > high) return i;
    for (std::size_t k = 2; k <= more; ++k)
      if ((byte(i + k) & 0xC0) != 0x80) return i;
    i += more + 1;
  }
  return std::nullopt;
}

}  // namespace layshaft
