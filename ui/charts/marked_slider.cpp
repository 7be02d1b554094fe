// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/marked_slider.h"

#include <QPainter>
#include <QStyle>
#include <QStyleOptionSlider>

namespace layshaft::ui {
namespace {

constexpr int kMark = 6;  // px

}  // namespace

void MarkedSlider::setMarks(const std::vector<Mark>& marks) {
  if (marks_ == marks) return;
  marks_ = marks;
  update();
}

QSize MarkedSlider::sizeHint() const {
  return QSlider::sizeHint() + QSize(0, 2 * kMark);
}

QSize MarkedSlider::minimumSizeHint() const {
  return QSlider::minimumSizeHint() + QSize(0, 2 * kMark);
}

void MarkedSlider::paintEvent(QPaintEvent* event) {
  QSlider::paintEvent(event);
  QStyleOptionSlider option;
  initStyleOption(&option);
  const int handle = style()->pixelMetric(QStyle::PM_SliderLength, &option, this);
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  for (const Mark& mark : marks_) {
    if (mark.value < minimum() || mark.value > maximum()) continue;
    const double x = handle / 2.0 + QStyle::sliderPositionFromValue(minimum(), maximum(), mark.value,
                                                                    width() - handle, option.upsideDown);
    painter.setBrush(mark.colour);
    painter.drawPolygon(QPolygonF{QPointF(x, height() - 1.5 * kMark),
                                  QPointF(x - kMark / 1.5, height() - 1.0),
                                  QPointF(x + kMark / 1.5, height() - 1.0)});
  }
}

}  // namespace layshaft::ui
