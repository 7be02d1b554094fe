// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/key_figures.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/units.h"
#include "ui/words/figure_rows.h"
#include "ui/words/gear_words.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(KeyFigures)
};

struct FigureWords {
  Figure figure;
  const char* word;
  const char* name;
};
constexpr std::array<FigureWords, kFigureCount> kFigures{{
    {Figure::TopSpeed, "top_speed", QT_TRANSLATE_NOOP("KeyFigures", "Top speed and what limits it")},
    {Figure::LastGearAtLimit, "last_gear_at_limit", QT_TRANSLATE_NOOP("KeyFigures", "Top gear at the limit")},
    {Figure::FirstGearAtLimit, "first_gear_at_limit",
     QT_TRANSLATE_NOOP("KeyFigures", "First gear at the limit")},
    {Figure::Cruise, "cruise", QT_TRANSLATE_NOOP("KeyFigures", "Engine speed at cruise")},
    {Figure::PullInFirst, "pull_in_first", QT_TRANSLATE_NOOP("KeyFigures", "Pull in first gear")},
    {Figure::PullInChosenGear, "pull_in_gear", QT_TRANSLATE_NOOP("KeyFigures", "Pull in the roll-on gear")},
    {Figure::StandingStart, "standing_start", QT_TRANSLATE_NOOP("KeyFigures", "0–100 km/h or 0–60 mph")},
    {Figure::QuarterMile, "quarter_mile", QT_TRANSLATE_NOOP("KeyFigures", "Quarter mile")},
    {Figure::Drive, "drive", QT_TRANSLATE_NOOP("KeyFigures", "Straight")},
    {Figure::CornerExit, "corner_exit", QT_TRANSLATE_NOOP("KeyFigures", "Engine speed at corner exit")},
    {Figure::Lap, "lap", QT_TRANSLATE_NOOP("KeyFigures", "Lap time")},
    {Figure::TurnsPerDistance, "turns_per_distance",
     QT_TRANSLATE_NOOP("KeyFigures", "Engine turns per distance")},
    {Figure::FinalRatio, "final_ratio", QT_TRANSLATE_NOOP("KeyFigures", "Final ratio")},
    {Figure::Rollout, "Rollout", QT_TRANSLATE_NOOP("KeyFigures", "Rollout")},
    {Figure::AxleShift, "axle_shift", QT_TRANSLATE_NOOP("KeyFigures", "Axle shift")},
    {Figure::Speedometer, "speedometer", QT_TRANSLATE_NOOP("KeyFigures", "Speedometer")},
}};

/// Makes figures of one plan in one system of units.
class Maker {
 public:
  Maker(const Plan& plan, const UnitsShown& units) : plan_(plan), units_(units) {}

  std::optional<KeyFigure> make(Figure figure) const {
    switch (figure) {
      case Figure::TopSpeed:
        return topSpeed();
      case Figure::LastGearAtLimit:
        return lastGear();
      case Figure::FirstGearAtLimit:
        return firstGear();
      case Figure::Cruise:
        return cruise();
      case Figure::PullInFirst:
        return pull(0);
      case Figure::PullInChosenGear:
        return pull(plan_.rollOn.gear ? static_cast<std::size_t>(*plan_.rollOn.gear - 1) : bothGears() - 1);
      case Figure::StandingStart:
        return standingStart();
      case Figure::QuarterMile:
        return seconds(Say::tr("1/4 mile"), &RunFigures::quarterMileS);
      case Figure::Drive:
        return drive();
      case Figure::CornerExit:
        return cornerExit();
      case Figure::Lap:
        return lap();
      case Figure::TurnsPerDistance:
        return turns();
      case Figure::FinalRatio:
        return compared(Say::tr("Final ratio"), Quantity::Ratio, stock().gearing.finalRatio,
                        proposed().gearing.finalRatio, 3);
      case Figure::Rollout:
        return compared(Say::tr("Rollout"), Quantity::SmallLength, stock().gearing.rollout.metres,
                        proposed().gearing.rollout.metres, units_.rolloutDecimals());
      case Figure::AxleShift:
        return axleShift();
      case Figure::Speedometer:
        return speedometer();
    }
    return std::nullopt;
  }

