// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/plan.h"
#include "ui/charts/readable_picture.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// How fast each gear goes at the rev limit, a bar a gear: stock grey and hatched behind, the proposal solid.
/// Understood at a glance, and by who has seen no chart of an engine.
class SpeedBars : public QWidget, public ReadablePicture {
  Q_OBJECT
 public:
  explicit SpeedBars(QWidget* parent = nullptr);

  using QWidget::show;
  /// `mostMps` is the speed that fills the picture, so that pictures side by side have one scale.
  void show(const SharedPlan& plan, const UnitsShown& units, double mostMps);

  /// The greatest speed that a picture of the plan shows, m/s; 0 where the plan knows none to draw.
  static double mostMps(const Plan& plan);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  SharedPlan plan_;
  UnitsShown units_;
  double mostMps_ = 0.0;
};

}  // namespace layshaft::ui
