// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/study/lap_ride.h"

namespace layshaft {

/// How a pull is ridden: the gear it begins in, counted from 0, and how often it shifts up.
struct LapChoice {
  std::size_t gear = 0;
  bool slips = false;
  int shifts = 0;
  bool operator==(const LapChoice&) const = default;
};

/// A lap that was chosen.
struct ChosenLap {
  double seconds;
  double endMps;
  struct Pull {
    LapPlace from;  ///< its time is left at 0
    LapChoice choice;
  };
  std::vector<Pull> pulls;
};

/// Looks for the gears with the least time to the end of a lap, pull by pull from the last one backwards: a
/// pull that has met the allowed speed leaves nothing behind, so what follows depends on the joint alone
/// where the next one begins. Of choices within 1e-6 s the one with fewer shifts counts, then the one with
/// the lower first gear. Only pulls that some choice leads to are worked out. Keeps a pointer to its bike.
class LapSearch {
 public:
  explicit LapSearch(const LapBike& bike);

  /// From the start of the lap at a speed not above the allowed one; none where every choice stops for good.
  std::optional<ChosenLap> from(double mps);
  /// The stretch furthest round on which some choice stopped for good; where there is no lap, nothing passes
  /// it.
  std::optional<std::size_t> furthestStop() const { return furthestStop_; }

 private:
  /// A way through a pull, and what follows it.
  struct Way {
    LapChoice choice;
    double seconds;    ///< to the joint at which the next pull begins, or to the end
    std::size_t next;  ///< that joint; the number of stretches at the end
    double endMps;     ///< of a lap that ends with the pull
  };
  struct Pull {
    std::vector<LapChoice> starts;  ///< to be tried, the last one first
    bool begun = false, decided = false;
    std::vector<Way> ways;
    std::size_t best = 0;
    double seconds = 0.0;  ///< to the end of the lap; infinite where every choice stops
  };

  bool begins(std::size_t joint);
  std::size_t nextPull(std::size_t joint);
  double followed(std::size_t fromJoint, std::size_t toJoint) const {
    return before_[toJoint] - before_[fromJoint];
  }
  double secondsOf(const Way& way) const {
    return way.seconds + (way.next < pulls_.size() ? pulls_[way.next].seconds : 0.0);
  }
  /// Tries another start of a pull; false if there is none left.
  bool goOn(const LapPlace& start, Pull& pull);
  void tryFrom(const LapPlace& start, LapChoice choice, Pull& pull);
  void add(Pull& pull, const LapPlace& start, const LapChoice& choice, LapEvent event, const LapPlace& end,
           double mostS);
  void decide(Pull& pull) const;
  void workOut(const LapPlace& start, Pull& pull);

  const LapBike* bike_;
  LapBound bound_;
  std::vector<double> before_;     ///< seconds at the allowed speed from the start to each joint
  std::vector<std::size_t> next_;  ///< where the next pull begins from a joint on; the joint itself may be it
  std::vector<Pull> pulls_;        ///< by the joint where they begin
  std::optional<std::size_t> furthestStop_;
};

/// All gears in which a pull may begin.
std::vector<LapChoice> lapStarts(const LapBike& bike, std::size_t stretch, double mps);

}  // namespace layshaft
