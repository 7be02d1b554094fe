// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/study/ladder.h"
#include "core/study/lap_comparison.h"

namespace layshaft {

/// A pair round the track.
struct LapRow {
  int frontTeeth, rearTeeth;
  double finalRatio;
  std::optional<double> lapS;     ///< none where there is no lap
  std::optional<double> changeS;  ///< against stock
  std::optional<double> bandS;    ///< how far that may be off; not worked out where nobody asked
  bool fits;                      ///< or nothing is known that speaks against it
  std::optional<int> links;       ///< of a length with which it would fit: the present one, else the nearest
};

/// Every sprocket pair in reach by lap time. Tyre, gearbox and chain are the proposal's, the comparison is
/// with stock. Rows are independent and pure: any number of threads may ask at once.
class LapLadder {
 public:
  LapLadder(LadderInput input, const Track& track);

  enum class Bands { None, All };
  LapRow row(int frontTeeth, int rearTeeth, Bands bands) const;
  /// All rows of a range: those that fit first, the quickest first, those without a lap last; pairs whose
  /// teeth cannot exist are left out. `stopped` is asked between rows: once it says so, no row is given.
  std::vector<LapRow> rows(const LadderRange& range, Bands bands,
                           const std::function<bool()>& stopped = {}) const;
  /// How far the difference between the laps of two of its rows may be off; none where one has no lap.
  std::optional<double> bandS(const LapRow& from, const LapRow& to) const;
  const AllowedSpeed& allowed() const { return laps_.allowed(); }
  std::optional<double> stockS() const {
    return stock_.seconds;
  }  ///< a lap of stock; none where there is none

 private:
  Setup setupOf(int frontTeeth, int rearTeeth) const;

  LadderInput input_;
  Asked asked_;
  LapComparison laps_;
  LapTimes stock_;
};

/// In the order of a ladder by lap times.
bool comesBefore(const LapRow& a, const LapRow& b);

/// Whether two pairs cannot be told apart by their laps: no further apart than either one's band, or
/// `kEqualTimesS`. False where one has no lap.
bool equalLaps(const LapRow& a, const LapRow& b);

/// What decides between pairs whose laps cannot be told apart; nothing where there is only one.
enum class LapDecidedBy { Nothing, FewestSwaps, SmallestChange, LapTime };

/// What the laps of all pairs come to. Places are those of the rows.
struct LapPick {
  std::size_t quickest;            ///< of those that fit
  std::vector<std::size_t> equal;  ///< others that fit and are equal to it, the quickest first
  std::size_t taken;               ///< the one of all these that is least trouble
  LapDecidedBy decidedBy;
};

/// How many sprockets of a pair are not stock's.
int swapsFromStock(const LapRow& row, int stockFront, int stockRear);

/// Of pairs that are equal the one with the fewest sprockets to swap from stock, of those the one with the
/// smallest change of ratio, of those the quickest. None where no pair that fits has a lap.
std::optional<LapPick> lapPick(const std::vector<LapRow>& rows, int stockFront, int stockRear);

}  // namespace layshaft
