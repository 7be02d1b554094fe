// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTableWidget>
#include <functional>
#include <limits>
#include <optional>
#include <vector>

namespace layshaft::ui {

/// Pasted rows, and the column of the table in which their first cells belong.
struct PastedColumns {
  std::vector<QStringList> rows;
  int firstColumn = 0;
};

/// A table that takes columns pasted from a spreadsheet and always has an empty row at its end to type into.
/// Enter and the arrow keys end the typing in a cell and go on to the next, as in a spreadsheet.
class ColumnsTable : public QTableWidget {
  Q_OBJECT
 public:
  /// Takes at most so many rows.
  ColumnsTable(const QStringList& titles, int mostRows, QWidget* parent = nullptr);

  /// Rows of text without the empty ones.
  std::vector<QStringList> rows() const;
  /// Shows rows without that counting as an edit; does nothing if they are what is shown.
  void showRows(const std::vector<QStringList>& rows);
  /// Puts pasted text in from the current cell on; refuses, at once and whole, what are too many rows.
  void pasteText(const QString& text);
  /// Has pasted text split, and its titles read, by somebody who knows more of the columns: `arrange` takes
  /// the text and the column of the cursor. No rows: nothing is pasted.
  void arrangePastesBy(std::function<PastedColumns(const QString& text, int firstColumn)> arrange) {
    arrange_ = std::move(arrange);
  }
  /// The selected cells as text, with the titles if they are the whole table; the current cell if none is
  /// selected.
  QString copiedText() const;
  /// Goes so many rows down in the same column, as far as there are rows.
  void step(int rows);

 signals:
  void edited();
  /// Titles that stood above pasted numbers, each at the place of its column; before `edited`.
  void titlesPasted(const QStringList& titles);
  void pasted();  ///< before `edited`: the rows come from elsewhere
  void refused(const QString& why);

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  void keepEmptyRow();
  void copy() const;
  void deleteSelection();
  QString textAt(int row, int column) const;

  PastedColumns pastedBy(const QString& text, int firstColumn);

  int mostRows_;
  std::function<PastedColumns(const QString& text, int firstColumn)> arrange_;
};

/// Splits pasted text into rows and cells: by tab, semicolon, runs of blanks, or comma where it is no decimal
/// comma.
std::vector<QStringList> pastedCells(const QString& text);

/// The numbers of a column, read alike: whether a comma is the decimal sign or stands before thousands is
/// settled for the whole column. `highest`: what a number of it can be at most.
std::vector<std::optional<double>> columnNumbers(const std::vector<QString>& cells, double highest);

/// A number as people and spreadsheets write it, decimal point or comma; nothing if it is none. `highest`:
/// what it can be at most; a sign before three digits that would make it larger is the decimal one.
std::optional<double> typedNumber(const QString& text,
                                  double highest = std::numeric_limits<double>::infinity());

}  // namespace layshaft::ui
