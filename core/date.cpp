// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/date.h"

#include <cstdio>

namespace layshaft {
namespace {

constexpr int kLastYear = 2999;

/// A number of exactly so many digits.
std::optional<int> digits(std::string_view text) {
  int number = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    number = number * 10 + (c - '0');
  }
  return number;
}

}  // namespace

std::optional<Date> Date::make(int year, int month, int day) {
  if (year < kFirstYear || year > kLastYear || month < 1 || day < 1) return std::nullopt;
  const std::chrono::year_month_day made{std::chrono::year(year),
                                         std::chrono::month(static_cast<unsigned>(month)),
                                         std::chrono::day(static_cast<unsigned>(day))};
  return made.ok() ? std::optional(Date(made)) : std::nullopt;
}

std::optional<Date> Date::parse(std::string_view text) {
  constexpr std::size_t kLength = 10;
  if (text.size() != kLength || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4)), month = digits(text.substr(5, 2)),
             day = digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  return make(*year, *month, *day);
}

std::string Date::text() const {
  char buffer[16];
  std::snprintf(buffer, sizeof buffer, "%04d-%02d-%02d", year(), month(), day());
  return buffer;
}

}  // namespace layshaft
