// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace layshaft {

/// Position of the first byte that is not part of well-formed UTF-8 (RFC 3629), if any.
std::optional<std::size_t> firstBadUtf8(std::string_view text);

}  // namespace layshaft
