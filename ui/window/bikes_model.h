// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QSortFilterProxyModel>
#include <QStringList>

#include "ui/document/bike_folder.h"

namespace layshaft::ui {

/// The bikes of a folder as a table, a row a file.
class BikesModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { Name, Customer, Changed, Pair, File, ColumnCount };
  static constexpr int kSortRole = Qt::UserRole;
  static constexpr int kFileRole = Qt::UserRole + 1;  ///< the whole path

  explicit BikesModel(BikeFolder& folder, QObject* parent = nullptr);

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  const FolderBike& bike(int row) const { return folder_.bikes()[static_cast<std::size_t>(row)]; }

 private:
  QString text(const FolderBike& bike, int column) const;

  BikeFolder& folder_;
};

/// Those in which every word that is looked for stands somewhere, in the order chosen.
class BikesFilter : public QSortFilterProxyModel {
  Q_OBJECT
 public:
  explicit BikesFilter(QObject* parent = nullptr);
  void search(const QString& words);

 protected:
  bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

 private:
  QStringList words_;
};

}  // namespace layshaft::ui
