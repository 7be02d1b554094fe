// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/bike/profile.h"
#include "core/bike/words.h"

/// Every pair in reach as numbers for other programs: the ladder and the laps side by side.
namespace layshaft {

/// A pair in reach; what the profile lacks data for is empty.
struct ReachedPair {
  int frontTeeth, rearTeeth;
  double finalRatio;
  std::optional<double> lapS, driveS, topSpeedMps;
  bool fits;  ///< or nothing is known that speaks against it
  /// With the length that fits, of such the one nearest to the present one; else with the present one.
  std::optional<double> axleShiftM;
  std::optional<int> links;  ///< of that length; none where none fits
};

/// By which figure they stand, the best first: the quickest lap or drive, the shortest gearing.
enum class PairOrder { Lap, Drive, Ratio };
inline constexpr Words<PairOrder, 3> kPairOrderWords{
    {{PairOrder::Lap, "lap"}, {PairOrder::Drive, "drive"}, {PairOrder::Ratio, "ratio"}}};

/// The usual range of the ladder round the ridden track. Pairs that fit come first unless they stand by
/// ratio; those without the figure come last, by ratio.
std::vector<ReachedPair> pairsInReach(const Profile& profile, PairOrder order);

/// Whether a pair has the figure of an order: a lap needs a track, a drive a torque curve.
bool hasMeasure(const ReachedPair& pair, PairOrder order);

/// The order that a profile asks for: laps where it has a track, else ratios.
PairOrder usualPairOrder(const Profile& profile);

/// `{"format", "version", "bike", "track", "rows": [{front_teeth, rear_teeth, final_ratio, lap_s, drive_s,
/// top_speed_kmh, fits, axle_shift_mm, links}]}`.
std::string pairsJson(const Profile& profile, const std::vector<ReachedPair>& pairs);

/// The same rows as comma-separated values (RFC 4180 with plain line feeds), keys as titles.
std::string pairsCsv(const std::vector<ReachedPair>& pairs);

}  // namespace layshaft
