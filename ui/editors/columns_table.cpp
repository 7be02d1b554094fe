// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/columns_table.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <optional>

namespace layshaft::ui {

ColumnsTable::ColumnsTable(const QStringList& titles, QWidget* parent)
    : QTableWidget(1, static_cast<int>(titles.size()), parent) {
  setHorizontalHeaderLabels(titles);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
  setTabKeyNavigation(false);
  connect(this, &QTableWidget::cellChanged, this, [this] {
    keepEmptyRow();
    emit edited();
  });
}

std::vector<QStringList> ColumnsTable::rows() const {
  std::vector<QStringList> result;
  for (int r = 0; r < rowCount(); ++r) {
    QStringList row;
    bool any = false;
    for (int c = 0; c < columnCount(); ++c) {
      const QTableWidgetItem* cell = item(r, c);
      row << (cell ? cell->text().trimmed() : QString());
      any = any || !row.back().isEmpty();
    }
    if (any) result.push_back(row);
  }
  return result;
}

void ColumnsTable::showRows(const std::vector<QStringList>& wanted) {
  if (wanted == rows()) return;
  const QSignalBlocker quiet(this);
  setRowCount(static_cast<int>(wanted.size()));
  for (std::size_t r = 0; r < wanted.size(); ++r)
    for (int c = 0; c < columnCount(); ++c)
      setItem(static_cast<int>(r), c, new QTableWidgetItem(wanted[r].value(c)));
  keepEmptyRow();
}

void ColumnsTable::pasteText(const QString& text) {
  auto cells = pastedCells(text);
  // A spreadsheet's heading comes along with its columns: a first row of words above rows of numbers.
  const auto hasNumber = [](const QStringList& row) {
    return std::any_of(row.begin(), row.end(),
                       [](const QString& cell) { return typedNumber(cell).has_value(); });
  };
  if (cells.size() > 1 && !hasNumber(cells[0]) && hasNumber(cells[1])) {
    emit titlesPasted(cells[0]);
    cells.erase(cells.begin());
  }
  if (cells.empty()) return;
  const int firstRow = std::max(currentRow(), 0), firstColumn = std::max(currentColumn(), 0);
  {
    const QSignalBlocker quiet(this);
    // Several rows pasted at the very start are the whole table, not its first part.
    if (firstRow == 0 && firstColumn == 0 && cells.size() > 1) setRowCount(0);
    setRowCount(std::max(rowCount(), firstRow + static_cast<int>(cells.size())));
    for (std::size_t r = 0; r < cells.size(); ++r)
      for (int c = 0; c < cells[r].size() && firstColumn + c < columnCount(); ++c)
        setItem(firstRow + static_cast<int>(r), firstColumn + c, new QTableWidgetItem(cells[r][c]));
    keepEmptyRow();
  }
  emit edited();
}

void ColumnsTable::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Paste)) return pasteText(QApplication::clipboard()->text());
  if (event->matches(QKeySequence::Delete) || event->key() == Qt::Key_Backspace) return clearSelection();
  QTableWidget::keyPressEvent(event);
}

void ColumnsTable::clearSelection() {
  {
    const QSignalBlocker quiet(this);
    for (QTableWidgetItem* cell : selectedItems()) cell->setText(QString());
    const auto kept = rows();
    setRowCount(0);
    showRows(kept);
    keepEmptyRow();
  }
  emit edited();
}

void ColumnsTable::keepEmptyRow() {
  bool lastIsEmpty = rowCount() > 0;
  for (int c = 0; c < columnCount() && lastIsEmpty; ++c) {
    const QTableWidgetItem* cell = item(rowCount() - 1, c);
    lastIsEmpty = !cell || cell->text().trimmed().isEmpty();
  }
  if (!lastIsEmpty) setRowCount(rowCount() + 1);
}

std::vector<QStringList> pastedCells(const QString& text) {
  static const QRegularExpression lineBreak(QStringLiteral("\r\n|\r|\n"));
  static const QRegularExpression blanks(QStringLiteral("\\s+"));
  static const QRegularExpression commaThenBlank(QStringLiteral(",\\s+|\\s+,"));
  std::vector<QStringList> rows;
  for (const QString& raw : text.split(lineBreak)) {
    const QString line = raw.trimmed();
    if (line.isEmpty()) continue;
    QStringList cells;
    if (raw.contains(QLatin1Char('\t')))
      cells = raw.split(QLatin1Char('\t'));
    else if (line.contains(QLatin1Char(';')))
      cells = line.split(QLatin1Char(';'));
    else if (line.contains(commaThenBlank))
      cells = line.split(commaThenBlank);
    else if (line.contains(blanks))
      cells = line.split(blanks);
    else
      cells = line.split(QLatin1Char(','));
    for (QString& cell : cells) cell = cell.trimmed();
    rows.push_back(cells);
  }
  return rows;
}

std::vector<std::optional<double>> columnNumbers(const std::vector<QString>& cells, double highest) {
  static const QRegularExpression thousands(QStringLiteral("^\\d{1,3}(,\\d{3})+$"));
  bool commas = false, decimal = false, tooHigh = false;
  for (const QString& cell : cells) {
    const QString text = cell.trimmed();
    if (!text.contains(QLatin1Char(',')) || text.contains(QLatin1Char('.'))) continue;
    commas = true;
    const bool grouped = thousands.match(text).hasMatch();
    decimal = decimal || !grouped;
    tooHigh = tooHigh || (grouped && QString(text).remove(QLatin1Char(',')).toDouble() > highest);
  }
  const bool comma = commas && (decimal || tooHigh || QLocale().decimalPoint() == QLatin1String(","));
  std::vector<std::optional<double>> numbers;
  for (const QString& cell : cells) {
    QString text = cell.trimmed();
    if (commas && !text.contains(QLatin1Char('.')))
      text.replace(QLatin1String(","), comma ? QLatin1String(".") : QLatin1String(""));
    bool ok = false;
    const double x = QLocale::c().toDouble(text, &ok);
    numbers.push_back(ok && std::isfinite(x) ? std::optional(x) : typedNumber(cell));
  }
  return numbers;
}

std::optional<double> typedNumber(const QString& text, double highest) {
  const QString plain = text.trimmed();
  bool ok = false;
  double x = QLocale().toDouble(plain, &ok);
  ok = ok && std::abs(x) <= highest;
  if (!ok) x = QLocale::c().toDouble(plain, &ok);
  ok = ok && std::abs(x) <= highest;
  if (!ok) x = QLocale::c().toDouble(QString(plain).replace(QLatin1Char(','), QLatin1Char('.')), &ok);
  if (!ok) x = QLocale().toDouble(plain, &ok);  // too high, but a number: to be refused as one
  return ok && std::isfinite(x) ? std::optional(x) : std::nullopt;
}

}  // namespace layshaft::ui
