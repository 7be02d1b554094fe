// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/plan.h"

namespace layshaft::ui {

/// All that is told of the wear of stock's chain and sprockets: what was measured, what it comes to, and
/// which new and worn parts the proposal would run together.
struct WearBook {
  std::optional<ChainSize> size;  ///< none for belts, and where it is not given
  std::optional<ChainKind> kind;
  int frontTeeth, rearTeeth;
  bool belt;
  Wear wear;
  WearFigures figures;
  std::vector<WearMix> mixes;
};

/// `plan` is the profile's.
WearBook wearBook(const Profile& profile, const Plan& plan);

}  // namespace layshaft::ui
