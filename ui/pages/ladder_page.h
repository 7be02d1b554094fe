// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QTableView>

#include "ui/document/ladder_study.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/pages/ladder_model.h"
#include "ui/pages/page.h"
#include "ui/pages/progress_row.h"

namespace layshaft::ui {

/// Every sprocket pair in a chosen range, in order of final ratio. One row is the proposal; the cursor stands
/// on any, and what is done with a pair is done with the cursor's.
class LadderPage : public Page {
  Q_OBJECT
 public:
  /// Makes what the aims are edited with. The page's caution stands in it, where it costs the table no row.
  using MakeAims = std::function<QWidget*(QWidget* caution)>;

  /// `study` works the rows out; `aims` edits what is asked of them.
  LadderPage(LadderStudy& study, MakeAims aims, QWidget* parent = nullptr);

  /// What the ladder is worked out from, once per change of it.
  void use(LadderInput input);
  /// The pairs that are pinned.
  void usePins(std::vector<PinnedPair> pins);

  QWidget* mainPart() override { return table_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;
  QVariantMap state() const override;
  void restore(const QVariantMap& state) override;

 signals:
  void pairChosen(int frontTeeth, int rearTeeth);
  void pairPinned(int frontTeeth, int rearTeeth);
  void pinRemoved(std::size_t pin);  ///< by its place among the profile's
  void refused(QWidget* field, const QString& why);

 protected:
  void build() override;
  void showPlan() override;
  void showEvent(QShowEvent* event) override;

 private:
  bool laps() const { return input_ && input_->track; }
  void makeActions();
  QTableView* makeTable();
  QLayout* makeBar();
  QLayout* makeRange();
  void nameBox(WholeBox& box, const QString& name);
  void watchFilters();
  void watchStudy();
  void restart();
  void keepOrder(const WholeBox* moved);
  void fitColumns();
  void sayWhetherEmpty();
  void askForProposal();
  void goToProposal();
  void nameFits(bool belt);
  std::optional<LadderRange> proposalOutside() const;  ///< as a range of that one pair
  void sayPin();
  void togglePin();
  void openRowMenu(const QPoint& at);
  void openHeaderMenu(const QPoint& at);
  void addSorting(QMenu& menu);
  void addColumns(QMenu& menu);
  void sayAnswer();
  void propose();
  std::optional<LadderRow> current() const;

  LadderStudy& study_;
  MakeAims makeAims_;
  LadderModel model_;
  LadderFilter filter_{&model_};
  std::optional<LadderInput> input_;
  std::optional<LadderInput> worked_;  ///< what the rows in view were worked out for
  LadderRange range_{0, -1, 0, -1};
  LadderRange workedRange_{0, -1, 0, -1};
  std::optional<LadderRange> askedOutside_;  ///< a proposal outside the range that was worked out, too
  bool ownRange_ = false;
  bool toProposal_ = true;  ///< once its row is there, the cursor goes to it
  QTableView* table_ = nullptr;
  WholeBox *fewestFront_ = nullptr, *mostFront_ = nullptr, *fewestRear_ = nullptr, *mostRear_ = nullptr,
           *within_ = nullptr;
  QComboBox* fit_ = nullptr;
  QCheckBox *spares_ = nullptr, *twins_ = nullptr, *pinned_ = nullptr;
  ProgressRow* progress_ = nullptr;
  QLabel *answer_ = nullptr, *empty_ = nullptr;
  QPushButton* pin_ = nullptr;
  QAction *proposeAction_ = nullptr, *pinAction_ = nullptr;
};

}  // namespace layshaft::ui
