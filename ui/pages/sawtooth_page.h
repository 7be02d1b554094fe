// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStackedWidget>

#include "ui/charts/sawtooth_chart.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/page.h"

namespace layshaft::ui {

/// Which engine speed belongs to which road speed in every gear, stock under proposed. Says what is missing
/// where rev limit or gear ratios are not known.
class SawtoothPage : public Page {
  Q_OBJECT
 public:
  using Page::Page;

  LiveChart* chart() override { return chart_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

 protected:
  void build() override;
  void showPlan() override;

 private:
  SawtoothChart* chart_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  LackingPanel* lacking_ = nullptr;
  QWidget* teeth_ = nullptr;  ///< the switch in the plot's corner
};

}  // namespace layshaft::ui
