// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records_model.h"

#include <QFont>
#include <algorithm>

#include "ui/words/dates.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/record_words.h"
#include "ui/words/use_words.h"

namespace layshaft::ui {
namespace {

/// Numbers stand under each other.
int alignmentOf(int column) {
  const bool number =
      column == RecordsModel::Use || column == RecordsModel::LapTime || column == RecordsModel::Rating;
  return int((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
}

}  // namespace

void RecordsModel::putUse(Row& row, const std::optional<double>& use) const {
  if (!use) return;
  row.texts[Use] = number(shownUse(useUnit_, *use, units_), useDecimals(useUnit_));
  row.keys[Use] = *use;
}

void RecordsModel::fill(Row& row, const Service& service) const {
  putUse(row, service.at);
  row.texts[Text] = recordText(service);
}

void RecordsModel::fill(Row& row, const TrackNote& note) const {
  row.texts[Place] = onOneLine(QString::fromStdString(note.place)).simplified();
  row.setup = note.setup.has_value();
  if (note.setup && note.setup->frontTeeth && note.setup->rearTeeth) {
    const Teeth front = *note.setup->frontTeeth, rear = *note.setup->rearTeeth;
    row.texts[Pair] = pairText(front.count(), rear.count());
    row.keys[Pair] = finalRatio(front, rear);
  }
  if (note.lapTimeS) {
    row.texts[LapTime] = lapTimeText(*note.lapTimeS);
    row.keys[LapTime] = *note.lapTimeS;
  }
  if (note.rating) {
    row.texts[Rating] = number(*note.rating, 0);
    row.keys[Rating] = *note.rating;
  }
  row.texts[Text] = recordText(note);
}

void RecordsModel::fill(Row& row, const WearMeasurement& measurement) const {
  putUse(row, measurement.at);
  row.texts[Text] = recordText(measurement, units_);
}

template <class Entry>
RecordsModel::Row RecordsModel::rowOf(const Entry& entry, const RecordRef& ref) const {
  Row row{.ref = ref, .texts = {}, .keys = {}, .struck = {}};
  row.texts[Day] = shownDate(entry.date);
  row.keys[Day] = calendarDate(entry.date);
  row.texts[Kind] = recordKindName(ref.kind);
  fill(row, entry);
  for (const int column : {Kind, Place, Text})
    if (const auto c = static_cast<std::size_t>(column); !row.texts[c].isEmpty()) row.keys[c] = row.texts[c];
  if (entry.struck) row.struck = struckText(*entry.struck);
  return row;
}

void RecordsModel::show(const Profile& profile, const UnitsShown& units) {
  beginResetModel();
  units_ = units;
  useUnit_ = useUnitOf(profile);
  rows_.clear();
  for (const RecordRef& ref : newestFirst(profile)) switch (ref.kind) {
      case RecordKind::Service:
        rows_.push_back(rowOf(profile.records->services[ref.index], ref));
        break;
      case RecordKind::TrackNote:
        rows_.push_back(rowOf(profile.records->trackNotes[ref.index], ref));
        break;
      case RecordKind::Measurement:
        rows_.push_back(rowOf(profile.wear->measurements[ref.index], ref));
        break;
    }
  endResetModel();
}

int RecordsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int RecordsModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : ColumnCount;
}

QVariant RecordsModel::data(const QModelIndex& index, int role) const {
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  const auto column = static_cast<std::size_t>(index.column());
  switch (role) {
    case Qt::DisplayRole:
      return row.texts[column];
    case kSortRole:
      return row.keys[column];
    case Qt::TextAlignmentRole:
      return alignmentOf(index.column());
    case Qt::FontRole: {
      if (row.struck.isEmpty()) return {};
      QFont font;
      font.setStrikeOut(true);
      return font;
    }
    case Qt::ToolTipRole:
      if (!row.struck.isEmpty()) return asMarkup(row.struck);
      return column == Text && !row.texts[Text].isEmpty() ? asMarkup(row.texts[Text]) : QVariant();
    case Qt::AccessibleTextRole:
      return row.struck.isEmpty()
                 ? row.texts[column]
                 : tr("%1 (%2)", "a cell and why it is struck through").arg(row.texts[column], row.struck);
    default:
      return {};
  }
}

QVariant RecordsModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole) return alignmentOf(section);
  if (role != Qt::DisplayRole) return {};
  switch (section) {
    case Day:
      return tr("Date");
    case Kind:
      return tr("Kind");
    case Use:
      return tr("Use, %1").arg(useName(useUnit_, units_));
    case Place:
      return tr("Place");
    case Pair:
      return tr("Pair");
    case LapTime:
      return tr("Lap Time");
    case Rating:
      return tr("Rating");
    default:
      return tr("Text");
  }
}

RecordsFilter::RecordsFilter(RecordsModel* model, QObject* parent)
    : QSortFilterProxyModel(parent), model_(*model) {
  setSourceModel(model);
  setSortRole(RecordsModel::kSortRole);
  setSortLocaleAware(true);
}

void RecordsFilter::setKind(std::optional<RecordKind> kind) {
  kind_ = kind;
  invalidateFilter();
}

void RecordsFilter::setWords(const QString& words) {
  words_ = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  invalidateFilter();
}

bool RecordsFilter::filterAcceptsRow(int row, const QModelIndex&) const {
  if (kind_ && model_.ref(row).kind != *kind_) return false;
  return std::all_of(words_.begin(), words_.end(), [&](const QString& word) {
    for (int c = 0; c < RecordsModel::ColumnCount; ++c)
      if (model_.index(row, c).data().toString().contains(word, Qt::CaseInsensitive)) return true;
    return false;
  });
}

bool RecordsFilter::lessThan(const QModelIndex& left, const QModelIndex& right) const {
  const bool nothingLeft = !left.data(RecordsModel::kSortRole).isValid(),
             nothingRight = !right.data(RecordsModel::kSortRole).isValid();
  if (nothingLeft == nothingRight) return QSortFilterProxyModel::lessThan(left, right);
  return (sortOrder() == Qt::AscendingOrder) == nothingRight;
}

}  // namespace layshaft::ui
