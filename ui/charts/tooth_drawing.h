// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "ui/charts/palette.h"
#include "ui/charts/picture.h"
#include "ui/charts/readable_picture.h"
#include "ui/words/units_shown.h"
#include "ui/words/wear_book.h"

namespace layshaft::ui {

/// The uppermost teeth of the rear sprocket to scale, front of the bike to the left, with the chain on them:
/// as it grows longer its rollers ride on a larger circle; or a new chain on teeth that wore with it.
class ToothDrawing : public QWidget, public Picture, public ReadablePicture {
  Q_OBJECT
 public:
  enum class View { WornChain, NewChain };

  explicit ToothDrawing(QWidget* parent = nullptr);

  using QWidget::show;
  /// The chain's size must be known.
  void show(const WearBook& book, const UnitsShown& units);
  void setElongation(double percent);
  void setView(View view);
  double elongation() const { return elongationPercent_; }

  void renderInto(QPainter& painter, const QRectF& target) override;

  QSize sizeHint() const override { return {420, 260}; }
  QSize minimumSizeHint() const override { return {260, 126}; }

 signals:
  void menuRequested(const QPoint& globalPosition);

 protected:
  QSize pictureSize() const override { return size(); }
  QColor pictureGround() const override { return colours_.background; }
  QColor pictureInk() const override { return colours_.text; }
  int pictureDpi() const override { return logicalDpiX(); }

  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  void describe();
  void paint(QPainter& painter) const;
  void paintTeeth(QPainter& painter, const QTransform& toPixels) const;
  void paintChain(QPainter& painter, const QTransform& toPixels) const;

  std::optional<WearBook> book_;
  UnitsShown units_;
  ChartPalette colours_;
  double elongationPercent_ = 0.0;
  View view_ = View::WornChain;
};

}  // namespace layshaft::ui
