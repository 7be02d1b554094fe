// SPDX-License-Identifier: GPL-3.0-or-later
//
// Runs, shift points and top speeds of the samples and of thousands of random bikes beside solvers that
// nobody here wrote: Boost.odeint (Dormand-Prince) and SUNDIALS CVODE (Adams) for the runs, GSL's Brent root
// for the speeds.
#include <cvode/cvode.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <gtest/gtest.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/bike/pair.h"
#include "core/plan.h"
#include "core/profile_file.h"
#include "core/study/chain_run.h"
#include "core/study/ladder.h"
#include "core/study/run_search.h"
#include "core/study/shifting.h"
#include "tests/core/support.h"
#include "tests/reference/random_bikes.h"
#include "tests/reference/second_opinion.h"

namespace layshaft::test {
namespace {

constexpr double kOpinionTolerance = 1e-11;
constexpr double kOpinionLongestStepS = 0.02;
constexpr double kOpinionQuarterMileM = 402.336;
constexpr double kScanStepMps = 0.01;
constexpr double kSameSpeedMps = 1e-6;

/// The same setup in both hands.
struct BothHands {
  Profile profile;
  Setup setup;
  RoadModel ours;
  SecondOpinion theirs;
  SecondOpinion::Shifts theirShifts;

  BothHands(const Profile& p, const Setup& s)
      : profile(p),
        setup(s),
        ours(std::make_shared<const PullBike>(pullBike(p.bike, p.ride.value_or(Ride{}))),
             roadOf(p.bike, p.ride.value_or(Ride{})), s, rolloutOf(s), fitted(p.stock, s)),
        theirs(p, s, fitted(p.stock, s).axleShiftM) {
    theirShifts = theirs.shiftsAt(ours.shifts().rpm);
    if (ours.shifts().typed)
      for (std::size_t g = 0; g + 1 < theirs.gears(); ++g) theirShifts.best.push_back(bestShiftMps(ours, g));
  }
};

/// A second where the run is shorter than a minute, else the run.
double timeScale(double seconds) {
  return seconds > 60.0 ? seconds / 100.0 : 1.0;
}

void expectSameRun(const std::optional<RunPoint>& ours, const std::optional<SecondOpinion::End>& theirs) {
  ASSERT_EQ(ours.has_value(), theirs.has_value());
  if (!ours) return;
  EXPECT_NEAR(ours->timeS, theirs->time, 1e-6 * timeScale(theirs->time));
  EXPECT_NEAR(ours->speedMps, theirs->speed, 1e-6 * std::max(1.0, theirs->speed));
}

std::optional<SecondOpinion::End> ridden(const BothHands& both, double fromMps, const RunPlan& plan,
                                         double lengthM) {
  const auto launch = plan.slips ? std::optional(both.ours.launchRpm(plan.gear)) : std::nullopt;
  return both.theirs.run(fromMps, {plan.gear, launch, plan.shifts}, both.theirShifts, lengthM,
                         kOpinionTolerance, kOpinionLongestStepS);
}

/// How a run may begin, written down a second time.
std::vector<RunPlan> theirStarts(const BothHands& both, double fromMps) {
  const SecondOpinion& theirs = both.theirs;
  const Engine& engine = both.profile.bike.engine;
  std::vector<RunPlan> starts;
  for (std::size_t g = 0; g < std::min<std::size_t>(2, theirs.gears()); ++g)
    if (fromMps == 0.0 || (g == 0 && theirs.rpmAt(fromMps, 0) < both.ours.launchRpm(0)))
      starts.push_back({.gear = g, .slips = true});
  const double lowest = std::max(engine.idleRpm.value_or(0.0),
                                 std::min(engine.torqueCurve->points().front().rpm, *engine.revLimitRpm));
  std::optional<std::size_t> above;
  for (std::size_t g = 0; g < theirs.gears(); ++g) {
    const double rpm = theirs.rpmAt(fromMps, g);
    const double most = g + 1 < theirs.gears() ? both.ours.shifts().rpm[g] : *engine.revLimitRpm;
    if (rpm >= lowest && rpm <= most) starts.push_back({.gear = g});
    if (rpm >= engine.idleRpm.value_or(0.0) && rpm <= engine.revLimitRpm) above = g;
  }
  if (starts.empty() && above) starts.push_back({.gear = *above});
  return starts;
}

/// The least time over every plan, each stepped through time for itself.
std::optional<SecondOpinion::End> leastOfAllWays(const BothHands& both, double fromMps,
                                                 const std::vector<RunPlan>& starts, double lengthM) {
  std::optional<SecondOpinion::End> least;
  for (RunPlan plan : starts)
    for (plan.shifts = 0; plan.gear + static_cast<std::size_t>(plan.shifts) < both.theirs.gears();
         ++plan.shifts)
      if (const auto end = ridden(both, fromMps, plan, lengthM); end && (!least || end->time < least->time))
        least = end;
  return least;
}

enum class Thorough { Yes, No };

/// The plan that was found takes the time that the others say, and no way of theirs takes less.
void expectSoonest(const BothHands& both, double fromMps, const std::vector<RunPlan>& ourStarts,
                   const std::vector<RunPlan>& theirStarts, double lengthM, Thorough thorough) {
  const auto ours = RunSearch(both.ours, fromMps, ourStarts).toDistance(lengthM);
  if (ours) expectSameRun(ours->end, ridden(both, fromMps, ours->plan, lengthM));
  if (thorough == Thorough::No) return;
  const auto least = leastOfAllWays(both, fromMps, theirStarts, lengthM);
  ASSERT_EQ(ours.has_value(), least.has_value());
  if (ours) {
    EXPECT_NEAR(ours->end.timeS, least->time, 2e-6 * timeScale(least->time));
  }
}

void expectSameQuarterMile(const BothHands& both, Thorough thorough) {
  SCOPED_TRACE("quarter mile");
  std::vector<RunPlan> slipping = theirStarts(both, 0.0);
  std::erase_if(slipping, [](const RunPlan& plan) { return !plan.slips; });
  expectSoonest(both, 0.0, standingStarts(both.ours), slipping, kOpinionQuarterMileM, thorough);
}

void expectSameDrive(const BothHands& both, double fromMps, double lengthM, Thorough thorough) {
  SCOPED_TRACE("straight from " + std::to_string(fromMps) + " m/s over " + std::to_string(lengthM) + " m");
  expectSoonest(both, fromMps, startsAt(both.ours, fromMps), theirStarts(both, fromMps), lengthM, thorough);
}

/// GSL's Brent root of `f`, of opposite signs at `low` and `high`.
double gslRoot(const std::function<double(double)>& f, double low, double high) {
  gsl_function function{
      [](double x, void* self) { return (*static_cast<const std::function<double(double)>*>(self))(x); },
      const_cast<void*>(static_cast<const void*>(&f))};
  const std::unique_ptr<gsl_root_fsolver, decltype(&gsl_root_fsolver_free)> solver(
      gsl_root_fsolver_alloc(gsl_root_fsolver_brent), gsl_root_fsolver_free);
  gsl_root_fsolver_set(solver.get(), &function, low, high);
  for (int i = 0; i < 200; ++i) {
    gsl_root_fsolver_iterate(solver.get());
    const double a = gsl_root_fsolver_x_lower(solver.get()), b = gsl_root_fsolver_x_upper(solver.get());
    if (gsl_root_test_interval(a, b, 1e-12, 0.0) == GSL_SUCCESS) break;
  }
  return gsl_root_fsolver_root(solver.get());
}

/// The greatest `v` in low..high at which `f` is not negative, looked for step by step from above and at the
/// kinks of `f`, where the narrowest peaks are.
std::optional<double> greatestNotNegative(const std::function<double(double)>& f, double low, double high,
                                          std::vector<double> kinks) {
  if (f(high) >= 0.0) return high;
  std::sort(kinks.begin(), kinks.end());
  double above = high;
  while (above > low) {
    double v = std::max(low, above - kScanStepMps);
    while (!kinks.empty() && kinks.back() >= above) kinks.pop_back();
    if (!kinks.empty()) v = std::max(v, kinks.back());
    if (f(v) >= 0.0) return gslRoot(f, v, above);
    above = v;
  }
  return std::nullopt;
}

void expectSameShiftPoints(const BothHands& both) {
  for (std::size_t g = 0; g + 1 < both.theirs.gears(); ++g) {
    SCOPED_TRACE("shift out of gear " + std::to_string(g + 1));
    const double limit = both.theirs.limitSpeed(g);
    const double lowest =
        std::min(limit, both.theirs.speedAt(both.profile.bike.engine.idleRpm.value_or(0.0), g + 1));
    std::vector<double> kinks = both.theirs.kinks(g);
    for (const double kink : both.theirs.kinks(g + 1)) kinks.push_back(kink);
    const auto gain = [&](double v) { return both.theirs.unbounded(v, g) - both.theirs.unbounded(v, g + 1); };
    EXPECT_NEAR(bestShiftMps(both.ours, g), greatestNotNegative(gain, lowest, limit, kinks).value_or(lowest),
                kSameSpeedMps);
  }
}

void expectSameTopSpeed(const BothHands& both) {
  SCOPED_TRACE("top speed");
  std::optional<TopSpeed> theirs;
  std::vector<std::optional<double>> tops;
  for (std::size_t g = 0; g < both.theirs.gears(); ++g) {
    const double limit = both.theirs.limitSpeed(g);
    const auto a = [&](double v) { return both.theirs.acceleration(v, g); };
    const auto top = tops.emplace_back(greatestNotNegative(a, 0.0, limit, both.theirs.kinks(g)));
    if (!top || (theirs && theirs->speedMps * (1 - 1e-9) > *top)) continue;
    LimitedBy by = LimitedBy::Drag;
    const double free = both.theirs.unbounded(*top, g);
    if (*top == limit)
      by = LimitedBy::RevLimit;
    else if (free > both.theirs.bound(*top))
      by = both.theirs.grip(*top) <= both.theirs.lift(*top) ? LimitedBy::Grip : LimitedBy::Lift;
    theirs = TopSpeed{*top, static_cast<int>(g) + 1, by};
  }
  const auto ours = topSpeed(both.ours);
  ASSERT_EQ(ours.has_value(), theirs.has_value());
  if (!ours) return;
  EXPECT_NEAR(ours->speedMps, theirs->speedMps, kSameSpeedMps);
  EXPECT_EQ(ours->limitedBy, theirs->limitedBy);
  // At a bound and at the jump of the rolling resistance several gears end at the same speed: the highest
  // is named, as far as the roots agree to the last digits.
  EXPECT_GE(ours->gear, theirs->gear);
  const auto inThatGear = tops[static_cast<std::size_t>(ours->gear - 1)];
  ASSERT_TRUE(inThatGear);
  EXPECT_NEAR(*inThatGear, theirs->speedMps, kSameSpeedMps);
}

/// Whether every gear but the last pulls from its lowest speed in a run up to an engine speed.
bool pullsUpTo(double rpm, const SecondOpinion& theirs) {
  for (std::size_t g = 0; g + 1 < theirs.gears(); ++g)
    for (double v = g == 0 ? 0.0 : theirs.speedAt(rpm, g - 1) * 0.8; v <= theirs.speedAt(rpm, g); v += 0.1)
      if (!(theirs.acceleration(v, g) > 0.0)) return false;
  return true;
}

TEST(SecondOpinionOnRuns, SharesEveryFigureOfTheSamples) {
  int compared = 0;
  for (const auto& file : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    SCOPED_TRACE(file.path().filename().string());
    const Result<Profile> profile = loadProfile(file.path());
    ASSERT_TRUE(profile);
    const auto proposed = applied(profile->proposed, profile->stock);
    for (const bool asStock : {true, false}) {
      SCOPED_TRACE(asStock ? "stock" : "proposed");
      const BothHands both(*profile, asStock ? profile->stock : proposed);
      expectSameQuarterMile(both, Thorough::Yes);
      const Drive drive = profile->ride->drive.value();
      expectSameDrive(both, *drive.exitSpeedKmh / 3.6, *drive.lengthM, Thorough::Yes);
      expectSameDrive(both, 0.0, 1000.0, Thorough::Yes);
      expectSameShiftPoints(both);
      expectSameTopSpeed(both);
      ++compared;
    }
  }
  EXPECT_GE(compared, 16);
}

// What a rider decides by: whether one pair is quicker down the straight than another. The order of all pairs
// near the stock one is that of a search of everything the rider could do, each way stepped through time.
TEST(SecondOpinionOnRuns, PutsPairsInTheSameOrder) {
  constexpr double kTold = 2e-6;  // apart by what both hands can tell
  int compared = 0;
  for (const auto& file : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    SCOPED_TRACE(file.path().filename().string());
    const Profile profile = loadProfile(file.path()).value();
    const Drive drive = profile.ride->drive.value();
    const Ladder ladder(ladderInput(profile));
    const int front = profile.stock.frontTeeth.count(), rear = profile.stock.rearTeeth.count();
    struct Times {
      double ours, theirs;
    };
    std::vector<Times> pairs;
    for (const int f : {front - 1, front})
      for (const int r : {rear - 2, rear, rear + 2}) {
        const auto setup =
            applied(withPair(profile.proposed, profile.stock, ladderInput(profile).fronts,
                             ladderInput(profile).rears, Teeth::front(f).value(), Teeth::rear(r).value()),
                    profile.stock);
        const BothHands both(profile, setup);
        const double from = *drive.exitSpeedKmh / 3.6;
        const auto theirs = leastOfAllWays(both, from, theirStarts(both, from), *drive.lengthM);
        const auto ours = ladder.row(f, r).driveS();
        ASSERT_TRUE(ours && theirs);
        pairs.push_back({*ours, theirs->time});
      }
    for (const Times& a : pairs)
      for (const Times& b : pairs)
        if (a.theirs < b.theirs - kTold) {
          EXPECT_LT(a.ours, b.ours);
          ++compared;
        }
  }
  EXPECT_GE(compared, 80);
}

class RandomBikes : public testing::TestWithParam<std::uint32_t> {};

TEST_P(RandomBikes, AgreeInEveryFigure) {
  Draw draw(GetParam());
  int moved = 0, typed = 0;
  for (int i = 0; i < 1000; ++i) {
    const Json json = randomBike(draw);
    const double typedRpm = json["bike"]["engine"]["rev_limit_rpm"].get<double>() * draw.between(0.7, 1.0);
    const double fromShare = draw.between(0.0, 0.9);
    const double length = draw.once(0.1) ? 4000.0 : draw.between(50, 1500);
    Profile profile = profileFrom(json.dump());
    if (i % 5 == 0 && pullsUpTo(typedRpm, SecondOpinion(profile, profile.stock))) {
      profile.bike.engine.shiftRpm = typedRpm;
      ++typed;
    }
    SCOPED_TRACE("bike " + std::to_string(i) + " " + json.dump());
    const BothHands both(profile, profile.stock);
    const Thorough thorough = i % 10 == 0 ? Thorough::Yes : Thorough::No;
    expectSameQuarterMile(both, thorough);
    expectSameDrive(both, fromShare * both.theirs.limitSpeed(both.theirs.gears() - 1), length, thorough);
    expectSameShiftPoints(both);
    expectSameTopSpeed(both);
    moved += layshaft::Run(both.ours, 0.0, {.gear = 0, .slips = true}, 1.0, 0.0).moves();
  }
  EXPECT_GE(moved, 900);
  EXPECT_GE(typed, 100);
}

INSTANTIATE_TEST_SUITE_P(SecondOpinionOnRuns, RandomBikes, testing::Values(1U, 2U, 3U, 4U));

// ---- SUNDIALS ----

/// One stretch of a run by CVODE's Adams method: until a speed, a distance or a time, whichever is first.
class AdamsStretch {
 public:
  AdamsStretch(std::function<double(double)> acceleration, double untilSpeed, double untilDistance)
      : acceleration_(std::move(acceleration)), untilSpeed_(untilSpeed), untilDistance_(untilDistance) {}

