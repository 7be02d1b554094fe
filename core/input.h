// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/bike/profile.h"
#include "core/study/wear.h"

/// What an answer depends on, as values: equal inputs have equal answers, so whoever kept an answer compares
/// inputs to know whether it still holds. Keys that this version does not know are left out, as are notes and
/// all that no study reads.
namespace layshaft {

/// What the studies of every setup of a profile share.
struct Circumstances {
  Bike bike;
  Ride ride;
  std::optional<double> cruiseSpeedKmh;
  std::vector<SpareChain> chainsOnHand;
  bool gearsKnown = true;            ///< whether stock, and with it every setup, has gear ratios
  std::vector<std::string> typical;  ///< key paths of what was taken over as usual
  bool operator==(const Circumstances&) const = default;
};

/// A whole setup under the name of its pin.
struct NamedSetup {
  std::string name;
  Setup setup;
  bool operator==(const NamedSetup&) const = default;
};

/// What a plan depends on. The names are labels: no study reads them.
struct PlanInput {
  std::string bikeName;
  Circumstances shared;
  Setup stock;
  Setup proposed;  ///< whole
  std::vector<NamedSetup> pins;
  std::optional<WearInput> wear;
  std::optional<Track> track;  ///< that laps are ridden on
  bool operator==(const PlanInput&) const = default;
};

PlanInput planInput(const Profile& profile);

/// What a ladder depends on, its range apart. The proposal is without its own pair, and without the sprockets
/// of it that the spares box would give it anyway: going up and down the ladder leaves the ladder as it is.
struct LadderInput {
  Circumstances shared;
  Setup stock;
  SetupChange proposed;
  std::vector<SpareSprocket> fronts, rears;  ///< on hand
  std::vector<Aim> aims;
  std::optional<Track> track;  ///< that laps are ridden on
  bool operator==(const LadderInput&) const = default;
};

LadderInput ladderInput(const Profile& profile);

/// What every pair on every track depends on.
struct SeasonInput {
  LadderInput ladder;  ///< without aims and a track of its own
  std::vector<Track> tracks;
  bool operator==(const SeasonInput&) const = default;
};

SeasonInput seasonInput(const Profile& profile);

/// What the gearboxes depend on that the gears on hand make. Gears of the proposal that are on hand are taken
/// out: proposing one gearbox after the other leaves the question as it is.
struct GearboxInput {
  LadderInput ladder;  ///< without aims
  std::vector<SpareGearPair> onHand;
  bool operator==(const GearboxInput&) const = default;
};

GearboxInput gearboxInput(const Profile& profile);

}  // namespace layshaft
