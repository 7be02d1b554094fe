// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "core/problem.h"

namespace layshaft::profile_file {

/// Parses strict JSON: UTF-8, no duplicate keys, finite numbers, bounded depth; keys keep their order.
Result<nlohmann::ordered_json> parseJson(std::string_view text);

/// JSON for people: two blanks per level, lists of plain values and small flat objects on one line.
std::string prettyJson(const nlohmann::ordered_json& value);

/// A value as it may be quoted in a message: at most 60 characters.
std::string shortened(const nlohmann::ordered_json& value);

}  // namespace layshaft::profile_file
