// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pairs_report.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "core/bike/track_rules.h"
#include "core/input.h"
#include "core/number_text.h"
#include "core/study/ladder.h"
#include "core/units.h"

namespace layshaft {
namespace {

using Json = nlohmann::ordered_json;

constexpr int kVersion = 1;

ReachedPair reached(const LadderRow& row) {
  ReachedPair pair{.frontTeeth = row.frontTeeth,
                   .rearTeeth = row.rearTeeth,
                   .finalRatio = row.finalRatio,
                   .lapS = row.lapS,
                   .driveS = row.driveS(),
                   .topSpeedMps = row.topSpeedMps,
                   .fits = row.fits(),
                   .axleShiftM = {},
                   .links = {}};
  if (!row.chainRun) return pair;
  if (const auto length = nearestLength(*row.chainRun)) {
    pair.links = length->links;
    pair.axleShiftM = length->axleShiftM;
  } else {
    pair.axleShiftM = row.chainRun->axleShiftM;
  }
  return pair;
}

/// What is least stands first.
double measureOf(const ReachedPair& pair, PairOrder order) {
  if (order == PairOrder::Ratio) return -pair.finalRatio;
  return (order == PairOrder::Lap ? pair.lapS : pair.driveS)
      .value_or(std::numeric_limits<double>::infinity());
}

std::optional<double> kmh(const std::optional<double>& mps) {
  return mps ? std::optional(units::kmhFromMps(*mps)) : std::nullopt;
}

std::optional<double> millimetres(const std::optional<double>& metres) {
  return metres ? std::optional(units::millimetresFromMetres(*metres)) : std::nullopt;
}

Json orNull(const auto& value) {
  return value ? Json(*value) : Json(nullptr);
}

std::string cell(const std::optional<double>& value) {
  return value ? numberText(*value) : std::string();
}

}  // namespace

bool hasMeasure(const ReachedPair& pair, PairOrder order) {
  return std::isfinite(measureOf(pair, order));
}

PairOrder usualPairOrder(const Profile& profile) {
  return profile.tracks.empty() ? PairOrder::Ratio : PairOrder::Lap;
}

std::vector<ReachedPair> pairsInReach(const Profile& profile, PairOrder order) {
  LadderInput input = ladderInput(profile);
  input.aims.clear();  // nobody asks for them here
  std::vector<ReachedPair> pairs;
  for (const LadderRow& row : Ladder(input).rows(usualRange(input))) pairs.push_back(reached(row));
  std::stable_sort(pairs.begin(), pairs.end(), [order](const ReachedPair& a, const ReachedPair& b) {
    if (order != PairOrder::Ratio && a.fits != b.fits) return a.fits;
    const double first = measureOf(a, order), second = measureOf(b, order);
    return first != second ? first < second : a.finalRatio > b.finalRatio;
  });
  return pairs;
}

std::string pairsJson(const Profile& profile, const std::vector<ReachedPair>& pairs) {
  const Track* track = trackOfTheRide(profile);
  Json rows = Json::array();
  for (const ReachedPair& pair : pairs)
    rows.push_back({{"front_teeth", pair.frontTeeth},
                    {"rear_teeth", pair.rearTeeth},
                    {"final_ratio", pair.finalRatio},
                    {"lap_s", orNull(pair.lapS)},
                    {"drive_s", orNull(pair.driveS)},
                    {"top_speed_kmh", orNull(kmh(pair.topSpeedMps))},
                    {"fits", pair.fits},
                    {"axle_shift_mm", orNull(millimetres(pair.axleShiftM))},
                    {"links", orNull(pair.links)}});
  const Json root{{"format", "layshaft-ladder"},
                  {"version", kVersion},
                  {"bike", profile.name},
                  {"track", track ? Json(track->name) : Json(nullptr)},
                  {"rows", std::move(rows)}};
  return root.dump(2) + '\n';
}

std::string pairsCsv(const std::vector<ReachedPair>& pairs) {
  std::string text =
      "front_teeth,rear_teeth,final_ratio,lap_s,drive_s,top_speed_kmh,fits,axle_shift_mm,links\n";
  for (const ReachedPair& pair : pairs)
    text += std::to_string(pair.frontTeeth) + ',' + std::to_string(pair.rearTeeth) + ',' +
            numberText(pair.finalRatio) + ',' + cell(pair.lapS) + ',' + cell(pair.driveS) + ',' +
            cell(kmh(pair.topSpeedMps)) + ',' + (pair.fits ? "true" : "false") + ',' +
            cell(millimetres(pair.axleShiftM)) + ',' + (pair.links ? std::to_string(*pair.links) : "") + '\n';
  return text;
}

}  // namespace layshaft
