// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/low_scroll.h"

#include <QScrollBar>

namespace layshaft::ui {

QScrollArea* scrolledWhereLow(QWidget* content) {
  auto* area = new QScrollArea;
  area->setWidget(content);
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setFocusPolicy(Qt::NoFocus);
  area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  area->setMinimumWidth(content->minimumSizeHint().width() + area->verticalScrollBar()->sizeHint().width());
  return area;
}

}  // namespace layshaft::ui
