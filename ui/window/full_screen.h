// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QObject>

namespace layshaft::ui {

/// Full screen and back by a menu's action. Escape leads back only where the action led there: what the
/// window system made full screen is its own affair.
class FullScreen : public QObject {
  Q_OBJECT
 public:
  explicit FullScreen(QWidget& window);

  QAction* action() { return action_; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void turn(bool on);

  QWidget& window_;
  QAction* action_;
  bool entered_ = false;
};

}  // namespace layshaft::ui
