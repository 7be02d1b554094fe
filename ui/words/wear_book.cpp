// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/wear_book.h"

#include "core/study/parts_list.h"

namespace layshaft::ui {

WearBook wearBook(const Profile& profile, const Plan& plan) {
  const Setup& stock = profile.stock;
  const bool belt = isBelt(stock);
  const auto size = belt ? std::nullopt : stock.options.chainSize;
  return {.size = size,
          .kind = stock.options.chainKind,
          .frontTeeth = stock.frontTeeth.count(),
          .rearTeeth = stock.rearTeeth.count(),
          .belt = belt,
          .wear = profile.wear.value_or(Wear{}),
          .figures = plan.wear ? *plan.wear : wear(WearInput{{}, size, stock.options.chainKind}),
          .mixes = belt || !plan.wear ? std::vector<WearMix>() : partsList(profile, plan).mixes};
}

}  // namespace layshaft::ui
