// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan.h"

#include <algorithm>
#include <cmath>

#include "core/defaults.h"
#include "core/study/lean.h"
#include "core/study/setup_figures.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kRolloutUncertainty = 0.02;  // of an estimate from the tyre size

std::optional<Band> bandOf(const std::optional<double>& a, const std::optional<double>& b) {
  if (!a || !b) return std::nullopt;
  return Band{std::min(*a, *b), std::max(*a, *b)};
}

std::optional<double> driveTime(const RunFigures& run) {
  return run.drive ? std::optional(run.drive->timeS) : std::nullopt;
}

/// The same setup with one thing otherwise.
struct Variant {
  std::optional<TopSpeed> top;
  RunFigures run;
};

Variant variantOf(const Asked& asked, const Setup& setup, const Rollout& rollout, const Fitted& fitted) {
  const RoadModel model(asked.bike, asked.road, setup, rollout, fitted);
  return {topSpeed(model), runFigures(model, asked.drive, std::nullopt, false)};
}

void addBands(RoadPlan& road, const Asked& asked, const Setup& setup, const Rollout& rollout,
              const Fitted& fitted) {
  const auto off = [&](double factor) {
    Rollout other = rollout;
    other.metres *= factor;
    return variantOf(asked, setup, other, fitted);
  };
  const Variant low = off(1.0 - kRolloutUncertainty), high = off(1.0 + kRolloutUncertainty);
  if (low.top && high.top) road.topSpeedBandMps = bandOf(low.top->speedMps, high.top->speedMps);
  road.zeroTo60BandS = bandOf(low.run.zeroTo60MphS, high.run.zeroTo60MphS);
  road.zeroTo100BandS = bandOf(low.run.zeroTo100KmhS, high.run.zeroTo100KmhS);
  road.quarterMileBandS = bandOf(low.run.quarterMileS, high.run.quarterMileS);
  road.driveBandS = bandOf(driveTime(low.run), driveTime(high.run));
  road.driveAtLeastRolloutS = driveTime(low.run);
  road.driveAtMostRolloutS = driveTime(high.run);
}

SprocketPlan sprocketPlanOf(const Asked& asked, const Setup& stock, const Setup& setup,
                            const SetupFigures& figures) {
  const Rollout& rollout = figures.gearing.rollout;
  SprocketPlan plan{.front = sprocketMass(stock, setup, SprocketPlace::Front),
                    .rear = sprocketMass(stock, setup, SprocketPlace::Rear),
                    .saving = sprocketSaving(stock, setup, rollout.radiusM())};
  if (!plan.saving || plan.saving->equivalentKg == 0.0 || !asked.bike->accelerates()) return plan;
  // The same ride with stock's masses and with these; one of them is mostly the ride that there is.
  const auto rideWith = [&](const Fitted& changed) {
    return changed == figures.fitted ? figures.run : variantOf(asked, setup, rollout, changed).run;
  };
  const double shift = figures.fitted.axleShiftM;
  const RunFigures heavy = rideWith({.axleShiftM = shift});
  const RunFigures light = rideWith(withSaving(*plan.saving, shift));
  const auto less = [](const std::optional<double>& a, const std::optional<double>& b) {
    return a && b ? std::optional(*a - *b) : std::nullopt;
  };
  plan.saving->zeroTo60S = less(heavy.zeroTo60MphS, light.zeroTo60MphS);
  plan.saving->zeroTo100S = less(heavy.zeroTo100KmhS, light.zeroTo100KmhS);
  plan.saving->quarterMileS = less(heavy.quarterMileS, light.quarterMileS);
  plan.saving->driveS = less(driveTime(heavy), driveTime(light));
  return plan;
}

/// The top speed, or what the last gear would reach at the rev limit; none where neither is known.
std::optional<double> fastest(const SetupPlan& setup) {
  if (setup.road.topSpeed) return setup.road.topSpeed->speedMps;
  return setup.gearing.gears.empty() ? std::nullopt : setup.gearing.gears.back().speedAtRevLimitMps;
}

