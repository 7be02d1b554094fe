// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/traces.h"
#include "ui/charts/per_model.h"
#include "ui/charts/setup_chart.h"

namespace layshaft::ui {

/// What the pull chart measures upwards.
enum class PullMeasure { Force, Acceleration, Power };

/// Pull over road speed: for each setup the curve that a run follows from gear to gear, thin where the torque
/// is assumed, and thin beside it each gear alone; the resistance, what grip and front lift allow, shift
/// points and top speed.
class PullChart : public SetupChart {
  Q_OBJECT
 public:
  explicit PullChart(QWidget* parent = nullptr);

  void setMeasure(PullMeasure measure);
  PullMeasure measure() const { return measure_; }

  /// A row per gear and a column per setup, at the speeds of round ticks.
  std::vector<QStringList> numbers() const;

 protected:
  void prepare() override;
  QList<QPointF> lineOf(const SetupPlan& setup) const override;
  void fitRanges() override;
  void paintOver(QPainter& painter) override;
  std::vector<CrosshairRow> crosshairRows(double x) const override;
  QString crosshairTitle(double x) const override;

 private:
  QPointF shownPoint(const PullPoint& point) const;
  QList<QPointF> shownLine(const std::vector<PullPoint>& points) const;
  QString yTitle() const;
  int decimals() const;
  void paintBounds(QPainter& painter) const;
  void paintBound(QPainter& painter, const QPolygonF& edge, Qt::BrushStyle shade) const;
  void paintFollowed(QPainter& painter) const;
  void paintGears(QPainter& painter) const;
  void paintResistance(QPainter& painter) const;
  void paintShifts(QPainter& painter) const;
  void paintTopSpeeds(QPainter& painter) const;

  PullMeasure measure_ = PullMeasure::Force;
  PerModel<PullCurves> curves_;
};

}  // namespace layshaft::ui
