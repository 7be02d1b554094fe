// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "core/study/gearbox_search.h"
#include "core/study/lap_ladder.h"
#include "ui/document/background_lane.h"

namespace layshaft::ui {

/// Some pairs round one of the tracks.
struct SeasonPart {
  std::size_t track;  ///< in the order of the input
  std::vector<LapRow> rows;
  std::optional<double> stockS;
  std::optional<LapRefusal> refusal;  ///< then no row has a lap
};

/// What one pair takes more than another on one of the tracks.
struct SeasonDifference {
  std::size_t track;
  LapRow from, to;
};

/// Works out in the background what every pair laps on every track. Rows come in as they are ready; a new
/// start or a cancel drops what is still under way.
class SeasonStudy : public BackgroundWork {
  Q_OBJECT
 public:
  using BackgroundWork::BackgroundWork;

  /// The rows of a range, and of one pair more.
  void start(const SeasonInput& input, const LadderRange& range, const std::optional<PairTeeth>& another);

  /// How far sums of such differences may be off: what is in doubt is so on every track. After rows have been
  /// asked for.
  void askBands(const std::vector<std::vector<SeasonDifference>>& sums);

 signals:
  void partReady(const layshaft::ui::SeasonPart& part);
  void bandsReady(const std::vector<std::optional<double>>& bandsS);  ///< of each sum

 private:
  class LadderOfTrack;
  std::vector<std::shared_ptr<LadderOfTrack>> ladders_;  ///< of the tracks that were asked for last
};

}  // namespace layshaft::ui
