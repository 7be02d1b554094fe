// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/sideways_scroll.h"

#include <QEvent>
#include <QResizeEvent>
#include <QScrollBar>

namespace layshaft::ui {

SidewaysScroll::SidewaysScroll(QWidget* held, QWidget* parent) : QScrollArea(parent) {
  setWidget(held);
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::NoFocus);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

QSize SidewaysScroll::minimumSizeHint() const {
  constexpr int kLeastCharacters = 40;
  const QSize least = widget()->minimumSizeHint().expandedTo(widget()->minimumSize());
  const int bar = least.width() > width() ? horizontalScrollBar()->sizeHint().height() : 0;
  return {fontMetrics().averageCharWidth() * kLeastCharacters, widget()->minimumHeight() + bar};
}

QSize SidewaysScroll::sizeHint() const {
  return widget()->sizeHint();
}

void SidewaysScroll::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) updateGeometry();
}

bool SidewaysScroll::eventFilter(QObject* watched, QEvent* event) {
  const bool done = QScrollArea::eventFilter(watched, event);
  if (watched == widget() && event->type() == QEvent::LayoutRequest) updateGeometry();
  return done;
}

}  // namespace layshaft::ui
