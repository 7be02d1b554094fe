// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "core/bike/track.h"
#include "core/input.h"
#include "core/study/asked.h"
#include "core/study/lap.h"

namespace layshaft {

/// The lap times of a setup as everything is given, with one thing off either way, and on the line of a
/// recording as it might have been another day. Empty where there is no lap.
struct LapTimes {
  enum Doubt { Rollout, Grip, ShiftTime };
  static constexpr std::size_t kDoubts = 3;
  std::optional<double> seconds;
  std::array<std::array<std::optional<double>, 2>, kDoubts> off;
  static constexpr std::size_t kDays = 4;
  std::array<std::optional<double>, kDays> otherDays;  ///< only of a recording whose noise is known
};

/// What a setup takes more round the track than another.
struct LapChange {
  double seconds;
  double bandS;         ///< how far that may be off
  double axleS;         ///< what of it is due to where the chain puts the axle
  double noiseS = 0.0;  ///< what the noise of the recording alone does to it; in the band
};

/// Laps of setups of one bike on one track, all on the same allowed speed. Any number of threads may ask.
class LapComparison {
 public:
  /// `asked` is of the circumstances.
  LapComparison(const Circumstances& given, const Asked& asked, const Track& track);

  /// Refused or lacking something, there is no lap of any setup.
  const AllowedSpeed& allowed() const { return *asGiven_.allowed; }

  std::optional<LapFigures> figures(const Setup& stock, const Setup& setup) const;
  /// `lapStop` of a setup that has no lap.
  std::optional<std::size_t> stop(const Setup& stock, const Setup& setup) const;
  std::optional<double> seconds(const Setup& stock, const Setup& setup) const;
  LapTimes times(const Setup& stock, const Setup& setup) const;
  /// None where one of them has no lap. `stockTimes` are `times` of stock.
  std::optional<LapChange> change(const Setup& stock, const LapTimes& stockTimes, const Setup& setup) const;

 private:
  /// The bike and its road with one thing otherwise.
  struct Conditions {
    std::shared_ptr<const PullBike> bike;
    Road road;
    std::shared_ptr<const AllowedSpeed> allowed;
    double rolloutFactor;
  };

  /// As given but for one thing: each doubt less and more, then the line of other days.
  struct Doubts {
    std::array<std::array<Conditions, 2>, LapTimes::kDoubts> off;
    std::vector<Conditions> otherDays;
  };
  struct Source;

  std::optional<double> secondsUnder(const Conditions& conditions, const Setup& setup,
                                     const Fitted& fitted) const;
  const Doubts& doubts() const;
  /// A setup of a bike that accelerates.
  RoadModel asGiven(const Setup& stock, const Setup& setup) const;

  Conditions asGiven_;
  std::shared_ptr<Source> source_;  ///< of the doubts: they are made when somebody first asks
};

/// How far the difference between two laps may be off: an estimated rollout by 2 %, the grip by 5 % and the
/// time of a shift by 0.02 s, each by itself either way, its greater effect counted; they are independent, so
/// the root of the sum of their squares. So is what the noise of a recording does (`lapNoiseS`). Both are off
/// the same way, so it is less than for either time alone.
double lapBandS(const LapTimes& from, const LapTimes& to);

/// What the noise of a recording does to the difference between two laps on it: its standard deviation over
/// lines as they might have been recorded on other days. 0 of segments, or where the noise is not known.
double lapNoiseS(const LapTimes& from, const LapTimes& to);

}  // namespace layshaft
