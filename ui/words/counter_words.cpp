// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/counter_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <optional>

#include "core/study/gear_limits.h"
#include "ui/words/chain_words.h"
#include "ui/words/numbers.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(CounterWords)
};

constexpr double kNoticeablePercent = 0.05;  // as a step of no size

/// By how many per cent the proposal pulls harder in first gear: as far as tyre and front wheel let it;
/// without an engine curve it goes with the gearing.
double morePullPercent(const Plan& plan) {
  const RoadPlan &was = plan.stock.road, &is = plan.proposed.road;
  if (was.pull.empty() || is.pull.empty()) {
    const auto changes = gearChangesPercent(plan.stock.gearing, plan.proposed.gearing);
    return changes.empty() ? plan.proposed.change.gearingPercent : changes.front();
  }
  const ComparedPull pull = comparedPull({was.pull, was.limits}, 0, {is.pull, is.limits}, 0);
  return 100.0 * (pull.toN / pull.fromN - 1.0);
}

CounterLine pullLine(const Plan& plan) {
  // Where the tyre or the front wheel is the limit, what moves it a little is nothing that a rider can tell.
  constexpr double kFeltPercent = 2.0;  // about one rear tooth: common practice
  const auto& limits = plan.proposed.road.limits;
  const bool limited = !limits.empty() && limits.front();
  const double more = morePullPercent(plan);
  if (std::abs(more) >= (limited ? kFeltPercent : kNoticeablePercent))
    return more > 0.0 ? CounterLine{Worth::Gain, Say::tr("%1 % more pull in 1st gear").arg(percent(more))}
                      : CounterLine{Worth::Cost, Say::tr("%1 % less pull in 1st gear").arg(percent(more))};
  if (limited && plan.proposed.change.direction == Direction::Shorter)
    return {Worth::Same, Say::tr("No more pull in 1st gear: %1", "%1 is \"wheelie limit\"")
                             .arg(limitWords(limits.front()->by))};
  return {Worth::Same, Say::tr("As much pull in 1st gear")};
}

/// Without a speed to cruise at: what the top gear does at any speed.
CounterLine revsAnywhere(const Plan& plan) {
  const double more = plan.proposed.change.gearingPercent;
  if (std::abs(more) < kNoticeablePercent) return {Worth::Same, Say::tr("As many revs at the same speed")};
  return more > 0.0
             ? CounterLine{Worth::Cost, Say::tr("%1 % more revs at the same speed").arg(percent(more))}
             : CounterLine{Worth::Gain, Say::tr("%1 % fewer revs at the same speed").arg(percent(more))};
}

CounterLine cruiseLine(const Plan& plan, const UnitsShown& units) {
  const auto& speed = plan.stock.gearing.cruiseSpeedMps;
  if (!speed) return revsAnywhere(plan);
  const auto &was = plan.stock.gearing.cruise, &is = plan.proposed.gearing.cruise;
  const QString at = units.chosenSpeed(*speed);
  if (!is) return {was ? Worth::Cost : Worth::Same, Say::tr("No gear holds %1").arg(at)};
  const QString rpm = number(is->rpm, 0);
  if (!was) return {Worth::Gain, Say::tr("%1 rpm at %2").arg(rpm, at)};
  const QString before = number(was->rpm, 0);
  if (rpm == before) return {Worth::Same, Say::tr("Still %1 rpm at %2").arg(rpm, at)};
  return {is->rpm < was->rpm ? Worth::Gain : Worth::Cost,
          Say::tr("%1 instead of %2 rpm at %3", "revs, revs before, a speed").arg(rpm, before, at)};
}

/// Where the top gear ends; none where that is not known.
std::optional<double> topGearMps(const SetupPlan& setup) {
  return setup.gearing.gears.empty() ? std::nullopt : setup.gearing.gears.back().speedAtRevLimitMps;
}

CounterLine topSpeedLine(const Plan& plan, const UnitsShown& units) {
  const auto &was = plan.stock.road.topSpeed, &is = plan.proposed.road.topSpeed;
  const bool pulled = was && is && was->limitedBy && is->limitedBy;  // else it is only where the gears end
  const auto from = pulled ? was->speedMps : topGearMps(plan.stock);
  const auto to = pulled ? is->speedMps : topGearMps(plan.proposed);
  if (!from || !to) return {Worth::Same, Say::tr("Top speed is not known")};
  const auto shown = [&](double mps) { return number(units.shown(Quantity::Speed, mps), 0); };
  const QString before = shown(*from), now = shown(*to), after = units.withUnit(now, Quantity::Speed);
  if (before == now)
    return {Worth::Same,
            (pulled ? Say::tr("Top speed stays %1") : Say::tr("Top gear still reaches %1")).arg(after)};
  return {*to > *from ? Worth::Gain : Worth::Cost,
          (pulled ? Say::tr("Top speed %1 instead of %2", "a speed and the one before")
                  : Say::tr("Top gear reaches %1 instead of %2", "a speed and the one before"))
              .arg(after, before)};
}

