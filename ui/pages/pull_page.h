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
  /// `conditions` edits where the bike is ridden; the page takes it over and shows it beside the picture.
  explicit PullPage(QWidget* conditions, QWidget* parent = nullptr);

  LiveChart* chart() override { return chart_; }
  std::vector<QStringList> numbers() const override { return chart_->numbers(); }
  QString csv() const override;

 protected:
  void showPlan() override;

 private:
  PullChart* chart_;
  QStackedWidget* stack_;
  LackingPanel* lacking_;
  QLabel* notes_;
  QWidget* acceleration_;  ///< the switch to it
};

}  // namespace layshaft::ui
