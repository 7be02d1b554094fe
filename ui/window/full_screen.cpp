// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/full_screen.h"

#include <QIcon>
#include <QKeyEvent>
#include <QWidget>

namespace layshaft::ui {

FullScreen::FullScreen(QWidget& window)
    : QObject(&window), window_(window), action_(new QAction(tr("&Full Screen"), this)) {
  action_->setCheckable(true);
  action_->setShortcut(QKeySequence(Qt::Key_F11));
  action_->setIcon(QIcon::fromTheme(QStringLiteral("view-fullscreen")));
  connect(action_, &QAction::triggered, this, &FullScreen::turn);
  window.installEventFilter(this);
}

void FullScreen::turn(bool on) {
  entered_ = on;
  // Maximised stays maximised for the way back.
  window_.setWindowState(window_.windowState().setFlag(Qt::WindowFullScreen, on));
}

bool FullScreen::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::WindowStateChange) {
    action_->setChecked(window_.isFullScreen());
    if (!window_.isFullScreen()) entered_ = false;
  } else if (event->type() == QEvent::KeyPress && entered_ &&
             static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    turn(false);
    return true;
  }
  return QObject::eventFilter(watched, event);
}

}  // namespace layshaft::ui
