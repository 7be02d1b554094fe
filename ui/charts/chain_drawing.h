// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPixmap>
#include <QTransform>
#include <QWidget>
#include <optional>
#include <vector>

#include "core/plan.h"
#include "ui/charts/chain_scene.h"
#include "ui/charts/label_places.h"
#include "ui/charts/palette.h"
#include "ui/charts/picture.h"
#include "ui/charts/readable_picture.h"
#include "ui/charts/text_cache.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// Both sprockets, the chain and the axle in its slot, to scale, seen from the left of the bike: the chain
/// runs in the order of the drive line. Stock is a ghost, the proposal solid. As the rear wheel is turned, a
/// tally below counts how often the front sprocket has turned, stock beside proposed.
class ChainDrawing : public QWidget, public Picture, public ReadablePicture {
  Q_OBJECT
 public:
  explicit ChainDrawing(QWidget* parent = nullptr);

  using QWidget::show;
  /// Both setups must have a chain run.
  void show(const SharedPlan& plan, const UnitsShown& units);

  double turn() const { return turn_; }  ///< of the rear wheel, 0 to 1
  void setTurn(double turn);
  /// Whether the turns of the front sprocket are counted below the drawing, as they are at first.
  void showTally(bool on);
  /// Fills the picture with the axle and its slot.
  void setZoomed(bool zoomed);

  /// Where the words at sprockets, strand and axle stand, px; none while the axle fills the picture.
  std::vector<QRectF> labelBoxes() const;
  /// Where the proposal's front and rear sprocket are; none while the axle fills the picture.
  std::vector<QRectF> sprocketBoxes() const;

  void renderInto(QPainter& painter, const QRectF& target) override;

  QSize sizeHint() const override { return {900, 380}; }
  QSize minimumSizeHint() const override;

 signals:
  void turned(double turn);  ///< the rear sprocket was dragged round
  void menuRequested(const QPoint& globalPosition);

 protected:
  QSize pictureSize() const override { return size(); }
  QString pictureHeading() const override;
  /// The cautions, which stand beside the drawing on the page.
  QString pictureCaption() const override;
  QColor pictureGround() const override { return colours_.background; }
  QColor pictureInk() const override { return colours_.text; }
  int pictureDpi() const override { return logicalDpiX(); }

  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  /// Stock as pixels, and what they were made of.
  struct StockPicture {
    SharedPlan plan;
    QTransform toPixels;
    double turn;
    QSize size;
    double pixelRatio;
    QPixmap pixels;
  };

  bool hasRun() const;
  double tallyHeight() const;
  QRectF sceneArea() const;
  ChainScene scene() const;
  /// A place of the picture in metres along and across the line, from the proposal's axle.
  QPointF fromRearAxle(const QPointF& pixel) const;

  /// The ground with all that stays while the proposal's teeth are turned.
  void paintStock(QPainter& painter, const ChainScene& scene) const;
  /// The same as pixels; painted afresh only where it looks different.
  const QPixmap& stockPixels(const ChainScene& scene, double pixelRatio);
  void paintRest(QPainter& painter, const ChainScene& scene) const;
  void paintAxleNumbers(QPainter& painter, const ChainScene& scene) const;
  /// Lines of text, the first bold, and where they stand.
  struct Label {
    QRectF box;
    QStringList lines;
    QColor colour;
  };
  /// A label centred over or under a place, inside the picture.
  Label labelAt(const QPointF& place, Qt::Alignment side, const QStringList& lines,
                const QColor& colour) const;
  void paintLabel(QPainter& painter, const Label& label) const;
  void paintLabel(QPainter& painter, const QPointF& place, Qt::Alignment side, const QStringList& lines,
                  const QColor& colour) const {
    paintLabel(painter, labelAt(place, side, lines, colour));
  }
  /// What is written at sprockets, strand and axle, none over another.
  std::vector<Label> labels(const ChainScene& scene) const;
  void putStrandLabel(const ChainScene& scene, LabelSpace& space, std::vector<Label>& labels) const;
  /// Where it is, or at another of its corners' places that is free.
  void putLabel(LabelSpace& space, std::vector<Label>& labels, Label label,
                const std::vector<QPointF>& otherCorners) const;
  std::vector<QRectF> sprocketBoxes(const ChainScene& scene) const;
  Label centresLabel(const ChainScene& scene) const;
  double centresLevel(const ChainScene& scene) const;  ///< of the dimension below both sprockets
  void paintCentres(QPainter& painter, const ChainScene& scene) const;
  void makeFonts();

  SharedPlan plan_;
  UnitsShown units_;
  ChartPalette colours_;
  QFont font_, boldFont_;
  mutable TextCache texts_;
  StockPicture stockPicture_;
  double turn_ = 0.0;
  bool zoomed_ = false;
  bool tally_ = true;
  std::optional<double> dragAngle_;
};

}  // namespace layshaft::ui
