// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

namespace layshaft::ui {

/// One short hint per area of the window, dismissible for ever.
class Hints : public QFrame {
  Q_OBJECT
 public:
  explicit Hints(QWidget* parent = nullptr);
};

}  // namespace layshaft::ui
