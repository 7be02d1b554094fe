// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/flow_layout.h"

#include <algorithm>

namespace layshaft::ui {

FlowLayout::~FlowLayout() {
  for (QLayoutItem* item : items_) delete item;
}

QLayoutItem* FlowLayout::itemAt(int index) const {
  return index >= 0 && index < count() ? items_[static_cast<std::size_t>(index)] : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int index) {
  QLayoutItem* item = itemAt(index);
  if (item) items_.erase(items_.begin() + index);
  return item;
}

QSize FlowLayout::minimumSize() const {
  QSize size;
  for (const QLayoutItem* item : items_) size = size.expandedTo(item->minimumSize());
  return size.grownBy(contentsMargins());
}

int FlowLayout::rowWidth() const {
  int width = contentsMargins().left() + contentsMargins().right();
  for (const QLayoutItem* item : items_)
    width += item->sizeHint().width() + (item == items_.front() ? 0 : spacing());
  return width;
}

void FlowLayout::setGeometry(const QRect& rect) {
  QLayout::setGeometry(rect);
  place(rect, true);
}

int FlowLayout::place(const QRect& rect, bool move) const {
  const QRect area = rect.marginsRemoved(contentsMargins());
  int y = area.top();
  for (std::size_t first = 0; first < items_.size();) {
    int width = 0, height = 0;
    std::size_t end = first;
    while (end < items_.size()) {
      const QSize size = items_[end]->sizeHint();
      const int widened = width + (end > first ? spacing() : 0) + size.width();
      if (end > first && widened > area.width()) break;
      width = widened;
      height = std::max(height, size.height());
      ++end;
    }
    if (move) {
      const int gaps = static_cast<int>(end - first) - 1;
      const int extra = gaps > 0 ? std::clamp((area.width() - width) / gaps, 0, 3 * spacing()) : 0;
      int x = area.left();
      for (std::size_t i = first; i < end; ++i) {
        items_[i]->setGeometry(QRect(x, y, items_[i]->sizeHint().width(), height));
        x += items_[i]->sizeHint().width() + spacing() + extra;
      }
    }
    y += height + spacing();
    first = end;
  }
  return y - spacing() - rect.top() + contentsMargins().bottom();
}

}  // namespace layshaft::ui
