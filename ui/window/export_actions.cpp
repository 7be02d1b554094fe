// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/export_actions.h"

#include <QDialog>
#include <QHeaderView>
#include <QTableWidget>
#include <QVBoxLayout>

#include "ui/document/save_bytes.h"
#include "ui/window/main_window.h"
#include "ui/window/save_dialog.h"

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
  const auto icon = [](const char* name) { return QIcon::fromTheme(QLatin1String(name)); };
  QList<QAction*> ofPicture, ofData;
  ofPicture << menu.addAction(tr("Copy &Picture"), this, &ExportActions::copyPicture)
            << menu.addAction(icon("document-save-as"), tr("&Save Picture…"), this,
                              &ExportActions::savePicture);
  ofData << menu.addAction(icon("document-save-as"), tr("Save &Data…"), this, &ExportActions::saveNumbers)
         << menu.addAction(tr("Show Data as a &Table"), this, &ExportActions::showNumbers);
  ofPicture.front()->setIcon(icon("edit-copy"));
  menu.setToolTipsVisible(true);
  const auto offer = [this, ofPicture, ofData] {
    const Page* page = window_.currentPage();
    const bool picture = window_.currentPicture(), data = page && !page->numbers().empty();
    for (QAction* action : ofPicture) {
      action->setEnabled(picture);
      action->setToolTip(picture ? QString() : tr("This page has no picture; its data can be saved."));
    }
    for (QAction* action : ofData) {
      action->setEnabled(data);
      action->setToolTip(data ? QString() : tr("This page has no data yet."));
    }
  };
  connect(&menu, &QMenu::aboutToShow, this, offer);
}

void ExportActions::copyPicture() {
  Picture* picture = window_.currentPicture();
  if (!picture) return;
  picture->copyPicture();
  window_.say(tr("Copied the picture of the page %1.").arg(window_.currentPageTitle()));
}

void ExportActions::savePicture() {
  Picture* picture = window_.currentPicture();
  if (!picture) return;
  saveExport(window_,
             {.word = QStringLiteral("picture"),
              .title = tr("Save the Picture"),
              .failure = tr("Picture Not Saved"),
              .of = window_.currentPageName(),
              .kinds = {{tr("PNG picture"), QStringLiteral(".png")},
                        {tr("SVG drawing"), QStringLiteral(".svg")},
                        {tr("PDF page"), QStringLiteral(".pdf")}}},
             [picture](const QString& file) { return picture->savePicture(file); });
}

void ExportActions::saveNumbers() {
  Page* page = window_.currentPage();
  if (!page) return;
  saveExport(window_,
             {.word = QStringLiteral("data"),
              .title = tr("Save the Data"),
              .failure = tr("Data Not Saved"),
              .of = window_.currentPageName(),
              .kinds = {{tr("Comma-separated values"), QStringLiteral(".csv")}}},
             [page](const QString& file) { return saveBytes(file, page->csv().toUtf8()); });
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
