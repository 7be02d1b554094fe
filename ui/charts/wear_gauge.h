// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/study/wear.h"
#include "ui/charts/palette.h"
#include "ui/charts/readable_picture.h"

namespace layshaft::ui {

/// Elongation on an upright scale from new to the limit and beyond: a tick for each place of the latest
/// measurement, a pointer at the greatest. The parts of the scale are named, not only coloured.
class WearGauge : public QWidget, public ReadablePicture {
  Q_OBJECT
 public:
  explicit WearGauge(QWidget* parent = nullptr);

  using QWidget::show;
  void show(const WearFigures& figures);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  struct Scale;
  void paintZones(QPainter& painter, const Scale& scale) const;
  void paintPlaces(QPainter& painter, const Scale& scale) const;

  std::optional<WearFigures> figures_;
  ChartPalette colours_;
};

}  // namespace layshaft::ui
