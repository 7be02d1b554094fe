// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QIcon>
#include <QSortFilterProxyModel>
#include <limits>
#include <optional>
#include <vector>

#include "core/bike/pair.h"
#include "core/study/ladder.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The rows of a ladder as a table. Every cell says in words or figures what it means; colour carries
/// nothing.
class LadderModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column {
    Pair,
    FinalRatio,
    Change,
    Step,
    RearTeeth,
    Gears,
    Cruise,
    TopSpeed,
    Drive,
    EndGear,
    EndRpm,
    EndSpeed,
    Lap,
    StandingStart,
    Fits,
    Meeting,
    Spares,
    Aims,
    ColumnCount
  };
  static constexpr int kSortRole = Qt::UserRole;
  static constexpr int kMarkSide = 12;  ///< of each of the two marks of a pair, px

  using QAbstractTableModel::QAbstractTableModel;

  /// What is in view is out of date: it stays, greyed, until new rows take its place.
  void fade();
  /// New rows; one of a pair that is there already takes its place.
  void add(const std::vector<LadderRow>& rows);
  /// Once all rows are there: old ones go, twins of a ratio are marked and the aims ranked.
  void settle(const std::vector<Aim>& aims);
  /// Whether that looks other than before. `atRevLimit`: the bike has no engine curve, and a top speed is the
  /// one that the rev limit allows.
  bool show(const UnitsShown& units, bool atRevLimit);
  void mark(int stockFront, int stockRear, int proposedFront, int proposedRear);
  void markPins(std::vector<PinnedPair> pins);
  /// The pairs that are asked for; the proposal may stand outside.
  void setRange(const LadderRange& range) { range_ = range; }
  const LadderRange& range() const { return range_; }
  /// Where the proposal's row is; none while it is not there.
  std::optional<int> proposedRow() const { return rowOf(proposedFront_, proposedRear_); }
  bool isProposed(int index) const;
  const std::vector<PinnedPair>& pins() const { return pins_; }
  bool isPinned(int index) const;  ///< with whatever parts
  const LadderRow& row(int index) const { return rows_[static_cast<std::size_t>(index)]; }
  const std::vector<LadderRow>& rows() const { return rows_; }
  bool isTwin(int index) const { return !notes_[static_cast<std::size_t>(index)].twins.isEmpty(); }
  bool settled() const { return settled_; }
  bool isFaded(int index) const { return notes_[static_cast<std::size_t>(index)].faded; }

  /// A pair as it reads where it is the proposal and pinned: the longest usual text of its column.
  static QString longestPairText();

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  std::optional<int> rowOf(int frontTeeth, int rearTeeth) const;
  void changed(int frontTeeth, int rearTeeth);  ///< that row looks other than before
  QString pairWords(const LadderRow& row) const;
  QIcon markOf(int index) const;
  QString text(const LadderRow& row, int index, int column) const;
  std::optional<double> startOf(
      const LadderRow& row) const;  ///< from rest to the speed that the units ask for
  QVariant sortValue(const LadderRow& row, int index, int column) const;
  QString fitText(const LadderRow& row) const;
  QString fitToolTip(const LadderRow& row) const;  ///< why it does not fit
  QString aimText(const LadderRow& row) const;

  /// What is known of a row beside its figures.
  struct Note {
    QString twins;                               ///< what is said of a pair that shares its ratio with others
    int rank = std::numeric_limits<int>::max();  ///< place by the aims; last until they are ranked
    bool faded = false;
  };
  void markTwins();

  std::vector<LadderRow> rows_;
  std::vector<Note> notes_;  ///< one for each row
  std::vector<Aim> aims_;
  bool settled_ = false;
  UnitsShown units_;
  bool atRevLimit_ = false;
  int stockFront_ = 0, stockRear_ = 0, proposedFront_ = 0, proposedRear_ = 0;
  std::vector<PinnedPair> pins_;
  LadderRange range_{0, std::numeric_limits<int>::max(), 0, std::numeric_limits<int>::max()};
};

/// Which chain a pair has to fit.
enum class FitAsked { None, Own, OwnOrSpare };

/// Which rows are in view: those that pass every filter, and always the proposal.
class LadderFilter : public QSortFilterProxyModel {
  Q_OBJECT
 public:
  explicit LadderFilter(LadderModel* model, QObject* parent = nullptr);

  void setFit(FitAsked asked);
  void setSparesOnly(bool on);
  void setTwinsOnly(bool on);
  void setPinnedOnly(bool on);
  void refilter() { invalidateFilter(); }
  void setWithinPercent(std::optional<double> percent);

 protected:
  bool filterAcceptsRow(int sourceRow, const QModelIndex& parent) const override;

 private:
  LadderModel* model_;
  FitAsked fit_ = FitAsked::None;
  bool sparesOnly_ = false, twinsOnly_ = false, pinnedOnly_ = false;
  std::optional<double> within_;
};

}  // namespace layshaft::ui
