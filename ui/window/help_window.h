// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <QMainWindow>

namespace layshaft::ui {

/// The help that is built into the program, with the shortcuts that the window really has. Stays open beside
/// it.
class HelpWindow : public QDialog {
  Q_OBJECT
 public:
  explicit HelpWindow(QMainWindow& window);
};

/// Every action of the window that has a shortcut, as rows of a table in HTML: where it is, and its keys.
QString shortcutTable(const QMainWindow& window);

}  // namespace layshaft::ui
