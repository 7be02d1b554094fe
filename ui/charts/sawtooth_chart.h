// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/charts/setup_chart.h"

namespace layshaft::ui {

/// Engine speed over road speed, a tooth per gear, stock under proposed; under it, on the same speed axis,
/// the span of speeds that each gear serves.
class SawtoothChart : public SetupChart {
  Q_OBJECT
 public:
  explicit SawtoothChart(QWidget* parent = nullptr);

  /// Starts the engine-speed axis just below the lowest engine speed after a shift.
  void setTeethOnly(bool teethOnly);
  /// Where a small control may stand: under the rev limit at the left, above first gear's climb.
  QPointF freeCorner() const;
  /// Keeps words out of it.
  void reserveCorner(const QSizeF& size);

 protected:
  QList<QPointF> lineOf(const SetupPlan& setup) const override { return saw(setup.gearing); }
  void fitRanges() override;
  void paintOver(QPainter& painter) override;
  void paintFoot(QPainter& painter) override;
  QString xTitle() const override;
  QString yTitle() const override;
  void avoidLines(LabelSpace& space) const override;
  void putLabels(LabelSpace& space) const override;
  std::vector<CrosshairRow> crosshairRows(double x) const override { return rows(x, true); }
  std::vector<CrosshairRow> briefRows(double x) const override { return rows(x, false); }
  std::vector<QRectF> keptClear() const override;
  QString crosshairTitle(double x) const override;
  QString spokenTitle(double x) const override;
  QString planInWords() const override;
  double footHeight() const override;
  double rightMargin() const override;
  std::optional<double> markerX() const override;

 private:
  double limitRpm() const { return *plan_->revLimitRpm; }
  QList<QPointF> saw(const Gearing& gearing) const;
  void paintOverruns(QPainter& painter) const;
  void putGearNumbers(LabelSpace& space) const;
  void putLimit(LabelSpace& space) const;
  void putCruise(LabelSpace& space) const;
  void paintLimit(QPainter& painter) const;
  void paintLeanScale(QPainter& painter) const;
  QString leanTitle() const;  ///< empty where nothing leans
  void paintCruise(QPainter& painter) const;
  void paintBars(QPainter& painter) const;
  double barHeight() const;  ///< of stock and proposed
  double pinBarPitch() const;
  double barsHeight() const;  ///< of all setups of a gear
  double barRowHeight() const;
  std::size_t mostGears() const;
  std::vector<CrosshairRow> rows(double x, bool leaned) const;

  bool teethOnly_ = false;
  QSizeF corner_;
};

}  // namespace layshaft::ui
