// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/side_scroll.h"

#include <QEvent>
#include <QScrollBar>
#include <algorithm>

namespace layshaft::ui {

SideScroll::SideScroll(QWidget* side, int least, QWidget* parent) : QScrollArea(parent), least_(least) {
  setWidget(side);
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  fit();
}

bool SideScroll::eventFilter(QObject* watched, QEvent* event) {
  const bool done = QScrollArea::eventFilter(watched, event);
  // Another unit or larger type needs another width.
  if (watched == widget() && event->type() == QEvent::LayoutRequest) fit();
  return done;
}

void SideScroll::fit() {
  setFixedWidth(
      std::max(least_, widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width()));
}

}  // namespace layshaft::ui
