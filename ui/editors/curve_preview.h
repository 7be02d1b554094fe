// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "core/parts/torque_curve.h"
#include "ui/charts/palette.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// A small picture of a torque curve: the points as typed, the line that is drawn through them, thin where it
/// is assumed, and the power.
class CurvePreview : public QWidget {
  Q_OBJECT
 public:
  explicit CurvePreview(QWidget* parent = nullptr);

  void show(const std::optional<TorqueCurve>& curve, const std::optional<double>& revLimitRpm,
            const UnitsShown& units);

  QSize sizeHint() const override { return {320, 200}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  struct PowerPoint {
    double rpm, watts;
  };
  void paintWords(QPainter& painter, const ChartPalette& colours, const TorquePoint& peak,
                  const PowerPoint& power) const;

  std::optional<TorqueCurve> curve_;
  std::optional<double> revLimitRpm_;
  UnitsShown units_;
};

}  // namespace layshaft::ui
