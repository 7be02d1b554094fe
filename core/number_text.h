// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace layshaft {

/// The shortest text that reads back as exactly `x`, with a point whatever the desktop's locale:
/// 15200, 1.955.
std::string numberText(double x);

/// `x` to twelve digits: without the last ones, which converting there and back may leave and nobody typed.
double withoutNoise(double x);

/// Reads a whole text as one number with a decimal point; nothing if any of it is left over or it is not
/// finite.
std::optional<double> numberFromText(std::string_view text);

}  // namespace layshaft
