// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/bike/profile.h"

namespace layshaft {

/// A sprocket of the spares box with that many teeth that runs with the setup's chain and is not worn; null
/// if there is none. A spare without a size is taken to suit.
const SpareSprocket* spareSprocket(const std::vector<SpareSprocket>& spares, int teeth, const Setup& setup);

/// A change of stock on another pair. A sprocket with other teeth is another one: it brings what is known of
/// the one on hand, and nothing of the mass of the one before.
SetupChange withPair(SetupChange change, const Setup& stock, const std::vector<SpareSprocket>& fronts,
                     const std::vector<SpareSprocket>& rears, Teeth front, Teeth rear);

/// The profile's proposal on another pair, out of its spares box.
SetupChange proposalWithPair(const Profile& profile, Teeth front, Teeth rear);

/// What a pin of the proposal on another pair keeps: its pair, whatever becomes of stock's, and else only
/// what differs from stock.
SetupChange pinOfPair(const Profile& profile, Teeth front, Teeth rear);

/// Whether two pins are the same setup, wherever they follow stock and wherever they say the same of their
/// own.
bool samePin(const SetupChange& pin, const SetupChange& other, const Setup& stock);

/// The pair that a pin stands on.
struct PinnedPair {
  int frontTeeth, rearTeeth;
  bool asProposed;  ///< all else is the proposal's: it is what the proposal would be on this pair
  bool operator==(const PinnedPair&) const = default;
};

/// One for each pin of the profile, in their order.
std::vector<PinnedPair> pinnedPairs(const Profile& profile);

/// Which of the pins stands on that pair: one that is otherwise as the proposal, else the first.
std::optional<std::size_t> pinOn(const std::vector<PinnedPair>& pins, int frontTeeth, int rearTeeth);

}  // namespace layshaft
