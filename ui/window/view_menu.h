// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QActionGroup>
#include <QMenuBar>
#include <QObject>
#include <functional>
#include <vector>

namespace layshaft::ui {

class MainWindow;

/// What the program remembers of how it is to be shown: units, key figures, motion, light or dark. A choice
/// counts in all windows.
class ViewMenu : public QObject {
  Q_OBJECT
 public:
  /// `pages` turn the pages of the window.
  ViewMenu(QMenuBar& bar, MainWindow& window, const QList<QAction*>& pages);

  /// Ticks what is chosen by now.
  void refresh();

 private:
  QActionGroup* addChoices(QMenu& menu, const QStringList& names, const std::function<void(int)>& choose);
  void addFigures(QMenu& menu);
  void tickFigures();
  void pickFigure(std::size_t index, bool on);
  void arrangeFigures();
  void refuse(QAction& action, const QString& why);

  MainWindow& window_;
  QMenu* figuresMenu_ = nullptr;
  QActionGroup *units_, *appearance_;
  QAction* motion_;
  std::vector<QAction*> figures_;
};

}  // namespace layshaft::ui
