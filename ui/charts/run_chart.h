// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/traces.h"
#include "ui/charts/per_model.h"
#include "ui/charts/setup_chart.h"

namespace layshaft::ui {

/// Speed over time or distance: a start from a standstill, or the drive down the profile's straight. Shifts
/// are marked.
class RunChart : public SetupChart {
  Q_OBJECT
 public:
  enum class Over { Time, Distance };
  enum class Ride { StandingStart, Drive };

  explicit RunChart(QWidget* parent = nullptr);

  void setOver(Over over);
  void setRide(Ride ride);
  Over over() const { return over_; }
  Ride ride() const { return ride_; }

 protected:
  void prepare() override;
  QList<QPointF> lineOf(const SetupPlan& setup) const override;
  void fitRanges() override;
  void paintOver(QPainter& painter) override;
  bool isFromTorque() const override { return true; }
  QString xTitle() const override;
  QString yTitle() const override;
  void putLabels(LabelSpace& space) const override;
  std::vector<CrosshairRow> crosshairRows(double x) const override;
  QString crosshairTitle(double x) const override;
  QString planInWords() const override;

 private:
  const std::vector<RunPoint>& points(const SetupPlan& setup) const;
  const std::vector<RunShift>& shifts(const SetupPlan& setup) const;
  double along(double timeS, double distanceM) const;

  Over over_ = Over::Time;
  Ride ride_ = Ride::StandingStart;
  PerModel<RunTrace> traces_;
};

}  // namespace layshaft::ui
