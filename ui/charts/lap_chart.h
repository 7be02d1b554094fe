// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/charts/lap_foot.h"
#include "ui/charts/setup_chart.h"
#include "ui/words/lap_book.h"

namespace layshaft::ui {

/// Speed along a lap for every setup. Below it, over the same distance, the corners by name, the time won
/// against stock, and the gears of every setup.
class LapChart : public SetupChart {
  Q_OBJECT
 public:
  explicit LapChart(QWidget* parent = nullptr);

  using SetupChart::show;
  /// Stock and proposal must lap.
  void show(const LapBook& book, const UnitsShown& units);

  /// Where the crosshair is on the track, m from its start; none while it is hidden.
  std::optional<double> crosshairM() const;
  void moveTo(std::optional<double> distanceM);

  /// What the strip of time differences spans, s, won upwards.
  AxisRange wonRange() const { return wonRange_; }

 signals:
  void crosshairWentTo(std::optional<double> distanceM);

 protected:
  QList<QPointF> lineOf(const SetupPlan& setup) const override;
  void fitRanges() override;
  void paintOver(QPainter& painter) override;
  void paintFoot(QPainter& painter) override;
  double footHeight() const override;
  bool isFromTorque() const override { return true; }
  QString xTitle() const override;
  QString yTitle() const override;
  Qt::Corner namesCorner() const override { return Qt::TopRightCorner; }
  void putLabels(LabelSpace& space) const override;
  std::vector<CrosshairRow> crosshairRows(double x) const override;
  QString crosshairTitle(double x) const override;
  QString planInWords() const override;
  QString pictureCaption() const override;

 private:
  const LapOfSetup* lapOf(const SetupPlan& setup) const;
  double shownLength(double metres) const { return units_.shown(Quantity::Length, metres); }
  void fitWon();
  FootLayout footLayout() const;
  LapFoot foot() const;
  void paintLimiter(QPainter& painter) const;

  LapBook book_;
  AxisRange wonRange_;
};

}  // namespace layshaft::ui
