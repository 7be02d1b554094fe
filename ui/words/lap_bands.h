// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "core/plan.h"

namespace layshaft::ui {

/// Up to so many stretches of a track a moment's wait at first sight, while bands are worked out, is less
/// than words that change.
inline constexpr std::size_t kStretchesForFirstSight = 2000;

/// How far the lap times of stock, proposed and pins, in this order, must be apart to be told apart. Working
/// that out takes some laps of each setup.
class LapBands {
 public:
  LapBands() = default;

  /// What `before` knows of the same laps is kept.
  static LapBands workedOut(const Plan& plan, const LapBands& before = {});
  /// Rides no lap: while something is being turned, what is new is taken to be as unsure as what stood in its
  /// place on the same track.
  static LapBands guessed(const Plan& plan, const LapBands& before);

  /// How far the difference between two setups may be off, s; none where one of them has no lap, or where
  /// nothing was there to guess from.
  std::optional<double> betweenS(std::size_t from, std::size_t to) const;

  bool isGuessed() const;
  /// Whether every setup with a lap has its times, guessed or not.
  bool isWhole() const;

 private:
  /// A setup's laps with one thing off either way.
  struct Known {
    Setup setup;
    bool laps;
    std::optional<LapTimes> times = {};
    bool guessed = false;
  };
  static LapBands of(const Plan& plan);
  void keep(const LapBands& before);

  std::shared_ptr<const LapComparison> on_;
  std::optional<Track> track_;
  std::vector<Known> setups_;
};

}  // namespace layshaft::ui