/// What fits, and what must be bought for it.
CounterLine fittingLine(const ChainRunFigures& run, const Plan& plan) {
  const auto& stock = plan.stock.chainRun;
  const bool keeps = stock && stock->links == run.links && stock->belt == run.belt &&
                     plan.stock.setup.options.chainSize == plan.proposed.setup.options.chainSize;
  if (!run.fits)
    return {Worth::Same, run.belt ? Say::tr("Whether the belt fits: not measured")
                                  : Say::tr("Whether the chain fits: not measured")};
  if (keeps)
    return {Worth::Gain,
            run.belt ? Say::tr("Fits, and your belt stays") : Say::tr("Fits, and your chain stays")};
  return {Worth::Cost, run.belt ? Say::tr("Fits with a belt of %n teeth", nullptr, run.links)
                                : Say::tr("Fits with a chain of %n links", nullptr, run.links)};
}

CounterLine fitLine(const Plan& plan) {
  const auto& run = plan.proposed.chainRun;
  if (!run) return {Worth::Same, Say::tr("Whether it fits is not known")};
  const QString misfit = misfitHeading(*run);
  if (misfit.isEmpty()) return fittingLine(*run, plan);
  const QString others = run->fits == false ? otherLengthsWords(*run) : QString();
  if (others.isEmpty()) return {Worth::Cost, misfit};
  return {Worth::Cost, Say::tr("Would fit %1", "%1 is \"with 112 or 114 links\"").arg(others)};
}

}  // namespace

QString worthMark(Worth worth) {
  switch (worth) {
    case Worth::Gain:
      return QStringLiteral("▲");
    case Worth::Cost:
      return QStringLiteral("▼");
    case Worth::Same:
      break;
  }
  return QStringLiteral("=");
}

QString worthName(Worth worth) {
  switch (worth) {
    case Worth::Gain:
      return Say::tr("Gain");
    case Worth::Cost:
      return Say::tr("Cost");
    case Worth::Same:
      break;
  }
  return Say::tr("No difference");
}

QString worthKey() {
  return Say::tr("%1 gains   %2 costs   %3 no difference", "marks")
      .arg(worthMark(Worth::Gain), worthMark(Worth::Cost), worthMark(Worth::Same));
}

QString counterHeading(const Setup& setup) {
  return Say::tr("Front %1 · Rear %2", "teeth").arg(setup.frontTeeth.count()).arg(setup.rearTeeth.count());
}

QString counterSentence(const Plan& plan) {
  const auto changes = gearChangesPercent(plan.stock.gearing, plan.proposed.gearing);
  const auto [low, high] = std::minmax_element(changes.begin(), changes.end());
  if (plan.stock.gearing.gears.size() != plan.proposed.gearing.gears.size() ||
      (!changes.empty() && *high - *low >= kNoticeablePercent))
    return Say::tr("Some gears change, others less or not at all.");
  const GearingChange& change = plan.proposed.change;
  const bool shorter = change.direction == Direction::Shorter;
  switch (change.size) {
    case StepSize::None:
      break;
    case StepSize::Small:
      return shorter ? Say::tr("A little livelier and busier.") : Say::tr("A little calmer and lazier.");
    case StepSize::Moderate:
      return shorter ? Say::tr("Clearly livelier and busier.") : Say::tr("Clearly calmer and lazier.");
    case StepSize::Large:
      return shorter ? Say::tr("Much livelier and busier.") : Say::tr("Much calmer and lazier.");
  }
  return Say::tr("Rides as your bike does now.");
}

std::vector<CounterLine> counterLines(const Plan& plan, const UnitsShown& units) {
  return {pullLine(plan), cruiseLine(plan, units), topSpeedLine(plan, units), fitLine(plan)};
}

QString counterDescription(const Plan& plan, const UnitsShown& units) {
  QStringList parts{counterSentence(plan)};
  for (const CounterLine& line : counterLines(plan, units))
    parts << Say::tr("%1: %2.", "gain or cost, and what it is").arg(worthName(line.worth), line.words);
  return parts.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
