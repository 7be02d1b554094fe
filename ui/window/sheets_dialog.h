// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <QPrinter>
#include <memory>

#include "ui/sheet/sheets.h"

class QComboBox;
class QLabel;
class QPrintPreviewWidget;
class QPushButton;

namespace layshaft::ui {

class MainWindow;
class PrintActions;

/// Shows the sheets of the bike in the window as they will be on paper; they are printed, saved or copied
/// from here.
class SheetsDialog : public QDialog {
  Q_OBJECT
 public:
  SheetsDialog(MainWindow& window, PrintActions& printing);

 private:
  SheetKind kind() const;
  BlockSheet sheet() const { return makeSheet(kind(), input_); }
  QPageSize paper() const;
  void refresh();
  void print();
  void save();
  void copyText();
  void editShop();

  MainWindow& window_;
  PrintActions& printing_;
  SheetInput input_;
  std::unique_ptr<QPrinter> printer_;
  QComboBox* kinds_;
  QComboBox* papers_;
  QPrintPreviewWidget* preview_;
  QPushButton* copy_;
  QLabel* message_;
};

}  // namespace layshaft::ui
