// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/figures_table.h"

#include <QHeaderView>
#include <QScrollBar>
#include <QStyle>
#include <algorithm>
#include <cstdlib>

#include "ui/charts/contrast.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {

namespace {

constexpr int kCellMargins = 8;          // px, both sides of a text
constexpr int kMostNameCharacters = 18;  // of a column: a pin may have a long name

/// A long title on two lines, broken at the blank nearest to its middle.
QString onTwoLines(QString title) {
  constexpr qsizetype kLong = 12;
  if (title.size() <= kLong) return title;
  qsizetype best = -1;
  for (qsizetype at = title.indexOf(QLatin1Char(' ')); at >= 0; at = title.indexOf(QLatin1Char(' '), at + 1))
    if (best < 0 || std::abs(2 * at - title.size()) < std::abs(2 * best - title.size())) best = at;
  if (best >= 0) title[best] = QLatin1Char('\n');
  return title;
}

}  // namespace

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
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
}

void FiguresTable::show(const std::vector<QStringList>& rows) {
  QStringList titles;
  for (const QString& title : rows.front()) titles << onTwoLines(title);
  if (titles.size() != columnCount()) {
    setColumnCount(static_cast<int>(titles.size()));
    widest_.assign(static_cast<std::size_t>(titles.size()), 0);
  }
  setHorizontalHeaderLabels(titles);
  for (int c = 1; c < columnCount(); ++c) horizontalHeaderItem(c)->setToolTip(asMarkup(rows.front()[c]));
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

void FiguresTable::letChoose() {
  setSelectionMode(QAbstractItemView::SingleSelection);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  horizontalHeader()->setHighlightSections(false);
}

void FiguresTable::tick(const std::vector<bool>& rows) {
  for (int r = 0; r < rowCount(); ++r) {
    const auto row = static_cast<std::size_t>(r);
    item(r, 0)->setData(Qt::CheckStateRole,
                        row < rows.size() ? QVariant(rows[row] ? Qt::Checked : Qt::Unchecked) : QVariant());
  }
  fitColumns();
}

void FiguresTable::fade(bool faded) {
  setPalette(QPalette());
  if (!faded) return;
  QPalette grey = palette();
  grey.setColor(QPalette::Text, mutedText(grey.color(QPalette::Text), {grey.color(QPalette::Base)}));
  setPalette(grey);
}

void FiguresTable::fitColumns() {
  int taken = 0;
  for (int c = 1; c < columnCount(); ++c) {
    const QTableWidgetItem* title = horizontalHeaderItem(c);
    int width = 0;
    if (title)
      for (const QString& line : title->text().split(QLatin1Char('\n')))
        width = std::max(width, fontMetrics().horizontalAdvance(line));
    for (int r = 0; r < rowCount(); ++r)
      if (item(r, c)) width = std::max(width, fontMetrics().horizontalAdvance(item(r, c)->text()));
    width = std::min(width, fontMetrics().averageCharWidth() * kMostNameCharacters);
    int& widest = widest_[static_cast<std::size_t>(c)];
    widest = std::max(widest, width + fontMetrics().averageCharWidth() * 2);
    setColumnWidth(c, widest);
    taken += widest;
  }
  setColumnWidth(0, std::max(viewport()->width() - taken, fontMetrics().averageCharWidth() * 10));
  // A name that is too long for its column stands on two lines.
  const int oneLine = verticalHeader()->defaultSectionSize();
  for (int r = 0; r < rowCount(); ++r) {
    const bool ticked = item(r, 0) && item(r, 0)->data(Qt::CheckStateRole).isValid();
    const int box = ticked ? style()->pixelMetric(QStyle::PM_IndicatorWidth) + kCellMargins : 0;
    const bool tooLong =
        item(r, 0) &&
        fontMetrics().horizontalAdvance(item(r, 0)->text()) + kCellMargins + box > columnWidth(0);
    setRowHeight(r, tooLong ? oneLine + fontMetrics().lineSpacing() : oneLine);
  }
  constexpr int kSpare = 4;  // px; so that nothing is cut
  if (!whole_) return;
  const bool wider = horizontalHeader()->length() > viewport()->width();
  setFixedHeight(verticalHeader()->length() + horizontalHeader()->sizeHint().height() + kSpare +
                 (wider ? horizontalScrollBar()->sizeHint().height() : 0));
}

void FiguresTable::resizeEvent(QResizeEvent* event) {
  QTableWidget::resizeEvent(event);
  fitColumns();
}

}  // namespace layshaft::ui
