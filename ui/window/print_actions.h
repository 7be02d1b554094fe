// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMenu>
#include <QObject>
#include <QPageLayout>
#include <QPageSize>
#include <QPrinter>
#include <memory>
#include <optional>

#include "ui/sheet/sheets.h"

namespace layshaft::ui {

class MainWindow;
/// What the sheets of the bike in a window are made of, as it is now, with the shop's head.
SheetInput sheetInput(MainWindow& window);

/// The paper that is usual where the user lives.
QPageSize usualPaper();

/// The sheets of the bike in the window: on paper, looked at before, or as a file.
class PrintActions : public QObject {
  Q_OBJECT
 public:
  explicit PrintActions(MainWindow& window);

  void addTo(QMenu& menu);
  /// Asks for a printer and puts the sheet of that kind on that paper; the one used last, or the usual, where
  /// none is named.
  void print(SheetKind kind, const SheetInput& input, const std::optional<QPageSize>& paper = std::nullopt);

 private:
  void saveReport();
  void preview();
  void showSheets();
  /// Puts a sheet on paper; a printer that cannot is told of.
  void print(const Sheet& sheet, QPrinter& printer);
  std::unique_ptr<QPrinter> makePrinter(SheetKind kind);

  MainWindow& window_;
  QPageLayout layout_;  ///< as it was chosen last; not valid before
};

}  // namespace layshaft::ui
