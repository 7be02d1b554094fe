// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/pair_book.h"

#include <algorithm>

namespace layshaft::ui {

void PairBook::begin(const Ground& ground) {
  ground_ = ground;
  settled_ = false;
  pick_.reset();
  for (RankedPair& pair : pairs_) pair.old = true;
  std::erase_if(pairs_, [&](const RankedPair& pair) {
    return !ground_.range.contains(pair.row.frontTeeth, pair.row.rearTeeth);
  });
}

void PairBook::add(const std::vector<LapRow>& rows) {
  for (const LapRow& row : rows) {
    const auto known = std::find_if(pairs_.begin(), pairs_.end(), [&](const RankedPair& pair) {
      return teethOf(pair.row) == teethOf(row);
    });
    if (known == pairs_.end())
      pairs_.push_back({row});
    else if (known->old || row.bandS || !known->row.bandS)  // or what is there knows more
      *known = {row};
  }
  std::stable_sort(pairs_.begin(), pairs_.end(),
                   [](const RankedPair& a, const RankedPair& b) { return comesBefore(a.row, b.row); });
}

void PairBook::settle() {
  std::erase_if(pairs_, [](const RankedPair& pair) { return pair.old; });
  settled_ = true;
  pick_ = lapPick(rows(), ground_.stockFront, ground_.stockRear);
  asQuick_.clear();
  taken_ = {0, 0};
  if (!pick_) return;
  taken_ = teethOf(pairs_[pick_->taken].row);
  asQuick_.insert(teethOf(pairs_[pick_->quickest].row));
  for (const std::size_t i : pick_->equal) asQuick_.insert(teethOf(pairs_[i].row));
}

bool PairBook::propose(int frontTeeth, int rearTeeth) {
  return std::exchange(proposed_, Teeth{frontTeeth, rearTeeth}) != proposed_;
}

std::vector<LapRow> PairBook::rows() const {
  std::vector<LapRow> rows;
  for (const RankedPair& pair : pairs_) rows.push_back(pair.row);
  return rows;
}

const RankedPair* PairBook::at(int frontTeeth, int rearTeeth) const {
  for (const RankedPair& pair : pairs_)
    if (teethOf(pair.row) == Teeth{frontTeeth, rearTeeth}) return &pair;
  return nullptr;
}

bool PairBook::isStock(const LapRow& row) const {
  return teethOf(row) == Teeth{ground_.stockFront, ground_.stockRear};
}

bool PairBook::isProposed(const LapRow& row) const {
  return teethOf(row) == proposed_;
}

bool PairBook::isTaken(const LapRow& row) const {
  return teethOf(row) == taken_;
}

bool PairBook::isAsQuick(int frontTeeth, int rearTeeth) const {
  return asQuick_.contains({frontTeeth, rearTeeth});
}

}  // namespace layshaft::ui
