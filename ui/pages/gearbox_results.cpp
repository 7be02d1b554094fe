// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/gearbox_results.h"

#include <algorithm>
#include <utility>

namespace layshaft::ui {

GearboxResults::GearboxResults(PreparedGearboxes prepared)
    : prepared_(std::move(prepared)),
      proposed_(prepared_.search->choices().gearboxes.size()),
      inReach_(proposed_.size()) {}

void GearboxResults::add(Pairs pairs, const std::vector<TriedGearbox>& tried) {
  auto& into = pairs == Pairs::Proposed ? proposed_ : inReach_;
  for (const TriedGearbox& one : tried) into[one.gearbox] = {.done = true, .row = one.row};
}

void GearboxResults::forgetProposed() {
  proposed_.assign(proposed_.size(), {});
}

bool GearboxResults::complete(Pairs pairs) const {
  return !empty() &&
         (left(Pairs::Proposed).empty() || (pairs == Pairs::InReach && left(Pairs::InReach).empty()));
}

std::vector<std::size_t> GearboxResults::left(Pairs pairs) const {
  std::vector<std::size_t> gearboxes;
  for (std::size_t i = 0; i < proposed_.size(); ++i)
    if (!tried(pairs)[i].done) gearboxes.push_back(i);
  if (pairs == Pairs::Proposed) return gearboxes;
  std::stable_sort(gearboxes.begin(), gearboxes.end(), [this](std::size_t a, std::size_t b) {
    const auto &x = proposed_[a].row, &y = proposed_[b].row;
    return x && (!y || x->lapS < y->lapS);
  });
  return gearboxes;
}

std::vector<GearboxRow> GearboxResults::ranked(Pairs pairs) const {
  std::vector<GearboxRow> rows;
  for (std::size_t i = 0; i < proposed_.size(); ++i) {
    const Tried& one = tried(pairs)[i].done ? tried(pairs)[i] : proposed_[i];
    if (one.row) rows.push_back(*one.row);
  }
  sortGearboxes(rows, search()->choices());
  return rows;
}

bool GearboxResults::bandKnown(const GearboxRow& row) const {
  const auto found = bands_.find(row.gearbox);
  return found != bands_.end() && found->second.first == row;
}

std::optional<double> GearboxResults::bandS(const GearboxRow& row) const {
  return bandKnown(row) ? bands_.at(row.gearbox).second : std::nullopt;
}

}  // namespace layshaft::ui