  /// Moves `now` on; true if the distance was reached.
  bool ride(SecondOpinion::End& now, double untilTime) {
    const std::unique_ptr<_generic_N_Vector, decltype(&N_VDestroy)> state(N_VNew_Serial(2, context_),
                                                                          N_VDestroy);
    realtype* y = N_VGetArrayPointer(state.get());
    y[0] = now.distance;
    y[1] = now.speed;
    void* memory = CVodeCreate(CV_ADAMS, context_);
    SUNNonlinearSolver solver = SUNNonlinSol_FixedPoint(state.get(), 0, context_);
    const bool fine =
        CVodeInit(memory, slope, now.time, state.get()) == CV_SUCCESS &&
        CVodeSetUserData(memory, this) == CV_SUCCESS &&
        CVodeSStolerances(memory, 1e-13, 1e-13) == CV_SUCCESS &&
        CVodeSetNonlinearSolver(memory, solver) == CV_SUCCESS &&
        CVodeSetMaxNumSteps(memory, 1000000) == CV_SUCCESS && CVodeSetMaxStep(memory, 0.01) == CV_SUCCESS &&
        CVodeSetStopTime(memory, untilTime) == CV_SUCCESS && CVodeRootInit(memory, 2, missing) == CV_SUCCESS;
    const int result = fine ? CVode(memory, untilTime, state.get(), &now.time, CV_NORMAL) : -1;
    now.distance = y[0];
    now.speed = y[1];
    int reached[2] = {0, 0};
    if (result == CV_ROOT_RETURN) CVodeGetRootInfo(memory, reached);
    CVodeFree(&memory);
    SUNNonlinSolFree(solver);
    EXPECT_GE(result, 0);
    return result < 0 || reached[1] != 0;
  }

