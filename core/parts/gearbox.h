// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/problem.h"

namespace layshaft {

/// The ratios of a gearbox, first gear first. Invariant: none where they are not known, else one to ten, each
/// inside its limit, strictly falling.
class GearRatios {
 public:
  /// A gearbox whose ratios nobody knows.
  GearRatios() = default;
  /// A problem's path is `[i]` for the entry at fault (0 is first gear), or empty for the list as a whole.
  static Result<GearRatios> make(std::vector<double> ratios);

  bool empty() const { return ratios_.empty(); }
  std::size_t count() const { return ratios_.size(); }
  double operator[](std::size_t gearIndex) const { return ratios_[gearIndex]; }
  const std::vector<double>& values() const { return ratios_; }
  bool operator==(const GearRatios&) const = default;

 private:
  explicit GearRatios(std::vector<double> ratios) : ratios_(std::move(ratios)) {}
  std::vector<double> ratios_;
};

/// The teeth of two gears that run on each other.
struct GearTeeth {
  int driving = 0;
  int driven = 0;
  double ratio() const { return static_cast<double>(driven) / driving; }
  /// Whether they make that ratio, as precisely as ratios are printed: to half a thousandth (common practice,
  /// no source).
  bool make(double ratio) const;
  bool operator==(const GearTeeth&) const = default;
};

/// Of each gear, first gear first, as far as they are known: none behind the last that is.
using TeethOfGears = std::vector<std::optional<GearTeeth>>;

/// The teeth of one gear (0 is first gear), if they are known.
std::optional<GearTeeth> teethOf(const TeethOfGears& teeth, std::size_t gearIndex);

/// Makes them known, or forgets them.
void setTeethOf(TeethOfGears& teeth, std::size_t gearIndex, const std::optional<GearTeeth>& known);

}  // namespace layshaft
