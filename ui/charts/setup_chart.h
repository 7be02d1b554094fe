// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan.h"
#include "ui/charts/live_chart.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// A chart with one main line per setup: stock dashed below, pins between, proposed solid above. What the
/// line shows, and over what, is the page's chart's.
class SetupChart : public LiveChart {
  Q_OBJECT
 public:
  explicit SetupChart(const QString& name, QWidget* parent = nullptr);

  void show(const SharedPlan& plan, const UnitsShown& units);

 protected:
  struct Shown {
    const SetupPlan* plan;
    QString name;
    QPen pen;
  };
  /// Stock, proposed, pins.
  std::vector<Shown> shown() const;
  double shownSpeed(double mps) const { return units_.shown(Quantity::Speed, mps); }

  /// Makes what is drawn of the plan that is now shown, once: it is painted more often than planned.
  virtual void prepare() {}
  virtual QList<QPointF> lineOf(const SetupPlan& setup) const = 0;
  virtual void fitRanges() = 0;
  /// Puts `fitRanges`, the lines and the overlay in step with the plan.
  virtual void refresh();
  /// Axes round the data that stay while values are turned. Another `kind` of view is meant to move them.
  void fitTo(double xHigh, double yLow, double yHigh, int kind);

  void paintAxisTitles(QPainter& painter, const QString& y, const QString& x) const;
  /// Each setup's name beside a sample of its line, in a corner of the plot.
  void paintSetupNames(QPainter& painter, Qt::Corner corner) const;
  QRectF setupNamesArea(Qt::Corner corner) const;  ///< where they stand

  QString pictureHeading() const override;
  /// The cautions that the readout says while the chart is in the window.
  QString pictureCaption() const override;

  void resizeEvent(QResizeEvent* event) override;
  void recolour() override;
  QStringList setupNames() const override;
  std::vector<QColor> setupColours() const override;

  SharedPlan plan_;
  UnitsShown units_;

 private:
  QStringList setupLabels() const;  ///< names with teeth
  QLineSeries* stockLine_;
  std::vector<QLineSeries*> pinLines_;
  QLineSeries* proposedLine_;
  int xTicks_ = 0, yTicks_ = 0, kind_ = 0;
};

/// Follows a line of rising x to the value at `x`; none outside it.
std::optional<double> valueAt(const QList<QPointF>& line, double x);

}  // namespace layshaft::ui
