// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/gearbox_model.h"

#include <QFont>
#include <QGuiApplication>
#include <QPalette>
#include <algorithm>

#include "ui/charts/contrast.h"
#include "ui/words/chart_words.h"
#include "ui/words/gearbox_words.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {

void GearboxModel::show(const GearboxResults& results, GearboxResults::Pairs pairs) {
  beginResetModel();
  results_ = results;
  rows_ = results.empty() ? std::vector<GearboxRow>() : results.ranked(pairs);
  faded_ = false;
  endResetModel();
}

void GearboxModel::fade() {
  if (std::exchange(faded_, true) || rows_.empty()) return;
  emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

void GearboxModel::mark(const Setup& proposed) {
  if (proposed_ == proposed) return;
  proposed_ = proposed;
  if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

const GearsTaken& GearboxModel::taken(int row) const {
  return results_.search()->choices().gearboxes[rows_[static_cast<std::size_t>(row)].gearbox];
}

std::optional<GearboxRow> GearboxModel::withoutOtherGears() const {
  for (int row = 0; row < rowCount(); ++row)
    if (taken(row).empty()) return rows_[static_cast<std::size_t>(row)];
  return std::nullopt;
}

int GearboxModel::rowOf(std::size_t gearbox) const {
  const auto found = std::find_if(rows_.begin(), rows_.end(),
                                  [gearbox](const GearboxRow& row) { return row.gearbox == gearbox; });
  return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

bool GearboxModel::isProposed(const GearboxRow& row) const {
  if (!proposed_ || row.pair != PairTeeth{proposed_->frontTeeth.count(), proposed_->rearTeeth.count()})
    return false;
  const Setup setup = results_.search()->setup(row);
  return setup.primaryRatio == proposed_->primaryRatio && setup.gearRatios == proposed_->gearRatios;
}

int GearboxModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int GearboxModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : ColumnCount;
}

QString GearboxModel::text(const GearboxRow& row, int index, int column) const {
  constexpr int kTimeDecimals = 2;
  switch (column) {
    case Gears:
      return isProposed(row) ? tr("%1, proposed", "gears").arg(gearsText(taken(index)))
                             : gearsText(taken(index));
    case Pair:
      return pairText(row.pair.front, row.pair.rear);
    case Lap:
      return number(row.lapS, kTimeDecimals);
    case Gained:
      return row.changeS ? wonText(-*row.changeS) : noValue();
    default:
      break;
  }
  const auto band = results_.bandS(row);
  return band ? tr("±%1").arg(bandText(std::max(*band, kLapBandS))) : noValue();
}

QVariant GearboxModel::data(const QModelIndex& at, int role) const {
  if (!at.isValid()) return {};
  const GearboxRow& row = rows_[static_cast<std::size_t>(at.row())];
  if (role == Qt::DisplayRole) return text(row, at.row(), at.column());
  if (role == Qt::ToolTipRole && at.column() == Gears) return gearsText(taken(at.row()));
  if (role == Qt::TextAlignmentRole)
    return QVariant::fromValue(Qt::Alignment(at.column() == Gears ? Qt::AlignLeft | Qt::AlignVCenter
                                                                  : Qt::AlignRight | Qt::AlignVCenter));
  if (role == Qt::ForegroundRole && faded_) {
    const QPalette palette = QGuiApplication::palette();
    return mutedText(palette.color(QPalette::Text), {palette.color(QPalette::Base)});
  }
  if (role == Qt::FontRole && isProposed(row)) {
    QFont bold;
    bold.setBold(true);
    return bold;
  }
  return {};
}

QVariant GearboxModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::DisplayRole) switch (section) {
      case Gears:
        return tr("Gears Put In");
      case Pair:
        return tr("Pair");
      case Lap:
        return tr("Lap, s");
      case Gained:
        return tr("Gained on Stock, s");
      case Band:
        return tr("May Be Off by, s");
      default:
        break;
    }
  if (role == Qt::ToolTipRole) switch (section) {
      case Gears:
        return tr("Teeth of the driven and of the driving gear.");
      case Lap:
        return tr("Round the track that is ridden. Absolute times depend on grip and rider.");
      case Band:
        return tr("How far the gain may be off; worked out for the quickest.");
      default:
        break;
    }
  return {};
}

}  // namespace layshaft::ui
