// SPDX-License-Identifier: GPL-3.0-or-later
#include <limits>

#include "core/bike/track_rules.h"
#include "core/file.h"
#include "core/profile_file.h"
#include "core/profile_file/fields.h"
#include "core/profile_file/reader.h"

namespace layshaft {
namespace {

using profile_file::Json;
using profile_file::Reader;

/// Format and version come first: what a newer program wrote is refused for that, not for a key it changed.
void header(Reader& reader, std::optional<Problem>& problem) {
  if (const Json* format = reader.findNeeded("format"))
    if (*format != kProfileFormat)
      reader.fail({.kind = Problem::Kind::WrongFormat,
                   .path = "format",
                   .given = profile_file::shortened(*format),
                   .allowed = {std::string(kProfileFormat)}});
  int version = 0;
  reader.needWhole("version", version, Limit{1, 1e9});
  if (!problem && version > kProfileVersion)
    reader.fail({.kind = Problem::Kind::NewerVersion,
                 .path = "version",
                 .given = std::to_string(version),
                 .high = kProfileVersion});
}

/// Stock must have the four keys without which no gearing can be compared; what its gears are may be unknown.
std::optional<Setup> stockFrom(Reader& reader, std::optional<Problem>& problem) {
  const Json* value = reader.findNeeded("stock");
  if (!value) return std::nullopt;
  Reader child(*value, "stock", problem);
  SetupChange all;
  profile_file::fields(child, all);
  if (!all.frontTeeth) child.missing("front_teeth");
  if (!all.rearTeeth) child.missing("rear_teeth");
  if (!all.rearTyre) child.missing("rear_tyre");
  if (!all.primaryRatio) child.missing("primary_ratio");
  if (problem) return std::nullopt;
  return Setup{*all.frontTeeth,
               *all.rearTeeth,
               *all.rearTyre,
               *all.primaryRatio,
               all.gearRatios.value_or(GearRatios()),
               all.options};
}

Problem above(const char* path, double given, double low, double high, const char* unit, const char* other) {
  return {.kind = Problem::Kind::OutOfRange,
          .path = path,
          .given = numberText(given),
          .low = low,
          .high = high,
          .unit = unit,
          .below = other};
}

std::string gearKey(const char* key, std::size_t gear) {
  return key + ("[" + std::to_string(gear) + "]");
}

Problem otherRatio(std::string path, const GearTeeth& teeth, double ratio, std::string ratioPath) {
  return {.kind = Problem::Kind::OtherRatio,
          .path = std::move(path),
          .given = std::to_string(teeth.driven) + "/" + std::to_string(teeth.driving),
          .low = teeth.ratio(),
          .high = ratio,
          .below = std::move(ratioPath)};
}

/// Teeth of gears that do not make the ratio which a setup has for them. `prefix` and `ratioPrefix` are where
/// the teeth and the ratios stand: a change may give teeth to stock's ratios.
std::optional<Problem> teethConflict(const SetupOptions& own, double primaryRatio, const GearRatios& ratios,
                                     const std::string& prefix, const std::string& primaryPrefix,
                                     const std::string& gearsPrefix) {
  if (own.primaryTeeth && !own.primaryTeeth->make(primaryRatio))
    return otherRatio(prefix + "primary_teeth", *own.primaryTeeth, primaryRatio,
                      primaryPrefix + "primary_ratio");
  if (own.gearTeeth.size() > ratios.count())
    return Problem{.kind = Problem::Kind::WrongCount,
                   .path = prefix + "gear_teeth",
                   .given = std::to_string(own.gearTeeth.size()),
                   .high = static_cast<double>(ratios.count()),
                   .below = gearsPrefix + "gear_ratios"};
  for (std::size_t gear = 0; gear < own.gearTeeth.size(); ++gear)
    if (const auto& teeth = own.gearTeeth[gear]; teeth && !teeth->make(ratios[gear]))
      return otherRatio(prefix + gearKey("gear_teeth", gear), *teeth, ratios[gear],
                        gearsPrefix + gearKey("gear_ratios", gear));
  return std::nullopt;
}

std::optional<Problem> gearConflict(const SetupChange& change, const Setup& stock,
                                    const std::string& prefix) {
  const std::string stocks = "stock.";
  // What differs from something that nobody knows says nothing.
  if (change.gearRatios && stock.gearRatios.empty())
    return Problem{.kind = Problem::Kind::MissingKey, .path = stocks + "gear_ratios"};
  return teethConflict(change.options, change.primaryRatio.value_or(stock.primaryRatio),
                       change.gearRatios ? *change.gearRatios : stock.gearRatios, prefix,
                       change.primaryRatio ? prefix : stocks, change.gearRatios ? prefix : stocks);
}

}  // namespace

std::optional<Problem> conflictIn(const Profile& profile) {
  const Engine& engine = profile.bike.engine;
  constexpr const char* kRevLimit = "bike.engine.rev_limit_rpm";
  const double limit = engine.revLimitRpm.value_or(std::numeric_limits<double>::infinity());
  if (engine.idleRpm && *engine.idleRpm >= limit)
    return above("bike.engine.idle_rpm", *engine.idleRpm, limits::kIdleRpm.low, limit, "rpm", kRevLimit);
  if (engine.shiftRpm && *engine.shiftRpm > limit)
    return above("bike.engine.shift_rpm", *engine.shiftRpm, limits::kShiftRpm.low, limit, "rpm", kRevLimit);
  if (profile.ride && profile.ride->launchRpm && *profile.ride->launchRpm > limit)
    return above("ride.launch_rpm", *profile.ride->launchRpm, limits::kLaunchRpm.low, limit, "rpm",
                 kRevLimit);
  if (const auto& chassis = profile.bike.chassis; chassis && chassis->cgAheadOfRearAxleMm &&
                                                  chassis->wheelbaseMm &&
                                                  *chassis->cgAheadOfRearAxleMm > *chassis->wheelbaseMm)
    return above("bike.chassis.cg_ahead_of_rear_axle_mm", *chassis->cgAheadOfRearAxleMm,
                 limits::kCgAheadMm.low, *chassis->wheelbaseMm, "mm", "bike.chassis.wheelbase_mm");
  if (const auto& run = profile.bike.chainRun) {
    if (run->smallestFrontTeeth && run->largestFrontTeeth &&
        *run->smallestFrontTeeth > *run->largestFrontTeeth)
      return above("bike.chain_run.smallest_front_teeth", *run->smallestFrontTeeth, limits::kFrontTeeth.low,
                   *run->largestFrontTeeth, "", "bike.chain_run.largest_front_teeth");
    if (run->smallestRearTeeth && run->largestRearTeeth && *run->smallestRearTeeth > *run->largestRearTeeth)
      return above("bike.chain_run.smallest_rear_teeth", *run->smallestRearTeeth, limits::kRearTeeth.low,
                   *run->largestRearTeeth, "", "bike.chain_run.largest_rear_teeth");
  }
  const Setup& stock = profile.stock;
  if (auto problem =
          teethConflict(stock.options, stock.primaryRatio, stock.gearRatios, "stock.", "stock.", "stock."))
    return problem;
  if (auto problem = gearConflict(profile.proposed, stock, "proposed.")) return problem;
  for (std::size_t i = 0; i < profile.pins.size(); ++i)
    if (auto problem = gearConflict(profile.pins[i].change, stock, gearKey("pins", i) + ".")) return problem;
  return tracksProblem(profile);
}

Result<Profile> readProfile(std::string_view text) {
  auto parsed = profile_file::parseJson(text);
  if (!parsed) return parsed.problem();
  const Json& root = *parsed;

  std::optional<Problem> problem;
  Reader reader(root, "", problem);
  header(reader, problem);

  std::string name, notes, customer;
  Bike bike;
  reader.needText("name", name, limits::kLongestName);
  reader.optionalText("notes", notes, limits::kLongestNotes);
  reader.optionalText("customer", customer, limits::kLongestName);
  reader.needObject("bike", bike);
  const auto stock = stockFrom(reader, problem);
  if (problem) return *problem;

  Profile profile{.name = name, .notes = notes, .customer = customer, .bike = bike, .stock = *stock};
  std::optional<SetupChange> proposed;
  reader.object("proposed", proposed);
  if (proposed) profile.proposed = *proposed;
  profile_file::lists(reader, profile);
  if (!problem) problem = conflictIn(profile);
  if (problem) return *problem;
  return profile;
}

Result<Profile> loadProfile(const std::filesystem::path& file) {
  const auto text = readFile(file, kLargestProfileBytes);
  return text ? readProfile(*text) : Result<Profile>(text.problem());
}

}  // namespace layshaft
