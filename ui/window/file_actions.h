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
  void openDropped(const QList<QUrl>& urls);
  /// Whether the document may be closed: asks if it was changed, and saves if that is wanted.
  bool mayDiscard();

  /// From now on says when the file is changed by another program, and when unsaved work cannot be kept safe.
  void watchOverUnsavedWork();

 private:
  void newBike();
  void open();
  void finishTyping();
  bool save();
  bool saveAs();
  bool saveTo(const QString& file);
  void revert();
  void updateRevert();
  void rebuildRecent(QMenu* menu);

  MainWindow& window_;
  ExportActions* exports_;
  QAction* revert_ = nullptr;
  bool toldOfOther_ = false;  ///< that the file was changed by somebody else
};

/// Asks where to save; a name without one of the endings gets the first, and a file that would then be
/// replaced without the dialog having asked is asked about here. Empty if the user thinks better of it.
QString fileToSave(QWidget* parent, const QString& title, const QString& start, const QString& filter,
                   const QStringList& endings);

/// A name for a file from any text: no folder is meant by it, and nothing that a file system may refuse.
QString fileNameFrom(const QString& title);

}  // namespace layshaft::ui
