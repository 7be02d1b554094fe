// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/plan.h"
#include "ui/charts/live_chart.h"
#include "ui/units_shown.h"

namespace layshaft::ui {

/// One question's answer on screen. Takes plans and shows them; knows nothing of files, and asks no other
/// page. While it is hidden it only remembers the latest plan.
class Page : public QWidget {
  Q_OBJECT
 public:
  using QWidget::QWidget;

  void take(const Plan& plan, const UnitsShown& units) {
    plan_ = plan;
    units_ = units;
    if (isVisible())
      showPlan();
    else
      stale_ = true;
  }

  /// The page's chart; null if it has none.
  virtual LiveChart* chart() { return nullptr; }
  /// What can be copied and saved as a picture; null if there is none.
  virtual Picture* picture() { return chart(); }
  /// What the chart shows as a table: column titles, then rows.
  virtual std::vector<QStringList> numbers() const { return {}; }
  /// The same, as comma-separated values at full precision.
  virtual QString csv() const { return {}; }

 signals:
  void cruiseDragged(double speedMps, int drag);
  void pictureMenuWanted(const QPoint& globalPosition);
  void detailsWanted(std::string_view key);  ///< the page lacks data: lead to where it is typed

 protected:
  virtual void showPlan() = 0;
  /// Width of the controls beside a picture, px.
  int sideWidth() const { return 30 * fontMetrics().averageCharWidth() + 80; }
  void showEvent(QShowEvent* event) override {
    QWidget::showEvent(event);
    if (plan_ && std::exchange(stale_, false)) showPlan();
  }

  std::optional<Plan> plan_;
  UnitsShown units_;

 private:
  bool stale_ = false;
};

}  // namespace layshaft::ui
