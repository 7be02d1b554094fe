// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan.h"

#include <algorithm>

#include "core/bike/pair.h"
#include "core/study/asked.h"
#include "core/study/chain_run.h"
#include "core/study/lean.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kRolloutUncertainty = 0.02;  // of an estimate from the tyre size
constexpr double kQuarterMileM = units::kMetresPerMile / 4.0;

/// What all setups of a plan share.
struct Question {
  const Profile& profile;
  std::shared_ptr<const PullBike> bike;
  std::optional<DriveRequest> drive;
  RollOnRequest rollOn;
  std::optional<double> leanDeg;
};

Question questionOf(const Profile& profile) {
  const Ride ride = profile.ride.value_or(Ride{});
  return {.profile = profile,
          .bike = std::make_shared<const PullBike>(pullBike(profile.bike, ride)),
          .drive = driveOf(profile),
          .rollOn = rollOnOf(profile),
          .leanDeg = ride.leanDeg};
}

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

Variant variantOf(const Question& question, const Setup& setup, const Rollout& rollout,
                  const Fitted& fitted) {
  std::optional<PullModel> model(std::in_place, question.bike, setup, rollout, fitted);
  const ShiftPoints shifts = shiftPointsOf(question.profile.bike.engine, model, setup.gearRatios.count());
  model->setLaunchRpm(launchRpm(*question.bike, shifts));
  return {topSpeed(*model), runFigures(*model, shifts, question.drive, std::nullopt, false)};
}

void addBands(RoadPlan& road, const Question& question, const Setup& setup, const Rollout& rollout,
              const Fitted& fitted) {
  const auto off = [&](double factor) {
    Rollout other = rollout;
    other.metres *= factor;
    return variantOf(question, setup, other, fitted);
  };
  const Variant low = off(1.0 - kRolloutUncertainty), high = off(1.0 + kRolloutUncertainty);
  if (low.top && high.top) road.topSpeedBandMps = bandOf(low.top->speedMps, high.top->speedMps);
  road.zeroTo100BandS = bandOf(low.run.zeroTo100KmhS, high.run.zeroTo100KmhS);
  road.quarterMileBandS = bandOf(low.run.quarterMileS, high.run.quarterMileS);
  road.driveBandS = bandOf(driveTime(low.run), driveTime(high.run));
}

/// `run` is the ride with what `changed` says.
SprocketPlan sprocketPlanOf(const Question& question, const Setup& stock, const Setup& setup,
                            const Rollout& rollout, const Fitted& changed, const RunFigures& run) {
  SprocketPlan plan{.front = sprocketMass(stock, setup, SprocketPlace::Front),
                    .rear = sprocketMass(stock, setup, SprocketPlace::Rear),
                    .saving = sprocketSaving(stock, setup, rollout.radiusM())};
  if (!plan.saving || plan.saving->equivalentKg == 0.0 || !question.bike->accelerates()) return plan;
  // The same ride with stock's masses and with these; one of them is mostly the ride that there is.
  const auto rideWith = [&](const Fitted& fitted) {
    return fitted == changed ? run : variantOf(question, setup, rollout, fitted).run;
  };
  const RunFigures heavy = rideWith({.axleShiftM = changed.axleShiftM});
  const RunFigures light = rideWith(withSaving(*plan.saving, changed.axleShiftM));
  const auto less = [](const std::optional<double>& a, const std::optional<double>& b) {
    return a && b ? std::optional(*a - *b) : std::nullopt;
  };
  plan.saving->zeroTo100S = less(heavy.zeroTo100KmhS, light.zeroTo100KmhS);
  plan.saving->quarterMileS = less(heavy.quarterMileS, light.quarterMileS);
  plan.saving->driveS = less(driveTime(heavy), driveTime(light));
  return plan;
}

