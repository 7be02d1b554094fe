// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/bike/track.h"
#include "ui/charts/palette.h"
#include "ui/charts/readable_picture.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// How a recorded line bends along the way: left bends above the middle, right bends below, each mark on the
/// scale a radius.
class CurvaturePreview : public QWidget, public ReadablePicture {
  Q_OBJECT
 public:
  explicit CurvaturePreview(QWidget* parent = nullptr);

  using QWidget::show;
  void show(const TrackPath& path, const UnitsShown& units);

  QSize sizeHint() const override { return {300, 140}; }
  QSize minimumSizeHint() const override { return {160, 90}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString radiusWords(double radiusM) const;
  void paintScale(QPainter& painter, const ChartPalette& colours, const QRectF& plot) const;

  TrackPath path_;
  UnitsShown units_;
  double mostPerKm_ = 0.0;
};

}  // namespace layshaft::ui
