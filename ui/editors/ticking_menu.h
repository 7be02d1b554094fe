// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QKeyEvent>
#include <QMenu>
#include <QMouseEvent>

namespace layshaft::ui {

/// A menu of things that are ticked one after the other: it stays open on a tick.
class TickingMenu : public QMenu {
 public:
  using QMenu::QMenu;

 protected:
  void mouseReleaseEvent(QMouseEvent* event) override {
    if (!tick(actionAt(event->pos()))) QMenu::mouseReleaseEvent(event);
  }
  void keyPressEvent(QKeyEvent* event) override {
    const int key = event->key();
    const bool chooses = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space;
    if (!chooses || !tick(activeAction())) QMenu::keyPressEvent(event);
  }

 private:
  static bool tick(QAction* action) {
    if (!action || !action->isCheckable() || !action->isEnabled()) return false;
    action->trigger();
    return true;
  }
};

}  // namespace layshaft::ui
