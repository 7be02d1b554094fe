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

namespace {

/// Lines that are not empty, counted without taking the text apart; stops at `most`.
qsizetype linesIn(const QString& text, qsizetype most) {
  qsizetype lines = 0;
  bool empty = true;
  for (const QChar c : text) {
    if (c == QLatin1Char('\n') || c == QLatin1Char('\r')) {
      empty = true;
    } else if (empty && !c.isSpace()) {
      empty = false;
      if (++lines >= most) break;
    }
  }
  return lines;
}

}  // namespace

ColumnsTable::ColumnsTable(const QStringList& titles, int mostRows, QWidget* parent)
    : QTableWidget(1, static_cast<int>(titles.size()), parent), mostRows_(mostRows) {
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
  constexpr qsizetype kLongestRow = 1000;  // characters
  const auto refuse = [this] {
    emit refused(
        tr("That is too much to paste: at most %n rows fit here. Nothing was changed.", nullptr, mostRows_));
  };
  const qsizetype most = mostRows_ + 1;  // with a heading
  if (linesIn(text, most + 1) > most || text.size() > most * kLongestRow) return refuse();
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
  const bool wholeTable = firstRow == 0 && firstColumn == 0 && cells.size() > 1;
  if ((wholeTable ? 0 : firstRow) + static_cast<int>(cells.size()) > mostRows_) return refuse();
  {
    const QSignalBlocker quiet(this);
    // Several rows pasted at the very start are the whole table, not its first part.
    if (wholeTable) setRowCount(0);
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

namespace {

/// What a sign does in a column: nothing, marks decimals, or stands before thousands.
enum class SignRole { None, Decimal, Thousands };

/// Settled for the whole column: a sign that groups in every cell, in none above `highest`, may stand before
/// thousands; it does if the desktop does not use it for decimals, the point only if the desktop groups by
/// it.
SignRole roleOf(QChar sign, QChar other, const std::vector<QString>& cells, double highest) {
  const QString escaped = QRegularExpression::escape(QString(sign));
  const QRegularExpression thousands(QStringLiteral("^[1-9]\\d{0,2}(%1\\d{3})+$").arg(escaped));
  bool seen = false, decimal = false;
  for (const QString& cell : cells) {
    const QString text = cell.trimmed();
    if (!text.contains(sign) || text.contains(other)) continue;
    seen = true;
    decimal = decimal || !thousands.match(text).hasMatch() || QString(text).remove(sign).toDouble() > highest;
  }
  if (!seen) return SignRole::None;
  const bool grouping = sign == QLatin1Char('.') ? QLocale().groupSeparator() == QString(sign)
                                                 : QLocale().decimalPoint() != QString(sign);
  return decimal || !grouping ? SignRole::Decimal : SignRole::Thousands;
}

}  // namespace

std::vector<std::optional<double>> columnNumbers(const std::vector<QString>& cells, double highest) {
  constexpr QLatin1Char kComma(','), kPoint('.');
  const SignRole comma = roleOf(kComma, kPoint, cells, highest);
  const SignRole point = roleOf(kPoint, kComma, cells, highest);
  std::vector<std::optional<double>> numbers;
  for (const QString& cell : cells) {
    QString text = cell.trimmed();
    if (!text.contains(kPoint) && comma == SignRole::Decimal)
      text.replace(kComma, kPoint);
    else if (!text.contains(kPoint) && comma == SignRole::Thousands)
      text.remove(kComma);
    else if (!text.contains(kComma) && point == SignRole::Thousands)
      text.remove(kPoint);
    bool ok = false;
    const double x = QLocale::c().toDouble(text, &ok);
    numbers.push_back(ok && std::isfinite(x) ? std::optional(x) : typedNumber(cell, highest));
  }
  return numbers;
}

std::optional<double> typedNumber(const QString& text, double highest) {
  // Blanks before three digits group them, whichever kind of blank it is.
  static const QRegularExpression grouping(
      QStringLiteral("(?<=\\d)[ \\x{a0}\\x{2009}\\x{202f}](?=\\d{3}(?!\\d))"));
  const QString plain = text.trimmed().remove(grouping);
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