/// `stock` is null for stock itself.
SetupPlan setupPlanOf(const Circumstances& given, const Asked& asked, const SetupPlan* stock,
                      const Setup& setup) {
  const Setup& stockSetup = stock ? stock->setup : setup;
  SetupFigures figures = setupFigures(given, asked, stockSetup, setup);
  const Gearing& stockGearing = stock ? stock->gearing : figures.gearing;
  const Rollout& rollout = figures.gearing.rollout;
  SetupPlan result{.name = {},
                   .setup = setup,
                   .gearing = figures.gearing,
                   .change = gearingChange(stockSetup, stockGearing, figures.gearing),
                   .speedometer = {},
                   .leanFactor = {},
                   .cornerExitRpm = {},
                   .chainRun = figures.chainRun,
                   .sprockets = sprocketPlanOf(asked, stockSetup, setup, figures),
                   .road = {.pull = figures.pull,
                            .limits = figures.limits,
                            .topSpeed = figures.topSpeed,
                            .run = figures.run},
                   .model = figures.model,
                   .lap = {}};
  result.road.driveAtLeastRolloutS = result.road.driveAtMostRolloutS = driveTime(figures.run);
  if (asked.bike->accelerates() && rollout.source == RolloutSource::TyreSize)
    addBands(result.road, asked, setup, rollout, figures.fitted);
  if (asked.leanDeg) result.leanFactor = leanFactor(setup, rollout, *asked.leanDeg);
  if (const auto& drive = figures.run.drive; drive && result.leanFactor) {
    const RunPlan& start = drive->plan;
    result.cornerExitRpm = result.gearing.rpm(asked.drive->exitMps, start.gear) * *result.leanFactor;
    if (start.slips)
      result.cornerExitRpm = std::max(*result.cornerExitRpm, result.model->launchRpm(start.gear));
  }
  if (given.bike.speedometer)
    result.speedometer = speedometer(*given.bike.speedometer, stockGearing, figures.gearing, fastest(result));
  return result;
}

/// What an earlier plan knows of setups that this one asks for again.
class Known {
 public:
  /// `before` may be null.
  Known(const PlanInput& input, const Plan* before) {
    if (!before || !(before->input.shared == input.shared)) return;
    asked_ = {before->pullBike, before->road, before->drive, before->rollOn, before->leanDeg};
    if (!(before->input.stock == input.stock)) return;
    add(before->stock);
    add(before->proposed);
    for (const SetupPlan& pin : before->pins) add(pin);
    ofBefore_ = plans_.size();
  }

  const std::optional<Asked>& asked() const { return asked_; }
  const SetupPlan* find(const Setup& setup) const {
    for (const SetupPlan* plan : plans_)
      if (plan->setup == setup) return plan;
    return nullptr;
  }
  /// Whether a plan that was found is of the setups that were added later.
  bool isOfThisPlan(const SetupPlan* plan) const {
    return std::find(plans_.begin() + static_cast<std::ptrdiff_t>(ofBefore_), plans_.end(), plan) !=
           plans_.end();
  }
  void add(const SetupPlan& plan) { plans_.push_back(&plan); }

 private:
  std::optional<Asked> asked_;
  std::vector<const SetupPlan*> plans_;
  std::size_t ofBefore_ = 0;
};

ShiftPointSource sourceOf(const PullBike& bike) {
  if (bike.shiftRpm) return ShiftPointSource::Typed;
  return bike.accelerates() ? ShiftPointSource::Best : ShiftPointSource::RevLimit;
}

/// The track as the bike meets it; what the plan `before`, if there, knows of the same one is taken over.
std::shared_ptr<const LapComparison> lapsOf(const PlanInput& input, const Asked& asked, const Plan* before) {
  if (!input.track || !asked.bike->accelerates()) return nullptr;
  if (before && before->input.shared == input.shared && before->input.track == input.track)
    return before->laps;
  return std::make_shared<const LapComparison>(input.shared, asked, *input.track);
}

/// What the plan `before`, if there, knows of the same wear is taken over.
std::optional<WearFigures> wearOf(const PlanInput& input, const Plan* before) {
  if (before && before->input.wear == input.wear) return before->wear;
  return input.wear ? std::optional(wear(*input.wear)) : std::nullopt;
}

}  // namespace

