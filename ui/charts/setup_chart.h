// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTimer>
#include <string>
#include <utility>

#include "core/plan.h"
#include "ui/charts/label_places.h"
#include "ui/charts/live_chart.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// Words in a chart's plot.
struct ChartLabel {
  QString text;
  QColor colour;
  bool bold = false;
  bool onPatch = false;               ///< of background, where lines may pass under it
  QRectF box = {};                    ///< where it stands, px
  std::optional<QPen> sample = {};    ///< of the line that it names, drawn before the text
  std::optional<QLineF> leader = {};  ///< the place that it names, dotted
};

/// A chart with one main line per setup: stock dashed below, pins between, proposed solid above. What the
/// line shows, and over what, is the page's chart's.
class SetupChart : public LiveChart {
  Q_OBJECT
 public:
  explicit SetupChart(const QString& name, QWidget* parent = nullptr);

  void show(const SharedPlan& plan, const UnitsShown& units);

  /// All that is written in the plot; none over another.
  const std::vector<ChartLabel>& labels() const;

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
  /// Where the lower axis ends: at a round number, or where the data do, whose end does not move.
  enum class XEnd { Round, OfData };
  /// Axes round the data that stay while values are turned; a moment after, they are again what they were
  /// when the view was opened if that fits, else what fits. Another `kind` of view is meant to move them.
  void fitTo(double xHigh, double yLow, double yHigh, int kind, XEnd end = XEnd::Round);

  /// `high` with room above it for a row of words.
  double withHeadroom(double low, double high) const;

  virtual QString xTitle() const = 0;
  virtual QString yTitle() const = 0;
  virtual Qt::Corner namesCorner() const { return Qt::BottomRightCorner; }
  /// Puts down what the page's chart writes, after titles and names; lines to keep off go into `space` first.
  virtual void putLabels(LabelSpace& space) const = 0;
  virtual void avoidLines(LabelSpace& space) const;
  /// At the best of places for its upper left corner, which it returns; left out where there is no room.
  std::optional<QRectF> put(LabelSpace& space, ChartLabel label, const std::vector<QPointF>& corners) const;
  QSizeF sizeOf(const ChartLabel& label) const;
  void paintLabels(QPainter& painter) const;
  std::vector<QRectF> keptClear() const override { return {namesArea()}; }
  QRectF namesArea() const;  ///< of the list of names

  /// The same of the plan, which is there.
  virtual QString planInWords() const = 0;
  QString inWords() const override { return plan_ ? planInWords() : QString(); }
  QString pictureHeading() const override;
  QString pictureCaption() const override;
  /// Whether it shows what follows from the engine's torque curve.
  virtual bool isFromTorque() const { return false; }

  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void overlayChanged() override { labels_.reset(); }
  void recolour() override;
  QStringList setupNames() const override;
  std::vector<QColor> setupColours() const override;

  SharedPlan plan_;
  UnitsShown units_;

 private:
  QStringList setupLabels() const;  ///< names with teeth
  void feedLines();
  void putTitles(LabelSpace& space) const;
  /// The list of names in so many rows, cut to the room there is.
  struct NameColumns {
    int rows;
    std::vector<double> widths;
    QStringList texts = {};
    double wide = 0.0;
  };
  QString shortened(const QString& label, const QString& teeth, double widest) const;
  NameColumns nameColumns(int rows) const;
  /// Each setup's name beside a sample of its line, in as many columns as it takes to stay low.
  void putNames(LabelSpace& space) const;

  mutable std::optional<std::vector<ChartLabel>> labels_;
  mutable QRectF namesArea_;
  QLineSeries* stockLine_;
  std::vector<QLineSeries*> pinLines_;
  QLineSeries* proposedLine_;
  int xTicks_ = 0, yTicks_ = 0, kind_ = 0;
  /// The axes of the view as it was opened, to which they return from a trial.
  struct Home {
    std::string bikeName;
    std::optional<Setup> stock;
    AxisRange x, y;
  };
  Home home_;
  std::pair<AxisRange, AxisRange> rest_;  ///< the axes once nothing is turned any more
  QTimer untilRest_;
};

/// Follows a line of rising x to the value at `x`; none outside it.
std::optional<double> valueAt(const QList<QPointF>& line, double x);

}  // namespace layshaft::ui
