// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>

#include "ui/document.h"
#include "ui/editors/columns_table.h"

namespace layshaft::ui {

/// The spares box as three tables that take columns pasted from a spreadsheet. Every row that can be read is
/// taken; one that cannot stays in its table, to be mended, and is named.
class SparesEditor : public QWidget {
  Q_OBJECT
 public:
  explicit SparesEditor(Document& document, QWidget* parent = nullptr);

  void refresh();

 signals:
  void said(const QString& why);  ///< what is not understood; empty when all is

 private:
  struct Table {
    ColumnsTable* view;
    bool pending = false;  ///< holds rows that are not in the document
  };
  ColumnsTable* addTable(const QString& title, const QStringList& columns);
  void read();
  /// Reads the rows of a table; each that `row` names a complaint for is left out.
  template <class Spare>
  std::vector<Spare> readRows(Table& table, const std::vector<Spare>& before,
                              const std::function<QString(const QStringList& cells, Spare& into)>& row,
                              QStringList& complaints);

  Document& document_;
  Table fronts_, rears_, chains_;
  bool reading_ = false;  ///< what the user is typing stays as it is
};

}  // namespace layshaft::ui
