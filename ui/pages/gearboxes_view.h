// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTableView>
#include <QTimer>

#include "ui/document/gearbox_study.h"
#include "ui/pages/gearbox_model.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/lap_view.h"
#include "ui/pages/progress_row.h"

namespace layshaft::ui {

/// Every gearbox that the gears on hand make, by its lap of the track that is ridden.
class GearboxesView : public LapView {
  Q_OBJECT
 public:
  explicit GearboxesView(BackgroundLane& lane, QWidget* parent = nullptr);

  /// What the laps are worked out from, once per change of it.
  void use(GearboxInput input);

  QWidget* mainPart() override { return table_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;
  QVariantMap state() const override;
  void restore(const QVariantMap& state) override;

 signals:
  void gearboxChosen(const layshaft::GearsTaken& gears, int frontTeeth, int rearTeeth);

 protected:
  void build() override;
  void showPlan() override;
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  using Pairs = GearboxResults::Pairs;

  QWidget* makeList();
  QLayout* makeBar();
  void makeTable();
  void watchStudy();
  Pairs pairs() const { return ownPair_->isChecked() ? Pairs::Proposed : Pairs::InReach; }
  void askAnew();
  void goOn();
  void attempt(Pairs with);
  std::vector<GearboxRow> withoutBand() const;
  void startOver();
  void present();
  void fade();
  void sayWords();
  void sayWhatIsChosen();
  void propose();

  GearboxStudy study_;
  std::optional<GearboxInput> input_;
  std::optional<GearboxInput> asked_;  ///< what the results, or those that are to come, are of
  PairTeeth proposed_{0, 0};
  GearboxResults results_;
  Pairs trying_ = Pairs::Proposed;  ///< what is under way
  bool stopped_ = false;            ///< by the user, until something else is asked
  GearboxModel model_;
  bool whole_ = false;  ///< what the model shows is in its final order, or was
  QTimer untilShown_;   ///< what comes in is shown a few times a second
  QStackedWidget* stack_ = nullptr;
  LackingPanel* lacking_ = nullptr;
  QLabel* words_ = nullptr;
  QTableView* table_ = nullptr;
  QCheckBox* ownPair_ = nullptr;
  ProgressRow* progress_ = nullptr;
  QPushButton* propose_ = nullptr;
};

}  // namespace layshaft::ui
