// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/bikes_model.h"

#include <QFileInfo>
#include <QLocale>
#include <algorithm>

#include "ui/document/file_name.h"

namespace layshaft::ui {

BikesModel::BikesModel(BikeFolder& folder, QObject* parent) : QAbstractTableModel(parent), folder_(folder) {
  connect(&folder, &BikeFolder::listing, this, &BikesModel::beginResetModel);
  connect(&folder, &BikeFolder::listed, this, &BikesModel::endResetModel);
  connect(&folder, &BikeFolder::bikesChanged, this,
          [this](int first, int last) { emit dataChanged(index(first, 0), index(last, ColumnCount - 1)); });
}

int BikesModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(folder_.bikes().size());
}

int BikesModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : ColumnCount;
}

QVariant BikesModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case Name:
      return tr("Bike");
    case Customer:
      return tr("Customer");
    case Changed:
      return tr("Last Change");
    case Pair:
      return tr("Pair");
    default:
      break;
  }
  return tr("File");
}

QString BikesModel::text(const FolderBike& bike, int column) const {
  switch (column) {
    case Name:
      return !bike.problem.isEmpty() ? tr("Cannot be read (%1)").arg(bike.problem)
             : bike.name.isEmpty()   ? tr("…", "not read yet")
                                     : bike.name;
    case Customer:
      return bike.customer;
    case Changed:
      return QLocale().toString(bike.changed(), QLocale::ShortFormat);
    case Pair:
      return bike.pair;
    default:
      break;
  }
  return shownFile(QFileInfo(bike.file).fileName());
}

QVariant BikesModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const FolderBike& shown = bike(index.row());
  switch (role) {
    case kFileRole:
      return shown.file;
    case kSortRole:
      if (index.column() == Changed) return shown.changed();
      [[fallthrough]];
    case Qt::DisplayRole:
      return text(shown, index.column());
    case Qt::ToolTipRole:
      return shown.state == FolderBike::State::Broken ? text(shown, Name) : QString();
    default:
      break;
  }
  return {};
}

BikesFilter::BikesFilter(QObject* parent) : QSortFilterProxyModel(parent) {
  setSortRole(BikesModel::kSortRole);
  setSortCaseSensitivity(Qt::CaseInsensitive);
  setSortLocaleAware(true);
}

void BikesFilter::search(const QString& words) {
  words_ = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  invalidateFilter();
}

bool BikesFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
  QString all;
  for (const int column : {BikesModel::Name, BikesModel::Customer, BikesModel::Pair, BikesModel::File})
    all += sourceModel()->index(row, column, parent).data().toString() + QLatin1Char('\n');
  return std::all_of(words_.begin(), words_.end(),
                     [&](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
}

}  // namespace layshaft::ui
