// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/ladder.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/bike/pair.h"
#include "core/limits.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr int kFrontsEitherSide = 2, kRearsEitherSide = 6;
constexpr double kRevAimPercent = 1.5;  // half a rear tooth's step on usual pairs
constexpr double kTie = 1e-9;

template <class Teeth>
LadderRange widened(LadderRange range, const std::vector<SpareSprocket>& spares, Teeth LadderRange::*fewest,
                    Teeth LadderRange::*most) {
  for (const SpareSprocket& spare : spares) {
    range.*fewest = std::min(range.*fewest, spare.teeth);
    range.*most = std::max(range.*most, spare.teeth);
  }
  return range;
}

int clamped(int teeth, const Limit& limit) {
  return std::clamp(teeth, static_cast<int>(limit.low), static_cast<int>(limit.high));
}

}  // namespace

std::size_t LadderRange::pairs() const {
  if (mostFront < fewestFront || mostRear < fewestRear) return 0;
  return static_cast<std::size_t>(mostFront - fewestFront + 1) *
         static_cast<std::size_t>(mostRear - fewestRear + 1);
}

bool LadderRange::contains(int frontTeeth, int rearTeeth) const {
  return frontTeeth >= fewestFront && frontTeeth <= mostFront && rearTeeth >= fewestRear &&
         rearTeeth <= mostRear;
}

LadderRange usualRange(const LadderInput& input) {
  const ChainRun room = input.shared.bike.chainRun.value_or(ChainRun{});
  const int front = input.stock.frontTeeth.count(), rear = input.stock.rearTeeth.count();
  LadderRange range{front - kFrontsEitherSide, front + kFrontsEitherSide, rear - kRearsEitherSide,
                    rear + kRearsEitherSide};
  range.fewestFront = std::max(range.fewestFront, room.smallestFrontTeeth.value_or(range.fewestFront));
  range.mostFront = std::min(range.mostFront, room.largestFrontTeeth.value_or(range.mostFront));
  range.fewestRear = std::max(range.fewestRear, room.smallestRearTeeth.value_or(range.fewestRear));
  range.mostRear = std::min(range.mostRear, room.largestRearTeeth.value_or(range.mostRear));
  range = widened(range, input.fronts, &LadderRange::fewestFront, &LadderRange::mostFront);
  range = widened(range, input.rears, &LadderRange::fewestRear, &LadderRange::mostRear);
  return {clamped(range.fewestFront, limits::kFrontTeeth), clamped(range.mostFront, limits::kFrontTeeth),
          clamped(range.fewestRear, limits::kRearTeeth), clamped(range.mostRear, limits::kRearTeeth)};
}

bool LadderRow::reachesAllAims() const {
  return std::all_of(aims.begin(), aims.end(), [](const AimOutcome& aim) { return aim.reached; });
}

namespace {

AimOutcome nearRpm(double off, double rpm) {
  return {std::abs(off) <= kRevAimPercent / 100.0 * rpm, -std::abs(off)};
}

bool aimedFor(const std::vector<Aim>& aims, Aim::Want want) {
  return std::any_of(aims.begin(), aims.end(), [want](const Aim& aim) { return aim.want == want; });
}

}  // namespace

bool LadderRow::fits() const {
  return !chainRun || chainRun->fits.value_or(true);
}

std::optional<FittingLength> LadderRow::fitsFromSparesBox() const {
  std::optional<FittingLength> found;
  if (!chainRun) return found;
  for (const FittingLength& length : chainRun->lengthsThatFit)
    if (length.spare && (!found || length.spare->shortenBy < found->spare->shortenBy)) found = length;
  return found;
}

Ladder::Ladder(LadderInput input)
    : input_(std::move(input)),
      asked_(asked(input_.shared)),
      stock_(figuresOf(input_.stock)),
      aimsForLap_(aimedFor(input_.aims, Aim::Want::LeastLapTime)) {
  if (!input_.track) return;
  laps_.emplace(input_.shared, asked_, *input_.track);
  if (aimsForLap_)
    stockLap_ = laps_->times(input_.stock, input_.stock);
  else
    stockLap_.seconds = laps_->seconds(input_.stock, input_.stock);
}

SetupFigures Ladder::figuresOf(const Setup& setup) const {
  const bool pulls = aimedFor(input_.aims, Aim::Want::PullGain);
  return setupFigures(input_.shared, asked_, input_.stock, setup, {.rollOns = false, .limits = pulls});
}