 private:
  using Value = std::optional<double>;

  const SetupPlan& stock() const { return plan_.stock; }
  const SetupPlan& proposed() const { return plan_.proposed; }
  std::size_t bothGears() const {
    return std::min(stock().gearing.gears.size(), proposed().gearing.gears.size());
  }

  /// A tenth of a speed can still be read off an instrument; a part of a turn, of a newton or of what a time
  /// is good for would be noise.
  static int moreDecimals(Quantity quantity) { return quantity == Quantity::Speed ? 1 : 0; }

  /// Nothing where neither setup has the figure; a dash where one lacks it.
  std::optional<KeyFigure> compared(const QString& label, Quantity quantity, Value from, Value to,
                                    int decimals) const {
    if (!from && !to) return std::nullopt;
    const auto shown = [&](const Value& v) { return v ? Value(units_.shown(quantity, *v)) : Value(); };
    from = shown(from);
    to = shown(to);
    const ComparedTexts texts = comparedTexts(from, to, decimals, moreDecimals(quantity));
    return KeyFigure{label, texts.stock, texts.proposed, units_.name(quantity), texts.difference};
  }

  std::optional<KeyFigure> topSpeed() const {
    if (!plan_.pullBike->accelerates()) return std::nullopt;
    const auto speed = [](const SetupPlan& p) {
      return p.road.topSpeed ? Value(p.road.topSpeed->speedMps) : Value();
    };
    QString label = Say::tr("Top speed");
    const auto by = [](const SetupPlan& p) {
      const auto& top = p.road.topSpeed;
      return top && top->limitedBy ? Say::tr("%1, %2", "gear and what limits top speed")
                                         .arg(gearOrdinal(top->gear), limitWords(*top->limitedBy))
                                   : QString();
    };
    const QString was = by(stock()), is = by(proposed());
    if (!was.isEmpty() && !is.isEmpty() && was != is)
      label = Say::tr("Top speed (%1 → %2)", "gear and what limits it").arg(was, is);
    else if (!is.isEmpty())
      label = Say::tr("Top speed (%1)", "gear and what limits it").arg(is);
    return compared(label, Quantity::Speed, speed(stock()), speed(proposed()), 0);
  }

  std::optional<KeyFigure> atLimit(std::size_t gear) const {
    return compared(Say::tr("%1 gear at the rev limit").arg(gearOrdinal(static_cast<int>(gear) + 1)),
                    Quantity::Speed, stock().gearing.gears[gear].speedAtRevLimitMps,
                    proposed().gearing.gears[gear].speedAtRevLimitMps, 0);
  }
  std::optional<KeyFigure> lastGear() const {
    return bothGears() > 0 ? atLimit(bothGears() - 1) : std::nullopt;
  }
  std::optional<KeyFigure> firstGear() const { return bothGears() > 1 ? atLimit(0) : std::nullopt; }

  std::optional<KeyFigure> cruise() const {
    const Value speed = stock().gearing.cruiseSpeedMps;
    if (!speed) return std::nullopt;
    const auto& from = stock().gearing.cruise;
    const auto& to = proposed().gearing.cruise;
    if (bothGears() == 0) return std::nullopt;
    const QString shown = units_.chosenSpeed(*speed);
    QString label = Say::tr("%1 in no gear").arg(shown);
    if (from && to && from->gear != to->gear)
      label = Say::tr("%1 in %2 → %3", "a speed and gears")
                  .arg(shown, gearOrdinal(from->gear), gearOrdinal(to->gear));
    else if (from || to)
      label = Say::tr("%1 in %2", "a speed and a gear").arg(shown, gearOrdinal(from ? from->gear : to->gear));
    const auto rpm = [](const std::optional<CruiseFigures>& c) { return c ? Value(c->rpm) : Value(); };
    return compared(label, Quantity::EngineSpeed, rpm(from), rpm(to), 0);
  }

