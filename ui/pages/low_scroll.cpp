// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/low_scroll.h"

#include <QEvent>
#include <QLayout>
#include <QScrollBar>
#include <algorithm>

namespace layshaft::ui {

LowScroll::LowScroll(QWidget* content, QWidget* parent) : QScrollArea(parent) {
  setWidget(content);
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::NoFocus);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  fit();
}

/// By hand, not by `widgetResizable`: that gives what holds wrapped words the height it would like to have,
/// and pictures would be scrolled where they can shrink.
void LowScroll::fit() {
  const QLayout* layout = widget()->layout();
  const int width = viewport()->width();
  const int least = layout && layout->hasHeightForWidth() ? layout->minimumHeightForWidth(width)
                                                          : widget()->minimumSizeHint().height();
  widget()->resize(width, std::max(least, viewport()->height()));
  setMinimumWidth(widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width());
}

void LowScroll::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  fit();
}

bool LowScroll::eventFilter(QObject* watched, QEvent* event) {
  const bool done = QScrollArea::eventFilter(watched, event);
  if (watched == widget() && event->type() == QEvent::LayoutRequest) fit();
  return done;
}

}  // namespace layshaft::ui
