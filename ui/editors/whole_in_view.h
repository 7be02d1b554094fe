// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

namespace layshaft::ui {

/// Scrolls until all of a widget inside is in view; of its own the area is content with the text cursor.
inline void showWhole(QScrollArea& area, const QWidget& inside) {
  constexpr int kAir = 8;  // px
  const QPoint middle = inside.mapTo(area.widget(), inside.rect().center());
  area.ensureVisible(middle.x(), middle.y(), inside.width() / 2 + kAir, inside.height() / 2 + kAir);
}

}  // namespace layshaft::ui
