// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/window_place.h"

#include <QEvent>
#include <QScreen>
#include <QTimer>
#include <algorithm>

#include "ui/document/preferences.h"

namespace layshaft::ui {
namespace {

constexpr QSize kUsual(1280, 800);
constexpr int kStep = 24;  // px, between two windows

}  // namespace

WindowPlace::WindowPlace(QMainWindow& window, bool another) : QObject(&window), window_(window) {
  if (window.restoreGeometry(preferences::windowGeometry())) {
    // A program does not start without its frame: who forgot how it came there could not get out.
    window.setWindowState(window.windowState() & ~(Qt::WindowFullScreen | Qt::WindowMinimized));
    if (another) {
      window.setWindowState(window.windowState() & ~Qt::WindowMaximized);
      window.move(window.pos() + QPoint(kStep, kStep));
    }
  } else {
    window.resize(kUsual.boundedTo(window.screen()->availableSize()));
  }
  given_ = window.size();
  window.installEventFilter(this);
}

void WindowPlace::keep() const {
  preferences::setWindowGeometry(window_.saveGeometry());
}

bool WindowPlace::eventFilter(QObject* watched, QEvent* event) {
  if (watched == &window_ && event->type() == QEvent::Show && !event->spontaneous()) {
    // The window system gives the frame some time after the window is there.
    constexpr int kFrameMs = 150, kSlowFrameMs = 700;
    for (const int ms : {0, kFrameMs, kSlowFrameMs}) QTimer::singleShot(ms, this, &WindowPlace::fit);
  }
  return QObject::eventFilter(watched, event);
}

void WindowPlace::fit() {
  if (window_.isMaximized() || window_.isFullScreen() || window_.isMinimized()) return;
  if (window_.size() != given_) return;
  const QRect room = window_.screen()->availableGeometry(), frame = window_.frameGeometry();
  const QSize border = frame.size() - window_.size();
  given_ = given_.boundedTo(room.size() - border).expandedTo(window_.minimumSizeHint());
  if (given_ != window_.size()) window_.resize(given_);
  const QSize whole = given_ + border;
  const QPoint at(std::max(std::min(frame.left(), room.right() + 1 - whole.width()), room.left()),
                  std::max(std::min(frame.top(), room.bottom() + 1 - whole.height()), room.top()));
  if (at != frame.topLeft()) window_.move(at);
}

}  // namespace layshaft::ui
