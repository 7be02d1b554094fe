// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTableView>

#include "ui/document/ladder_study.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/pages/ladder_model.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// Every sprocket pair in a chosen range, in order of final ratio. A row that is chosen becomes the proposal.
class LadderPage : public Page {
  Q_OBJECT
 public:
  /// `study` works the rows out; `aims` edits what is asked of them.
  LadderPage(LadderStudy& study, MakeWidget aims, QWidget* parent = nullptr);

  /// What the ladder is worked out from, once per change of it.
  void use(LadderInput input);

  std::vector<QStringList> numbers() const override;
  QString csv() const override;
  QVariantMap state() const override;
  void restore(const QVariantMap& state) override;

 signals:
  void pairChosen(int frontTeeth, int rearTeeth);
  void pairPinned(int frontTeeth, int rearTeeth);

 protected:
  void build() override;
  void showPlan() override;

 private:
  QTableView* makeTable();
  QLayout* makeBar();
  QLayout* makeRange();
  QLayout* makeProgress();
  void watchFilters();
  void watchStudy();
  void restart();
  void keepOrder(const WholeBox* moved);
  void fitColumns();
  void sayWhetherEmpty();
  void chooseColumns(const QPoint& at);
  void rest();
  void sayAnswer();
  void choose(const QModelIndex& index);
  std::optional<LadderRow> current() const;

  LadderStudy& study_;
  MakeWidget makeAims_;
  LadderModel model_;
  LadderFilter filter_{&model_};
  std::optional<LadderInput> input_;
  std::optional<LadderInput> worked_;  ///< what the rows in view were worked out for
  LadderRange range_{0, -1, 0, -1};
  LadderRange workedRange_{0, -1, 0, -1};
  bool ownRange_ = false;
  QTableView* table_ = nullptr;
  WholeBox *fewestFront_ = nullptr, *mostFront_ = nullptr, *fewestRear_ = nullptr, *mostRear_ = nullptr,
           *within_ = nullptr;
  QCheckBox *fits_ = nullptr, *spares_ = nullptr, *twins_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QLabel *answer_ = nullptr, *empty_ = nullptr;
  QPushButton *stop_ = nullptr, *again_ = nullptr, *pin_ = nullptr;
};

}  // namespace layshaft::ui
