// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>

#include "ui/document/document.h"
#include "ui/editors/columns_table.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The spares box as four tables that take columns pasted from a spreadsheet. Every row that can be read is
/// taken. One that cannot is named and stays in its table, to be mended; until then the spare that was in its
/// place stays in the box.
class SparesEditor : public QWidget {
  Q_OBJECT
 public:
  explicit SparesEditor(Document& document, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);
  QWidget* gears() const { return gears_.view; }           ///< where other gears are typed
  const QString& complaint() const { return complaint_; }  ///< what was said last

 signals:
  void said(const QString& why);  ///< what is not understood; empty when all is

 private:
  template <class Spare>
  struct Table {
    ColumnsTable* view;
    std::vector<std::optional<Spare>> inRow;  ///< what of the box each row stands for
    bool pending = false;                     ///< holds rows that could not be read
  };
  ColumnsTable* addTable(const QString& title, const QStringList& columns);
  void read();
  void forget();
  /// Reads the rows of a table; each that `row` names a complaint for is left out.
  template <class Spare>
  std::vector<Spare> readRows(Table<Spare>& table, const std::vector<Spare>& before,
                              const std::function<QString(const QStringList& cells, Spare& into)>& row,
                              QStringList& complaints);

  template <class Spare>
  void showRows(Table<Spare>& table, const std::vector<Spare>& spares,
                const std::function<QStringList(const Spare&)>& cells);

  Document& document_;
  UnitsShown units_;
  Table<SpareSprocket> fronts_, rears_;
  Table<SpareChain> chains_;
  Table<SpareGearPair> gears_;
  SparesBox written_;  ///< the box as it was read last
  QString complaint_;
  int step_ = 0;          ///< each edit of a table is a step of its own
  bool reading_ = false;  ///< what the user is typing stays as it is
};

}  // namespace layshaft::ui
