// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "ui/document/gearbox_study.h"

namespace layshaft::ui {

/// What a search has brought so far. Every gearbox is tried with the proposal's pair first, which is quick
/// and ranks them; then with all pairs in reach, the quickest first.
class GearboxResults {
 public:
  /// With which pairs gearboxes are looked at.
  enum class Pairs { Proposed, InReach };

  GearboxResults() = default;
  explicit GearboxResults(PreparedGearboxes prepared);

  const std::shared_ptr<const GearboxSearch>& search() const { return prepared_.search; }
  const std::vector<PairTeeth>& pairsInReach() const { return prepared_.pairs; }
  bool empty() const { return !prepared_.search; }

  void add(Pairs pairs, const std::vector<TriedGearbox>& tried);
  void addBand(const GearboxRow& row, const std::optional<double>& bandS) {
    bands_[row.gearbox] = {row, bandS};
  }
  /// The proposal has another pair.
  void forgetProposed();

  /// Whether the whole list can be put in an order.
  bool complete(Pairs pairs) const;
  /// Those that are still to be tried, in the order in which that is worth most.
  std::vector<std::size_t> left(Pairs pairs) const;
  /// The quickest first, of equals the one with fewer gears changed; with the proposal's pair where no other
  /// was tried yet.
  std::vector<GearboxRow> ranked(Pairs pairs) const;
  bool bandKnown(const GearboxRow& row) const;
  std::optional<double> bandS(const GearboxRow& row) const;

 private:
  struct Tried {
    bool done = false;
    std::optional<GearboxRow> row;
  };
  const std::vector<Tried>& tried(Pairs pairs) const {
    return pairs == Pairs::Proposed ? proposed_ : inReach_;
  }

  PreparedGearboxes prepared_;
  std::vector<Tried> proposed_, inReach_;  ///< one for each gearbox
  std::map<std::size_t, std::pair<GearboxRow, std::optional<double>>> bands_;
};

}  // namespace layshaft::ui
