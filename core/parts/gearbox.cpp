// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/gearbox.h"

#include <cmath>

#include "core/limits.h"
#include "core/number_text.h"

namespace layshaft {

Result<GearRatios> GearRatios::make(std::vector<double> ratios) {
  if (ratios.size() < limits::kFewestGears || ratios.size() > limits::kMostGears)
    return Problem{.kind = Problem::Kind::WrongCount,
                   .given = std::to_string(ratios.size()),
                   .low = limits::kFewestGears,
                   .high = limits::kMostGears};
  for (std::size_t i = 0; i < ratios.size(); ++i) {
    Problem problem{.path = "[" + std::to_string(i) + "]", .given = numberText(ratios[i])};
    if (!std::isfinite(ratios[i])) {
      problem.kind = Problem::Kind::NotFinite;
      return problem;
    }
    problem.low = limits::kGearRatio.low;
    problem.high = limits::kGearRatio.high;
    if (!limits::kGearRatio.contains(ratios[i])) {
      problem.kind = Problem::Kind::OutOfRange;
      return problem;
    }
    if (i > 0 && ratios[i] >= ratios[i - 1]) {
      problem.kind = Problem::Kind::NotFalling;
      problem.high = ratios[i - 1];
      return problem;
    }
  }
  return GearRatios(std::move(ratios));
}

bool GearTeeth::make(double wanted) const {
  constexpr double kHalfAThousandth = 0.0005, kRoundOff = 1e-9;
  return std::abs(ratio() - wanted) <= kHalfAThousandth + kRoundOff;
}

std::optional<GearTeeth> teethOf(const TeethOfGears& teeth, std::size_t gearIndex) {
  return gearIndex < teeth.size() ? teeth[gearIndex] : std::nullopt;
}

void setTeethOf(TeethOfGears& teeth, std::size_t gearIndex, const std::optional<GearTeeth>& known) {
  if (teeth.size() <= gearIndex) teeth.resize(gearIndex + 1);
  teeth[gearIndex] = known;
  while (!teeth.empty() && !teeth.back()) teeth.pop_back();
}

}  // namespace layshaft
