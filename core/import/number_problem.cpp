// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/number_problem.h"

#include <charconv>
#include <cmath>
#include <system_error>
#include <utility>

#include "core/number_text.h"
#include "core/short_text.h"

namespace layshaft {
namespace {

/// It reads as a number, but as one without end.
bool isWithoutEnd(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  double x = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), x);
  return end == text.data() + text.size() &&
         (error == std::errc::result_out_of_range || (error == std::errc{} && !std::isfinite(x)));
}

}  // namespace

std::string_view withoutBlanks(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const auto first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

Result<double> numberWithin(std::string_view text, const Limit& limit, std::string path) {
  text = withoutBlanks(text);
  const auto number = numberFromText(text);
  Problem problem{.kind = Problem::Kind::WrongType, .path = std::move(path), .given = shortText(text)};
  if (number) {
    if (limit.contains(*number)) return *number;
    problem.kind = Problem::Kind::OutOfRange;
    problem.low = limit.low;
    problem.high = limit.high;
    problem.unit = limit.unit;
  } else if (isWithoutEnd(text)) {
    problem.kind = Problem::Kind::NotFinite;
  } else {
    problem.allowed = {"number"};
  }
  return problem;
}

}  // namespace layshaft
