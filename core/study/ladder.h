// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/input.h"
#include "core/study/lap_comparison.h"
#include "core/study/setup_figures.h"

namespace layshaft {

/// How a pair does by one aim of the profile.
struct AimOutcome {
  bool reached;
  /// By how much, in the aim's own measure: rpm, per cent of pull, m/s of top speed, seconds of the drive.
  /// Positive is on the wanted side; of a drive or lap time it is what the pair takes less than stock.
  std::optional<double> margin;
  double bandS = 0.0;  ///< how far the margin of a lap time may be off
};

/// One sprocket pair and all that it changes.
struct LadderRow {
  int frontTeeth, rearTeeth;
  double finalRatio;
  GearingChange change;                 ///< against stock
  std::vector<double> speedAtLimitMps;  ///< empty where they are not known
  std::optional<double> cruiseRpm;
  std::optional<double> topSpeedMps;
  std::optional<double> zeroTo60MphS, zeroTo100KmhS, quarterMileS;
  std::optional<DriveFigures> drive;
  std::optional<double> lapS;      ///< none without a track, or data for it
  std::optional<double> lapBandS;  ///< how far its difference to stock's may be off; where a lap is aimed for
  std::optional<ChainRunFigures> chainRun;
  bool frontInSparesBox, rearInSparesBox;
  std::vector<AimOutcome> aims;  ///< in the order of the profile's aims

  bool reachesAllAims() const;
  bool fits() const;  ///< or nothing is known that speaks against it
  /// The length that a chain of the spares box can be had in and that fits: the one that least is cut from.
  std::optional<FittingLength> fitsFromSparesBox() const;
  std::optional<double> driveS() const { return drive ? std::optional(drive->timeS) : std::nullopt; }
};

/// Which pairs to look at.
struct LadderRange {
  int fewestFront, mostFront;
  int fewestRear, mostRear;
  std::size_t pairs() const;
  bool contains(int frontTeeth, int rearTeeth) const;
  bool operator==(const LadderRange&) const = default;
};

/// A few teeth either side of stock's, as far as clearances and the spares box reach.
LadderRange usualRange(const LadderInput& input);

/// Every sprocket pair in reach. Tyre, gearbox and chain are the proposal's, the comparison is with stock.
/// Rows are independent and pure: any number of threads may ask at once.
class Ladder {
 public:
  explicit Ladder(LadderInput input);

  LadderRow row(int frontTeeth, int rearTeeth) const;
  /// All rows of a range, shortest gearing first; pairs whose teeth cannot exist are left out. `stopped` is
  /// asked between rows: once it says so, nothing more is worked out and no row is given.
  std::vector<LadderRow> rows(const LadderRange& range, const std::function<bool()>& stopped = {}) const;

 private:
  SetupFigures figuresOf(const Setup& setup) const;
  AimOutcome outcome(const Aim& aim, const SetupFigures& figures) const;
  AimOutcome lapOutcome(const LadderRow& row) const;
  void addLap(LadderRow& row, const Setup& setup) const;

  LadderInput input_;
  Asked asked_;
  SetupFigures stock_;
  bool aimsForLap_;
  std::optional<LapComparison> laps_;
  LapTimes stockLap_;
};

/// Rows that stand for the same gearing: groups of indices whose final ratios differ by less than `tolerance`
/// of themselves, two or more each.
std::vector<std::vector<std::size_t>> sameRatios(const std::vector<LadderRow>& rows, double tolerance = 1e-9);

/// Of two pairs of one ratio the one that wears better: the smaller common factor with the chain's links,
/// then the larger sprockets. Negative: `a` is better; 0: alike.
int wearsBetter(const LadderRow& a, const LadderRow& b);

/// Of two pairs of one ratio the one that sits better: its axle stays nearer to where stock's is. Negative:
/// `a`; 0: alike, or not known.
int sitsBetter(const LadderRow& a, const LadderRow& b);

/// Indices of the rows in the order in which they answer the aims: those that reach all and fit first, then
/// those that reach all and do not fit; within them by the times aimed for, in the order of the aims, then by
/// how near they come to the first engine speed aimed for (at a road speed or at the end of the straight),
/// then by how small the change is.
std::vector<std::size_t> rankedByAims(const std::vector<LadderRow>& rows, const std::vector<Aim>& aims);

/// By how much a row misses the aims: what each lacks to be reached, as a share of the value aimed for (for a
/// gain of pull of the pull wanted), added up; where it cannot be told, the whole. 0: all are reached.
double missOfAims(const LadderRow& row, const std::vector<Aim>& aims);

/// What puts one pair before another that reaches all aims as well.
enum class BetterBy { DriveTime, LapTime, EngineSpeed, SmallerChange };

/// What the ladder answers to the aims.
struct AimAnswer {
  std::optional<std::size_t> best;         ///< the first row that reaches all aims and fits
  std::vector<std::size_t> betterLeftOut;  ///< rows that would come before it if they fitted, best first
  std::vector<BetterBy> betterBy;          ///< of each of them against the best; empty without one
  /// Where there is no best: the row that misses the aims by least, and the first of those that fit.
  std::optional<std::size_t> nearest, nearestThatFits;
  /// Others that reach all aims, fit and are as quick as the best by the time that is aimed for first: down
  /// the straight within `kEqualTimesS`, round the lap within the band of either.
  std::vector<std::size_t> asQuick;
  double asQuickWithinS = kEqualTimesS;
};
AimAnswer aimAnswer(const std::vector<LadderRow>& rows, const std::vector<Aim>& aims);

}  // namespace layshaft
