// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/bike/profile.h"
#include "core/input.h"

namespace layshaft {

/// What a customer may ask for across the counter.
enum class Wish {
  Shorter,        ///< more pull than stock has
  Taller,         ///< fewer revs at the same road speed
  FamiliarSteps,  ///< two teeth more at the rear, one less in front, both
  Pins            ///< what was kept to compare
};

/// A setup that is offered for a wish.
struct Offer {
  std::string name;  ///< of the pin, else empty
  SetupChange change;
};

/// So many are laid out side by side.
inline constexpr std::size_t kMostOffers = 3;

/// The answers to a wish, at most `kMostOffers`; nothing is written anywhere. Shorter and Taller: of the
/// pairs in the ladder's usual range that fit, or of which nothing is known that speaks against it, the
/// nearest to stock's gearing on that side, nearest first; each at least a step away from stock and from the
/// one before that a rider can tell, and of equal ones the pair that exchanges fewer sprockets. All else is
/// the proposal's. Teeth that cannot exist are left out.
std::vector<Offer> offers(const Profile& profile, Wish wish);

/// What a plan of the offer as the proposal depends on; without pins.
PlanInput offerInput(const Profile& profile, const Offer& offer);

}  // namespace layshaft
