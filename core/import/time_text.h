// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

namespace layshaft {

/// Seconds since 1970-01-01T00:00:00Z of a moment written as in 2026-05-12T10:11:12.5Z (ISO 8601, the
/// extended form; a blank for the T; Z or an offset such as +02:00, UTC if there is none). Nothing for
/// anything else.
std::optional<double> secondsFromMoment(std::string_view text);

/// Seconds of a time written as [hours:]minutes:seconds, the seconds with a fraction or without; no limit to
/// the first number. Nothing for anything else.
std::optional<double> secondsFromClock(std::string_view text);

}  // namespace layshaft
