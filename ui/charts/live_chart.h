// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QChart>
#include <QGraphicsView>
#include <QLineSeries>
#include <QString>
#include <QStringList>
#include <QValueAxis>
#include <optional>
#include <vector>

#include "ui/charts/palette.h"
#include "ui/charts/picture.h"
#include "ui/charts/readable_picture.h"
#include "ui/charts/steady_range.h"
#include "ui/charts/text_cache.h"

namespace layshaft::ui {

/// One line of the crosshair's table: a name and a value per setup, in the setups' order.
struct CrosshairRow {
  QString name;
  QStringList values;
};

/// What the charts of all pages share: a Qt chart whose plot area, axes and series are made once and then
/// only fed, an overlay painted by the page's chart, a crosshair, one marker that can be dragged, and export.
/// Axis ranges stay steady while values are turned.
class LiveChart : public QGraphicsView, public Picture, public ReadablePicture {
  Q_OBJECT
 public:
  explicit LiveChart(QWidget* parent = nullptr);
  ~LiveChart() override;

  /// Paints the chart as it is laid out, scaled into `target`.
  void renderInto(QPainter& painter, const QRectF& target) override;

  /// Lays out a chart that is painted without ever being shown.
  void ensureLaidOut();

  /// The palette of the paper whatever the desktop's, for printing.
  void usePalette(const QPalette& palette);

  const ChartPalette& colours() const { return colours_; }
  AxisRange xRange() const { return xRange_; }
  AxisRange yRange() const { return yRange_; }

  /// The lines that the chart is made of, in the order they were added.
  const std::vector<QLineSeries*>& lines() const { return lines_; }

  /// The value under the crosshair; none while it is hidden.
  std::optional<double> crosshairX() const { return crosshairX_; }
  void setCrosshair(std::optional<double> x);

  QRectF crosshairPanel() const;  ///< where its table is, px; empty while it is hidden

  std::optional<CrosshairSpan> crosshairSpan() const override;
  std::optional<double> crosshairAt() const override { return crosshairX_; }
  void moveCrosshair(double x) override { setCrosshair(x); }
  QString crosshairWords() const override;

  QSize sizeHint() const override { return {900, 420}; }
  /// Room for a plot of a few lines of words above what stands below it.
  QSize minimumSizeHint() const override;

 signals:
  void markerDragged(double x, int drag);  ///< `drag` numbers the drags, each one step of the history
  void menuRequested(const QPoint& globalPosition);
  void laidOut(const QRectF& plotArea);
  void crosshairMoved();

 protected:
  // What a page's chart adds.
  virtual void paintOver(QPainter& painter) = 0;  ///< inside the plot area
  virtual void paintFoot(QPainter&) {}            ///< below the axis labels and right of the plot
  virtual void overlayChanged() {}                ///< what is painted over the series is another
  virtual void recolour() = 0;                    ///< pens of the series, after the palette changed
  virtual std::vector<CrosshairRow> crosshairRows(double x) const = 0;
  /// The same in fewer words, for a table that must be small.
  virtual std::vector<CrosshairRow> briefRows(double x) const { return crosshairRows(x); }
  virtual QString crosshairTitle(double x) const = 0;
  virtual QString spokenTitle(double x) const { return crosshairTitle(x); }  ///< with what is read there
  virtual QString inWords() const = 0;  ///< the chart, for who does not see it
  virtual QStringList setupNames() const = 0;
  virtual std::vector<QColor> setupColours() const = 0;
  virtual double footHeight() const { return 0.0; }             ///< room below the axis labels
  virtual double rightMargin() const { return 22.0; }           ///< room right of the plot
  virtual std::optional<double> markerX() const { return {}; }  ///< the marker that can be dragged
  virtual std::vector<QRectF> keptClear() const {
    return {};
  }  ///< of the crosshair's table, as far as it goes

  QLineSeries* addLine();
  /// Replaces a series' points if they differ.
  static void feed(QLineSeries* series, const QList<QPointF>& points);
  void setRanges(const AxisRange& x, const AxisRange& y);
  /// Called by a page's chart once its series are made, and by itself whenever the palette changes.
  void applyPalette();
  void layOut();
  void updateOverlay();
  /// The chart in words is its accessible description; while the crosshair is moved by keys, what it reads.
  void describe();

  QRectF plotArea() const { return plot_; }
  QRectF footArea() const;
  QPointF at(double x, double y) const;  ///< chart values to scene coordinates
  double xAt(double sceneX) const;
  double axisLabelHeight() const;
  const QFont& chartFont(bool bold = false) const { return bold ? boldFont_ : font_; }
  TextCache& texts() const { return texts_; }

  QSize pictureSize() const override { return viewport()->size(); }
  QColor pictureGround() const override { return colours_.background; }
  QColor pictureInk() const override { return colours_.text; }
  int pictureDpi() const override { return logicalDpiX(); }

  bool event(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  friend class ChartGround;
  friend class ChartOverlay;
  friend class CrosshairItem;
  bool overMarker(const QPointF& scene) const;
  void makeFonts();

  QFont font_, boldFont_;
  mutable TextCache texts_;
  QGraphicsScene scene_;
  std::vector<QLineSeries*> lines_;
  QChart* chart_;
  QValueAxis* x_;
  QValueAxis* y_;
  class ChartGround* ground_;
  class ChartOverlay* overlay_;
  class ChartOverlay* foot_;
  class CrosshairItem* crosshair_;
  ChartPalette colours_;
  bool ownPalette_ = false;
  AxisRange xRange_{0, 0, 0};
  AxisRange yRange_{0, 0, 0};
  QRectF plot_;
  std::optional<double> crosshairX_;
  bool dragging_ = false;
  int drag_ = 0;
};

}  // namespace layshaft::ui
