// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QMenu>
#include <QTimer>
#include <vector>

#include "ui/document/background_lane.h"
#include "ui/pages/compare_view.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// Stock, proposal and pins side by side, in the rows that were chosen.
class ComparePage : public Page {
  Q_OBJECT
 public:
  explicit ComparePage(BackgroundLane& lane, QWidget* parent = nullptr);

  /// The rows to be shown, and what is on hand of the parts; may be said before the page is there.
  void pick(const std::vector<CompareFigure>& figures);
  void use(PartsOnHand onHand);

  QWidget* mainPart() override { return view_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

 signals:
  void rowsPicked(const std::vector<layshaft::ui::CompareFigure>& figures);
  void copied(const QString& said);

 protected:
  void build() override;
  void showPlan() override;

 private:
  void fillRowsMenu(QMenu& menu);
  void pickFromMenu();
  void checkMenu();
  CompareTable made() const { return compareTable(*plan_, units_, figures_, onHand_, &bands_); }
  CompareTable toBeKept() const;
  void takeBands();
  void askForBands();
  void copyForSpreadsheet();
  void copyAsText();

  std::vector<CompareFigure> figures_ = usualCompareFigures();
  PartsOnHand onHand_;
  LapBands bands_;     ///< of the plan, while rows need them
  QTimer untilBands_;  ///< on a recorded track they take longer than a step may
  BackgroundWork bandsWork_;
  std::vector<QAction*> rowActions_;  ///< one for each figure
  CompareModel model_;
  CompareView* view_ = nullptr;
  QLabel* noPins_ = nullptr;
};

}  // namespace layshaft::ui
