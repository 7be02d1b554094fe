// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/run_search.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <functional>
#include <memory>

#include "core/study/asked.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

struct Sample {
  std::string name;
  Profile profile;
};

std::vector<Sample> searchSamples() {
  std::vector<Sample> samples;
  for (const auto& file : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles"))
    samples.push_back({file.path().stem().string(), loadProfile(file.path()).value()});
  return samples;
}

/// A setup of a sample with its overall gearing turned by a factor.
RoadModel turnedModel(const Asked& asked, const Profile& profile, const Setup& setup, double factor) {
  Setup turned = setup;
  turned.primaryRatio *= factor;
  return {asked.bike, asked.road, turned, rolloutOf(turned), fitted(profile.stock, turned)};
}

/// Whether every shift of a run is one that the next gear takes over from.
bool isAPlan(const RoadModel& model, const Run& run) {
  for (const RunShift& shift : run.shifts()) {
    const double after = model.coast(shift.speedMps, model.bike().shiftTimeS).speedMps;
    if (!takesOver(model, static_cast<std::size_t>(shift.fromGear), after)) return false;
  }
  return true;
}

using EndOf = std::function<std::optional<RunPoint>(const Run&)>;

/// The least time over every plan, each ridden for itself.
std::optional<double> leastOfAll(const RoadModel& model, double fromMps, const std::vector<RunPlan>& starts,
                                 double untilM, double untilMps, const EndOf& endOf) {
  std::optional<double> least;
  for (RunPlan plan : starts)
    for (plan.shifts = 0; plan.gear + static_cast<std::size_t>(plan.shifts) < model.gearCount();
         ++plan.shifts) {
      const Run run(model, fromMps, plan, untilM, untilMps);
      const auto end = isAPlan(model, run) ? endOf(run) : std::nullopt;
      if (end && (!least || end->timeS < *least)) least = end->timeS;
    }
  return least;
}

void expectLeast(const RoadModel& model, double fromMps, const std::vector<RunPlan>& starts) {
  RunSearch search(model, fromMps, starts);
  for (const double metres : {20.0, 100.0, 402.336, 1500.0}) {
    SCOPED_TRACE(std::to_string(metres) + " m");
    const auto endOf = [&](const Run& run) { return run.atDistance(metres); };
    const auto least = leastOfAll(model, fromMps, starts, metres, 0.0, endOf);
    const auto soonest = search.toDistance(metres);
    ASSERT_EQ(soonest.has_value(), least.has_value());
    if (!soonest) continue;
    EXPECT_NEAR(soonest->end.timeS, *least, 1.1e-6);
    // And the plan it names is that run.
    const auto end = Run(model, fromMps, soonest->plan, metres, 0.0).atDistance(metres);
    ASSERT_TRUE(end);
    EXPECT_NEAR(end->timeS, soonest->end.timeS, 1e-9);
    EXPECT_NEAR(end->speedMps, soonest->end.speedMps, 1e-7);
    EXPECT_EQ(end->gear, soonest->end.gear);
    EXPECT_NEAR(end->rpm, soonest->end.rpm, 1e-4);
    EXPECT_NEAR(end->limiterS, soonest->end.limiterS, 1e-8);
  }
  for (const double mps : {fromMps + 3.0, 100 / 3.6, 40.0, 60.0}) {
    if (mps <= fromMps) continue;
    SCOPED_TRACE(std::to_string(mps) + " m/s");
    const auto endOf = [&](const Run& run) { return run.atSpeed(mps); };
    const auto least = leastOfAll(model, fromMps, starts, 0.0, mps, endOf);
    const auto soonest = search.toSpeed(mps);
    ASSERT_EQ(soonest.has_value(), least.has_value());
    if (soonest) {
      EXPECT_NEAR(soonest->end.timeS, *least, 1.1e-6);
    }
  }
}

TEST(RunSearch, FindsTheLeastOfAllPlansOfTheSamples) {
  for (const Sample& sample : searchSamples()) {
    const Asked question = asked(planInput(sample.profile).shared);
    for (const layshaft::Setup& setup :
         {sample.profile.stock, applied(sample.profile.proposed, sample.profile.stock)})
      for (const double factor : {0.8, 0.95, 1.0, 1.06, 1.3}) {
        const RoadModel model = turnedModel(question, sample.profile, setup, factor);
        SCOPED_TRACE(sample.name + " turned by " + std::to_string(factor));
        expectLeast(model, 0.0, standingStarts(model));
        for (const double mps : {8.0, 22.0, 35.0}) {
          SCOPED_TRACE("from " + std::to_string(mps));
          expectLeast(model, mps, startsAt(model, mps));
        }
      }
  }
}

TEST(RunSearch, AlsoOnSlopesAndWithTypedShiftPoints) {
  for (const Sample& sample : searchSamples())
    for (const double slope : {-12.0, 9.0, 25.0})
      for (const bool typed : {false, true}) {
        Profile profile = sample.profile;
        profile.ride->slopePercent = slope;
        if (typed) profile.bike.engine.shiftRpm = 0.8 * *profile.bike.engine.revLimitRpm;
        const RoadModel model = turnedModel(asked(planInput(profile).shared), profile, profile.stock, 1.0);
        SCOPED_TRACE(sample.name + " on " + std::to_string(slope) + (typed ? " typed" : ""));
        expectLeast(model, 0.0, standingStarts(model));
        expectLeast(model, 15.0, startsAt(model, 15.0));
      }
}

TEST(RunSearch, OfPlansAsGoodTheOneWithFewerShiftsThenTheLowerGear) {
  // The tyre's grip is all that counts over these metres, in first as in second, and a shift takes no time.
  Profile profile = profileFrom(contentsOf(sourceFolder() / "sample-profiles/motocross-450.bike.json"));
  profile.ride->surface = Surface::Sand;
  profile.ride->surfaces[Surface::Sand] = {.grip = 0.2, .rollingResistance = 0.02, .extras = {}};
  profile.bike.chassis->shiftTimeS = 0.0;
  profile.bike.engine.shiftRpm = 6000;
  const RoadModel model = turnedModel(asked(planInput(profile).shared), profile, profile.stock, 1.0);
  const double shifts = model.speedMps(6000, 0);
  const layshaft::Run once(model, 0.0, {.gear = 0, .slips = true, .shifts = 1}, 100.0, 0.0);
  const double metres = once.atSpeed(shifts)->distanceM + 1.0;  // one metre after the shift
  const auto timeOf = [&](const RunPlan& plan) {
    return layshaft::Run(model, 0.0, plan, metres, 0.0).atDistance(metres)->timeS;
  };
  const RunPlan first{.gear = 0, .slips = true}, second{.gear = 1, .slips = true},
      shifted{.gear = 0, .slips = true, .shifts = 1};
  ASSERT_NEAR(timeOf(first), timeOf(second), 1e-7);
  ASSERT_NEAR(timeOf(first), timeOf(shifted), 1e-7);
  // In whatever order they are tried.
  for (const auto& starts : {std::vector{first, second}, std::vector{second, first}})
    EXPECT_EQ(RunSearch(model, 0.0, starts).toDistance(metres).value().plan, first);
}

/// What a rider asks of a run, in seconds, and the speed to reach if it is that.
struct Timed {
  std::optional<double> seconds;
  std::optional<double> untilMps = {};
};
std::vector<Timed> timesOf(const RunFigures& run) {
  const double mph60 = 60 * 0.44704, kmh100 = 100 / 3.6, kmh120 = 120 / 3.6;
  return {{run.zeroTo60MphS, mph60}, {run.zeroTo100KmhS, kmh100},
          {run.hundredMetresS},      {run.eighthMileS},
          {run.quarterMileS},        {run.rollOnTopS, kmh120},
          {run.rollOnBestS, kmh120}, {run.drive ? std::optional(run.drive->timeS) : std::nullopt}};
}

/// Whether a gear's speed at the rev limit lies between two models on the other side of a speed: on one side
/// it is reached in that gear, on the other another shift is due, which takes its time.
bool aLimitPasses(double mps, const RoadModel& a, const RoadModel& b) {
  for (std::size_t g = 0; g < a.gearCount(); ++g)
    if ((a.limitMps(g) < mps) != (b.limitMps(g) < mps)) return true;
  return false;
}

// Turning the overall gearing by 0.02 % at a time must never make a figure jump: else two pairs are put in an
// order that no rider would find on the road. Only the rev limit itself is a step.
TEST(RunSearch, FiguresAreContinuousAsARatioIsTurned) {
  constexpr double kStep = 2e-4, kJumpS = 0.005;
  constexpr double kSteepS = 0.02;  // a step: there the speed asked for is near the end of the pull
  for (const Sample& sample : searchSamples()) {
    const Asked question = asked(planInput(sample.profile).shared);
    std::optional<RoadModel> last;
    std::vector<std::optional<double>> before, earlier;
    std::vector<int> comesOrGoes, held;
    for (double factor = 0.85; factor < 1.15; factor *= 1 + kStep) {
      const RoadModel model = turnedModel(question, sample.profile, sample.profile.stock, factor);
      const auto now = timesOf(runFigures(model, question.drive, question.rollOn));
      before.resize(now.size());
      earlier.resize(now.size());
      comesOrGoes.resize(now.size());
      held.resize(now.size());
      for (std::size_t i = 0; i < now.size(); ++i) {
        comesOrGoes[i] += last && now[i].seconds.has_value() != before[i].has_value();
        if (now[i].untilMps && last && aLimitPasses(*now[i].untilMps, *last, model)) before[i].reset();
        if (now[i].seconds && before[i] && earlier[i] && std::abs(*before[i] - *earlier[i]) < kSteepS) {
          // Against where it was heading; where another plan takes over it turns, but does not jump.
          EXPECT_NEAR(*now[i].seconds, 2 * *before[i] - *earlier[i],
                      kJumpS + 0.25 * std::abs(*before[i] - *earlier[i]))
              << sample.name << " figure " << i << " at " << factor;
          ++held[i];
        }
        earlier[i] = before[i];
        before[i] = now[i].seconds;
      }
      last.emplace(model);
    }
    EXPECT_GT(held[4], 1000);
    EXPECT_GT(held[7], 1000);
    // A speed comes into or goes out of a bike's reach once; nothing blinks.
    for (const int times : comesOrGoes) EXPECT_LE(times, 1) << sample.name;
  }
}

}  // namespace
}  // namespace layshaft::test
