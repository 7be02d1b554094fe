// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/lap_bike.h"
#include "core/study/lap_bound.h"

namespace layshaft {

/// Where a lap stands.
struct LapPlace {
  double timeS = 0.0;
  std::size_t stretch = 0;  ///< in the order of the lap
  double offsetM = 0.0;     ///< from its beginning
  double mps = 0.0;
};

/// A piece of a lap between two places of one stretch on which one formula holds.
struct LapLeg {
  enum class Kind {
    Pull,
    Coast,  ///< the gap of a shift
    Hold,   ///< full throttle at a speed: the limiter's, or nothing is left to accelerate
    Follow  ///< on the allowed speed: a bend's own, or brakes
  };
  Kind kind;
  LapPanel on;
  bool limiter;  ///< at it or above
  LapPlace start, end;
};

/// Why a pull, or a piece of it, has ended.
enum class LapEvent {
  Stretch,  ///< at the end of its stretch
  Lap,      ///< at the end of the lap
  Allowed,  ///< the speed met the allowed one
  Turns,    ///< the engine speed at which the gear is to be left
  Done,     ///< a coast took its time
  Beaten,   ///< another choice will be earlier
  Stopped   ///< for good
};

/// Rides pulls of a lap, integrating time and distance over speed: on a stretch the forces depend on nothing
/// else. Keeps a pointer to its bike, and adds what it rides to `legs`, if there.
class LapRide {
 public:
  explicit LapRide(const LapBike& bike, std::vector<LapLeg>* legs = nullptr) : bike_(&bike), legs_(legs) {}
  /// Gives up what by `bound` takes longer than so many seconds to the end of the lap.
  LapRide(const LapBike& bike, const LapBound& bound, double mostS)
      : bike_(&bike), bound_(&bound), mostS_(mostS) {}

  /// Full throttle in a gear, or with the clutch slipping in it, over as many stretches as it takes; up to
  /// `leaveRpm` if there.
  LapEvent pull(std::size_t gear, bool slips, std::optional<double> leaveRpm, LapPlace& at) const;
  /// The gap of a shift.
  LapEvent coast(std::size_t gear, LapPlace& at) const;
  /// Whether a gear goes on where the shift into it ends.
  bool takesOver(std::size_t gear, const LapPlace& at) const;

 private:
  const LapBike* bike_;
  std::vector<LapLeg>* legs_ = nullptr;
  const LapBound* bound_ = nullptr;
  double mostS_ = 0.0;
};

}  // namespace layshaft
