// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "core/problem.h"
#include "core/profile_file/access.h"

namespace layshaft::profile_file {

/// Why a value does not do for the field with this key and rule; nothing if it does. The kinds are those of
/// `setField`.
std::optional<Problem> refusal(std::string_view key, const FieldRule& rule, const FieldValue& value);

}  // namespace layshaft::profile_file