AimOutcome Ladder::outcome(const Aim& aim, const SetupFigures& figures) const {
  const std::size_t gears = figures.gearing.gears.size();
  if (gears == 0) return {false, {}};
  const std::size_t gear = aim.gear ? std::min(static_cast<std::size_t>(*aim.gear), gears) - 1 : gears - 1;
  const double speed = units::mpsFromKmh(aim.speedKmh.value_or(0.0));
  switch (aim.want) {
    case Aim::Want::RevAtSpeed: {
      if (!aim.rpm || !aim.speedKmh) return {false, {}};
      const double off = figures.gearing.rpm(speed, gear) - *aim.rpm;
      return nearRpm(off, *aim.rpm);
    }
    case Aim::Want::CruiseBelow: {
      if (!aim.rpm || !aim.speedKmh) return {false, {}};
      const double left = *aim.rpm - figures.gearing.rpm(speed, gear);
      return {left >= 0.0, left};
    }
    case Aim::Want::PullGain: {
      const double wanted = aim.percent.value_or(0.0);
      const auto& from = stock_.gearing.gears;
      const std::size_t stockGear = std::min(gear, from.size() - 1);
      double ratio = from[stockGear].speedPer1000RpmMps / figures.gearing.gears[gear].speedPer1000RpmMps;
      if (!figures.pull.empty()) {  // without an engine curve it goes with the gearing
        const ComparedPull pull =
            comparedPull({stock_.pull, stock_.limits}, stockGear, {figures.pull, figures.limits}, gear);
        ratio = pull.toN / pull.fromN;
      }
      const double gain = 100.0 * (ratio - 1.0);
      return {gain >= wanted - kTie, gain - wanted};
    }
    case Aim::Want::LeastDriveTime:
      if (!figures.run.drive) return {false, {}};
      return {true, stock_.run.drive ? std::optional(stock_.run.drive->timeS - figures.run.drive->timeS)
                                     : std::nullopt};
    case Aim::Want::RevAtDriveEnd: {
      const auto& drive = figures.run.drive;
      if (!aim.rpm || !drive || drive->endGear != static_cast<int>(gear) + 1) return {false, {}};
      const double off = drive->endRpm - *aim.rpm;
      return nearRpm(off, *aim.rpm);
    }
    case Aim::Want::TopSpeedAtLeast:
    case Aim::Want::LeastLapTime:  // has an outcome of its own
      break;
  }
  if (!figures.topSpeed || !aim.speedKmh) return {false, {}};
  return {figures.topSpeed->speedMps >= speed, figures.topSpeed->speedMps - speed};
}

AimOutcome Ladder::lapOutcome(const LadderRow& row) const {
  if (!row.lapS) return {false, {}};
  return {true, stockLap_.seconds ? std::optional(*stockLap_.seconds - *row.lapS) : std::nullopt,
          row.lapBandS.value_or(0.0)};
}

/// The band takes some laps more: only for who decides by it.
void Ladder::addLap(LadderRow& row, const Setup& setup) const {
  if (!laps_) return;
  if (!aimsForLap_) {
    row.lapS = laps_->seconds(input_.stock, setup);
    return;
  }
  const LapTimes times = laps_->times(input_.stock, setup);
  row.lapS = times.seconds;
  if (times.seconds && stockLap_.seconds) row.lapBandS = lapBandS(stockLap_, times);
}

LadderRow Ladder::row(int frontTeeth, int rearTeeth) const {
  const Setup setup = applied(withPair(input_.proposed, input_.stock, input_.fronts, input_.rears,
                                       Teeth::front(frontTeeth).value(), Teeth::rear(rearTeeth).value()),
                              input_.stock);
  const SetupFigures figures = figuresOf(setup);
  LadderRow row{.frontTeeth = frontTeeth,
                .rearTeeth = rearTeeth,
                .finalRatio = figures.gearing.finalRatio,
                .change = gearingChange(input_.stock, stock_.gearing, figures.gearing),
                .speedAtLimitMps = {},
                .cruiseRpm = {},
                .topSpeedMps = {},
                .zeroTo60MphS = figures.run.zeroTo60MphS,
                .zeroTo100KmhS = figures.run.zeroTo100KmhS,
                .quarterMileS = figures.run.quarterMileS,
                .drive = figures.run.drive,
                .lapS = {},
                .lapBandS = {},
                .chainRun = figures.chainRun,
                .frontInSparesBox = spareSprocket(input_.fronts, frontTeeth, setup) != nullptr,
                .rearInSparesBox = spareSprocket(input_.rears, rearTeeth, setup) != nullptr,
                .aims = {}};
  for (const GearFigures& gear : figures.gearing.gears)
    if (gear.speedAtRevLimitMps) row.speedAtLimitMps.push_back(*gear.speedAtRevLimitMps);
  if (figures.gearing.cruise) row.cruiseRpm = figures.gearing.cruise->rpm;
  if (figures.topSpeed) row.topSpeedMps = figures.topSpeed->speedMps;
  addLap(row, setup);
  for (const Aim& aim : input_.aims)
    row.aims.push_back(aim.want == Aim::Want::LeastLapTime ? lapOutcome(row) : outcome(aim, figures));
  return row;
}

