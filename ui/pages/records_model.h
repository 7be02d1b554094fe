// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QSortFilterProxyModel>
#include <optional>
#include <vector>

#include "core/bike/record_list.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// Services, track notes and measurements as a table, the newest first; what is struck through stays, struck
/// through.
class RecordsModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { Day, Kind, Use, Place, Pair, LapTime, Rating, Text, ColumnCount };
  enum Role { kSortRole = Qt::UserRole };  ///< what a column is sorted by; nothing where a cell is empty

  using QAbstractTableModel::QAbstractTableModel;

  void show(const Profile& profile, const UnitsShown& units);

  const RecordRef& ref(int row) const { return rows_[static_cast<std::size_t>(row)].ref; }
  bool isStruck(int row) const { return !rows_[static_cast<std::size_t>(row)].struck.isEmpty(); }
  /// Whether a row is a track note that tells its setup.
  bool hasSetup(int row) const { return rows_[static_cast<std::size_t>(row)].setup; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  struct Row {
    RecordRef ref;
    std::array<QString, ColumnCount> texts;
    std::array<QVariant, ColumnCount> keys;  ///< to sort by
    QString struck;                          ///< when and why; empty where it counts
    bool setup = false;
  };
  template <class Entry>
  Row rowOf(const Entry& entry, const RecordRef& ref) const;
  void fill(Row& row, const Service& service) const;
  void fill(Row& row, const TrackNote& note) const;
  void fill(Row& row, const WearMeasurement& measurement) const;
  void putUse(Row& row, const std::optional<double>& use) const;

  std::vector<Row> rows_;
  UnitsShown units_;
  UseUnit useUnit_ = UseUnit::Hours;
};

/// The entries of a kind, or of all, that have all the words looked for. Empty cells come last, whichever way
/// a column is sorted.
class RecordsFilter : public QSortFilterProxyModel {
  Q_OBJECT
 public:
  explicit RecordsFilter(RecordsModel* model, QObject* parent = nullptr);

  void setKind(std::optional<RecordKind> kind);
  void setWords(const QString& words);

 protected:
  bool filterAcceptsRow(int row, const QModelIndex& parent) const override;
  bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;

 private:
  const RecordsModel& model_;
  std::optional<RecordKind> kind_;
  QStringList words_;
};

}  // namespace layshaft::ui
