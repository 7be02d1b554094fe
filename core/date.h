// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace layshaft {

/// A day of the calendar. Invariant: one that exists, in the years 1900 to 2999.
class Date {
 public:
  /// Reads `2026-05-12` (ISO 8601, the extended form); nothing for anything else, or for a day that no
  /// calendar has.
  static std::optional<Date> parse(std::string_view text);
  static std::optional<Date> make(int year, int month, int day);

  std::string text() const;  ///< as `parse` reads it
  int year() const { return static_cast<int>(day_.year()); }
  int month() const { return static_cast<int>(static_cast<unsigned>(day_.month())); }
  int day() const { return static_cast<int>(static_cast<unsigned>(day_.day())); }
  auto operator<=>(const Date&) const = default;

  Date() : Date(std::chrono::year(kFirstYear) / 1 / 1) {}  ///< the first of them

 private:
  static constexpr int kFirstYear = 1900;
  explicit Date(std::chrono::year_month_day day) : day_(day) {}
  std::chrono::year_month_day day_;
};

}  // namespace layshaft
