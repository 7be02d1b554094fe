// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/export_actions.h"

#include <QDialog>
#include <QHeaderView>
#include <QTableWidget>
#include <QVBoxLayout>

#include "core/file.h"
#include "ui/document/file_name.h"
#include "ui/window/file_actions.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"

namespace layshaft::ui {
namespace {

void fill(QTableWidget& table, const std::vector<QStringList>& rows) {
  if (rows.empty()) return;
  table.setColumnCount(static_cast<int>(rows[0].size()));
  table.setRowCount(static_cast<int>(rows.size()) - 1);
  table.setHorizontalHeaderLabels(rows[0]);
  for (std::size_t r = 1; r < rows.size(); ++r)
    for (int c = 0; c < rows[r].size(); ++c) {
      auto* cell = new QTableWidgetItem(rows[r][c]);
      cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      table.setItem(static_cast<int>(r) - 1, c, cell);
    }
  table.resizeColumnsToContents();
}

}  // namespace

ExportActions::ExportActions(MainWindow& window) : QObject(&window), window_(window) {}

void ExportActions::addTo(QMenu& menu) {
  menu.addAction(tr("Copy &Picture"), this, &ExportActions::copyPicture);
  menu.addAction(tr("&Save Picture…"), this, &ExportActions::savePicture);
  menu.addAction(tr("Save &Data…"), this, &ExportActions::saveNumbers);
  menu.addAction(tr("Show Data as a &Table"), this, &ExportActions::showNumbers);
}

void ExportActions::copyPicture() {
  if (Picture* picture = window_.currentPicture()) picture->copyPicture();
}

void ExportActions::savePicture() {
  Picture* picture = window_.currentPicture();
  if (!picture) return;
  const QString file = fileToSave(&window_, tr("Save the Picture"),
                                  fileNameFrom(window_.document().title()) + QStringLiteral(".png"),
                                  tr("Pictures (*.png *.svg *.pdf)"),
                                  {QStringLiteral(".png"), QStringLiteral(".svg"), QStringLiteral(".pdf")});
  if (file.isEmpty()) return;
  if (const auto why = picture->savePicture(file)) warnOfFile(&window_, tr("Picture Not Saved"), file, *why);
}

void ExportActions::saveNumbers() {
  Page* page = window_.currentPage();
  if (!page) return;
  const QString file = fileToSave(&window_, tr("Save the Data"),
                                  fileNameFrom(window_.document().title()) + QStringLiteral(".csv"),
                                  tr("Comma-separated values (*.csv)"), {QStringLiteral(".csv")});
  if (file.isEmpty()) return;
  if (const auto problem = saveFile(pathOf(file), page->csv().toStdString()))
    warnOfFile(&window_, tr("Data Not Saved"), file, *problem);
}

void ExportActions::showNumbers() {
  Page* page = window_.currentPage();
  if (!page) return;
  auto* dialog = new QDialog(&window_);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(tr("Chart Data"));
  auto* table = new QTableWidget;
  table->setAccessibleName(dialog->windowTitle());
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table->verticalHeader()->hide();
  auto* column = new QVBoxLayout(dialog);
  column->addWidget(table);
  const auto refill = [table, page] { fill(*table, page->numbers()); };
  refill();
  connect(&window_.planner(), &Planner::planned, dialog, refill);
  dialog->resize(820, 320);
  dialog->show();
}

}  // namespace layshaft::ui