std::vector<LadderRow> Ladder::rows(const LadderRange& range, const std::function<bool()>& stopped) const {
  std::vector<LadderRow> result;
  for (int front = range.fewestFront; front <= range.mostFront; ++front)
    for (int rear = range.fewestRear; rear <= range.mostRear; ++rear) {
      if (stopped && stopped()) return {};
      if (limits::kFrontTeeth.contains(front) && limits::kRearTeeth.contains(rear))
        result.push_back(row(front, rear));
    }
  std::stable_sort(result.begin(), result.end(),
                   [](const LadderRow& a, const LadderRow& b) { return a.finalRatio > b.finalRatio; });
  return result;
}

std::vector<std::vector<std::size_t>> sameRatios(const std::vector<LadderRow>& rows, double tolerance) {
  std::vector<std::size_t> order(rows.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return rows[a].finalRatio < rows[b].finalRatio; });
  std::vector<std::vector<std::size_t>> groups;
  for (std::size_t i = 0; i < order.size();) {
    std::size_t end = i + 1;
    while (end < order.size() &&
           rows[order[end]].finalRatio - rows[order[i]].finalRatio <= tolerance * rows[order[i]].finalRatio)
      ++end;
    if (end - i > 1)
      groups.emplace_back(order.begin() + static_cast<std::ptrdiff_t>(i),
                          order.begin() + static_cast<std::ptrdiff_t>(end));
    i = end;
  }
  return groups;
}

int wearsBetter(const LadderRow& a, const LadderRow& b) {
  const auto factor = [](const LadderRow& row) {
    return row.chainRun ? row.chainRun->commonFactorFront + row.chainRun->commonFactorRear : 0;
  };
  if (factor(a) != factor(b)) return factor(a) < factor(b) ? -1 : 1;
  // The same ratio on larger sprockets bends the chain less and shares the load over more teeth.
  if (a.frontTeeth != b.frontTeeth) return a.frontTeeth > b.frontTeeth ? -1 : 1;
  return 0;
}

int sitsBetter(const LadderRow& a, const LadderRow& b) {
  if (!a.chainRun || !b.chainRun) return 0;
  if (a.fits() != b.fits()) return a.fits() ? -1 : 1;
  if (!a.chainRun->axleShiftM || !b.chainRun->axleShiftM) return 0;
  const double way = std::abs(*a.chainRun->axleShiftM) - std::abs(*b.chainRun->axleShiftM);
  return std::abs(way) < kTie ? 0 : way < 0.0 ? -1 : 1;
}

namespace {

constexpr double kNever = 1e9;

/// A time that is aimed for; late where there is none.
double timeOf(const LadderRow& row, BetterBy by) {
  return (by == BetterBy::LapTime ? row.lapS : row.driveS()).value_or(kNever);
}

/// Compares rows by how they answer the aims, whether they fit aside.
class ByAims {
 public:
  explicit ByAims(const std::vector<Aim>& aims) {
    for (std::size_t i = 0; i < aims.size(); ++i) {
      const Aim::Want want = aims[i].want;
      if (want == Aim::Want::LeastDriveTime) times_.push_back(BetterBy::DriveTime);
      if (want == Aim::Want::LeastLapTime) times_.push_back(BetterBy::LapTime);
      const bool rev = want == Aim::Want::RevAtSpeed || want == Aim::Want::RevAtDriveEnd;
      if (rev && !rev_) rev_ = i;
    }
  }

  /// The time that is aimed for first.
  std::optional<BetterBy> time() const {
    return times_.empty() ? std::nullopt : std::optional(times_.front());
  }
  /// Negative: `x` first. Times where they are aimed for, then nearness to an engine speed, then the smaller
  /// change.
  int order(const LadderRow& x, const LadderRow& y) const { return compared(x, y).first; }
  /// What decides between the two.
  BetterBy decider(const LadderRow& x, const LadderRow& y) const { return compared(x, y).second; }

 private:
  static int rising(double a, double b) { return a < b ? -1 : a > b ? 1 : 0; }
  std::pair<int, BetterBy> compared(const LadderRow& x, const LadderRow& y) const {
    for (const BetterBy time : times_)
      if (const int by = rising(timeOf(x, time), timeOf(y, time))) return {by, time};
    if (rev_ && *rev_ < x.aims.size() && *rev_ < y.aims.size())
      if (const int by =
              rising(-x.aims[*rev_].margin.value_or(-kNever), -y.aims[*rev_].margin.value_or(-kNever)))
        return {by, BetterBy::EngineSpeed};
    const auto step = [](const LadderRow& row) {
      return std::abs(std::log(1.0 + row.change.gearingPercent / 100.0));
    };
    return {rising(step(x), step(y)), BetterBy::SmallerChange};
  }

