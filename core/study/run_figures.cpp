// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/defaults.h"
#include "core/study/run_search.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kEighthMileM = units::kMetresPerMile / 8.0, kQuarterMileM = units::kMetresPerMile / 4.0;

std::optional<double> timeOf(const std::optional<SoonestRun>& run) {
  return run ? std::optional(run->end.timeS) : std::nullopt;
}

std::optional<double> speedOf(const std::optional<SoonestRun>& run) {
  return run ? std::optional(run->end.speedMps) : std::nullopt;
}

void addStandingStart(RunFigures& figures, const RoadModel& model) {
  RunSearch start(model, 0.0, standingStarts(model));
  figures.zeroTo60MphS = timeOf(start.toSpeed(units::mpsFromMph(60.0)));
  figures.zeroTo100KmhS = timeOf(start.toSpeed(units::mpsFromKmh(100.0)));
  figures.hundredMetresS = timeOf(start.toDistance(100.0));
  const auto eighth = start.toDistance(kEighthMileM), quarter = start.toDistance(kQuarterMileM);
  figures.eighthMileS = timeOf(eighth);
  figures.eighthMileSpeedMps = speedOf(eighth);
  figures.quarterMileS = timeOf(quarter);
  figures.quarterMileSpeedMps = speedOf(quarter);
  if (!quarter) return;
  figures.quarterMilePlan = quarter->plan;
  figures.quarterMileShifts = quarter->end.gear - 1 - static_cast<int>(quarter->plan.gear);
}

std::optional<double> rollOnIn(const RoadModel& model, std::size_t gear, double from, double to) {
  if (gear >= model.gearCount() || !(to > from)) return std::nullopt;
  if (model.rpm(from, gear) < model.bike().idleRpm || to > model.limitMps(gear)) return std::nullopt;
  const auto end = Run(model, from, {.gear = gear}, 0.0, to).atSpeed(to);
  return end ? std::optional(end->timeS) : std::nullopt;
}

std::optional<DriveFigures> driveFigures(const RoadModel& model, const DriveRequest& drive) {
  const auto starts = drive.exitGear
                          ? startsIn(model, static_cast<std::size_t>(*drive.exitGear - 1), drive.exitMps)
                          : startsAt(model, drive.exitMps);
  const auto run = RunSearch(model, drive.exitMps, starts).toDistance(drive.lengthM);
  if (!run) return std::nullopt;
  const RunPoint& end = run->end;
  return DriveFigures{.timeS = end.timeS,
                      .endSpeedMps = end.speedMps,
                      .endGear = end.gear,
                      .endRpm = end.rpm,
                      .revRangeLeftRpm = model.torque().revLimitRpm() - end.rpm,
                      .secondsOnLimiter = end.limiterS,
                      .plan = run->plan};
}

RunTrace traceOf(const Run& run) {
  return {run.trace(), run.shifts()};
}

}  // namespace

RollOnFigures rollOnFigures(const RoadModel& model, double fromMps, double toMps) {
  return {.topS = rollOnIn(model, model.gearCount() - 1, fromMps, toMps),
          .bestS = timeOf(RunSearch(model, fromMps, startsAt(model, fromMps)).toSpeed(toMps))};
}

RunFigures runFigures(const RoadModel& model, const std::optional<DriveRequest>& drive,
                      const std::optional<RollOnRequest>& rollOn, bool rollOns) {
  const double from = units::mpsFromKmh(defaults::kRollOnFromKmh),
               to = units::mpsFromKmh(defaults::kRollOnToKmh);
  const std::size_t top = model.gearCount() - 1;
  RunFigures figures;
  addStandingStart(figures, model);
  if (rollOns) {
    const RollOnFigures usual = rollOnFigures(model, from, to);
    figures.rollOnTopS = usual.topS;
    figures.rollOnBestS = usual.bestS;
  }
  if (rollOn)
    figures.askedRollOnS = rollOnIn(model, rollOn->gear ? static_cast<std::size_t>(*rollOn->gear - 1) : top,
                                    rollOn->fromMps, rollOn->toMps);
  if (drive) figures.drive = driveFigures(model, *drive);
  return figures;
}

RunTrace standingStartTrace(const RoadModel& model, const RunPlan& plan) {
  return traceOf(Run(model, 0.0, plan, kQuarterMileM, 0.0));
}

RunTrace driveTrace(const RoadModel& model, const DriveRequest& drive, const RunPlan& plan) {
  return traceOf(Run(model, drive.exitMps, plan, drive.lengthM, 0.0));
}

}  // namespace layshaft
