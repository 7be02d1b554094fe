// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>

#include "ui/document/bike_folder.h"
#include "ui/window/bikes_model.h"

namespace layshaft::ui {

class MainWindow;

/// The bikes of a folder, such as a workshop's customers': found, opened, and taken as a pattern for another.
class BikesWindow : public QDialog {
  Q_OBJECT
 public:
  explicit BikesWindow(MainWindow& window);
  ~BikesWindow() override;

  /// Shows the window's list, which it makes the first time.
  static void open(MainWindow& window);

 protected:
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QLayout* makeTop();
  void makeTable();
  QLayout* makeFoot();
  void chooseFolder();
  void useFolder(const QString& folder);
  void keepPlace();
  void say();
  QString currentFile() const;
  void openCurrent();
  void newFromCurrent();

  MainWindow& window_;
  BikeFolder folder_;
  BikesModel model_{folder_};
  BikesFilter shown_;
  QLabel *folderName_, *status_;
  QLineEdit* search_;
  QTableView* table_;
  QPushButton *open_, *newFrom_;
  QString place_;  ///< the file that the cursor stands on
};

}  // namespace layshaft::ui
