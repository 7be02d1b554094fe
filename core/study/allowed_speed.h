// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/bend_pace.h"
#include "core/study/lap_course.h"
#include "core/study/road_forces.h"

namespace layshaft {

/// Why nobody laps a track.
struct LapRefusal {
  enum class Why {
    Empty,         ///< nothing to ride on
    NoBend,        ///< closed, and nothing on it asks for the brakes
    BrakesTooWeak  ///< full brakes cannot slow the bike on a stretch
  };
  Why why;
  std::size_t segment = 0;  ///< of the track that has the stretch
  bool operator==(const LapRefusal&) const = default;
};

/// Time and distance from a place to the end of its stretch.
struct ToTheEnd {
  double timeS, distanceM;
};

/// The greatest speed at every place of a track from which no bend is too fast and nowhere the brakes are
/// asked for more than they can, worked backwards. It does not depend on the gearing: one serves all pairs.
/// Stretches are in the order in which a lap rides them: a closed lap begins at the lowest of these speeds.
///
/// The brakes slow by e·s·g·cos θ·min(μ, (l − b)/h) and the resistance over the mass, s the rider's share; e
/// is what the bend leaves of the grip along the road, √(1 − (v/v_bend)⁴).
class AllowedSpeed {
 public:
  struct Stretch {
    LapStretch here;
    double startM;    ///< from the start of the lap
    double entryMps;  ///< at its beginning, kept for `heldM`; from there on brakes
    double exitMps;   ///< at its end
    double heldM;
    double seconds;  ///< through it at the allowed speed
    bool rises;      ///< the speed allowed before it is lower than the one in it
    std::size_t firstKnot, knots;
  };

  /// `bike` must have resistance, as stock.
  AllowedSpeed(LapCourse course, const PullBike& bike);

  const std::optional<LapRefusal>& refusal() const { return refusal_; }
  const LapCourse& course() const { return course_; }
  /// Empty where it is refused or something lacks.
  const std::vector<Stretch>& stretches() const { return stretches_; }
  const Road& road(std::size_t stretch) const { return course_.roads[stretches_[stretch].here.road]; }
  double lengthM() const { return lengthM_; }

  /// On the brakes of a stretch, at a speed not below the one at its end nor above the one at its beginning.
  ToTheEnd braking(std::size_t stretch, double mps) const;
  /// The same, never more than the place on the brakes has: a quick bound.
  double brakingAtMostM(std::size_t stretch, double mps) const;
  /// How hard it slows there, m/s².
  double brakesMps2(std::size_t stretch, double mps) const;
  /// Seconds from a place on the allowed speed to the end of the stretch.
  double secondsToTheEnd(std::size_t stretch, double offsetM, double mps) const;

 private:
  /// On the brakes: a speed, and what is left from there to the end of the stretch.
  struct Knot {
    double mps;
    ToTheEnd left;
  };
  struct Brakes {
    RoadForces forces;
    double fullMps2;  ///< upright, without the resistance
  };

  bool refuse();
  void turnToStart();
  void workBackwards();
  double addBrakes(std::size_t index, double exitMps);
  double slowing(const Brakes& brakes, double mps, double left, bool fast) const;
  SpeedRate brakingAt(const Brakes& brakes, const BendPace& pace, bool fast, double measure) const;
  SpeedSums brakingSums(const Brakes& brakes, const BendPace& pace, bool fast, double fromMps,
                        double toMps) const;
  const Brakes& brakesOf(std::size_t stretch) const { return brakes_[stretches_[stretch].here.road]; }
  std::size_t knotBelow(const Stretch& stretch, double mps) const;

  LapCourse course_;
  std::optional<LapRefusal> refusal_;
  double massKg_;
  std::vector<Brakes> brakes_;  ///< of the course's roads
  std::vector<Stretch> stretches_;
  std::vector<Knot> knots_;
  double lengthM_ = 0.0;
};

}  // namespace layshaft
