// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "core/problem.h"

namespace layshaft::profile_file {

/// Parses strict JSON: UTF-8, no duplicate keys, finite numbers, bounded depth; keys keep their order. In
/// time proportional to the text, however many keys an object has.
Result<nlohmann::ordered_json> parseJson(std::string_view text);

/// Adds a key that the object does not have yet, without looking for it among those that are there.
void appendMember(nlohmann::ordered_json& object, std::string key, nlohmann::ordered_json value);

/// Stands for a text that is JSON already and is written as it is: JSON itself has no binary values.
nlohmann::ordered_json verbatim(const std::string& json);

/// JSON for people: two blanks per level, lists of plain values and small flat objects on one line.
std::string prettyJson(const nlohmann::ordered_json& value);

/// A value as it may be quoted in a message: at most 60 characters.
std::string shortened(const nlohmann::ordered_json& value);

}  // namespace layshaft::profile_file
