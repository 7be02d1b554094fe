// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/content_scroll.h"

#include <QApplication>
#include <QEvent>
#include <QScrollBar>
#include <algorithm>

#include "ui/editors/whole_in_view.h"

namespace layshaft::ui {

ContentScroll::ContentScroll(QWidget* parent) : QScrollArea(parent), column_(nullptr) {
  auto* content = new QWidget;
  column_ = new QVBoxLayout(content);
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(0);
  column_->setSizeConstraint(QLayout::SetNoConstraint);
  setWidget(content);
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::NoFocus);
  content->installEventFilter(this);
  connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
    if (!now || !widget()->isAncestorOf(now)) return;
    // What scrolls inside of this first. Not for what is as large as the view itself: bringing that in would
    // only move everything.
    for (QWidget* outer = now->parentWidget(); outer && outer != window(); outer = outer->parentWidget())
      if (auto* area = qobject_cast<QScrollArea*>(outer);
          area && area->widget() && now->height() <= area->viewport()->height())
        showWhole(*area, *now);
  });
}

void ContentScroll::showTop(const QWidget& part) {
  const int top = part.mapTo(widget(), QPoint()).y(), from = verticalScrollBar()->value();
  if (top < from || top + part.height() > from + viewport()->height()) verticalScrollBar()->setValue(top);
}

QSize ContentScroll::minimumSizeHint() const {
  return {fontMetrics().averageCharWidth() * 40, fontMetrics().height() * 6};
}

QSize ContentScroll::sizeHint() const {
  return widget()->sizeHint();
}

int ContentScroll::neededHeight(int width) const {
  int height = 0;
  for (int i = 0; i < column_->count(); ++i) {
    const QLayoutItem& item = *column_->itemAt(i);
    if (item.isEmpty()) continue;
    if (column_->stretch(i) > 0)
      height += item.minimumSize().height();
    else
      height += item.hasHeightForWidth() ? item.heightForWidth(width) : item.sizeHint().height();
  }
  return height;
}

void ContentScroll::fit() {
  const QSize room = maximumViewportSize();
  const int least = column_->minimumSize().width();
  const bool sideways = least > room.width();
  const int high = room.height() - (sideways ? horizontalScrollBar()->sizeHint().height() : 0);
  int width = std::max(room.width(), least), needed = neededHeight(width);
  if (needed > high) {
    width = std::max(room.width() - verticalScrollBar()->sizeHint().width(), least);
    needed = neededHeight(width);
  }
  const QSize size(width, std::max(needed, high));
  if (widget()->size() != size) widget()->resize(size);
}

void ContentScroll::resizeEvent(QResizeEvent* event) {
  fit();
  QScrollArea::resizeEvent(event);
}

bool ContentScroll::eventFilter(QObject* watched, QEvent* event) {
  const bool done = QScrollArea::eventFilter(watched, event);
  if (watched == widget() && event->type() == QEvent::LayoutRequest) fit();
  return done;
}

}  // namespace layshaft::ui