 private:
  static int slope(realtype, N_Vector state, N_Vector result, void* self) {
    const realtype* y = N_VGetArrayPointer(state);
    realtype* d = N_VGetArrayPointer(result);
    const auto& stretch = *static_cast<const AdamsStretch*>(self);
    d[0] = y[1];
    d[1] = stretch.acceleration_(y[1]);
    return 0;
  }
  static int missing(realtype, N_Vector state, realtype* gaps, void* self) {
    const realtype* y = N_VGetArrayPointer(state);
    const auto& stretch = *static_cast<const AdamsStretch*>(self);
    gaps[0] = y[1] - stretch.untilSpeed_;
    gaps[1] = y[0] - stretch.untilDistance_;
    return 0;
  }

  std::function<double(double)> acceleration_;
  double untilSpeed_, untilDistance_;
  sundials::Context context_;
};

// SUNDIALS CVODE 6.4: another library, another method (multistep), other events.
TEST(SecondOpinionOnRuns, AgreesWithCvodeOnTheQuarterMile) {
  const Result<Profile> profile = loadProfile(sourceFolder() / "sample-profiles" / "club-600.bike.json");
  ASSERT_TRUE(profile);
  const BothHands both(*profile, profile->stock);
  constexpr double kNever = 1e6;
  const SecondOpinion& bike = both.theirs;
  SecondOpinion::End now{0.0, 0.0, 0.0};
  const double launch = both.ours.launchRpm();
  bool there = AdamsStretch([&](double v) { return bike.slipping(v, launch); }, bike.speedAt(launch, 0),
                            kOpinionQuarterMileM)
                   .ride(now, kNever);
  int shifts = 0;
  for (std::size_t g = 0; g < bike.gears() && !there; ++g) {
    const bool last = g + 1 == bike.gears();
    const double until = last ? bike.limitSpeed(g) : both.theirShifts.wished[g];
    there = AdamsStretch([&](double v) { return bike.acceleration(v, g); }, until, kOpinionQuarterMileM)
                .ride(now, kNever);
    if (there || last) break;
    ++shifts;
    there = AdamsStretch([&](double v) { return -bike.resistance(v) / bike.coastingMass(); }, -1.0,
                         kOpinionQuarterMileM)
                .ride(now, now.time + *profile->bike.chassis->shiftTimeS);
  }
  ASSERT_TRUE(there);
  EXPECT_GE(shifts, 3);
  const layshaft::Run run(both.ours, 0.0, {.gear = 0, .slips = true, .shifts = RunPlan::kEveryShift},
                          kOpinionQuarterMileM, 0.0);
  EXPECT_NEAR(run.atDistance(kOpinionQuarterMileM)->timeS, now.time, 1e-6);
  EXPECT_NEAR(run.atDistance(kOpinionQuarterMileM)->speedMps, now.speed, 1e-5);
}

}  // namespace
}  // namespace layshaft::test
