// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/compare_model.h"

#include <QFont>
#include <algorithm>

#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

bool sameShape(const CompareTable& a, const CompareTable& b) {
  return a.setups.size() == b.setups.size() && a.rows.size() == b.rows.size() &&
         std::equal(a.rows.begin(), a.rows.end(), b.rows.begin(),
                    [](const CompareRow& x, const CompareRow& y) {
                      return x.figure == y.figure && x.gear == y.gear;
                    });
}

}  // namespace

void CompareModel::show(CompareTable table) {
  if (!sameShape(table, table_)) {
    beginResetModel();
    table_ = std::move(table);
    makeLines();
    endResetModel();
    return;
  }
  std::swap(table, table_);
  if (table.setups != table_.setups || table.pairs != table_.pairs)
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
  for (int line = 0; line < rowCount(); ++line) {
    const auto& at = lines_[static_cast<std::size_t>(line)].row;
    if (!at) continue;
    const CompareRow &was = table.rows[*at], &is = table_.rows[*at];
    if (was.name != is.name) emit headerDataChanged(Qt::Vertical, line, line);
    int first = -1, last = -1;
    for (std::size_t c = 0; c < is.cells.size(); ++c) {
      if (was.cells[c] == is.cells[c]) continue;
      last = static_cast<int>(c);
      if (first < 0) first = last;
    }
    if (first >= 0) emit dataChanged(index(line, first), index(line, last));
  }
}

void CompareModel::makeLines() {
  lines_.clear();
  for (std::size_t r = 0; r < table_.rows.size(); ++r) {
    const CompareGroup group = compareSpec(table_.rows[r].figure).group;
    if (lines_.empty() || lines_.back().group != group) lines_.push_back({group, std::nullopt});
    lines_.push_back({group, r});
  }
}

int CompareModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int CompareModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(table_.setups.size());
}

QVariant CompareModel::data(const QModelIndex& index, int role) const {
  const Line& line = lines_[static_cast<std::size_t>(index.row())];
  if (role == kGroupRole) return !line.row;
  if (!line.row) return role == Qt::AccessibleTextRole ? compareGroupName(line.group) : QVariant();
  const CompareCell& cell = table_.rows[*line.row].cells[static_cast<std::size_t>(index.column())];
  const auto fromStock = [&] { return tr("%1 from stock", "a difference").arg(cell.difference); };
  switch (role) {
    case Qt::DisplayRole:
      return cell.text;
    case Qt::TextAlignmentRole:
      return int(Qt::AlignRight | Qt::AlignVCenter);
    case Qt::ToolTipRole:
      if (!cell.why.isEmpty()) return asMarkup(cell.why);
      return cell.difference.isEmpty() ? QVariant() : asMarkup(fromStock());
    case Qt::AccessibleTextRole: {
      QStringList parts{cell.text};
      if (cell.best) parts << tr("best");
      if (!cell.difference.isEmpty()) parts << fromStock();
      return parts.join(tr(", ", "between a figure and what is said of it"));
    }
    case Qt::AccessibleDescriptionRole:
      return cell.why;
    case kDifferenceRole:
      return cell.difference;
    case kBestRole:
      return cell.best;
    default:
      return {};
  }
}

QVariant CompareModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Horizontal) {
    if (role == Qt::TextAlignmentRole) return int(Qt::AlignRight | Qt::AlignVCenter);
    if (role == Qt::AccessibleTextRole || role == Qt::ToolTipRole) {
      const QString title =
          tr("%1, %2", "a setup's name and its pair").arg(table_.setups[section], table_.pairs[section]);
      return role == Qt::ToolTipRole ? asMarkup(title) : title;
    }
    return role == Qt::DisplayRole
               ? QVariant(table_.setups[section] + QLatin1Char('\n') + table_.pairs[section])
               : QVariant();
  }
  const Line& line = lines_[static_cast<std::size_t>(section)];
  switch (role) {
    case Qt::DisplayRole:
      return line.row ? table_.rows[*line.row].name : compareGroupName(line.group);
    case Qt::FontRole: {
      if (line.row) return {};
      QFont bold;
      bold.setBold(true);
      return bold;
    }
    case Qt::TextAlignmentRole:
      return int(Qt::AlignLeft | Qt::AlignVCenter);
    default:
      return {};
  }
}

Qt::ItemFlags CompareModel::flags(const QModelIndex& index) const {
  return index.isValid() ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags;
}

}  // namespace layshaft::ui
