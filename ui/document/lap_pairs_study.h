// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/study/lap_ladder.h"
#include "ui/document/background_lane.h"

namespace layshaft::ui {

/// Laps every pair of a range in the background. Rows come in as they are ready, those of a front sprocket
/// together: first all lap times, then all again with their bands, which take several laps each.
class LapPairsStudy : public BackgroundWork {
  Q_OBJECT
 public:
  using BackgroundWork::BackgroundWork;

  /// `input` has a track.
  void start(const LadderInput& input, const LadderRange& range);

 signals:
  void rowsReady(const std::vector<layshaft::LapRow>& rows);
};

}  // namespace layshaft::ui
