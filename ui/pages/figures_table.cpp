// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/figures_table.h"

#include <QHeaderView>
#include <algorithm>

namespace layshaft::ui {

FiguresTable::FiguresTable(const QString& name, int columns, QWidget* parent)
    : QTableWidget(0, columns, parent), widest_(static_cast<std::size_t>(columns), 0) {
  setAccessibleName(name);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setSelectionMode(QAbstractItemView::NoSelection);
  setFocusPolicy(Qt::TabFocus);
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 4);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  setTabKeyNavigation(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

void FiguresTable::show(const std::vector<QStringList>& rows) {
  setHorizontalHeaderLabels(rows.front());
  setRowCount(static_cast<int>(rows.size()) - 1);
  for (std::size_t r = 1; r < rows.size(); ++r)
    for (int c = 0; c < columnCount(); ++c) {
      const int line = static_cast<int>(r) - 1;
      const QString& text = rows[r][c];
      if (QTableWidgetItem* cell = item(line, c)) {
        if (cell->text() != text) cell->setText(text);
        continue;
      }
      auto* cell = new QTableWidgetItem(text);
      cell->setTextAlignment(c == 0 ? Qt::AlignLeft | Qt::AlignVCenter : Qt::AlignRight | Qt::AlignVCenter);
      setItem(line, c, cell);
    }
  fitColumns();
}

void FiguresTable::fitColumns() {
  int taken = 0;
  for (int c = 1; c < columnCount(); ++c) {
    const QTableWidgetItem* title = horizontalHeaderItem(c);
    int width = fontMetrics().horizontalAdvance(title ? title->text() : QString());
    for (int r = 0; r < rowCount(); ++r)
      if (item(r, c)) width = std::max(width, fontMetrics().horizontalAdvance(item(r, c)->text()));
    int& widest = widest_[static_cast<std::size_t>(c)];
    widest = std::max(widest, width + fontMetrics().averageCharWidth() * 2);
    setColumnWidth(c, widest);
    taken += widest;
  }
  setColumnWidth(0, std::max(viewport()->width() - taken, fontMetrics().averageCharWidth() * 10));
}

void FiguresTable::resizeEvent(QResizeEvent* event) {
  QTableWidget::resizeEvent(event);
  fitColumns();
}

}  // namespace layshaft::ui
