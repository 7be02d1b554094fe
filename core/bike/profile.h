// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/bike/bike.h"
#include "core/bike/records.h"
#include "core/bike/setup.h"
#include "core/bike/surface.h"
#include "core/bike/track.h"

namespace layshaft {

/// A named setup that stays on the charts beside stock and proposed.
struct Pin {
  std::string name;
  SetupChange change;
  bool operator==(const Pin&) const = default;
};

/// One thing the ladder is asked for.
struct Aim {
  enum class Want {
    RevAtSpeed,
    CruiseBelow,
    PullGain,
    LeastDriveTime,
    TopSpeedAtLeast,
    RevAtDriveEnd,
    LeastLapTime
  };
  Want want = Want::LeastDriveTime;
  std::optional<int> gear;
  std::optional<double> speedKmh;
  std::optional<double> rpm;
  std::optional<double> percent;
  Extras extras;
  bool operator==(const Aim&) const = default;
};

/// A surface's own grip and rolling resistance, where the usual ones are overridden, and how much of the rear
/// wheel's turning is lost on it.
struct SurfaceValues {
  std::optional<double> grip;
  std::optional<double> rollingResistance;
  std::optional<double> slipPercent;
  Extras extras;
  bool operator==(const SurfaceValues&) const = default;
};

/// A straight: how fast and in which gear it is entered, and how long it is.
struct Drive {
  std::optional<double> exitSpeedKmh;
  std::optional<double> lengthM;
  std::optional<int> exitGear;  ///< 1 is first; the best one where not given
  Extras extras;
  bool operator==(const Drive&) const = default;
};

struct RollOn {
  std::optional<double> fromSpeedKmh;
  std::optional<double> toSpeedKmh;
  std::optional<int> gear;
  Extras extras;
  bool operator==(const RollOn&) const = default;
};

/// Where and how the bike is ridden.
struct Ride {
  std::optional<double> slopePercent;  ///< positive uphill
  std::optional<double> headwindKmh;   ///< positive against the rider
  std::optional<double> altitudeM;
  std::optional<double> airTemperatureC;
  std::optional<double> airPressureHpa;
  std::optional<double> humidityPercent;
  std::optional<Surface> surface;
  std::map<Surface, SurfaceValues> surfaces;
  Extras unknownSurfaces;
  std::optional<double> launchRpm;
  std::optional<double> leanDeg;
  std::optional<Drive> drive;
  std::optional<RollOn> rollOn;
  std::string track;  ///< name of the one that is ridden; the first where empty
  Extras extras;
  bool operator==(const Ride&) const = default;
};

enum class SpareState { New, Used, Worn };

struct SpareSprocket {
  int teeth = 0;
  std::optional<ChainSize> size;
  std::optional<SprocketMaterial> material;
  std::optional<double> massKg;
  std::optional<SpareState> state;
  Extras extras;
  bool operator==(const SpareSprocket&) const = default;
};

struct SpareChain {
  ChainSize size = kChainSizes[3];
  int links = 0;
  std::optional<SpareState> state;
  std::optional<double> elongationPercent;
  Extras extras;
  bool operator==(const SpareChain&) const = default;
};

/// The sprockets, chains and gears on hand.
struct SparesBox {
  std::vector<SpareSprocket> front;
  std::vector<SpareSprocket> rear;
  std::vector<SpareChain> chains;
  std::vector<SpareGearPair> gearPairs;
  Extras extras;
  bool operator==(const SparesBox&) const = default;
};

/// The document: one bike, its stock setup and what is proposed for it. A plain value.
struct Profile {
  std::string name;
  std::string notes;
  std::string customer;  ///< whose bike it is
  Bike bike;
  Setup stock;
  SetupChange proposed;
  std::vector<Pin> pins;
  std::vector<Aim> aims;
  std::optional<double> cruiseSpeedKmh;
  std::optional<Ride> ride;
  std::optional<SparesBox> sparesBox;
  std::vector<Track> tracks;
  std::optional<Wear> wear;
  std::optional<Records> records;
  std::optional<Prices> prices;
  /// Key paths of the fields that hold what is usual in the bike's class, taken over until somebody knows
  /// better. Paths of fields that hold nothing, or that nobody knows, mean nothing.
  std::vector<std::string> typical;
  Extras extras;
  bool operator==(const Profile&) const = default;
};

}  // namespace layshaft
