// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/bike/entries.h"
#include "core/bike/setup.h"
#include "core/bike/surface.h"
#include "core/date.h"
#include "core/extras.h"

/// What was measured, done and tried on a bike. Entries are only ever added; one that is wrong is struck
/// through with a reason and stays.
namespace layshaft {

/// What wear is counted over.
enum class UseUnit { Hours, Km };

/// What one sees of a sprocket's teeth: as new or nearly so, visibly thinner or leaning, hooked or pointed or
/// broken.
enum class TeethSeen { Good, Worn, Hooked };

/// Why an entry no longer counts.
struct Struck {
  Date date;
  std::string reason;
  Extras extras;
  bool operator==(const Struck&) const = default;
};

/// The chain measured at one or more places, and what was seen of the sprockets.
struct WearMeasurement {
  Date date;
  std::optional<double> at;       ///< use of the bike, in the unit of `Wear`
  std::optional<int> pitches;     ///< links measured over; 20 where not given
  std::vector<double> lengthsMm;  ///< centre to centre of the pins at both ends, one for each place
  std::optional<TeethSeen> front;
  std::optional<TeethSeen> rear;
  std::optional<bool>
      liftsOffHalfTooth;  ///< the chain can be pulled off the rear sprocket by half a tooth or more
  std::string note;
  std::optional<Struck> struck;
  Extras extras;
  bool operator==(const WearMeasurement&) const = default;
};

/// From a length to a length, as manuals give slack.
struct LengthRange {
  double lowMm = 0.0;
  double highMm = 0.0;
  bool operator==(const LengthRange&) const = default;
};

/// What is known of the wear of stock's chain and sprockets, and of how the manual wants the chain adjusted.
struct Wear {
  std::optional<double> limitPercent;  ///< of the manual
  std::optional<LengthRange> slackMm;  ///< of the manual
  std::string slackPosture;            ///< how the bike stands while that is measured
  std::optional<UseUnit> useUnit;      ///< hours where not given
  std::optional<double> chainFittedAt;
  Entries<WearMeasurement> measurements;
  Extras extras;
  bool operator==(const Wear&) const = default;
};

/// Work that was done.
struct Service {
  Date date;
  std::optional<double> at;
  std::optional<bool> newChain;
  std::optional<bool> newFrontSprocket;
  std::optional<bool> newRearSprocket;
  std::string parts;  ///< fitted, in the mechanic's words
  std::string note;
  std::optional<Struck> struck;
  Extras extras;
  bool operator==(const Service&) const = default;
};

/// How a setup went somewhere.
struct TrackNote {
  Date date;
  std::string place;
  std::optional<Surface> surface;
  std::string weather;
  std::optional<SetupChange> setup;  ///< whole, so that it keeps its meaning when stock becomes another
  std::optional<int> gearAtEnd;      ///< at the end of the straight
  std::optional<double> rpmAtEnd;
  std::optional<bool> limiterHit;
  std::optional<double> lapTimeS;
  std::optional<int> rating;  ///< 1 to 10, the rider's
  std::string words;          ///< the rider's
  std::optional<Struck> struck;
  Extras extras;
  bool operator==(const TrackNote&) const = default;
};

struct Records {
  Entries<Service> services;
  Entries<TrackNote> trackNotes;
  Extras extras;
  bool operator==(const Records&) const = default;
};

/// What a part costs, in the user's own words for both.
struct PartPrice {
  std::string part;  ///< one of the words of `core/study/parts_list.h`, or any other
  double price = 0.0;
  Extras extras;
  bool operator==(const PartPrice&) const = default;
};

struct Prices {
  std::string currency;
  std::vector<PartPrice> parts;
  Extras extras;
  bool operator==(const Prices&) const = default;
};

}  // namespace layshaft
