// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <optional>

#include "core/extras.h"
#include "core/parts/chain.h"
#include "core/problem.h"

namespace layshaft {

/// Number of teeth of a sprocket or belt pulley. Invariant: whole, and inside the limit of its place on the
/// bike.
class Teeth {
 public:
  static Result<Teeth> front(int teeth);
  static Result<Teeth> rear(int teeth);

  int count() const { return count_; }
  auto operator<=>(const Teeth&) const = default;

 private:
  explicit Teeth(int count) : count_(count) {}
  int count_;
};

enum class SprocketMaterial { Steel, Aluminium };

/// What may be known of one sprocket beside its teeth.
struct SprocketDetails {
  std::optional<ChainSize>
      size;  ///< of the chain that it is cut for; that of the chain it came with if not given
  std::optional<SprocketMaterial> material;
  std::optional<double> massKg;
  Extras extras;
  bool operator==(const SprocketDetails&) const = default;

  bool saysNothing() const { return !size && !material && !massKg; }
};

/// Rear over front: how often the front sprocket turns for one turn of the rear one.
inline double finalRatio(Teeth front, Teeth rear) {
  return static_cast<double>(rear.count()) / static_cast<double>(front.count());
}

}  // namespace layshaft
