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
  bool isFromTorque() const override { return true; }
  QString xTitle() const override;
  QString yTitle() const override;
  Qt::Corner namesCorner() const override { return Qt::TopRightCorner; }
  void avoidLines(LabelSpace& space) const override;
  void putLabels(LabelSpace& space) const override;
  std::vector<CrosshairRow> crosshairRows(double x) const override;
  QString crosshairTitle(double x) const override;
  QString planInWords() const override;

 private:
  QPointF shownPoint(const PullPoint& point) const;
  QList<QPointF> shownLine(const std::vector<PullPoint>& points) const;
  /// Where grip or the front wheel ends what is of use.
  struct Bound {
    QPolygonF edge;
    QString name;
    Qt::BrushStyle shade;
  };
  std::vector<Bound> boundsInView() const;
  struct TopSpeed {
    double shown;  ///< in the unit shown
    QColor colour;
  };
  std::vector<TopSpeed> topSpeeds() const;  ///< stock's and the proposal's, where there are any
  QPolygonF inPlot(const std::vector<PullPoint>& points) const;
  void putAlong(LabelSpace& space, const ChartLabel& label, const QPolygonF& line) const;
  void putGearNumbers(LabelSpace& space) const;
  void putTopSpeeds(LabelSpace& space) const;
  int decimals() const;
  void paintBounds(QPainter& painter) const;
  void paintBound(QPainter& painter, const QPolygonF& edge, Qt::BrushStyle shade) const;
  void paintFollowed(QPainter& painter) const;
  void paintGears(QPainter& painter) const;
  void paintResistance(QPainter& painter) const;
  void paintShifts(QPainter& painter) const;

  PullMeasure measure_ = PullMeasure::Force;
  PerModel<PullCurves> curves_;
};

}  // namespace layshaft::ui
