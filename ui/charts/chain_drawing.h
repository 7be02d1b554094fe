// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTransform>
#include <QWidget>
#include <optional>

#include "core/parts/chain_path.h"
#include "core/plan.h"
#include "ui/charts/palette.h"
#include "ui/charts/picture.h"
#include "ui/charts/text_cache.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// Both sprockets, the chain and the axle in its slot, to scale, seen from the left of the bike: the chain
/// runs in the order of the drive line. Stock is a ghost, the proposal solid. As the rear wheel is turned, a
/// tally below counts how often the front sprocket has turned, stock beside proposed.
class ChainDrawing : public QWidget, public Picture {
  Q_OBJECT
 public:
  explicit ChainDrawing(QWidget* parent = nullptr);

  using QWidget::show;
  /// Both setups must have a chain run.
  void show(const SharedPlan& plan, const UnitsShown& units);

  double turn() const { return turn_; }  ///< of the rear wheel, 0 to 1
  void setTurn(double turn);
  /// Fills the picture with the axle and its slot.
  void setZoomed(bool zoomed);

  void renderInto(QPainter& painter, const QRectF& target) override;

  QSize sizeHint() const override { return {900, 380}; }
  QSize minimumSizeHint() const override { return {320, 180}; }

 signals:
  void turned(double turn);  ///< the rear sprocket was dragged round
  void menuRequested(const QPoint& globalPosition);

 protected:
  QSize pictureSize() const override { return size(); }
  QColor pictureGround() const override { return colours_.background; }
  int pictureDpi() const override { return logicalDpiX(); }

  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  /// One setup's loop as it is drawn.
  struct Loop {
    const SetupPlan* setup;
    ChainPair pair;
    std::optional<ChainPath> path;  ///< none where the chain does not reach round
    double centreM;
  };
  Loop loopOf(const SetupPlan& setup) const;
  /// Metres along and across the line from countershaft to axle, to pixels.
  QTransform view(const QRectF& area, const Loop& stock, const Loop& proposed) const;
  double tallyHeight() const;
  /// A place of the picture in metres along and across the line, from the proposal's axle.
  QPointF fromRearAxle(const QPointF& pixel, const Loop& proposed) const;

  void paint(QPainter& painter, const QRectF& area) const;
  void paintSwingarm(QPainter& painter, const QTransform& to, const Loop& stock) const;
  void paintSlot(QPainter& painter, const QTransform& to, const Loop& stock) const;
  void paintGhost(QPainter& painter, const QTransform& to, const Loop& loop) const;
  void paintSolid(QPainter& painter, const QTransform& to, const Loop& loop) const;
  void paintSprockets(QPainter& painter, const QTransform& to, const Loop& loop, const QPen& pen,
                      const QBrush& brush) const;
  void paintMarks(QPainter& painter, const QTransform& to, const Loop& loop, const QColor& colour,
                  bool filled) const;
  void paintNumbers(QPainter& painter, const QTransform& to, const Loop& stock, const Loop& proposed) const;
  void paintAxleNumbers(QPainter& painter, const QTransform& to, const Loop& stock,
                        const Loop& proposed) const;
  /// Lines of text, the first bold, centred over or under a place.
  void paintLabel(QPainter& painter, const QPointF& place, Qt::Alignment side, const QStringList& lines,
                  const QColor& colour) const;
  void makeFonts();

  SharedPlan plan_;
  UnitsShown units_;
  ChartPalette colours_;
  QFont font_, boldFont_;
  mutable TextCache texts_;
  double turn_ = 0.0;
  bool zoomed_ = false;
  std::optional<double> dragAngle_;
};

}  // namespace layshaft::ui
