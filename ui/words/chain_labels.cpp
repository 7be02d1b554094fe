// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chain_labels.h"

#include <QCoreApplication>
#include <cmath>

#include "ui/words/chain_words.h"
#include "ui/words/figure_rows.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

using Figure = std::optional<double>;

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ChainLabels)
};

QString small(const Figure& metres, const UnitsShown& units) {
  return metres ? number(units.shown(Quantity::SmallLength, *metres), units.decimals(Quantity::SmallLength))
                : Say::tr("–");
}

/// "114 links (stock 112)" or "Belt of 120 teeth"; links and a belt's teeth do not compare.
QString loopText(const ChainRunFigures& run, const ChainRunFigures& stock) {
  if (stock.belt != run.belt || stock.links == run.links)
    return run.belt ? Say::tr("Belt of %n teeth", nullptr, run.links)
                    : Say::tr("%n links", nullptr, run.links);
  return (run.belt ? Say::tr("Belt of %n teeth (stock %1)", nullptr, run.links)
                   : Say::tr("%n links (stock %1)", nullptr, run.links))
      .arg(stock.links);
}

QString tensionText(const ChainRunFigures& run, const UnitsShown& units) {
  return Say::tr("Peak tension %1")
      .arg(units.withUnit(number(units.shown(Quantity::Force, *run.peakTensionN), 0), Quantity::Force));
}

QString massText(const std::optional<SprocketMass>& mass, const UnitsShown& units) {
  if (!mass) return Say::tr("–");
  return (mass->estimated ? QStringLiteral("≈ ") : QString()) +
         number(units.shown(Quantity::Mass, mass->kg), 2);
}

}  // namespace

QString teethLabel(const Plan& plan, SprocketPlace place) {
  const auto teeth = [place](const SetupPlan& setup) {
    return place == SprocketPlace::Front ? setup.setup.frontTeeth.count() : setup.setup.rearTeeth.count();
  };
  const int now = teeth(plan.proposed), before = teeth(plan.stock);
  return now == before ? Say::tr("%n teeth", nullptr, now)
                       : Say::tr("%n teeth (stock %1)", nullptr, now).arg(before);
}

QString wrapLabel(const Plan& plan) {
  const auto wrap = [](const SetupPlan& setup) { return figureText(setup.chainRun->frontWrapDeg, 0); };
  const QString now = wrap(plan.proposed), before = wrap(plan.stock);
  return now == before ? Say::tr("Wrap %1°").arg(now) : Say::tr("Wrap %1° (stock %2)").arg(now, before);
}

QStringList loopLabel(const Plan& plan, const UnitsShown& units) {
  const ChainRunFigures& run = *plan.proposed.chainRun;
  QString loop = loopText(run, *plan.stock.chainRun);
  if (const auto& size = plan.proposed.setup.options.chainSize; size && !run.belt)
    loop = Say::tr("%1, %2", "chain's size and links").arg(QString::fromUtf8(size->name.data()), loop);
  if (!run.tightCentreM) return {loop, Say::tr("Too short")};
  QStringList lines{loop};
  if (run.peakTensionN) lines << tensionText(run, units);
  return lines;
}

QString centreLabel(const Plan& plan, const UnitsShown& units) {
  const QString now = small(plan.proposed.chainRun->centreDistanceM, units);
  const QString before = small(plan.stock.chainRun->centreDistanceM, units);
  const QString withUnit = units.withUnit(now, Quantity::SmallLength);
  return now == before ? Say::tr("Centres %1").arg(withUnit)
                       : Say::tr("Centres %1 (stock %2)").arg(withUnit, before);
}

QStringList axleLabel(const Plan& plan, const UnitsShown& units) {
  const ChainRunFigures& run = *plan.proposed.chainRun;
  QStringList lines;
  if (run.axleShiftM)
    lines << byShift(*run.axleShiftM, units, Say::tr("Axle stays"), Say::tr("Axle %1 back"),
                     Say::tr("Axle %1 forward"));
  const QString misfit = misfitHeading(run);
  if (run.fits) lines << (misfit.isEmpty() ? Say::tr("Fits") : misfit);
  return lines;
}

namespace {

/// Rows of the chain's table in one system of units.
class ChainRows {
 public:
  ChainRows(const Plan& plan, const UnitsShown& units)
      : from_(plan.stock), to_(plan.proposed), was_(*from_.chainRun), is_(*to_.chainRun), units_(units) {}

  std::vector<QStringList> all() const {
    std::vector<QStringList> rows{{QString(), Say::tr("Stock"), Say::tr("Proposed"), Say::tr("Difference")}};
    addPlace(rows);
    addTeeth(rows);
    addStrength(rows);
    addSwingarm(rows);
    return rows;
  }

