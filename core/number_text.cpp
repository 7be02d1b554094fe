// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/number_text.h"

#include <array>
#include <charconv>
#include <cmath>

namespace layshaft {

std::string numberText(double x) {
  std::array<char, 32> buffer{};
  // Fixed notation for everyday sizes: 15200 is easier to read than 1.52e+04, which is shorter.
  const bool everyday = x == 0.0 || (std::abs(x) >= 1e-4 && std::abs(x) < 1e15);
  const auto format = everyday ? std::chars_format::fixed : std::chars_format::general;
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), x, format).ptr;
  return {buffer.data(), end};
}

double withoutNoise(double x) {
  constexpr int kBehindTheFirst = 11;
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), x,
                                 std::chars_format::scientific, kBehindTheFirst)
                       .ptr;
  std::from_chars(buffer.data(), end, x);
  return x;
}

std::optional<double> numberFromText(std::string_view text) {
  if (text.starts_with('+') && !text.starts_with("+-")) text.remove_prefix(1);
  double x = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), x);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(x)) return std::nullopt;
  return x;
}

}  // namespace layshaft
