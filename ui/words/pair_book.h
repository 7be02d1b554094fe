// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "core/study/lap_ladder.h"

namespace layshaft::ui {

/// A pair among all in reach.
struct RankedPair {
  LapRow row;
  bool old = false;  ///< of before: its new figures are on their way
};

/// What map, table and sentence tell of the pairs in reach and their laps. It fills up while these are worked
/// out; what it knew before stays until then.
class PairBook {
 public:
  /// What the new figures are of.
  struct Ground {
    LadderRange range{0, -1, 0, -1};
    int stockFront = 0, stockRear = 0;
    bool belt = false;
    bool otherParts = false;  ///< the proposal has other parts than stock beside its pair
  };

  /// All that is known is of before from now on.
  void begin(const Ground& ground);
  /// New figures; those of a pair that is there already take their place.
  void add(const std::vector<LapRow>& rows);
  /// All are there: what is of before goes, and it is decided which pair is to be taken.
  void settle();
  /// Whether that is another pair than before.
  bool propose(int frontTeeth, int rearTeeth);

  const Ground& ground() const { return ground_; }
  int fronts() const { return ground_.range.mostFront - ground_.range.fewestFront + 1; }
  int rears() const { return ground_.range.mostRear - ground_.range.fewestRear + 1; }
  /// Those that fit first, the quickest first.
  const std::vector<RankedPair>& pairs() const { return pairs_; }
  std::vector<LapRow> rows() const;
  const RankedPair* at(int frontTeeth, int rearTeeth) const;  ///< null where there is none
  bool settled() const { return settled_; }
  /// Places among the pairs; none until it is settled, and where none fits.
  const std::optional<LapPick>& pick() const { return pick_; }

  bool isStock(const LapRow& row) const;
  bool isProposed(const LapRow& row) const;
  bool isTaken(const LapRow& row) const;  ///< by the decision, the last one while there is no new one
  bool isAsQuick(int frontTeeth, int rearTeeth) const;  ///< the quickest that fits, or equal to it
  bool isAsQuick(const LapRow& row) const { return isAsQuick(row.frontTeeth, row.rearTeeth); }
  std::pair<int, int> proposed() const { return proposed_; }

 private:
  using Teeth = std::pair<int, int>;
  static Teeth teethOf(const LapRow& row) { return {row.frontTeeth, row.rearTeeth}; }

  Ground ground_;
  Teeth proposed_{0, 0}, taken_{0, 0};
  std::vector<RankedPair> pairs_;
  std::optional<LapPick> pick_;
  std::set<Teeth> asQuick_;
  bool settled_ = false;
};

}  // namespace layshaft::ui
