// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/painted_picture.h"

#include <QContextMenuEvent>
#include <QPainter>

namespace layshaft::ui {

PaintedPicture::PaintedPicture(QWidget* parent) : QWidget(parent), colours_(palette()) {
  exposeReadablePictures();
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void PaintedPicture::repaintAll() {
  kept_ = {};
  update();
}

void PaintedPicture::renderInto(QPainter& painter, const QRectF& target) {
  paintScaled(painter, target, size(), [this](QPainter& scaled) { paint(scaled); });
}

void PaintedPicture::paintEvent(QPaintEvent*) {
  if (kept_.isNull()) {
    kept_ = QPixmap(size() * devicePixelRatioF());
    kept_.setDevicePixelRatio(devicePixelRatioF());
    QPainter painter(&kept_);
    paint(painter);
  }
  QPainter painter(this);
  painter.drawPixmap(0, 0, kept_);
  paintMoving(painter);
  if (!hasFocus()) return;
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colours_.focus, 2));
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

void PaintedPicture::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fit();
  repaintAll();
}

void PaintedPicture::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::PaletteChange && event->type() != QEvent::FontChange) return;
  colours_ = ChartPalette(palette());
  updateGeometry();
  fit();
  repaintAll();
}

void PaintedPicture::contextMenuEvent(QContextMenuEvent* event) {
  emit menuRequested(event->globalPos());
}

void PaintedPicture::focusInEvent(QFocusEvent* event) {
  QWidget::focusInEvent(event);
  update();
}

void PaintedPicture::focusOutEvent(QFocusEvent* event) {
  QWidget::focusOutEvent(event);
  update();
}

}  // namespace layshaft::ui
