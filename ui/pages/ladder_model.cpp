// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/ladder_model.h"

#include <QFont>
#include <QGuiApplication>
#include <QPainter>
#include <QPalette>
#include <QPolygonF>
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "ui/charts/contrast.h"
#include "ui/words/aim_words.h"
#include "ui/words/cautions.h"
#include "ui/words/chain_words.h"
#include "ui/words/figure_rows.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"
#include "ui/words/summary.h"

namespace layshaft::ui {
namespace {

constexpr double kLast = 1e12;  // sorts what is missing to the end
constexpr int kMarkScale = 3;   // marks are drawn so much finer than a plain screen shows

QString pairOf(const LadderRow& row) {
  return pairText(row.frontTeeth, row.rearTeeth);
}

}  // namespace

void LadderModel::fade() {
  settled_ = false;
  for (Note& note : notes_) note.faded = true;
  if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

void LadderModel::add(const std::vector<LadderRow>& rows) {
  std::map<std::pair<int, int>, std::size_t> placeOf;
  for (std::size_t i = 0; i < rows_.size(); ++i) placeOf[{rows_[i].frontTeeth, rows_[i].rearTeeth}] = i;
  std::vector<LadderRow> fresh;
  for (const LadderRow& row : rows) {
    const auto old = placeOf.find({row.frontTeeth, row.rearTeeth});
    if (old == placeOf.end()) {
      fresh.push_back(row);
      continue;
    }
    rows_[old->second] = row;
    notes_[old->second] = {};
    const int at = static_cast<int>(old->second);
    emit dataChanged(index(at, 0), index(at, ColumnCount - 1));
  }
  if (fresh.empty()) return;
  const int first = static_cast<int>(rows_.size());
  beginInsertRows({}, first, first + static_cast<int>(fresh.size()) - 1);
  rows_.insert(rows_.end(), fresh.begin(), fresh.end());
  notes_.resize(rows_.size());
  endInsertRows();
}

void LadderModel::settle(const std::vector<Aim>& aims) {
  for (std::size_t i = rows_.size(); i-- > 0;) {
    if (!notes_[i].faded) continue;
    beginRemoveRows({}, static_cast<int>(i), static_cast<int>(i));
    rows_.erase(rows_.begin() + static_cast<std::ptrdiff_t>(i));
    notes_.erase(notes_.begin() + static_cast<std::ptrdiff_t>(i));
    endRemoveRows();
  }
  aims_ = aims;
  settled_ = true;
  markTwins();
  const auto order = rankedByAims(rows_, aims);
  for (std::size_t place = 0; place < order.size(); ++place)
    notes_[order[place]].rank = static_cast<int>(place) + 1;
  if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

void LadderModel::markTwins() {
  for (Note& note : notes_) note.twins.clear();
  for (const auto& group : sameRatios(rows_)) {
    // The one that is better than every other of the group, if there is one.
    const auto foremost = [&](int (*better)(const LadderRow&, const LadderRow&), std::size_t i) {
      return std::all_of(group.begin(), group.end(),
                         [&](std::size_t other) { return other == i || better(rows_[i], rows_[other]) < 0; });
    };
    for (const std::size_t i : group) {
      QStringList others;
      for (const std::size_t other : group)
        if (other != i) others << pairOf(rows_[other]);
      const bool wears = foremost(wearsBetter, i), sits = foremost(sitsBetter, i);
      const QString words = wears && sits ? tr("same ratio as %1; wears best; sits best")
                            : wears       ? tr("same ratio as %1; wears best")
                            : sits        ? tr("same ratio as %1; sits best")
                                          : tr("same ratio as %1");
      notes_[i].twins = words.arg(others.join(tr(", ", "between pairs")));
    }
  }
}

bool LadderModel::show(const UnitsShown& units, bool atRevLimit) {
  if (units == units_ && atRevLimit == atRevLimit_) return false;
  beginResetModel();
  units_ = units;
  atRevLimit_ = atRevLimit;
  endResetModel();
  return true;
}

void LadderModel::mark(int stockFront, int stockRear, int proposedFront, int proposedRear) {
  if (stockFront == stockFront_ && stockRear == stockRear_ && proposedFront == proposedFront_ &&
      proposedRear == proposedRear_)
    return;
  const std::pair was{stockFront_, stockRear_}, wasProposed{proposedFront_, proposedRear_};
  stockFront_ = stockFront;
  stockRear_ = stockRear;
  proposedFront_ = proposedFront;
  proposedRear_ = proposedRear;
  changed(was.first, was.second);
  changed(wasProposed.first, wasProposed.second);
  changed(stockFront, stockRear);
  changed(proposedFront, proposedRear);
}

void LadderModel::markPins(std::vector<PinnedPair> pins) {
  if (pins == pins_) return;
  const auto before = std::exchange(pins_, std::move(pins));
  for (const auto& list : {before, pins_})
    for (const PinnedPair& pin : list) changed(pin.frontTeeth, pin.rearTeeth);
}

std::optional<int> LadderModel::rowOf(int frontTeeth, int rearTeeth) const {
  const auto found = std::find_if(rows_.begin(), rows_.end(), [&](const LadderRow& row) {
    return row.frontTeeth == frontTeeth && row.rearTeeth == rearTeeth;
  });
  if (found == rows_.end()) return std::nullopt;
  return static_cast<int>(found - rows_.begin());
}

void LadderModel::changed(int frontTeeth, int rearTeeth) {
  if (const auto at = rowOf(frontTeeth, rearTeeth))
    emit dataChanged(index(*at, 0), index(*at, ColumnCount - 1));
}

bool LadderModel::isProposed(int index) const {
  return row(index).frontTeeth == proposedFront_ && row(index).rearTeeth == proposedRear_;
}

bool LadderModel::isPinned(int index) const {
  return pinOn(pins_, row(index).frontTeeth, row(index).rearTeeth).has_value();
}

int LadderModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int LadderModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : ColumnCount;
}

QString LadderModel::longestPairText() {
  return tr("%1 proposed, pinned").arg(QStringLiteral("00/00"));
}

QString LadderModel::pairWords(const LadderRow& row) const {
  const auto pin = pinOn(pins_, row.frontTeeth, row.rearTeeth);
  const bool others = pin && !pins_[*pin].asProposed;
  const bool stock = row.frontTeeth == stockFront_ && row.rearTeeth == stockRear_;
  const bool proposed = row.frontTeeth == proposedFront_ && row.rearTeeth == proposedRear_;
  const QString words = !proposed && !stock ? (!pin     ? QStringLiteral("%1")
                                               : others ? tr("%1 pinned with other parts", "a pair")
                                                        : tr("%1 pinned", "a pair"))
                        : proposed          ? (!pin     ? tr("%1 proposed")
                                               : others ? tr("%1 proposed, pinned with other parts")
                                                        : tr("%1 proposed, pinned"))
                                            : (!pin     ? tr("%1 stock")
                                               : others ? tr("%1 stock, pinned with other parts")
                                                        : tr("%1 stock, pinned"));
  const QString named = words.arg(pairOf(row));
  return range_.contains(row.frontTeeth, row.rearTeeth) ? named : tr("%1 (outside the range)").arg(named);
}

/// The proposal's pointer and the pin, side by side, in the colours of text; empty where there is neither, so
/// that all pairs stand in one line.
QIcon LadderModel::markOf(int index) const {
  const bool proposed = isProposed(index), pinned = isPinned(index);
  QIcon icon;
  for (const auto& [mode, role] :
       {std::pair{QIcon::Normal, QPalette::Text}, std::pair{QIcon::Selected, QPalette::HighlightedText}}) {
    QPixmap picture(QSize(2 * kMarkSide, kMarkSide) * kMarkScale);
    picture.setDevicePixelRatio(kMarkScale);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(QGuiApplication::palette().color(role));
    constexpr double kSide = kMarkSide;
    if (proposed)
      painter.drawPolygon(QPolygonF({{2.0, 1.0}, {kSide - 1.0, kSide / 2.0}, {2.0, kSide - 1.0}}));
    if (pinned) {  // head and point of a drawing pin
      painter.drawEllipse(QPointF(1.5 * kSide, kSide * 0.35), kSide * 0.28, kSide * 0.28);
      painter.drawRect(QRectF(1.5 * kSide - 0.7, kSide * 0.5, 1.4, kSide * 0.45));
    }
    painter.end();
    icon.addPixmap(picture, mode);
  }
  return icon;
}

QString LadderModel::fitText(const LadderRow& row) const {
  if (!row.chainRun) return tr("–");
  const ChainRunFigures& run = *row.chainRun;
  const auto shiftWords = [this](double metres) {
    return signedNumber(units_.shown(Quantity::SmallLength, metres), units_.decimals(Quantity::SmallLength));
  };
  if (row.fits())
    return (run.offsetLink ? tr("odd number of links, axle %1")
            : run.fits     ? tr("fits, axle %1")
                           : tr("axle %1"))
        .arg(shiftWords(run.axleShiftM.value_or(0.0)));
  if (const auto spare = row.fitsFromSparesBox())
    return spare->spare->shortenBy == 0 ? tr("fits with the %1-link spare, axle %2")
                                              .arg(spare->links)
                                              .arg(shiftWords(spare->axleShiftM))
                                        : tr("fits with the %1-link spare cut to %2, axle %3")
                                              .arg(spare->spare->links)
                                              .arg(spare->links)
                                              .arg(shiftWords(spare->axleShiftM));
  const QString lengths = otherLengthsWords(run);
  return lengths.isEmpty() ? tr("does not fit")
                           : tr("fits %1", "%1 is \"with 112 or 114 links\"").arg(lengths);
}

QString LadderModel::fitToolTip(const LadderRow& row) const {
  if (!row.chainRun) return tr("Chain or belt not given.");
  QStringList reasons;
  for (const Misfit misfit : row.chainRun->misfits) reasons << misfitWords(misfit, *row.chainRun, units_);
  if (reasons.isEmpty() && row.chainRun->offsetLink) return cautionText(Caution::OddLinks, false);
  return reasons.isEmpty() ? fitText(row) : reasons.join(tr(", ", "between reasons"));
}

QString LadderModel::aimText(const LadderRow& row) const {
  if (row.aims.empty()) return {};
  const auto reached =
      std::count_if(row.aims.begin(), row.aims.end(), [](const AimOutcome& a) { return a.reached; });
  QStringList margins;
  // Until all is there, some rows answer other aims than others.
  for (std::size_t i = 0; settled_ && i < row.aims.size() && i < aims_.size(); ++i)
    if (const QString margin = marginWords(aims_[i], row.aims[i], units_); !margin.isEmpty())
      margins << margin;
  const bool all = reached == static_cast<std::ptrdiff_t>(row.aims.size());
  const QString score = all ? (!row.fits() ? tr("all, but does not fit") : tr("all"))
                            : tr("%1 of %2").arg(reached).arg(row.aims.size());
  if (margins.isEmpty()) return score;
  return tr("%1: %2", "aims reached, and margins").arg(score, margins.join(tr(", ", "between margins")));
}

std::optional<double> LadderModel::startOf(const LadderRow& row) const {
  return units_.inMiles() ? row.zeroTo60MphS : row.zeroTo100KmhS;
}

QString LadderModel::text(const LadderRow& row, int index, int column) const {
  const auto speed = [&](double mps) { return number(units_.shown(Quantity::Speed, mps), 0); };
  switch (column) {
    case Pair:
      return pairWords(row);
    case FinalRatio:
      return number(row.finalRatio, 3);
    case Change:
      return signedNumber(row.change.gearingPercent, 1);
    case Step:
      return stepWords(row.change);
    case RearTeeth:
      return signedNumber(row.change.rearTeethEquivalent, 1);
    case Gears: {
      QStringList speeds;
      for (const double mps : row.speedAtLimitMps) speeds << speed(mps);
      return speeds.isEmpty() ? tr("–") : speeds.join(QStringLiteral("  "));
    }
    case Cruise:
      return figureText(row.cruiseRpm, 0);
    case TopSpeed:
      return row.topSpeedMps ? speed(*row.topSpeedMps) : tr("–");
    case Drive:
      return figureText(row.driveS(), 2);
    case EndGear:
      return row.drive ? gearOrdinal(row.drive->endGear) : tr("–");
    case EndRpm:
      return row.drive ? number(row.drive->endRpm, 0) : tr("–");
    case EndSpeed:
      return row.drive ? speed(row.drive->endSpeedMps) : tr("–");
    case Lap:
      return figureText(row.lapS, 2);
    case StandingStart:
      return figureText(startOf(row), 2);
    case Fits:
      return fitText(row);
    case Meeting:
      return row.chainRun ? QStringLiteral("%1 / %2")
                                .arg(row.chainRun->commonFactorFront)
                                .arg(row.chainRun->commonFactorRear)
                          : tr("–");
    case Spares:
      return row.frontInSparesBox && row.rearInSparesBox ? tr("both")
             : row.frontInSparesBox                      ? tr("front")
             : row.rearInSparesBox                       ? tr("rear")
                                                         : QString();
    case Aims:
      break;
  }
  const QString words = aimText(row);
  const QString& twin = notes_[static_cast<std::size_t>(index)].twins;
  return words.isEmpty() ? twin : twin.isEmpty() ? words : tr("%1; %2", "aims and twins").arg(words, twin);
}

QVariant LadderModel::sortValue(const LadderRow& row, int index, int column) const {
  switch (column) {
    case Pair:
      return row.frontTeeth * 1000 + row.rearTeeth;
    case Step:
      return std::abs(row.change.gearingPercent);
    case Cruise:
      return row.cruiseRpm.value_or(kLast);
    case TopSpeed:
      return row.topSpeedMps.value_or(0.0);
    case Drive:
      return row.driveS().value_or(kLast);
    case EndGear:  // and of one gear by how fast it turns
      return row.drive ? row.drive->endGear * kLast + row.drive->endRpm : -kLast;
    case EndRpm:
      return row.drive ? row.drive->endRpm : -kLast;
    case EndSpeed:
      return row.drive ? row.drive->endSpeedMps : -kLast;
    case Lap:
      return row.lapS.value_or(kLast);
    case StandingStart:
      return startOf(row).value_or(kLast);
    case Gears:
      return row.speedAtLimitMps.empty() ? 0.0 : row.speedAtLimitMps.back();
    case Change:
      return row.change.gearingPercent;
    case RearTeeth:
      return row.change.rearTeethEquivalent;
    case Fits:
      return row.chainRun ? (row.fits() ? 0.0 : 1000.0) + std::abs(row.chainRun->axleShiftM.value_or(kLast))
                          : kLast;
    case Meeting:
      return row.chainRun ? row.chainRun->commonFactorFront + row.chainRun->commonFactorRear : 1000;
    case Spares:
      return (row.frontInSparesBox ? 0 : 1) + (row.rearInSparesBox ? 0 : 1);
    case Aims:
      return notes_[static_cast<std::size_t>(index)].rank;
    default:
      break;
  }
  return row.finalRatio;
}

QVariant LadderModel::data(const QModelIndex& at, int role) const {
  if (!at.isValid()) return {};
  const LadderRow& here = row(at.row());
  if (role == Qt::DisplayRole) return text(here, at.row(), at.column());
  if (role == Qt::DecorationRole && at.column() == Pair) return markOf(at.row());
  if (role == kSortRole) return sortValue(here, at.row(), at.column());
  if (role == Qt::TextAlignmentRole) {
    const bool words = at.column() == Pair || at.column() == Step || at.column() >= Fits;
    return QVariant::fromValue(
        Qt::Alignment(words ? Qt::AlignLeft | Qt::AlignVCenter : Qt::AlignRight | Qt::AlignVCenter));
  }
  if (role == Qt::ToolTipRole && at.column() == Aims) return text(here, at.row(), at.column());
  if (role == Qt::ToolTipRole && at.column() == Fits) return fitToolTip(here);
  if (role == Qt::ForegroundRole && isFaded(at.row())) {
    const QPalette palette = QGuiApplication::palette();
    return mutedText(palette.color(QPalette::Text),
                     {palette.color(QPalette::Base), palette.color(QPalette::AlternateBase)});
  }
  if (role == Qt::FontRole && isProposed(at.row())) {
    QFont bold;
    bold.setBold(true);
    return bold;
  }
  return {};
}

QVariant LadderModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  const QString speed = units_.name(Quantity::Speed);
  if (role == Qt::DisplayRole) switch (section) {
      case Pair:
        return tr("Pair");
      case FinalRatio:
        return tr("Final Ratio");
      case Change:
        return tr("Change, %");
      case Step:
        return tr("Step");
      case RearTeeth:
        return tr("= Rear Teeth");
      case Gears:
        return tr("Gears at the Limit, %1").arg(speed);
      case Cruise:
        return tr("Cruise, rpm");
      case TopSpeed:
        return (atRevLimit_ ? tr("Top Speed at the Rev Limit, %1") : tr("Top Speed, %1")).arg(speed);
      case Drive:
        return tr("Straight, s");
      case EndGear:
        return tr("End Gear");
      case EndRpm:
        return tr("End rpm");
      case EndSpeed:
        return tr("End Speed, %1").arg(speed);
      case Lap:
        return tr("Lap, s");
      case StandingStart:
        return units_.system() == UnitSystem::Metric ? tr("0–100 km/h, s") : tr("0–60 mph, s");
      case Fits:
        return tr("Fits, %1").arg(units_.name(Quantity::SmallLength));
      case Meeting:
        return tr("Shared Factor");
      case Spares:
        return tr("In the Box");
      case Aims:
        return aims_.empty() ? tr("Same Ratio") : tr("Aims, Same Ratio");
    }
  if (role == Qt::ToolTipRole) switch (section) {
      case Change:
        return tr("Positive is shorter: more pull, less speed.");
      case Gears:
        return tr("Road speed at the rev limit in every gear, first gear first; sorts by top gear.");
      case EndGear:
      case EndRpm:
      case EndSpeed:
        return tr("At the end of the straight.");
      case Lap:
        return tr("Round the track that is ridden. Absolute times depend on grip and rider.");
      case RearTeeth:
        return tr("Rear teeth that would change stock's final ratio as much, with stock's front.");
      case Meeting:
        return tr(
            "Shared factor of teeth and links, front / rear: 1 is best, as each tooth then meets every "
            "link.");
      case Fits:
        return tr(
            "Whether the axle stays in its slot, and its shift (+ is back); if not, the lengths that would "
            "fit.");
      case Aims:
        return tr("Sort by this to rank the pairs by the aims. Pairs with the same ratio name each other.");
      default:
        break;
    }
  return {};
}

LadderFilter::LadderFilter(LadderModel* model, QObject* parent)
    : QSortFilterProxyModel(parent), model_(model) {
  setSourceModel(model);
  setSortRole(LadderModel::kSortRole);
  setDynamicSortFilter(true);
}

void LadderFilter::setFit(FitAsked asked) {
  fit_ = asked;
  invalidateFilter();
}
void LadderFilter::setSparesOnly(bool on) {
  sparesOnly_ = on;
  invalidateFilter();
}
void LadderFilter::setTwinsOnly(bool on) {
  twinsOnly_ = on;
  invalidateFilter();
}
void LadderFilter::setPinnedOnly(bool on) {
  pinnedOnly_ = on;
  invalidateFilter();
}
void LadderFilter::setWithinPercent(std::optional<double> percent) {
  within_ = percent;
  invalidateFilter();
}

bool LadderFilter::filterAcceptsRow(int sourceRow, const QModelIndex&) const {
  const LadderRow& row = model_->row(sourceRow);
  if (model_->isProposed(sourceRow)) return true;
  if (!model_->range().contains(row.frontTeeth, row.rearTeeth)) return false;
  if (pinnedOnly_ && !model_->isPinned(sourceRow)) return false;
  const bool own = row.chainRun && row.chainRun->fits.value_or(false);
  if (fit_ == FitAsked::Own && !own) return false;
  if (fit_ == FitAsked::OwnOrSpare && !own && !row.fitsFromSparesBox()) return false;
  if (sparesOnly_ && !(row.frontInSparesBox && row.rearInSparesBox)) return false;
  if (within_ && std::abs(row.change.gearingPercent) > *within_) return false;
  return !twinsOnly_ || model_->isTwin(sourceRow);
}

}  // namespace layshaft::ui
