// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan.h"
#include "ui/charts/live_chart.h"
#include "ui/units_shown.h"

namespace layshaft::ui {

/// Engine speed over road speed, a tooth per gear, stock under proposed; under it, on the same speed axis,
/// the span of speeds that each gear serves.
class SawtoothChart : public LiveChart {
  Q_OBJECT
 public:
  explicit SawtoothChart(QWidget* parent = nullptr);

  void show(const Plan& plan, const UnitsShown& units);
  /// Starts the engine-speed axis just below the lowest engine speed after a shift.
  void setTeethOnly(bool teethOnly);
  /// Where a small control may stand: under the rev limit at the left, above first gear's climb.
  QPointF freeCorner() const;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void paintOver(QPainter& painter) override;
  void paintFoot(QPainter& painter) override;
  void recolour() override;
  std::vector<CrosshairRow> crosshairRows(double x) const override;
  QString crosshairTitle(double x) const override;
  QStringList setupNames() const override;
  std::vector<QColor> setupColours() const override;
  double footHeight() const override;
  std::optional<double> markerX() const override;

 private:
  struct Shown {
    const SetupPlan* plan;
    QString name;
    QPen pen;
  };
  std::vector<Shown> shown() const;
  void refresh();
  double shownSpeed(double mps) const { return units_.shown(Quantity::Speed, mps); }
  QList<QPointF> saw(const Gearing& gearing) const;
  void paintOverruns(QPainter& painter) const;
  void paintGearNumbers(QPainter& painter) const;
  void paintSetupNames(QPainter& painter) const;
  void paintLimitAndTitles(QPainter& painter) const;
  void paintCruise(QPainter& painter) const;
  void paintBars(QPainter& painter) const;
  void fitRanges();
  double barRowHeight() const;
  std::size_t mostGears() const;

  std::optional<Plan> plan_;
  UnitsShown units_;
  bool teethOnly_ = false;
  int speedTicks_ = 0, engineTicks_ = 0;
  QLineSeries* stockLine_;
  std::vector<QLineSeries*> pinLines_;
  QLineSeries* proposedLine_;
};

}  // namespace layshaft::ui
