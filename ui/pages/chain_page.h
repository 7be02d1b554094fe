// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QSlider>
#include <QStackedWidget>
#include <QTimer>
#include <QToolButton>

#include "ui/charts/chain_drawing.h"
#include "ui/pages/figures_table.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// The chain on its sprockets, drawn to scale, with a control that turns them; whether the parts fit, and
/// which chain.
class ChainPage : public Page {
  Q_OBJECT
 public:
  explicit ChainPage(QWidget* parent = nullptr);

  Picture* picture() override { return stack_->currentWidget() == lacking_ ? nullptr : drawing_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

  /// Without motion the wheel still turns by hand.
  void setMotion(bool on);

 protected:
  void showPlan() override;
  void hideEvent(QHideEvent* event) override;

 private:
  void step(int teeth);
  void play(bool on);
  void setTurn(double turn);

  ChainDrawing* drawing_;
  QWidget* view_;
  QStackedWidget* stack_;
  LackingPanel* lacking_;
  FiguresTable* table_;
  QLabel *verdict_, *notes_, *caution_;
  QSlider* slider_;
  QToolButton* play_;
  QTimer clock_;
};

}  // namespace layshaft::ui