std::optional<LapChange> lapChange(const Plan& plan, const SetupPlan& setup) {
  if (!plan.laps || !plan.stock.lap || !setup.lap) return std::nullopt;
  const Setup& stock = plan.stock.setup;
  return plan.laps->change(stock, plan.laps->times(stock, stock), setup.setup);
}

RollOnFigures rollOnInMiles(const SetupPlan& setup) {
  if (!setup.model || !setup.model->bike().accelerates()) return {};
  return rollOnFigures(*setup.model, units::mpsFromMph(defaults::kRollOnFromMph),
                       units::mpsFromMph(defaults::kRollOnToMph));
}

std::optional<DriveChange> driveChange(const RoadPlan& from, const RoadPlan& to) {
  if (!from.run.drive || !to.run.drive) return std::nullopt;
  const double seconds = to.run.drive->timeS - from.run.drive->timeS;
  double band = 0.0;
  for (const auto end : {&RoadPlan::driveAtLeastRolloutS, &RoadPlan::driveAtMostRolloutS})
    if (from.*end && to.*end) band = std::max(band, std::abs(*(to.*end) - *(from.*end) - seconds));
  return DriveChange{seconds, band};
}

std::vector<std::string_view> sawtoothLacks(const Plan& plan) {
  std::vector<std::string_view> lacks;
  if (!plan.revLimitRpm) lacks.emplace_back("bike.engine.rev_limit_rpm");
  if (plan.stock.gearing.gears.empty()) lacks.emplace_back("stock.gear_ratios");
  return lacks;
}

std::vector<std::string_view> lapLacks(const Plan& plan) {
  std::vector<std::string_view> lacks;
  if (!plan.input.track) lacks.emplace_back("tracks");
  for (const auto* of : {&plan.pullBike->forceLacks, &plan.pullBike->resistanceLacks})
    lacks.insert(lacks.end(), of->begin(), of->end());
  if (plan.laps) {
    const auto& ofCourse = plan.laps->allowed().course().lacks;
    lacks.insert(lacks.end(), ofCourse.begin(), ofCourse.end());
  }
  return lacks;
}

Plan plan(PlanInput input, const Plan* before) {
  const Circumstances& given = input.shared;
  Known known(input, before);
  const Asked asked = known.asked() ? *known.asked() : layshaft::asked(given);
  const auto laps = lapsOf(input, asked, before);
  const bool sameLaps = before && before->laps == laps;
  const SetupPlan* stock = nullptr;
  const auto planOf = [&](const Setup& setup, const std::string& name) {
    const SetupPlan* same = known.find(setup);
    SetupPlan result = same ? *same : setupPlanOf(given, asked, stock, setup);
    result.name = name;
    if (same && (sameLaps || known.isOfThisPlan(same))) return result;
    const auto lap = laps ? laps->figures(input.stock, setup) : std::nullopt;
    result.lap = lap ? std::make_shared<const LapFigures>(*lap) : nullptr;
    return result;
  };
  SetupPlan ofStock = planOf(input.stock, {});
  stock = &ofStock;
  known.add(ofStock);
  SetupPlan ofProposed = planOf(input.proposed, {});
  known.add(ofProposed);
  std::vector<SetupPlan> ofPins;
  ofPins.reserve(input.pins.size());  // what is known stays where it is
  for (const NamedSetup& pin : input.pins) {
    ofPins.push_back(planOf(pin.setup, pin.name));
    known.add(ofPins.back());
  }
  // The initialisers are worked through in order, the input last.
  return {.bikeName = input.bikeName,  // NOLINT(bugprone-use-after-move)
          .revLimitRpm = given.bike.engine.revLimitRpm,
          .idleRpm = asked.bike->idleRpm,
          .shiftPoints = sourceOf(*asked.bike),
          .pullBike = asked.bike,
          .road = asked.road,
          .drive = asked.drive,
          .rollOn = asked.rollOn,
          .leanDeg = asked.leanDeg,
          .chainRoom = given.bike.chainRun.value_or(ChainRun{}),
          .stock = std::move(ofStock),
          .proposed = std::move(ofProposed),
          .pins = std::move(ofPins),
          .wear = wearOf(input, before),
          .laps = laps,
          .input = std::move(input)};
}

Plan plan(const Profile& profile) {
  return plan(planInput(profile));
}

}  // namespace layshaft
