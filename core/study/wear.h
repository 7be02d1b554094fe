// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/profile.h"
#include "core/bike/words.h"

namespace layshaft {

/// What a wear study depends on.
struct WearInput {
  Wear wear;
  std::optional<ChainSize> chainSize;
  std::optional<ChainKind> chainKind;
  bool operator==(const WearInput&) const = default;
};

/// None where nothing of wear is in the profile, or a belt drives the wheel.
std::optional<WearInput> wearInput(const Profile& profile);

/// Links that are measured over where a measurement does not say: what most manuals ask for (common
/// practice).
inline constexpr int kUsualPitches = 20;

/// How long so many pitches of a new chain are, mm.
constexpr double newLengthMm(const ChainSize& size, int pitches) {
  return size.pitchMm * pitches;
}

/// How much longer than new a chain is, per cent, by its length over so many pitches: 100·(length/(n·p) − 1).
double elongationPercent(const ChainSize& size, int pitches, double lengthMm);

/// Good below three quarters of the limit, to be watched from there, to be replaced from the limit on.
enum class WearVerdict { Good, Watch, Replace };
inline constexpr Words<WearVerdict, 3> kWearVerdictWords{
    {{WearVerdict::Good, "good"}, {WearVerdict::Watch, "watch"}, {WearVerdict::Replace, "replace"}}};

/// Where the limit of elongation comes from: typed from the manual, or the usual one for the kind of chain.
/// The stricter one, for sealed chains, where the kind is not known.
enum class WearLimitSource { Manual, PlainChain, SealedChain, UnknownChain };

enum class WearReason {
  ChainPastLimit,
  ChainNearLimit,
  ChainLiftsOff,  ///< off the rear sprocket by half a tooth or more
  FrontHooked,
  RearHooked,
  FrontWorn,
  RearWorn
};
inline constexpr Words<WearReason, 7> kWearReasonWords{{{WearReason::ChainPastLimit, "chain_past_limit"},
                                                        {WearReason::ChainNearLimit, "chain_near_limit"},
                                                        {WearReason::ChainLiftsOff, "chain_lifts_off"},
                                                        {WearReason::FrontHooked, "front_hooked"},
                                                        {WearReason::RearHooked, "rear_hooked"},
                                                        {WearReason::FrontWorn, "front_worn"},
                                                        {WearReason::RearWorn, "rear_worn"}}};

/// Why a measurement is kept but left out of the trend.
enum class MeasuringSlip {
  ShorterThanNew,  ///< a place measured shorter than a new chain
  UseGoesBack,     ///< less use than an earlier entry has
  UseNotGiven
};

/// One measurement that has lengths and is not struck through.
struct MeasuredElongation {
  std::size_t index;  ///< in the profile's list
  Date date;
  std::optional<double> at;
  std::vector<double> placesPercent;
  double greatestPercent;    ///< of all places: what counts
  double unevennessPercent;  ///< greatest less least
  std::optional<MeasuringSlip> slip;
  bool earlierChain;  ///< taken before the chain on the bike was fitted
  bool inTrend() const { return !slip && !earlierChain; }
};

/// Where the trend reaches the limit, in use of the bike, with the interval that holds it nine times in ten.
struct EndOfLife {
  double at;
  std::optional<double> low, high;  ///< none with two measurements
};

struct WearFigures {
  UseUnit useUnit;
  double limitPercent;
  WearLimitSource limitSource;
  std::vector<MeasuredElongation> measured;  ///< in the order taken
  std::optional<std::size_t> latest;         ///< of `measured`, the one that the verdict goes by
  std::optional<double> elongationPercent, unevennessPercent;
  // None where nothing was measured or seen.
  std::optional<WearVerdict> chain, front, rear, set;
  std::vector<WearReason> reasons;
  std::optional<double> trendPercentPerUse;
  std::optional<double> trendInterceptPercent;
  std::optional<EndOfLife> endOfLife;
  bool trendDoesNotRise = false;
  std::optional<double> chainFittedAt;
};

/// Where a chain is worn out, per cent, and by whose word.
struct WearLimit {
  double percent;
  WearLimitSource source;
};
/// The manual's where it is typed, else the usual one for the kind of chain, of `defaults.h`.
WearLimit wearLimit(const std::optional<double>& manualsPercent, const std::optional<ChainKind>& kind);

/// How worn chain and sprockets are by what was measured and seen last. Any part to be replaced replaces the
/// set: chain and both sprockets.
WearFigures wear(const WearInput& input);

/// What the measurement at that place in the profile's list comes to; null if it has no lengths or is struck.
const MeasuredElongation* measuredAt(const WearFigures& figures, std::size_t index);

/// How long stock's chain is: what was typed, else what was measured last. None where neither is known.
std::optional<double> elongationInUse(const Profile& profile);

/// New and worn parts that would run together.
enum class WearMix {
  NewSprocketUnderWornChain,
  NewChainOverWornSprockets,
  FrontSprocketLeftOld  ///< a new chain and rear sprocket, and the front one stays
};

/// Which parts a change would put in new.
struct NewParts {
  bool chain = false, front = false, rear = false;
};
std::vector<WearMix> wearMixes(const WearFigures& figures, const NewParts& fitted);

/// How long chains last by use: reference lines, common practice, no source.
inline constexpr double kUsualMotocrossLifeHours = 15.0;
inline constexpr double kLongRoadLifeKm = 32187.0;  ///< 20,000 miles

}  // namespace layshaft
