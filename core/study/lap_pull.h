// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/study/lap_ride.h"

namespace layshaft {

/// One pull in one gear through one stretch: from panel to panel, each up to the next kink of a force.
class LapPull {
 public:
  LapPull(const LapBike& bike, std::size_t gear, bool slips, std::optional<double> leaveRpm, LapPlace& at,
          std::vector<LapLeg>* legs);

  /// To the end of the stretch, or until something else ends it.
  LapEvent ride();

 private:
  /// The way of one panel: how it begins and to which speed it goes.
  struct Panel {
    LapPanel on;
    double fromMps, toMps;
    LapPush start;      ///< at its beginning
    bool even = false;  ///< so short that the acceleration hardly changes
    bool rises() const { return toMps > fromMps; }
  };

  struct Ridden {
    SpeedSums sums;
    std::size_t count = 0;  ///< of nodes, beginning and end included
    std::array<double, kSumNodes.size() + 2> measure;
    std::array<LapPush, kSumNodes.size() + 2> push;
  };

  LapPanel panelTowards(bool faster, double rpmNow) const;
  double mps2(const LapPanel& on, double mps) const { return push(on, mps).mps2; }
  LapPush push(const LapPanel& on, double mps) const;
  SpeedRate rateAt(const LapPanel& on, const BendPace& pace, double measure) const;
  SpeedSums sums(const Panel& panel, const BendPace& pace, double toMeasure) const;

  std::optional<LapEvent> step();
  std::optional<LapEvent> go(Panel panel);
  void cutAtKinks(Panel& panel) const;
  Ridden ridden(Panel& panel, const BendPace& pace, const LapPush& end) const;
  /// Cuts where another limit takes over; false if there is no such place.
  bool cutAtTakeOver(Panel& panel, const BendPace& pace, const Ridden& ridden) const;
  /// `endMps2` is the acceleration at the end of the panel.
  std::optional<LapEvent> finish(const Panel& panel, const BendPace& pace, const SpeedSums& whole,
                                 double endMps2);
  bool meetsBrakes(double offsetM, double mps) const;
  LapPlace placeAtEnd(const Panel& panel, const BendPace& pace, const SpeedSums& whole, double endMps2) const;
  LapPlace placeOnBrakes(const Panel& panel, const BendPace& pace, const LapPlace& beyond) const;
  std::optional<LapEvent> hold(const LapPanel& on, bool limiter);
  void add(LapLeg::Kind kind, const LapPanel& on, bool limiter, const LapPlace& end);

  const LapBike& bike_;
  const AllowedSpeed::Stretch& stretch_;
  std::size_t index_, gear_;
  bool slips_;
  std::optional<double> leaveRpm_;
  LapPlace& at_;
  std::vector<LapLeg>* legs_;
  double bendMps_;
};

}  // namespace layshaft
