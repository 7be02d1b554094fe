// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTableView>

#include "ui/editors/calm_spin_box.h"
#include "ui/ladder_model.h"
#include "ui/ladder_study.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// Every sprocket pair in a chosen range, in order of final ratio. A row that is chosen becomes the proposal.
class LadderPage : public Page {
  Q_OBJECT
 public:
  /// `aims` edits what is asked of the ladder; the page takes it over.
  explicit LadderPage(QWidget* aims, QWidget* parent = nullptr);

  /// The profile that the next plan belongs to: the ladder is worked out from it, once per change that
  /// matters.
  void use(const Profile& profile);

  std::vector<QStringList> numbers() const override;
  QString csv() const override;

 signals:
  void pairChosen(int frontTeeth, int rearTeeth);
  void pairPinned(int frontTeeth, int rearTeeth);

 protected:
  void showPlan() override;

 private:
  void restart();
  void keepOrder(const WholeBox* moved);
  void fitColumns();
  void sayWhetherEmpty();
  void chooseColumns(const QPoint& at);
  void rest();
  void sayAnswer();
  void choose(const QModelIndex& index);
  std::optional<LadderRow> current() const;

  LadderStudy study_{this};
  LadderModel model_;
  LadderFilter filter_{&model_};
  std::optional<Profile> profile_;
  std::optional<LadderInput> worked_;  ///< what the rows in view were worked out for
  LadderRange range_{0, -1, 0, -1};
  LadderRange workedRange_{0, -1, 0, -1};
  bool ownRange_ = false;
  QTableView* table_;
  WholeBox *fewestFront_, *mostFront_, *fewestRear_, *mostRear_, *within_;
  QCheckBox *fits_, *spares_, *twins_;
  QProgressBar* progress_;
  QLabel *answer_, *empty_;
  QPushButton *stop_, *again_, *pin_;
};

}  // namespace layshaft::ui
