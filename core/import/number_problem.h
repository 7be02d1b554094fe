// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "core/limits.h"
#include "core/problem.h"

namespace layshaft {

/// Reads a number of a recording, without the blanks around it, and holds it against its limit. `path` is
/// what the recording calls it. Problems, without a place: NotFinite, WrongType, OutOfRange.
Result<double> numberWithin(std::string_view text, const Limit& limit, std::string path);

/// The text without the blanks around it.
std::string_view withoutBlanks(std::string_view text);

}  // namespace layshaft
