// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report.h"

#include <nlohmann/json.hpp>
#include <optional>
#include <string_view>

#include "core/number_text.h"
#include "core/short_text.h"
#include "core/traces.h"
#include "core/units.h"

namespace layshaft {
namespace {

using Json = nlohmann::ordered_json;

constexpr int kReportVersion = 1;

template <class T>
Json orNull(const std::optional<T>& value) {
  return value ? Json(*value) : Json(nullptr);
}

/// A figure of a part of the plan that may be missing as a whole.
template <class Part, class Figure>
Json figure(const std::optional<Part>& part, Figure Part::*member) {
  return part ? Json((*part).*member) : Json(nullptr);
}

std::string_view sourceWord(RolloutSource source) {
  return source == RolloutSource::Measured ? "measured" : "tyre_size";
}

std::string_view directionWord(Direction direction) {
  switch (direction) {
    case Direction::Shorter:
      return "shorter";
    case Direction::Taller:
      return "taller";
    case Direction::Same:
      break;
  }
  return "same";
}

std::string_view sizeWord(StepSize size) {
  switch (size) {
    case StepSize::Small:
      return "small";
    case StepSize::Moderate:
      return "moderate";
    case StepSize::Large:
      return "large";
    case StepSize::None:
      break;
  }
  return "none";
}

Json gearJson(const GearFigures& gear) {
  return {{"gear", gear.gear},
          {"ratio", gear.ratio},
          {"overall_ratio", gear.overallRatio},
          {"speed_at_rev_limit_mps", orNull(gear.speedAtRevLimitMps)},
          {"speed_per_1000_rpm_mps", gear.speedPer1000RpmMps},
          {"shift_rpm", orNull(gear.shiftRpm)},
          {"shift_speed_mps", orNull(gear.shiftSpeedMps)},
          {"rpm_after_shift", orNull(gear.rpmAfterShift)}};
}

Json cruiseJson(const Gearing& gearing) {
  return {{"speed_mps", orNull(gearing.cruiseSpeedMps)},
          {"gear", figure(gearing.cruise, &CruiseFigures::gear)},
          {"rpm", figure(gearing.cruise, &CruiseFigures::rpm)},
          {"turns_per_km", figure(gearing.cruise, &CruiseFigures::turnsPerKm)}};
}

std::string_view verdictWord(SpeedometerVerdict verdict) {
  switch (verdict) {
    case SpeedometerVerdict::ReadsLow:
      return "reads_low";
    case SpeedometerVerdict::ReadsHigh:
      return "reads_high";
    case SpeedometerVerdict::Within:
      break;
  }
  return "within";
}

Json speedometerJson(const std::optional<SpeedometerFigures>& figures) {
  Json verdict = nullptr, within = nullptr;
  if (figures && figures->verdict) {
    verdict = verdictWord(*figures->verdict);
    within = *figures->verdict == SpeedometerVerdict::Within;
  }
  return {{"indicated_over_true", figure(figures, &SpeedometerFigures::indicatedOverTrue)},
          {"odometer_over_true", figure(figures, &SpeedometerFigures::odometerOverTrue)},
          {"at_100_kmh_indicated_kmh", figure(figures, &SpeedometerFigures::at100KmhIndicatedKmh)},
          {"corrector_percent", figure(figures, &SpeedometerFigures::correctorPercent)},
          {"within_un_r39", std::move(within)},
          {"verdict", std::move(verdict)}};
}

std::string_view limitWord(LimitedBy limit) {
  switch (limit) {
    case LimitedBy::Drag:
      return "drag";
    case LimitedBy::Grip:
      return "grip";
    case LimitedBy::Lift:
      return "lift";
    case LimitedBy::RevLimit:
      break;
  }
  return "rev_limit";
}

Json pullJson(const SetupPlan& plan) {
  Json gears = Json::array();
  for (std::size_t g = 0; g < plan.gearing.gears.size(); ++g) {
    Json gear{{"gear", plan.gearing.gears[g].gear}, {"peak_force_n", nullptr},
              {"peak_force_speed_mps", nullptr},    {"limit", nullptr},
              {"limited_from_kmh", nullptr},        {"limited_to_kmh", nullptr}};
    if (g < plan.road.pull.size()) {
      gear["peak_force_n"] = plan.road.pull[g].peakForceN;
      gear["peak_force_speed_mps"] = plan.road.pull[g].peakForceSpeedMps;
    }
    if (g < plan.road.limits.size() && plan.road.limits[g]) {
      const GearLimit& limit = *plan.road.limits[g];
      gear["limit"] = limitWord(limit.by);
      gear["limited_from_kmh"] = units::kmhFromMps(limit.fromMps);
      gear["limited_to_kmh"] = units::kmhFromMps(limit.toMps);
    }
    gears.push_back(std::move(gear));
  }
  return {{"gears", std::move(gears)}};
}

Json topSpeedJson(const std::optional<TopSpeed>& top) {
  return {
      {"speed_mps", figure(top, &TopSpeed::speedMps)},
      {"gear", figure(top, &TopSpeed::gear)},
      {"limited_by", top ? Json(limitWord(top->limitedBy.value_or(LimitedBy::RevLimit))) : Json(nullptr)}};
}

Json driveJson(const std::optional<DriveFigures>& drive) {
  return {{"time_s", figure(drive, &DriveFigures::timeS)},
          {"end_speed_mps", figure(drive, &DriveFigures::endSpeedMps)},
          {"end_gear", figure(drive, &DriveFigures::endGear)},
          {"end_rpm", figure(drive, &DriveFigures::endRpm)},
          {"rev_range_left_rpm", figure(drive, &DriveFigures::revRangeLeftRpm)},
          {"seconds_on_limiter", figure(drive, &DriveFigures::secondsOnLimiter)},
          {"start_gear", drive ? Json(drive->startGear()) : Json(nullptr)},
          {"shifts", drive ? Json(drive->shifts()) : Json(nullptr)}};
}

Json runJson(const RunFigures& run) {
  return {{"zero_to_60_mph_s", orNull(run.zeroTo60MphS)},
          {"zero_to_100_kmh_s", orNull(run.zeroTo100KmhS)},
          {"hundred_metres_s", orNull(run.hundredMetresS)},
          {"eighth_mile_s", orNull(run.eighthMileS)},
          {"eighth_mile_speed_mps", orNull(run.eighthMileSpeedMps)},
          {"quarter_mile_s", orNull(run.quarterMileS)},
          {"quarter_mile_speed_mps", orNull(run.quarterMileSpeedMps)},
          {"roll_on_80_120_kmh_top_gear_s", orNull(run.rollOnTopS)},
          {"roll_on_80_120_kmh_best_gear_s", orNull(run.rollOnBestS)},
          {"roll_on_s", orNull(run.askedRollOnS)},
          {"drive", driveJson(run.drive)}};
}

std::string_view misfitWord(Misfit misfit) {
  switch (misfit) {
    case Misfit::AxleTooFarForward:
      return "axle_too_far_forward";
    case Misfit::AxleTooFarBack:
      return "axle_too_far_back";
    case Misfit::FrontTooLarge:
      return "front_too_large";
    case Misfit::FrontTooSmall:
      return "front_too_small";
    case Misfit::RearTooLarge:
      return "rear_too_large";
    case Misfit::RearTooSmall:
      return "rear_too_small";
    case Misfit::MixedSizes:
      return "mixed_sizes";
    case Misfit::ChainDoesNotReach:
      break;
  }
  return "chain_does_not_reach";
}

Json millimetres(const std::optional<double>& metres) {
  return metres ? Json(units::millimetresFromMetres(*metres)) : Json(nullptr);
}

/// For belts tension goes by the manual's method: there is no limit of slack.
Json swingarmJson(const std::optional<SwingarmFigures>& figures, bool belt) {
  const TightSpot* tight = figures && figures->tightSpot ? &*figures->tightSpot : nullptr;
  return {{"upper_run_deg", figure(figures, &SwingarmFigures::upperRunDeg)},
          {"anti_squat_percent", figures ? orNull(figures->antiSquatPercent) : Json(nullptr)},
          {"tight_spot_deg", tight ? Json(tight->angleDeg) : Json(nullptr)},
          {"tight_spot_gain_mm", tight ? millimetres(tight->gainM) : Json(nullptr)},
          {"least_play_mm", tight && !belt ? millimetres(tight->leastPlayM) : Json(nullptr)}};
}

Json chainRunJson(const std::optional<ChainRunFigures>& run) {
  Json lengths = nullptr, misfits = nullptr;
  if (run) {
    lengths = Json::array();
    for (const FittingLength& length : run->lengthsThatFit)
      lengths.push_back({{"links", length.links},
                         {"axle_shift_mm", millimetres(length.axleShiftM)},
                         {"shorten_by_links", orNull(length.shortenBy)},
                         {"spare_links", figure(length.spare, &SpareCut::links)},
                         {"shorten_spare_by_links", figure(length.spare, &SpareCut::shortenBy)}});
    misfits = Json::array();
    for (const Misfit misfit : run->misfits) misfits.push_back(misfitWord(misfit));
  }
  return {{"links", figure(run, &ChainRunFigures::links)},
          {"centre_distance_mm", run ? millimetres(run->centreDistanceM) : Json(nullptr)},
          {"axle_shift_mm", run ? millimetres(run->axleShiftM) : Json(nullptr)},
          {"wheelbase_mm", run ? millimetres(run->wheelbaseM) : Json(nullptr)},
          {"fits", run ? orNull(run->fits) : Json(nullptr)},
          {"misfits", std::move(misfits)},
          {"links_that_fit", std::move(lengths)},
          {"front_wrap_deg", run ? orNull(run->frontWrapDeg) : Json(nullptr)},
          {"top_chain_speed_mps", run ? orNull(run->topChainSpeedMps) : Json(nullptr)},
          {"peak_tension_n", run ? orNull(run->peakTensionN) : Json(nullptr)},
          {"safety_factor", run ? orNull(run->safetyFactor) : Json(nullptr)},
          {"common_factor_front", figure(run, &ChainRunFigures::commonFactorFront)},
          {"common_factor_rear", figure(run, &ChainRunFigures::commonFactorRear)},
          {"chordal_front_percent", figure(run, &ChainRunFigures::chordalFrontPercent)},
          {"chordal_rear_percent", figure(run, &ChainRunFigures::chordalRearPercent)},
          {"measured_centre_off_links", run ? orNull(run->measuredCentreOffLinks) : Json(nullptr)},
          {"swingarm", swingarmJson(run ? run->swingarm : std::nullopt, run && run->belt)}};
}

Json sprocketMassJson(const std::optional<SprocketMass>& mass) {
  return {{"mass_kg", figure(mass, &SprocketMass::kg)},
          {"estimated", figure(mass, &SprocketMass::estimated)}};
}

/// What the sprockets weigh, and what the setup saves against stock.
Json sprocketsJson(const SprocketPlan& plan) {
  const auto& saving = plan.saving;
  const auto seconds = [&](std::optional<double> SprocketSaving::*member) {
    return saving ? orNull((*saving).*member) : Json(nullptr);
  };
  return {{"front", sprocketMassJson(plan.front)},
          {"rear", sprocketMassJson(plan.rear)},
          {"saved_kg", figure(saving, &SprocketSaving::kg)},
          {"saved_equivalent_kg", figure(saving, &SprocketSaving::equivalentKg)},
          {"saving_counted", saving ? Json(saving->allCounted()) : Json(nullptr)},
          {"saved_zero_to_100_kmh_s", seconds(&SprocketSaving::zeroTo100S)},
          {"saved_quarter_mile_s", seconds(&SprocketSaving::quarterMileS)},
          {"saved_drive_s", seconds(&SprocketSaving::driveS)}};
}

/// Segments are named by their track.
Json lapJson(const std::shared_ptr<const LapFigures>& lap, const std::optional<Track>& track) {
  const auto value = [&](auto LapFigures::*member) { return lap ? Json((*lap).*member) : Json(nullptr); };
  Json segments = nullptr, pulls = nullptr;
  if (lap) {
    segments = Json::array();
    for (std::size_t i = 0; i < lap->segments.size(); ++i) {
      const LapSegment& segment = lap->segments[i];
      segments.push_back({{"name", track->segments[i].name},
                          {"time_s", segment.timeS},
                          {"entry_kmh", units::kmhFromMps(segment.entryMps)},
                          {"min_kmh", units::kmhFromMps(segment.minMps)},
                          {"exit_kmh", units::kmhFromMps(segment.exitMps)},
                          {"gear_at_min", orNull(segment.gearAtMin)},
                          {"rpm_at_min", orNull(segment.rpmAtMin)}});
    }
    pulls = Json::array();
    for (const LapPullFigures& pull : lap->pulls)
      pulls.push_back({{"from_m", pull.fromM},
                       {"to_m", pull.toM},
                       {"from_kmh", units::kmhFromMps(pull.fromMps)},
                       {"first_gear", pull.firstGear},
                       {"end_gear", pull.endGear},
                       {"end_rpm", pull.endRpm}});
  }
  return {{"track", track ? Json(track->name) : Json(nullptr)},
          {"time_s", value(&LapFigures::timeS)},
          {"top_speed_kmh", lap ? Json(units::kmhFromMps(lap->topMps)) : Json(nullptr)},
          {"shifts", value(&LapFigures::shifts)},
          {"limiter_s", value(&LapFigures::limiterS)},
          {"full_throttle_s", value(&LapFigures::fullThrottleS)},
          {"segments", std::move(segments)},
          {"pulls", std::move(pulls)}};
}

Json lapChangeJson(const Plan& plan) {
  const auto change = lapChange(plan, plan.proposed);
  return {{"time_s", figure(change, &LapChange::seconds)},
          {"band_s", figure(change, &LapChange::bandS)},
          {"of_which_axle_s", figure(change, &LapChange::axleS)}};
}

/// Why nobody laps the track: a word and the number of the segment, counted from 1, where one is to blame.
Json lapRefusalJson(const Plan& plan) {
  if (!plan.laps || !plan.laps->allowed().refusal()) return nullptr;
  const LapRefusal& refusal = *plan.laps->allowed().refusal();
  switch (refusal.why) {
    case LapRefusal::Why::NoBend:
      return {{"reason", "no_bend"}, {"segment", nullptr}};
    case LapRefusal::Why::BrakesTooWeak:
      return {{"reason", "brakes_too_weak"}, {"segment", refusal.segment + 1}};
    case LapRefusal::Why::Empty:
      break;
  }
  return {{"reason", "empty"}, {"segment", nullptr}};
}

/// What the profile lacks for a study.
Json lacksJson(const Plan& plan) {
  const PullBike& bike = *plan.pullBike;
  return {{"gearing", sawtoothLacks(plan)},
          {"pull", bike.forceLacks},
          {"resistance", bike.resistanceLacks},
          {"bounds", bike.boundsLack},
          {"chain_run", chainRunLacks(plan.stock.setup, plan.proposed.setup)},
          {"lap", lapLacks(plan)}};
}
/// What was taken where the profile leaves something open, or holds only what is usual in its class.
Json assumedJson(const PullBike& bike) {
  Json json = Json::object();
  for (const Assumed& assumed : bike.assumed) {
    const bool flag = assumed.key == "bike.engine.curve_estimated";
    json[std::string(assumed.key)] = flag ? Json(true) : Json(assumed.value);
  }
  for (const Assumed& typical : bike.typical) json[std::string(typical.key)] = typical.value;
  return json;
}

Json changeJson(const SetupPlan& stock, const SetupPlan& setup) {
  const GearingChange& change = setup.change;
  const auto drive = driveChange(stock.road, setup.road);
  return {{"final_ratio_percent", change.finalRatioPercent},
          {"gearing_percent", change.gearingPercent},
          {"direction", directionWord(change.direction)},
          {"size", sizeWord(change.size)},
          {"rear_teeth_equivalent", change.rearTeethEquivalent},
          {"whole_gearing_teeth_equivalent", change.wholeGearingTeethEquivalent},
          {"gears_percent", gearChangesPercent(stock.gearing, setup.gearing)},
          {"drive_s", figure(drive, &DriveChange::seconds)},
          {"drive_band_s", figure(drive, &DriveChange::bandS)},
          {"drive_equal", drive ? Json(drive->equal()) : Json(nullptr)}};
}

Json setupJson(const SetupPlan& plan, const std::optional<Track>& track) {
  Json json{{"front_teeth", plan.setup.frontTeeth.count()},
            {"rear_teeth", plan.setup.rearTeeth.count()},
            {"final_ratio", plan.gearing.finalRatio},
            {"rollout_m", plan.gearing.rollout.metres},
            {"rolling_radius_m", plan.gearing.rollout.radiusM()},
            {"rollout_source", sourceWord(plan.gearing.rollout.source)}};
  Json& gears = json["gears"] = Json::array();
  for (const GearFigures& gear : plan.gearing.gears) gears.push_back(gearJson(gear));
  json["cruise"] = cruiseJson(plan.gearing);
  json["pull"] = pullJson(plan);
  json["top_speed"] = topSpeedJson(plan.road.topSpeed);
  json["run"] = runJson(plan.road.run);
  json["corner_exit_rpm"] = orNull(plan.cornerExitRpm);
  json["speedometer"] = speedometerJson(plan.speedometer);
  json["chain_run"] = chainRunJson(plan.chainRun);
  json["sprockets"] = sprocketsJson(plan.sprockets);
  json["lap"] = lapJson(plan.lap, track);
  return json;
}

std::string csvNumber(const std::optional<double>& x) {
  return x ? numberText(*x) : std::string();
}

void csvRows(std::string& out, const std::string& name, const SetupPlan& plan) {
  for (const GearFigures& gear : plan.gearing.gears) {
    out += csvField(name) + ',' + std::to_string(plan.setup.frontTeeth.count()) + ',' +
           std::to_string(plan.setup.rearTeeth.count()) + ',' + numberText(plan.gearing.finalRatio) + ',' +
           numberText(plan.gearing.rollout.metres) + ',' +
           std::string(sourceWord(plan.gearing.rollout.source)) + ',' + std::to_string(gear.gear) + ',' +
           numberText(gear.ratio) + ',' + numberText(gear.overallRatio) + ',' +
           csvNumber(gear.speedAtRevLimitMps) + ',' + numberText(gear.speedPer1000RpmMps) + ',' +
           csvNumber(gear.shiftRpm) + ',' + csvNumber(gear.shiftSpeedMps) + ',' +
           csvNumber(gear.rpmAfterShift) + '\n';
  }
}

/// The numbers and words of a JSON object as columns, objects inside it under their own name; lists are left
/// out.
void addColumns(const Json& object, const std::string& prefix, std::string& titles, std::string& row) {
  for (const auto& [key, value] : object.items()) {
    if (value.is_object()) {
      addColumns(value, prefix + key + '_', titles, row);
    } else if (!value.is_array() && key != "misfits" && key != "links_that_fit") {
      titles += ',' + prefix + key;
      row += ',';
      if (value.is_number_float())
        row += numberText(value.template get<double>());
      else if (!value.is_null())
        row += value.dump();
    }
  }
}

/// Stock, proposed and pins under the names that tables give them.
template <class Row>
void forEachSetup(const Plan& plan, const Row& row) {
  row("stock", plan.stock);
  row("proposed", plan.proposed);
  for (const SetupPlan& pin : plan.pins) row(pin.name, pin);
}

Json verdictJson(const std::optional<WearVerdict>& verdict) {
  return verdict ? Json(wordFor(*verdict, kWearVerdictWords)) : Json(nullptr);
}

Json wearJson(const WearFigures& wear) {
  Json reasons = Json::array();
  for (const WearReason reason : wear.reasons) reasons.push_back(wordFor(reason, kWearReasonWords));
  const auto& end = wear.endOfLife;
  return {{"elongation_percent", orNull(wear.elongationPercent)},
          {"unevenness_percent", orNull(wear.unevennessPercent)},
          {"limit_percent", wear.limitPercent},
          {"chain", verdictJson(wear.chain)},
          {"front", verdictJson(wear.front)},
          {"rear", verdictJson(wear.rear)},
          {"set", verdictJson(wear.set)},
          {"reasons", std::move(reasons)},
          {"trend_percent_per_use", orNull(wear.trendPercentPerUse)},
          {"end_of_life_at", figure(end, &EndOfLife::at)},
          {"end_of_life_low", end ? orNull(end->low) : Json(nullptr)},
          {"end_of_life_high", end ? orNull(end->high) : Json(nullptr)},
          {"use_unit", wordFor(wear.useUnit, kUseUnitWords)}};
}

}  // namespace

std::string reportJson(const Plan& plan) {
  Json root{{"format", "layshaft-report"}, {"version", kReportVersion}, {"bike", plan.bikeName}};
  const auto& track = plan.input.track;
  root["stock"] = setupJson(plan.stock, track);
  root["proposed"] = setupJson(plan.proposed, track);
  root["change"] = changeJson(plan.stock, plan.proposed);
  root["lap_change"] = lapChangeJson(plan);
  root["lap_refusal"] = lapRefusalJson(plan);
  if (!plan.pins.empty()) {
    Json& pins = root["pins"] = Json::array();
    for (const SetupPlan& pin : plan.pins) {
      Json entry{{"name", pin.name}};
      entry.update(setupJson(pin, track));
      entry["change"] = changeJson(plan.stock, pin);
      pins.push_back(std::move(entry));
    }
  }
  if (plan.wear) root["wear"] = wearJson(*plan.wear);
  root["lacks"] = lacksJson(plan);
  root["assumed"] = assumedJson(*plan.pullBike);
  return root.dump(2) + '\n';
}

std::string csvField(const std::string& text) {
  std::string field = withoutControls(text);
  if (!field.empty() && std::string_view("=+-@\t\r").find(field.front()) != std::string_view::npos)
    field.insert(0, "'");
  if (field.find_first_of(",\"\r\n") == std::string::npos) return field;
  std::string quoted = "\"";
  for (const char c : field) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

std::string reportCsv(const Plan& plan) {
  std::string out =
      "setup,front_teeth,rear_teeth,final_ratio,rollout_m,rollout_source,gear,ratio,overall_ratio,"
      "speed_at_rev_limit_mps,speed_per_1000_rpm_mps,shift_rpm,shift_speed_mps,rpm_after_shift\n";
  forEachSetup(plan, [&](const std::string& name, const SetupPlan& setup) { csvRows(out, name, setup); });
  return out;
}

std::string pullCsv(const Plan& plan) {
  std::string out = "setup,gear,speed_mps,force_n,acceleration_mps2\n";
  forEachSetup(plan, [&](const std::string& name, const SetupPlan& setup) {
    int gear = 0;
    for (const auto& curve : pullCurves(setup).gears) {
      ++gear;
      for (const PullPoint& point : curve)
        out += csvField(name) + ',' + std::to_string(gear) + ',' + numberText(point.speedMps) + ',' +
               numberText(point.forceN) + ',' +
               (plan.pullBike->hasResistance() ? numberText(point.accelerationMps2) : std::string()) + '\n';
    }
  });
  return out;
}

std::string runCsv(const Plan& plan) {
  std::string out = "setup,run,time_s,distance_m,speed_mps,gear,rpm\n";
  forEachSetup(plan, [&](const std::string& name, const SetupPlan& setup) {
    const auto rows = [&](const char* run, const std::vector<RunPoint>& points) {
      for (const RunPoint& point : points)
        out += csvField(name) + ',' + run + ',' + numberText(point.timeS) + ',' +
               numberText(point.distanceM) + ',' + numberText(point.speedMps) + ',' +
               std::to_string(point.gear) + ',' + numberText(point.rpm) + '\n';
    };
    rows("standing_start", standingStartTrace(setup).points);
    rows("drive", driveTrace(setup, plan.drive).points);
  });
  return out;
}

std::string chainRunCsv(const Plan& plan) {
  std::string titles, rows;
  forEachSetup(plan, [&](const std::string& name, const SetupPlan& setup) {
    titles = "setup,front_teeth,rear_teeth";  // alike for every setup
    rows += csvField(name) + ',' + std::to_string(setup.setup.frontTeeth.count()) + ',' +
            std::to_string(setup.setup.rearTeeth.count());
    addColumns(chainRunJson(setup.chainRun), "", titles, rows);
    addColumns(sprocketsJson(setup.sprockets), "sprocket_", titles, rows);
    const auto& saving = setup.sprockets.saving;
    titles += ",sprocket_saved_zero_to_60_mph_s";
    rows += ',' + csvNumber(saving ? saving->zeroTo60S : std::nullopt);
    titles += ",slack_note";
    rows += ',';
    const auto& run = setup.chainRun;
    if (run && !run->belt && run->swingarm && run->swingarm->tightSpot)
      rows += csvField("least play is a limit below which the chain binds; never a setting");
    rows += '\n';
  });
  return titles + '\n' + rows;
}

}  // namespace layshaft
