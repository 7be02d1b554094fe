// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/columns_table.h"

#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>
#include <QMenu>
#include <QMimeData>
#include <QRegularExpression>
#include <QStyledItemDelegate>
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

/// How many rows a key goes down from the cell that is being typed in; nothing if the key belongs to the
/// text.
std::optional<int> rowsFor(const QKeyEvent& key) {
  const auto modifiers = key.modifiers() & ~Qt::KeypadModifier;
  const bool enter = key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
  if (enter && modifiers == Qt::ShiftModifier) return -1;
  if (modifiers != Qt::NoModifier) return std::nullopt;
  if (enter || key.key() == Qt::Key_Down) return 1;
  if (key.key() == Qt::Key_Up) return -1;
  return std::nullopt;
}

/// Ends the typing in a cell with the keys that leave it.
class CellTyping : public QStyledItemDelegate {
 public:
  explicit CellTyping(ColumnsTable& table) : QStyledItemDelegate(&table), table_(table) {}

  bool eventFilter(QObject* object, QEvent* event) override {
    auto* editor = qobject_cast<QWidget*>(object);
    const auto rows =
        event->type() == QEvent::KeyPress ? rowsFor(static_cast<QKeyEvent&>(*event)) : std::nullopt;
    if (!editor || !rows) return QStyledItemDelegate::eventFilter(object, event);
    emit commitData(editor);
    emit closeEditor(editor, NoHint);
    table_.step(*rows);
    return true;
  }

 private:
  ColumnsTable& table_;
};

bool hasNumber(const QStringList& row) {
  return std::any_of(row.begin(), row.end(),
                     [](const QString& cell) { return typedNumber(cell).has_value(); });
}

constexpr qsizetype kMostTitleRows = 3;  // a name, its unit, and one to spare

/// Takes the rows of words above rows of numbers away, as they come along with a spreadsheet's columns, and
/// returns a title for each column, the first of the table's column `firstColumn`; empty if there are none.
QStringList takeTitles(std::vector<QStringList>& cells, int firstColumn) {
  const auto first = std::find_if(cells.begin(), cells.end(), hasNumber);
  if (first == cells.end() || first - cells.begin() > kMostTitleRows) return {};
  QStringList titles;
  for (auto row = cells.begin(); row != first; ++row)
    for (int c = 0; c < row->size(); ++c) {
      while (titles.size() <= firstColumn + c) titles << QString();
      titles[firstColumn + c] = (titles[firstColumn + c] + QLatin1Char(' ') + (*row)[c]).trimmed();
    }
  cells.erase(cells.begin(), first);
  return titles;
}

}  // namespace

ColumnsTable::ColumnsTable(const QStringList& titles, int mostRows, QWidget* parent)
    : QTableWidget(1, static_cast<int>(titles.size()), parent), mostRows_(mostRows) {
  setHorizontalHeaderLabels(titles);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
  setTabKeyNavigation(false);
  setItemDelegate(new CellTyping(*this));
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
  const qsizetype most = mostRows_ + kMostTitleRows;
  if (linesIn(text, most + 1) > most || text.size() > most * kLongestRow) return refuse();
  int firstRow = std::max(currentRow(), 0), firstColumn = std::max(currentColumn(), 0);
  if (const auto selected = selectedIndexes(); selected.size() > 1)
    for (const QModelIndex& cell : selected) {
      firstRow = std::min(firstRow, cell.row());
      firstColumn = std::min(firstColumn, cell.column());
    }
  const PastedColumns pastedColumns = pastedBy(text, firstColumn);
  const auto& cells = pastedColumns.rows;
  firstColumn = pastedColumns.firstColumn;
  if (cells.empty()) return;
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
  emit pasted();
  emit edited();
}

PastedColumns ColumnsTable::pastedBy(const QString& text, int firstColumn) {
  if (arrange_) return arrange_(text, firstColumn);
  auto cells = pastedCells(text);
  if (const QStringList titles = takeTitles(cells, firstColumn); !titles.isEmpty()) emit titlesPasted(titles);
  return {cells, firstColumn};
}

QString ColumnsTable::textAt(int row, int column) const {
  const QTableWidgetItem* cell = item(row, column);
  return cell ? cell->text().simplified() : QString();
}