  std::vector<BetterBy> times_;  ///< that are aimed for
  std::optional<std::size_t> rev_;
};

}  // namespace

std::vector<std::size_t> rankedByAims(const std::vector<LadderRow>& rows, const std::vector<Aim>& aims) {
  const ByAims by(aims);
  std::vector<std::size_t> order(rows.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const LadderRow &x = rows[a], &y = rows[b];
    if (x.reachesAllAims() != y.reachesAllAims()) return x.reachesAllAims();
    if (x.fits() != y.fits()) return x.fits();
    return by.order(x, y) < 0;
  });
  return order;
}

namespace {

/// What an aim that is not reached lacks, as a share of its value.
double missOf(const Aim& aim, const AimOutcome& outcome) {
  if (outcome.reached) return 0.0;
  constexpr double kWhole = 1.0;
  if (!outcome.margin) return kWhole;
  const double lacking = -*outcome.margin;
  const auto share = [&](std::optional<double> value) {
    return value && *value > 0 ? lacking / *value : kWhole;
  };
  switch (aim.want) {
    case Aim::Want::RevAtSpeed:
    case Aim::Want::RevAtDriveEnd:
      return share(aim.rpm) - kRevAimPercent / 100.0;
    case Aim::Want::CruiseBelow:
      return share(aim.rpm);
    case Aim::Want::PullGain:
      return share(100.0 + aim.percent.value_or(0.0));
    case Aim::Want::TopSpeedAtLeast:
      return share(units::mpsFromKmh(aim.speedKmh.value_or(0.0)));
    case Aim::Want::LeastDriveTime:
    case Aim::Want::LeastLapTime:
      break;  // is reached by whatever has a time
  }
  return kWhole;
}

}  // namespace

double missOfAims(const LadderRow& row, const std::vector<Aim>& aims) {
  double sum = 0.0;
  for (std::size_t i = 0; i < std::min(aims.size(), row.aims.size()); ++i)
    sum += missOf(aims[i], row.aims[i]);
  return sum;
}

namespace {

/// The band of neighbours of a lap time is that of their difference to stock, the wider one.
double bandBetween(const LadderRow& a, const LadderRow& b, BetterBy by) {
  return by == BetterBy::LapTime ? std::max(a.lapBandS.value_or(0.0), b.lapBandS.value_or(0.0)) : 0.0;
}

void addAsQuick(AimAnswer& answer, const std::vector<LadderRow>& rows, const std::vector<std::size_t>& order,
                const ByAims& by) {
  const auto time = by.time();
  if (!answer.best || !time) return;
  const LadderRow& best = rows[*answer.best];
  for (const std::size_t i : order) {
    const double band = bandBetween(rows[i], best, *time);
    if (i == *answer.best || !rows[i].reachesAllAims() || !rows[i].fits() ||
        !equalTimes(timeOf(rows[i], *time), timeOf(best, *time), band))
      continue;
    answer.asQuick.push_back(i);
    answer.asQuickWithinS = std::max(answer.asQuickWithinS, band);
  }
}

}  // namespace

AimAnswer aimAnswer(const std::vector<LadderRow>& rows, const std::vector<Aim>& aims) {
  AimAnswer answer{.best = {},
                   .betterLeftOut = {},
                   .betterBy = {},
                   .nearest = {},
                   .nearestThatFits = {},
                   .asQuick = {},
                   .asQuickWithinS = kEqualTimesS};
  if (aims.empty()) return answer;
  const ByAims by(aims);
  const auto order = rankedByAims(rows, aims);
  if (!order.empty() && rows[order.front()].reachesAllAims() && rows[order.front()].fits())
    answer.best = order.front();
  for (const std::size_t i : order)
    if (rows[i].reachesAllAims() && !rows[i].fits() &&
        (!answer.best || by.order(rows[i], rows[*answer.best]) < 0))
      answer.betterLeftOut.push_back(i);
  if (answer.best) {
    for (const std::size_t i : answer.betterLeftOut)
      answer.betterBy.push_back(by.decider(rows[i], rows[*answer.best]));
  } else {
    const auto nearer = [&](std::optional<std::size_t>& nearest, std::size_t i) {
      if (!nearest || missOfAims(rows[i], aims) < missOfAims(rows[*nearest], aims)) nearest = i;
    };
    for (const std::size_t i : order) {
      nearer(answer.nearest, i);
      if (rows[i].fits()) nearer(answer.nearestThatFits, i);
    }
  }
  addAsQuick(answer, rows, order, by);
  return answer;
}

}  // namespace layshaft
