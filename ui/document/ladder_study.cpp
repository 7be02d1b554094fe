// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/ladder_study.h"

namespace layshaft::ui {

void LadderStudy::start(const LadderInput& input, const std::vector<LadderRange>& ranges) {
  const auto ladder = std::make_shared<const Ladder>(input);
  std::vector<Part> parts;
  for (const LadderRange& range : ranges)
    for (int front = range.fewestFront; front <= range.mostFront; ++front)
      parts.push_back([this, ladder, front, range](const Stopped& stopped) -> Delivery {
        auto rows = ladder->rows({front, front, range.fewestRear, range.mostRear}, stopped);
        return [this, rows = std::move(rows)] { emit rowsReady(rows); };
      });
  BackgroundWork::start(parts);
}

}  // namespace layshaft::ui
