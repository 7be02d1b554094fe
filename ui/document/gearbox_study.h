// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "core/study/gearbox_search.h"
#include "ui/document/background_lane.h"

namespace layshaft::ui {

/// What a search asks laps of, ready to be asked.
struct PreparedGearboxes {
  std::shared_ptr<const GearboxSearch> search;
  std::vector<PairTeeth> pairs;  ///< in the usual range that fit
};

/// A gearbox that was tried; without a row where it has no lap.
struct TriedGearbox {
  std::size_t gearbox;
  std::optional<GearboxRow> row;
};

/// Tries gearboxes in the background. What is ready comes in; a new request or a cancel drops what is still
/// under way.
class GearboxStudy : public BackgroundWork {
  Q_OBJECT
 public:
  using BackgroundWork::BackgroundWork;

  /// The input must have a track.
  void prepare(const GearboxInput& input);
  /// Each of the gearboxes with the quickest of the pairs, in this order.
  void attempt(const std::shared_ptr<const GearboxSearch>& search, const std::vector<std::size_t>& gearboxes,
               const std::vector<PairTeeth>& pairs);
  /// How far what the rows gain may be off.
  void askBands(const std::shared_ptr<const GearboxSearch>& search, const std::vector<GearboxRow>& rows);

 signals:
  void prepared(const layshaft::ui::PreparedGearboxes& gearboxes);
  void tried(const std::vector<layshaft::ui::TriedGearbox>& gearboxes);
  void bandReady(const layshaft::GearboxRow& row, const std::optional<double>& bandS);
};

}  // namespace layshaft::ui
