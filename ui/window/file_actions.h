// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QList>
#include <QMenuBar>
#include <QObject>
#include <QUrl>

namespace layshaft::ui {

class ExportActions;
class MainWindow;

/// What a window does with files: the File menu, dropped files, and the question before work is given up.
class FileActions : public QObject {
  Q_OBJECT
 public:
  explicit FileActions(MainWindow& window);

  void addFileMenu(QMenuBar& bar);

  void openFile(const QString& file);
  /// Opens the file that was opened or saved last, if that is wanted at the start.
  void openLastFile();
  void openDropped(const QList<QUrl>& urls);
  /// Whether the document may be closed: asks if it was changed, and saves if that is wanted.
  bool mayDiscard();

  /// From now on says when the file is changed by another program, and when unsaved work cannot be kept safe.
  void watchOverUnsavedWork();

 private:
  void newBike();
  void open();
  bool save();
  bool saveAs();
  bool saveTo(const QString& file);
  void revert();
  bool mayRevert();  ///< asks
  void updateRevert();
  void rebuildRecent(QMenu* menu);

  MainWindow& window_;
  ExportActions* exports_;
  QAction* revert_ = nullptr;
  bool toldOfOther_ = false;  ///< that the file was changed by somebody else
};

/// A field keeps what is being typed until it is left, which neither a shortcut nor closing does.
void finishTyping(QWidget& window);

}  // namespace layshaft::ui
