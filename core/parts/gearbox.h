// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "core/problem.h"

namespace layshaft {

/// The ratios of a gearbox, first gear first. Invariant: one to ten, each inside its limit, strictly falling.
class GearRatios {
 public:
  /// A problem's path is `[i]` for the entry at fault (0 is first gear), or empty for the list as a whole.
  static Result<GearRatios> make(std::vector<double> ratios);

  std::size_t count() const { return ratios_.size(); }
  double operator[](std::size_t gearIndex) const { return ratios_[gearIndex]; }
  const std::vector<double>& values() const { return ratios_; }
  bool operator==(const GearRatios&) const = default;

 private:
  explicit GearRatios(std::vector<double> ratios) : ratios_(std::move(ratios)) {}
  std::vector<double> ratios_;
};

}  // namespace layshaft
