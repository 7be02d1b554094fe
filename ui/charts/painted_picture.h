// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPixmap>
#include <QWidget>

#include "ui/charts/palette.h"
#include "ui/charts/picture.h"
#include "ui/charts/readable_picture.h"

namespace layshaft::ui {

/// A picture that is painted as a whole and is no chart, with something on it that goes with pointer and
/// keys. All but that is painted once and kept.
class PaintedPicture : public QWidget, public Picture, public ReadablePicture {
  Q_OBJECT
 public:
  explicit PaintedPicture(QWidget* parent = nullptr);

  void renderInto(QPainter& painter, const QRectF& target) override;

 signals:
  void menuRequested(const QPoint& globalPosition);

 protected:
  /// Size, type or colours are others, or what is shown; then all is painted anew.
  virtual void fit() = 0;
  virtual void paint(QPainter& painter) const = 0;
  virtual void paintMoving(QPainter& painter) const = 0;
  /// What is kept is out of date.
  void repaintAll();
  const ChartPalette& colours() const { return colours_; }

  QSize pictureSize() const override { return size(); }
  QColor pictureGround() const override { return colours_.background; }
  QColor pictureInk() const override { return colours_.text; }
  int pictureDpi() const override { return logicalDpiX(); }

  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  ChartPalette colours_;
  QPixmap kept_;
};

}  // namespace layshaft::ui
