// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMenu>
#include <QObject>

namespace layshaft::ui {

class MainWindow;

/// What of the page in view can be handed over: its picture and its numbers.
class ExportActions : public QObject {
  Q_OBJECT
 public:
  explicit ExportActions(MainWindow& window);

  /// The menu offers what the page in view has when it opens, and says why where it has nothing.
  void addTo(QMenu& menu);

 private:
  void copyPicture();
  void savePicture();
  void saveNumbers();
  void showNumbers();

  MainWindow& window_;
};

}  // namespace layshaft::ui
