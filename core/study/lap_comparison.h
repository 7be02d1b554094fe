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

/// The lap times of a setup as everything is given, and with one thing off either way. Empty where there is
/// no lap.
struct LapTimes {
  enum Doubt { Rollout, Grip, ShiftTime };
  static constexpr std::size_t kDoubts = 3;
  std::optional<double> seconds;
  std::array<std::array<std::optional<double>, 2>, kDoubts> off;
};

/// What a setup takes more round the track than another.
struct LapChange {
  double seconds;
  double bandS;  ///< how far that may be off
  double axleS;  ///< what of it is due to where the chain puts the axle
};

/// Laps of setups of one bike on one track, all on the same allowed speed. Any number of threads may ask.
class LapComparison {
 public:
  /// `asked` is of the circumstances.
  LapComparison(const Circumstances& given, const Asked& asked, const Track& track);

  /// Refused or lacking something, there is no lap of any setup.
  const AllowedSpeed& allowed() const { return *conditions_.front().allowed; }

  std::optional<LapFigures> figures(const Setup& stock, const Setup& setup) const;
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

  std::optional<double> secondsUnder(const Conditions& conditions, const Setup& setup,
                                     const Fitted& fitted) const;

  std::vector<Conditions> conditions_;  ///< as given, then each doubt less and more
};

/// How far the difference between two laps may be off: an estimated rollout by 2 %, the grip by 5 % and the
/// time of a shift by 0.02 s, each by itself either way, its greater effect counted; they are independent, so
/// the root of the sum of their squares. Both are off the same way, so it is less than for either time alone.
double lapBandS(const LapTimes& from, const LapTimes& to);

}  // namespace layshaft
