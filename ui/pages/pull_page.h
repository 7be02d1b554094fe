// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QStackedWidget>

#include "ui/charts/pull_chart.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// Pull at the wheel over road speed, with what stands against it.
class PullPage : public Page {
  Q_OBJECT
 public:
  /// `conditions` edits where the bike is ridden.
  explicit PullPage(MakeWidget conditions, QWidget* parent = nullptr);

  LiveChart* chart() override { return chart_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

 protected:
  void build() override;
  void showPlan() override;

 private:
  MakeWidget makeConditions_;
  PullChart* chart_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  LackingPanel* lacking_ = nullptr;
  QLabel* notes_ = nullptr;
  QWidget* acceleration_ = nullptr;  ///< the switch to it
};

}  // namespace layshaft::ui
