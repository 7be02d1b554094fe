// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QStackedWidget>

#include "ui/charts/run_chart.h"
#include "ui/pages/figures_table.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// Speed over time or distance from a standstill or down the straight, and the usual figures.
class RunPage : public Page {
  Q_OBJECT
 public:
  /// `drive` and `rollOn` edit what is asked.
  RunPage(MakeWidget drive, MakeWidget rollOn, QWidget* parent = nullptr);

  LiveChart* chart() override { return chart_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

 protected:
  void build() override;
  void showPlan() override;

 private:
  int panelWidth() const { return 7 * sideWidth() / 4; }
  void addSwitches(QBoxLayout& row);

  MakeWidget makeDrive_, makeRollOn_;
  RunChart* chart_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  LackingPanel* lacking_ = nullptr;
  FiguresTable* table_ = nullptr;
  QLabel* drive_ = nullptr;
  QLabel* estimated_ = nullptr;
};

}  // namespace layshaft::ui
