// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "core/bike/setup.h"
#include "ui/pages/gearbox_results.h"

namespace layshaft::ui {

/// The gearboxes that were tried as a table, the quickest first.
class GearboxModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { Gears, Pair, Lap, Gained, Band, ColumnCount };

  using QAbstractTableModel::QAbstractTableModel;

  void show(const GearboxResults& results, GearboxResults::Pairs pairs);
  /// What is in view is out of date: it stays, greyed, until something else is shown.
  void fade();
  bool faded() const { return faded_; }
  /// The setup that is named as the proposal.
  void mark(const Setup& proposed);

  const std::vector<GearboxRow>& rows() const { return rows_; }
  const GearboxResults& results() const { return results_; }
  const GearsTaken& taken(int row) const;
  /// The row of the gearbox that is in; none while it is not listed.
  std::optional<GearboxRow> withoutOtherGears() const;
  /// Where a gearbox is; -1 where it is not listed.
  int rowOf(std::size_t gearbox) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  QString text(const GearboxRow& row, int index, int column) const;
  bool isProposed(const GearboxRow& row) const;

  GearboxResults results_;
  std::vector<GearboxRow> rows_;
  std::optional<Setup> proposed_;
  bool faded_ = false;
};

}  // namespace layshaft::ui
