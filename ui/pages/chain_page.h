// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QScrollArea>
#include <QSlider>
#include <QStackedWidget>
#include <QTimer>
#include <QToolButton>

#include "ui/charts/chain_drawing.h"
#include "ui/pages/cautions_line.h"
#include "ui/pages/figures_table.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// The chain on its sprockets, drawn to scale, with a control that turns them; whether the parts fit, and
/// which chain.
class ChainPage : public Page {
  Q_OBJECT
 public:
  using Page::Page;

  Picture* picture() override { return stack_ && stack_->currentWidget() == view_ ? drawing_ : nullptr; }
  QWidget* mainPart() override { return slider_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

  /// The manual's slack in words; empty where it is not known.
  void useSlack(const QString& words);

  /// Without motion the wheel still turns by hand.
  void setMotion(bool on);

 protected:
  void build() override;
  void showPlan() override;
  void hideEvent(QHideEvent* event) override;

 private:
  void buildView();
  QLayout* turnBar();
  QWidget* words();
  void step(int teeth);
  void play(bool on);
  void setTurn(double turn);

  ChainDrawing* drawing_ = nullptr;
  QScrollArea* view_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  LackingPanel* lacking_ = nullptr;
  FiguresTable* table_ = nullptr;
  QLabel *verdict_ = nullptr, *notes_ = nullptr, *slack_ = nullptr;
  CautionsLine* cautions_ = nullptr;
  QSlider* slider_ = nullptr;
  QToolButton* play_ = nullptr;
  QString slackWords_;
  bool motion_ = true;
  QTimer clock_;
};

}  // namespace layshaft::ui