  std::optional<KeyFigure> turns() const {
    const bool miles = units_.system() != UnitSystem::Metric;
    const double perDistance = miles ? units::kMetresPerMile / 1000.0 : 1.0;
    const auto turns = [&](const std::optional<CruiseFigures>& c) {
      return c ? Value(c->turnsPerKm * perDistance) : Value();
    };
    return compared(miles ? Say::tr("Engine turns per mile") : Say::tr("Engine turns per km"),
                    Quantity::Plain, turns(stock().gearing.cruise), turns(proposed().gearing.cruise), 0);
  }

  std::optional<KeyFigure> pull(std::size_t gear) const {
    const RoadPlan &was = stock().road, &is = proposed().road;
    if (gear >= was.pull.size() || gear >= is.pull.size()) return std::nullopt;
    const ComparedPull force = comparedPull({was.pull, was.limits}, gear, {is.pull, is.limits}, gear);
    const QString name = gearOrdinal(static_cast<int>(gear) + 1);
    const auto& limits = proposed().road.limits;
    const QString label =
        gear < limits.size() && limits[gear]
            ? Say::tr("Pull in %1 (%2)", "a gear and what limits it").arg(name, limitWords(limits[gear]->by))
            : Say::tr("Pull in %1").arg(name);
    return compared(label, Quantity::Force, force.fromN, force.toN, 0);
  }

  /// Times no finer than the rollout they rest on: an estimate within 2 % is worth a tenth of a second.
  int timeDecimals() const {
    const bool estimated = stock().gearing.rollout.source == RolloutSource::TyreSize ||
                           proposed().gearing.rollout.source == RolloutSource::TyreSize;
    return estimated ? 1 : 2;
  }

  std::optional<KeyFigure> seconds(const QString& label, Value RunFigures::*member) const {
    return compared(label, Quantity::Time, stock().road.run.*member, proposed().road.run.*member,
                    timeDecimals());
  }
  std::optional<KeyFigure> standingStart() const {
    return units_.system() == UnitSystem::Metric ? seconds(Say::tr("0–100 km/h"), &RunFigures::zeroTo100KmhS)
                                                 : seconds(Say::tr("0–60 mph"), &RunFigures::zeroTo60MphS);
  }

  std::optional<KeyFigure> drive() const {
    if (!plan_.drive) return std::nullopt;
    const auto time = [](const SetupPlan& p) {
      return p.road.run.drive ? Value(p.road.run.drive->timeS) : Value();
    };
    const QString label =
        Say::tr("%1 straight from %2")
            .arg(units_.withUnit(number(units_.shown(Quantity::Length, plan_.drive->lengthM), 0),
                                 Quantity::Length),
                 units_.chosenSpeed(plan_.drive->exitMps));
    return compared(label, Quantity::Time, time(stock()), time(proposed()), timeDecimals());
  }

  /// At the drive's exit speed, in the gear that starts it, at the profile's lean angle.
  std::optional<KeyFigure> cornerExit() const {
    if (!plan_.drive || !plan_.leanDeg) return std::nullopt;
    const QString lean = number(*plan_.leanDeg, 0);
    QString label = Say::tr("Corner exit, %1° lean").arg(lean);
    const auto &was = stock().road.run.drive, &is = proposed().road.run.drive;
    if (was && is && was->startGear() != is->startGear())
      label = Say::tr("Corner exit, %1° lean (%2 → %3)", "an angle and two gears")
                  .arg(lean, gearOrdinal(was->startGear()), gearOrdinal(is->startGear()));
    return compared(label, Quantity::EngineSpeed, stock().cornerExitRpm, proposed().cornerExitRpm, 0);
  }

