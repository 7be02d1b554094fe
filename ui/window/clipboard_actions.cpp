// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/clipboard_actions.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMainWindow>
#include <QPlainTextEdit>
#include <QTableView>
#include <QTextEdit>
#include <algorithm>
#include <array>

namespace layshaft::ui {
namespace {

QLineEdit* lineEditOf(QWidget* focused) {
  if (auto* line = qobject_cast<QLineEdit*>(focused)) return line;
  if (auto* choice = qobject_cast<QComboBox*>(focused)) return choice->lineEdit();
  return qobject_cast<QAbstractSpinBox*>(focused) ? focused->findChild<QLineEdit*>() : nullptr;
}

bool clipboardHasText() {
  return !QApplication::clipboard()->text().isEmpty();
}

/// A table that is only read: its own copying takes a single cell.
QTableView* readTable(QWidget* focused) {
  auto* table = qobject_cast<QTableView*>(focused);
  return table && table->editTriggers() == QAbstractItemView::NoEditTriggers ? table : nullptr;
}

bool isReadView(QTableView& table) {
  const QModelIndex first = table.model() ? table.model()->index(0, 0) : QModelIndex();
  return first.isValid() && !(first.flags() & Qt::ItemIsEditable);
}

/// The chosen rows as a spreadsheet takes them, columns as they stand, with their titles where there are
/// several rows.
QString rowsAsText(const QTableView& table) {
  const QHeaderView& header = *table.horizontalHeader();
  std::vector<int> columns;
  for (int at = 0; at < header.count(); ++at)
    if (const int column = header.logicalIndex(at); !table.isColumnHidden(column)) columns.push_back(column);
  std::vector<int> rows;
  for (const QModelIndex& index : table.selectionModel()->selectedIndexes()) rows.push_back(index.row());
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  QStringList lines, titles;
  for (const int column : columns)
    titles << table.model()->headerData(column, Qt::Horizontal).toString().simplified();
  lines << titles.join(QLatin1Char('\t'));
  for (const int row : rows) {
    QStringList cells;
    for (const int column : columns)
      cells << table.model()->index(row, column).data().toString().simplified();
    lines << cells.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n'));
}

}  // namespace

ClipboardActions::ClipboardActions(QMainWindow& window, QMenu& menu) : QObject(&menu), window_(window) {
  struct Entry {
    Verb verb;
    QString text;
    QKeySequence::StandardKey keys;
    const char* icon;
  };
  const std::array<Entry, 4> entries{
      Entry{Cut, tr("Cu&t"), QKeySequence::Cut, "edit-cut"},
      Entry{Copy, tr("&Copy"), QKeySequence::Copy, "edit-copy"},
      Entry{Paste, tr("&Paste"), QKeySequence::Paste, "edit-paste"},
      Entry{SelectAll, tr("Select &All"), QKeySequence::SelectAll, "edit-select-all"}};
  std::array<QAction*, 4> actions{};
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const Verb verb = entries[i].verb;
    actions[i] = menu.addAction(QIcon::fromTheme(QLatin1String(entries[i].icon)), entries[i].text,
                                entries[i].keys, this, [this, verb] { perform(verb); });
  }
  connect(&menu, &QMenu::aboutToShow, this, [this, entries, actions] {
    for (std::size_t i = 0; i < actions.size(); ++i) actions[i]->setEnabled(possible(entries[i].verb));
  });
  // What is possible is only known when it is asked for: until then a shortcut is not held back.
  connect(&menu, &QMenu::aboutToHide, this, [actions] {
    for (QAction* action : actions) action->setEnabled(true);
  });
}

bool ClipboardActions::possible(Verb verb) const {
  QWidget* focused = window_.focusWidget();
  if (const QLineEdit* line = lineEditOf(focused)) {
    if (verb == Copy) return line->hasSelectedText();
    if (verb == SelectAll) return !line->text().isEmpty();
    return !line->isReadOnly() && (verb == Cut ? line->hasSelectedText() : clipboardHasText());
  }
  const auto inText = [&](const auto* text) {
    if (verb == Copy) return text->textCursor().hasSelection();
    if (verb == SelectAll) return !text->document()->isEmpty();
    return !text->isReadOnly() && (verb == Cut ? text->textCursor().hasSelection() : text->canPaste());
  };
  if (const auto* text = qobject_cast<QPlainTextEdit*>(focused)) return inText(text);
  if (const auto* text = qobject_cast<QTextEdit*>(focused)) return inText(text);
  if (const auto* label = qobject_cast<QLabel*>(focused))
    return (verb == Copy && label->hasSelectedText()) || (verb == SelectAll && !label->text().isEmpty());
  auto* view = qobject_cast<QAbstractItemView*>(focused);
  if (!view || !view->model()) return false;
  auto* table = qobject_cast<QTableView*>(view);
  const bool read = readTable(view) || (table && isReadView(*table));
  const bool chosen = view->selectionModel() && view->selectionModel()->hasSelection();
  if (verb == Copy) return chosen;
  if (verb == SelectAll)
    return view->model()->rowCount() > 0 && view->selectionMode() != QAbstractItemView::SingleSelection;
  return !read && table && (verb == Cut ? chosen : clipboardHasText());
}

void ClipboardActions::perform(Verb verb) {
  QWidget* focused = window_.focusWidget();
  if (!focused || !possible(verb)) return;
  if (auto* table = qobject_cast<QTableView*>(focused);
      table && verb == Copy && (readTable(table) || isReadView(*table)))
    return QApplication::clipboard()->setText(rowsAsText(*table));
  // Each field and table knows its keys; they are those of the platform that it understands.
  constexpr std::array<QKeySequence::StandardKey, 4> kKeys{QKeySequence::Cut, QKeySequence::Copy,
                                                           QKeySequence::Paste, QKeySequence::SelectAll};
  const QKeyCombination keys = QKeySequence(kKeys[static_cast<std::size_t>(verb)])[0];
  QWidget* receiver = focused;
  if (QLineEdit* line = lineEditOf(focused)) receiver = line;
  QKeyEvent press(QEvent::KeyPress, keys.key(), keys.keyboardModifiers());
  QApplication::sendEvent(receiver, &press);
}

}  // namespace layshaft::ui
