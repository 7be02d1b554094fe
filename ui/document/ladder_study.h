// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/study/ladder.h"
#include "ui/document/background_lane.h"

namespace layshaft::ui {

/// Works a ladder out in the background. Rows come in as they are ready; a new start or a cancel drops what
/// is still under way.
class LadderStudy : public BackgroundWork {
  Q_OBJECT
 public:
  using BackgroundWork::BackgroundWork;

  /// The rows of each range.
  void start(const LadderInput& input, const std::vector<LadderRange>& ranges);
  void start(const LadderInput& input, const LadderRange& range) { start(input, std::vector{range}); }

 signals:
  void rowsReady(const std::vector<layshaft::LadderRow>& rows);
};

}  // namespace layshaft::ui
