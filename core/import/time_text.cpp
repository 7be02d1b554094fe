// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/time_text.h"

#include <algorithm>
#include <charconv>
#include <chrono>

#include "core/date.h"
#include "core/number_text.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kSecondsPerMinute = 60.0;
constexpr double kSecondsPerDay = 24.0 * units::kSecondsPerHour;

bool isDigits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// A whole number of one to `most` digits.
std::optional<double> wholeIn(std::string_view text, std::size_t most) {
  if (!isDigits(text) || text.size() > most) return std::nullopt;
  return numberFromText(text);
}

/// Below a minute, or the second that is put in at the end of one.
std::optional<double> secondsIn(std::string_view text) {
  const auto point = text.find('.');
  if (!isDigits(text.substr(0, point))) return std::nullopt;
  if (point != std::string_view::npos && !isDigits(text.substr(point + 1))) return std::nullopt;
  const auto seconds = numberFromText(text);
  return seconds && *seconds < kSecondsPerMinute + 1.0 ? seconds : std::nullopt;
}

/// What stands behind the time: Z, +02:00 or nothing.
std::optional<double> offsetIn(std::string_view text) {
  constexpr std::size_t kLength = 6;
  if (text.empty() || text == "Z" || text == "z") return 0.0;
  if (text.size() != kLength || (text[0] != '+' && text[0] != '-') || text[3] != ':') return std::nullopt;
  const auto hours = wholeIn(text.substr(1, 2), 2), minutes = wholeIn(text.substr(4), 2);
  if (!hours || !minutes || *hours >= 24.0 || *minutes >= kSecondsPerMinute) return std::nullopt;
  const double seconds = *hours * units::kSecondsPerHour + *minutes * kSecondsPerMinute;
  return text[0] == '-' ? -seconds : seconds;
}

}  // namespace

std::optional<double> secondsFromMoment(std::string_view text) {
  constexpr std::size_t kDate = 10, kShortest = 19;
  if (text.size() < kShortest || (text[kDate] != 'T' && text[kDate] != ' ')) return std::nullopt;
  const auto date = Date::parse(text.substr(0, kDate));
  if (!date) return std::nullopt;
  text.remove_prefix(kDate + 1);
  const std::size_t end = text.find_first_of("Zz+- ");
  const std::string_view clock = text.substr(0, end);
  const auto hours = wholeIn(clock.substr(0, 2), 2);
  const auto ofDay = secondsFromClock(clock);
  const auto offset = end == std::string_view::npos ? std::optional(0.0) : offsetIn(text.substr(end));
  if (!hours || *hours >= 24.0 || !ofDay || clock.find(':', 3) == std::string_view::npos || !offset)
    return std::nullopt;
  const std::chrono::sys_days day = std::chrono::year(date->year()) /
                                    std::chrono::month(static_cast<unsigned>(date->month())) /
                                    std::chrono::day(static_cast<unsigned>(date->day()));
  return static_cast<double>(day.time_since_epoch().count()) * kSecondsPerDay + *ofDay - *offset;
}

std::optional<double> secondsFromClock(std::string_view text) {
  constexpr std::size_t kMostDigits = 6;
  const auto last = text.rfind(':');
  if (last == std::string_view::npos || text.size() - last < 3) return std::nullopt;
  const auto seconds = secondsIn(text.substr(last + 1));
  const std::string_view rest = text.substr(0, last);
  const auto first = rest.find(':');
  if (!seconds) return std::nullopt;
  if (first == std::string_view::npos) {
    const auto minutes = wholeIn(rest, kMostDigits);
    return minutes ? std::optional(*minutes * kSecondsPerMinute + *seconds) : std::nullopt;
  }
  const auto hours = wholeIn(rest.substr(0, first), kMostDigits),
             minutes = wholeIn(rest.substr(first + 1), 2);
  if (!hours || !minutes || *minutes >= kSecondsPerMinute) return std::nullopt;
  return *hours * units::kSecondsPerHour + *minutes * kSecondsPerMinute + *seconds;
}

}  // namespace layshaft