 private:
  /// Where chain or belt puts the axle.
  void addPlace(std::vector<QStringList>& rows) const {
    const QString mm = units_.name(Quantity::SmallLength);
    const auto whole = [](int x) { return Figure(static_cast<double>(x)); };
    const int decimals = units_.decimals(Quantity::SmallLength);
    rows.push_back(figureRow(is_.belt ? Say::tr("Belt, teeth") : Say::tr("Links"),
                             was_.belt == is_.belt ? whole(was_.links) : std::nullopt, whole(is_.links), 0));
    rows.push_back(
        lengthRow(Say::tr("Centre distance, %1").arg(mm), was_.centreDistanceM, is_.centreDistanceM));
    rows.push_back({Say::tr("Axle shift (+ is back), %1").arg(mm), number(0.0, decimals),
                    is_.axleShiftM
                        ? signedNumber(units_.shown(Quantity::SmallLength, *is_.axleShiftM), decimals)
                        : Say::tr("–"),
                    QString()});
    rows.push_back(lengthRow(Say::tr("Wheelbase, %1").arg(mm), was_.wheelbaseM, is_.wheelbaseM));
    rows.push_back(figureRow(Say::tr("Front wrap, °"), was_.frontWrapDeg, is_.frontWrapDeg, 1));
  }

  void addTeeth(std::vector<QStringList>& rows) const {
    const auto whole = [](int x) { return Figure(static_cast<double>(x)); };
    rows.push_back(figureRow(Say::tr("Shared factor, front (1 is best)"), whole(was_.commonFactorFront),
                             whole(is_.commonFactorFront), 0));
    rows.push_back(figureRow(Say::tr("Shared factor, rear (1 is best)"), whole(was_.commonFactorRear),
                             whole(is_.commonFactorRear), 0));
    // A belt bends between its teeth, too: its speed does not ripple.
    if (is_.belt) return;
    const auto ripple = [](const ChainRunFigures& run, double percentage) {
      return run.belt ? std::nullopt : Figure(percentage);
    };
    rows.push_back(figureRow(Say::tr("Speed ripple, front, %"), ripple(was_, was_.chordalFrontPercent),
                             ripple(is_, is_.chordalFrontPercent), 2));
    rows.push_back(figureRow(Say::tr("Speed ripple, rear, %"), ripple(was_, was_.chordalRearPercent),
                             ripple(is_, is_.chordalRearPercent), 2));
  }

  void addStrength(std::vector<QStringList>& rows) const {
    const auto force = [&](const Figure& n) {
      return n ? Figure(units_.shown(Quantity::Force, *n)) : std::nullopt;
    };
    const auto speed = [&](const Figure& mps) {
      return mps ? Figure(units_.shown(Quantity::Length, *mps)) : std::nullopt;
    };
    const QString kg = units_.name(Quantity::Mass);
    rows.push_back(figureRow(Say::tr("Speed at the rev limit, %1/s").arg(units_.name(Quantity::Length)),
                             speed(was_.topChainSpeedMps), speed(is_.topChainSpeedMps), 1));
    rows.push_back(
        figureRow(Say::tr("Peak tension on dry level asphalt, %1").arg(units_.name(Quantity::Force)),
                  force(was_.peakTensionN), force(is_.peakTensionN), 0));
    rows.push_back(figureRow(Say::tr("Strength ÷ peak tension (comparison only)"), was_.safetyFactor,
                             is_.safetyFactor, 1));
    rows.push_back(massRow((is_.belt ? Say::tr("Front pulley, %1") : Say::tr("Front sprocket, %1")).arg(kg),
                           from_.sprockets.front, to_.sprockets.front));
    rows.push_back(massRow((is_.belt ? Say::tr("Rear pulley, %1") : Say::tr("Rear sprocket, %1")).arg(kg),
                           from_.sprockets.rear, to_.sprockets.rear));
  }

  void addSwingarm(std::vector<QStringList>& rows) const {
    const auto squat = [](const ChainRunFigures& run) {
      return run.swingarm ? run.swingarm->antiSquatPercent : std::nullopt;
    };
    rows.push_back(figureRow(Say::tr("Anti-squat, %"), squat(was_), squat(is_), 1));
    if (is_.belt) return;  // a belt's tension goes by its manual's method
    const auto slack = [](const ChainRunFigures& run) {
      return !run.belt && run.swingarm && run.swingarm->tightSpot
                 ? Figure(run.swingarm->tightSpot->leastPlayM)
                 : std::nullopt;
    };
    rows.push_back(
        lengthRow(Say::tr("Slack limit, binds below, no setting, %1").arg(units_.name(Quantity::SmallLength)),
                  slack(was_), slack(is_)));
  }

  QStringList lengthRow(const QString& name, const Figure& a, const Figure& b) const {
    const auto shown = [&](const Figure& m) {
      return m ? Figure(units_.shown(Quantity::SmallLength, *m)) : std::nullopt;
    };
    return figureRow(name, shown(a), shown(b), units_.decimals(Quantity::SmallLength));
  }

  QStringList massRow(const QString& name, const std::optional<SprocketMass>& a,
                      const std::optional<SprocketMass>& b) const {
    const bool weighed = a && b && !a->estimated && !b->estimated;
    if (!weighed) return {name, massText(a, units_), massText(b, units_), QString()};
    return figureRow(name, units_.shown(Quantity::Mass, a->kg), units_.shown(Quantity::Mass, b->kg), 2);
  }

  const SetupPlan &from_, &to_;
  const ChainRunFigures &was_, &is_;
  const UnitsShown& units_;
};

}  // namespace

std::vector<QStringList> chainTable(const Plan& plan, const UnitsShown& units) {
  if (!plan.stock.chainRun || !plan.proposed.chainRun) return {};
  return ChainRows(plan, units).all();
}

}  // namespace layshaft::ui
