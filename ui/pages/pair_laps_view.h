// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QTimer>
#include <optional>

#include "ui/charts/pair_map.h"
#include "ui/document/lap_pairs_study.h"
#include "ui/pages/figures_table.h"
#include "ui/pages/lap_view.h"
#include "ui/pages/progress_row.h"

namespace layshaft::ui {

/// Every pair in reach by its lap: which to take in words, all of them as a map and ranked in a table. Works
/// only while it is looked at.
class PairLapsView : public LapView {
  Q_OBJECT
 public:
  explicit PairLapsView(BackgroundLane& lane, QWidget* parent = nullptr);

  /// What the laps are worked out from, after each change of it; its aims do not matter here.
  void use(LadderInput input);
  bool working() const { return study_.running() || untilStart_.isActive(); }

  QWidget* mainPart() override { return map_; }
  Picture* picture() override { return book_.pairs().empty() ? nullptr : map_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

 signals:
  void pairChosen(int frontTeeth, int rearTeeth);

 protected:
  void build() override;
  void showPlan() override;
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  QLayout* makeHead();
  void makeMap();
  void makeTable();
  void watchStudy();
  void restart();
  void start();
  void refresh();
  void sayUnderCursor();
  void chooseRow();

  LapPairsStudy study_;
  PairBook book_;
  std::optional<LadderInput> input_;
  std::optional<LadderInput> worked_;  ///< what the pairs in view were worked out for, or are being
  QTimer untilStart_;                  ///< while something is being turned nothing is begun
  QTimer untilRefresh_;                ///< what is there at once is not greyed before
  bool begun_ = false;                 ///< and not seen to be so yet
  QLabel *words_ = nullptr, *under_ = nullptr;
  ProgressRow* progress_ = nullptr;
  PairMap* map_ = nullptr;
  FiguresTable* table_ = nullptr;
};

}  // namespace layshaft::ui