  /// Without the difference, which says nothing unless it says how far it may be off: that takes laps of its
  /// own.
  std::optional<KeyFigure> lap() const {
    const auto time = [](const SetupPlan& p) { return p.lap ? Value(p.lap->timeS) : Value(); };
    auto figure = compared(lapName(plan_), Quantity::Time, time(stock()), time(proposed()), timeDecimals());
    if (figure) figure->difference.clear();
    return figure;
  }

  /// Against stock's place, positive to the rear.
  std::optional<KeyFigure> axleShift() const {
    const auto shift = [](const SetupPlan& p) {
      return p.chainRun ? Value(p.chainRun->axleShiftM) : Value();
    };
    return compared(Say::tr("Axle shift, + is back"), Quantity::SmallLength, shift(stock()),
                    shift(proposed()), units_.decimals(Quantity::SmallLength));
  }

  std::optional<KeyFigure> speedometer() const {
    if (!stock().speedometer || !proposed().speedometer) return std::nullopt;
    const double trueSpeed = units_.si(Quantity::Speed, units_.system() == UnitSystem::Metric ? 100.0 : 60.0);
    return compared(
        Say::tr("Speedometer at a true %1")
            .arg(units_.withUnit(number(units_.shown(Quantity::Speed, trueSpeed), 0), Quantity::Speed)),
        Quantity::Speed, trueSpeed * stock().speedometer->indicatedOverTrue,
        trueSpeed * proposed().speedometer->indicatedOverTrue, 0);
  }

  const Plan& plan_;
  const UnitsShown& units_;
};

/// What most people ask first, as far as there is data.
std::vector<Figure> usual(const Plan& plan) {
  if (!plan.pullBike->accelerates())
    return {Figure::LastGearAtLimit, Figure::FirstGearAtLimit, Figure::Cruise,      Figure::TurnsPerDistance,
            Figure::FinalRatio,      Figure::Rollout,          Figure::Speedometer, Figure::PullInFirst};
  return {Figure::TopSpeed,        Figure::FirstGearAtLimit, Figure::Cruise,
          Figure::PullInFirst,     Figure::StandingStart,    Figure::Drive,
          Figure::Speedometer,     Figure::FinalRatio,       Figure::Rollout,
          Figure::TurnsPerDistance};
}

}  // namespace

std::vector<KeyFigure> keyFigures(const Plan& plan, const UnitsShown& units,
                                  const std::vector<Figure>& wanted) {
  const Maker maker(plan, units);
  std::vector<KeyFigure> figures;
  for (const Figure figure : wanted.empty() ? usual(plan) : wanted)
    if (figures.size() < kMostFigures)
      if (auto made = maker.make(figure)) figures.push_back(std::move(*made));
  return figures;
}

std::vector<Figure> figuresInReadout(const Plan& plan, const std::vector<Figure>& picked) {
  if (!picked.empty())
    return {picked.begin(),
            picked.begin() + static_cast<std::ptrdiff_t>(std::min(picked.size(), kMostFigures))};
  std::vector<Figure> shown;
  for (const Figure figure : usual(plan))
    if (shown.size() < kMostFigures && hasFigure(plan, figure)) shown.push_back(figure);
  return shown;
}

bool hasFigure(const Plan& plan, Figure figure) {
  const UnitsShown units;
  return Maker(plan, units).make(figure).has_value();
}

std::vector<KeyFigure> everyFigure(const Plan& plan, const UnitsShown& units) {
  const Maker maker(plan, units);
  std::vector<KeyFigure> figures;
  for (const FigureWords& entry : kFigures)
    if (auto made = maker.make(entry.figure)) figures.push_back(std::move(*made));
  return figures;
}

QString figureName(Figure figure) {
  return Say::tr(kFigures[static_cast<std::size_t>(figure)].name);
}

QString figureWord(Figure figure) {
  return QString::fromLatin1(kFigures[static_cast<std::size_t>(figure)].word);
}

std::optional<Figure> figureOf(const QString& word) {
  for (const FigureWords& entry : kFigures)
    if (word == QLatin1String(entry.word)) return entry.figure;
  return std::nullopt;
}

}  // namespace layshaft::ui
