// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMenu>
#include <QObject>
#include <QPageLayout>
#include <QPrinter>
#include <memory>

namespace layshaft::ui {

class MainWindow;
class Sheet;

/// The report of the bike in the window: on paper, looked at before, or as a file.
class PrintActions : public QObject {
  Q_OBJECT
 public:
  explicit PrintActions(MainWindow& window);

  void addTo(QMenu& menu);

 private:
  static QString reportWord();  ///< in the names of files
  void saveReport();
  void preview();
  void print();
  /// Puts a sheet on paper; a printer that cannot is told of.
  void print(const Sheet& sheet, QPrinter& printer);
  std::unique_ptr<QPrinter> makePrinter(const Sheet& sheet);

  MainWindow& window_;
  QPageLayout layout_;  ///< as it was chosen last; not valid before
};

}  // namespace layshaft::ui