QString ColumnsTable::copiedText() const {
  const QModelIndexList selected = selectedIndexes();
  if (selected.isEmpty()) return textAt(currentRow(), currentColumn());
  int top = rowCount(), bottom = -1, left = columnCount(), right = -1;
  for (const QModelIndex& cell : selected) {
    left = std::min(left, cell.column());
    right = std::max(right, cell.column());
    top = std::min(top, cell.row());
    // The empty row that waits to be typed into is none of the table's.
    if (cell.row() < rowCount() - 1) bottom = std::max(bottom, cell.row());
  }
  if (selected.size() == 1) return textAt(top, left);
  const bool whole = left == 0 && right == columnCount() - 1 && top == 0 && bottom == rowCount() - 2 &&
                     selected.size() >= static_cast<qsizetype>(rowCount() - 1) * columnCount();
  QString text;
  const auto add = [&](const QStringList& row) { text += row.join(QLatin1Char('\t')) + QLatin1Char('\n'); };
  if (whole) {
    QStringList titles;
    for (int c = left; c <= right; ++c) titles << horizontalHeaderItem(c)->text();
    add(titles);
  }
  for (int r = top; r <= bottom; ++r) {
    QStringList row;
    for (int c = left; c <= right; ++c)
      row << (selectionModel()->isSelected(model()->index(r, c)) ? textAt(r, c) : QString());
    add(row);
  }
  return text;
}

void ColumnsTable::copy() const {
  QApplication::clipboard()->setText(copiedText());
}

void ColumnsTable::step(int rows) {
  const int row = std::clamp(std::max(currentRow(), 0) + rows, 0, rowCount() - 1);
  // Not as a key with Shift would select.
  setCurrentCell(row, std::max(currentColumn(), 0), QItemSelectionModel::ClearAndSelect);
}

bool ColumnsTable::event(QEvent* event) {
  // Whatever menus offer under these keys, here they are the table's.
  if (event->type() == QEvent::ShortcutOverride) {
    const auto& key = static_cast<QKeyEvent&>(*event);
    for (const auto own : {QKeySequence::SelectAll, QKeySequence::Copy, QKeySequence::Cut,
                           QKeySequence::Paste, QKeySequence::Delete})
      if (key.matches(own)) {
        event->accept();
        return true;
      }
  }
  return QTableWidget::event(event);
}

void ColumnsTable::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::SelectAll)) return selectAll();
  if (event->matches(QKeySequence::Copy)) return copy();
  if (event->matches(QKeySequence::Cut)) {
    copy();
    return deleteSelection();
  }
  if (event->matches(QKeySequence::Paste)) return pasteText(QApplication::clipboard()->text());
  if (event->matches(QKeySequence::Delete) || event->key() == Qt::Key_Backspace) return deleteSelection();
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (const auto rows = enter ? rowsFor(*event) : std::nullopt) return step(*rows);
  QTableWidget::keyPressEvent(event);
}

void ColumnsTable::contextMenuEvent(QContextMenuEvent* event) {
  QMenu menu(this);
  const auto add = [&](const QString& text, QKeySequence::StandardKey key, bool possible, const auto& what) {
    QAction* action = menu.addAction(text, this, what);
    action->setShortcut(key);
    action->setEnabled(possible);
  };
  const auto selected = selectedItems();
  const bool filled = std::any_of(selected.begin(), selected.end(),
                                  [](const QTableWidgetItem* cell) { return !cell->text().isEmpty(); });
  add(tr("Cu&t"), QKeySequence::Cut, filled, [this] {
    copy();
    deleteSelection();
  });
  add(tr("&Copy"), QKeySequence::Copy, filled, [this] { copy(); });
  const QMimeData* onClipboard = QApplication::clipboard()->mimeData();  // null where there is nothing
  add(tr("&Paste"), QKeySequence::Paste, onClipboard && onClipboard->hasText(),
      [this] { pasteText(QApplication::clipboard()->text()); });
  add(tr("&Delete"), QKeySequence::Delete, filled, [this] { deleteSelection(); });
  menu.addSeparator();
  add(tr("Select &All"), QKeySequence::SelectAll, true, [this] { selectAll(); });
  menu.exec(event->globalPos());
}

void ColumnsTable::deleteSelection() {
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
