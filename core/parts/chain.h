// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace layshaft {

/// A motorcycle drive chain's size number and what its parts measure: pitch, roller diameter, width between
/// the inner plates. Source: motorcycle chain makers' and dealers' dimension tables; 415 to 530.
struct ChainSize {
  std::string_view name;
  double pitchMm;
  double rollerDiameterMm;
  double innerWidthMm;
  bool operator==(const ChainSize& other) const { return name == other.name; }
};

inline constexpr std::array kChainSizes{
    ChainSize{"415", 12.700, 7.75, 4.76},  ChainSize{"420", 12.700, 7.75, 6.35},
    ChainSize{"428", 12.700, 8.51, 7.94},  ChainSize{"520", 15.875, 10.16, 6.35},
    ChainSize{"525", 15.875, 10.16, 7.94}, ChainSize{"530", 15.875, 10.16, 9.53},
};

/// The size of that number, if it is one of the table.
constexpr std::optional<ChainSize> chainSize(std::string_view name) {
  for (const ChainSize& size : kChainSizes)
    if (size.name == name) return size;
  return std::nullopt;
}

}  // namespace layshaft