RoadPlan roadPlanOf(const Question& question, const Setup& setup, std::optional<PullModel>& model,
                    const ShiftPoints& shifts, const Gearing& gearing, const Fitted& fitted) {
  RoadPlan road;
  if (model) {
    road.pull = peakPull(*model);
    model->setLaunchRpm(launchRpm(*question.bike, shifts));
    road.curves = pullCurves(*model, shifts);
  }
  if (!model || !question.bike->accelerates()) {
    // Only the gearing is known: the last gear at the limit.
    road.topSpeed =
        TopSpeed{gearing.gears.back().speedAtRevLimitMps, gearing.gears.back().gear, std::nullopt};
    return road;
  }
  road.topSpeed = topSpeed(*model);
  road.run = runFigures(*model, shifts, question.drive, question.rollOn);
  const Run start(*model, shifts, 0.0, 0, Run::Clutch::Slipping, kQuarterMileM, 0.0);
  road.standingStart = start.trace();
  road.standingShifts = start.shifts();
  if (question.drive)
    if (const auto run = bestRun(*model, shifts, question.drive->exitMps, question.drive->lengthM, 0.0)) {
      road.drive = run->trace();
      road.driveShifts = run->shifts();
    }
  if (gearing.rollout.source == RolloutSource::TyreSize)
    addBands(road, question, setup, gearing.rollout, fitted);
  return road;
}

SetupPlan planOf(const Question& question, Setup setup, const SetupPlan* stock, std::string name = {}) {
  const Profile& profile = question.profile;
  const Rollout rollout = rolloutOf(setup);
  const Setup& stockSetup = stock ? stock->setup : setup;
  const Fitted changed = fitted(stockSetup, setup);
  std::optional<PullModel> model;
  if (question.bike->hasForce()) model.emplace(question.bike, setup, rollout, changed);
  const ShiftPoints shifts = shiftPointsOf(question.profile.bike.engine, model, setup.gearRatios.count());
  Gearing figures = gearing(setup, gearingConditionsOf(profile, shifts));
  const Gearing& stockGearing = stock ? stock->gearing : figures;
  SetupPlan result{
      .name = std::move(name),
      .setup = setup,
      .gearing = figures,
      .change = gearingChange(stockSetup, stockGearing, figures),
      .speedometer = {},
      .chainRun = chainRun(profile.bike, stockSetup, setup, model ? &*model : nullptr, chainsOnHand(profile)),
      .sprockets = {},
      .road = roadPlanOf(question, setup, model, shifts, figures, changed)};
  result.sprockets = sprocketPlanOf(question, stockSetup, setup, rollout, changed, result.road.run);
  if (question.leanDeg) result.leanFactor = leanFactor(setup, rollout, *question.leanDeg);
  if (profile.bike.speedometer)
    result.speedometer = speedometer(*profile.bike.speedometer, stockGearing, figures,
                                     figures.gears.back().speedAtRevLimitMps);
  return result;
}

ShiftPointSource sourceOf(const Question& question) {
  if (question.profile.bike.engine.shiftRpm) return ShiftPointSource::Typed;
  return question.bike->accelerates() ? ShiftPointSource::Best : ShiftPointSource::RevLimit;
}

}  // namespace

Plan plan(const Profile& profile) {
  const Question question = questionOf(profile);
  SetupPlan stock = planOf(question, profile.stock, nullptr);
  SetupPlan proposed = planOf(question, applied(profile.proposed, profile.stock), &stock);
  Plan result{.bikeName = profile.name,
              .revLimitRpm = profile.bike.engine.revLimitRpm,
              .idleRpm = profile.bike.engine.idleRpm.value_or(0.0),
              .shiftPoints = sourceOf(question),
              .pullBike = question.bike,
              .drive = question.drive,
              .rollOn = question.rollOn,
              .leanDeg = question.leanDeg,
              .chainRoom = profile.bike.chainRun.value_or(ChainRun{}),
              .stock = std::move(stock),
              .proposed = std::move(proposed),
              .pins = {}};
  for (const Pin& pin : profile.pins)
    result.pins.push_back(planOf(question, applied(pin.change, profile.stock), &result.stock, pin.name));
  return result;
}

}  // namespace layshaft
