// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>
#include <QObject>

namespace layshaft::ui {

/// Where a window stands: as it was left last, or of a usual size; with its frame inside the screen, also
/// where the screen that it stood on is gone.
class WindowPlace : public QObject {
  Q_OBJECT
 public:
  /// Gives the window its place; `another`: one is open already, and this one shall not hide it.
  WindowPlace(QMainWindow& window, bool another);

  void keep() const;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void fit();

  QMainWindow& window_;
  QSize given_;  ///< another size is somebody else's choice
};

}  // namespace layshaft::ui
