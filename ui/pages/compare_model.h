// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <optional>
#include <vector>

#include "ui/words/compare_table.h"

namespace layshaft::ui {

/// Setups side by side as a table: a column for each, a row for each question, and one for each group's name.
class CompareModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Role {
    kDifferenceRole = Qt::UserRole,  ///< text; from stock
    kBestRole,                       ///< whether it is the best of its row
    kGroupRole                       ///< whether the row is a group's name
  };

  using QAbstractTableModel::QAbstractTableModel;

  /// Tells of the cells that read other than before; starts anew only where rows or columns are others.
  void show(CompareTable table);
  const CompareTable& table() const { return table_; }
  bool isGroup(int row) const { return !lines_[static_cast<std::size_t>(row)].row; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 private:
  /// A line of the table: one of its rows, or the name of the group that begins there.
  struct Line {
    CompareGroup group;
    std::optional<std::size_t> row;
  };
  void makeLines();

  CompareTable table_;
  std::vector<Line> lines_;
};

}  // namespace layshaft::ui
