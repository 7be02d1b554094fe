// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/lap_pairs_study.h"

#include <mutex>
#include <optional>

namespace layshaft::ui {
namespace {

/// The ladder of all parts. It begins with laps of its own, so the first part that asks makes it, not the
/// thread that the window waits for.
class LadderOnce {
 public:
  explicit LadderOnce(LadderInput input) : input_(std::move(input)) {}

  const LapLadder& get() {
    const std::lock_guard lock(making_);
    if (!ladder_) ladder_.emplace(input_, *input_.track);
    return *ladder_;
  }

 private:
  std::mutex making_;
  LadderInput input_;
  std::optional<LapLadder> ladder_;
};

}  // namespace

void LapPairsStudy::start(const LadderInput& input, const LadderRange& range) {
  const auto ladder = std::make_shared<LadderOnce>(input);
  std::vector<Part> parts;
  for (const auto bands : {LapLadder::Bands::None, LapLadder::Bands::All})
    for (int front = range.fewestFront; front <= range.mostFront; ++front)
      parts.push_back([this, ladder, front, range, bands](const Stopped& stopped) -> Delivery {
        auto rows = ladder->get().rows({front, front, range.fewestRear, range.mostRear}, bands, stopped);
        return [this, rows = std::move(rows)] { emit rowsReady(rows); };
      });
  BackgroundWork::start(parts);
}

}  // namespace layshaft::ui
