// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "core/bike/gears_taken.h"
#include "core/bike/track.h"
#include "core/study/lap_ladder.h"

namespace layshaft {

inline constexpr std::size_t kMostGearboxes = 5000;  ///< that are tried

/// Every gearbox that the gears on hand make of the proposal's: for each gear, and the primary, one of the
/// box or what is in, as long as the ratios fall. The proposal's own is the first. Gears that the setup does
/// not have, and such as make no other ratio, are left out. Those with fewer gears changed come first; not
/// more than `kMostGearboxes`.
struct GearboxChoices {
  std::vector<GearsTaken> gearboxes;
  bool more = false;  ///< there are more than were taken
};
GearboxChoices gearboxChoices(const Setup& proposed, const std::vector<SpareGearPair>& onHand);

struct PairTeeth {
  int front, rear;
  bool operator==(const PairTeeth&) const = default;
};

/// The pairs of a range that fit the bike as it is, or nothing is known that speaks against them.
std::vector<PairTeeth> pairsThatFit(const LadderInput& input, const LadderRange& range);

/// A gearbox with the pair that is quickest with it round the track.
struct GearboxRow {
  std::size_t gearbox;  ///< in the choices
  PairTeeth pair;
  double lapS;
  std::optional<double> changeS;  ///< against stock
  bool operator==(const GearboxRow&) const = default;
};

/// The quickest first, of equals the one with fewer gears changed.
void sortGearboxes(std::vector<GearboxRow>& rows, const GearboxChoices& choices);

/// Lap times of gearboxes: tyre and chain are the proposal's. Any number of threads may ask at once.
class GearboxSearch {
 public:
  GearboxSearch(LadderInput input, const Track& track, const std::vector<SpareGearPair>& onHand);

  const GearboxChoices& choices() const { return choices_; }

  /// None where no pair has a lap with it, or once `stopped`, asked before each lap, says so.
  std::optional<GearboxRow> row(std::size_t gearbox, const std::vector<PairTeeth>& pairs,
                                const std::function<bool()>& stopped = {}) const;
  /// All gearboxes, in the order of `sortGearboxes`. `stopped` is told how
  /// many are done and asked between two laps: once it says so, no row is given.
  std::vector<GearboxRow> rows(const std::vector<PairTeeth>& pairs,
                               const std::function<bool(std::size_t done)>& stopped = {}) const;
  /// What a row is the lap of.
  Setup setup(const GearboxRow& row) const;
  /// How far what a row takes more or less than stock may be off; none without a lap of stock.
  std::optional<double> bandS(const GearboxRow& row) const;

 private:
  SetupChange change(std::size_t gearbox) const;
  Setup setupOf(const SetupChange& gearbox, const PairTeeth& pair) const;

  LadderInput input_;
  GearboxChoices choices_;
  LapComparison laps_;
  LapTimes stock_;
};

}  // namespace layshaft
