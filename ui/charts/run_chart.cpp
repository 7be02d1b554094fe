// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/run_chart.h"

#include <QPainter>
#include <algorithm>

#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kShiftMark = 3.5;  // half the size of the mark, px

/// The engine speed at a road speed shortly before a point of a run: where the clutch slips, the launch's.
double engineRpm(const SetupPlan& setup, const RunPoint& next, double mps) {
  const auto gear = static_cast<std::size_t>(next.gear - 1);
  constexpr double kSlips = 1.0;  // rpm
  const bool slips = next.rpm > setup.gearing.rpm(next.speedMps, gear) + kSlips;
  return slips ? next.rpm : setup.gearing.rpm(mps, gear);
}

}  // namespace

RunChart::RunChart(QWidget* parent) : SetupChart(tr("Acceleration chart"), parent) {
  applyPalette();
}

void RunChart::setOver(Over over) {
  over_ = over;
  if (plan_) refresh();
}

void RunChart::setRide(Ride ride) {
  ride_ = ride;
  traces_.clear();
  if (!plan_) return;
  prepare();
  refresh();
}

void RunChart::prepare() {
  traces_.update(*plan_, [this](const SetupPlan& setup) {
    return ride_ == Ride::Drive ? driveTrace(setup, plan_->drive) : standingStartTrace(setup);
  });
}

const std::vector<RunPoint>& RunChart::points(const SetupPlan& setup) const {
  return traces_.of(setup).points;
}

const std::vector<RunShift>& RunChart::shifts(const SetupPlan& setup) const {
  return traces_.of(setup).shifts;
}

double RunChart::along(double timeS, double distanceM) const {
  return over_ == Over::Time ? timeS : units_.shown(Quantity::Length, distanceM);
}

QList<QPointF> RunChart::lineOf(const SetupPlan& setup) const {
  QList<QPointF> line;
  for (const RunPoint& point : points(setup))
    line.append({along(point.timeS, point.distanceM), shownSpeed(point.speedMps)});
  return line;
}

void RunChart::fitRanges() {
  double longest = 0.0, fastest = 0.0;
  for (const Shown& setup : shown())
    for (const RunPoint& point : points(*setup.plan)) {
      longest = std::max(longest, along(point.timeS, point.distanceM));
      fastest = std::max(fastest, shownSpeed(point.speedMps));
    }
  constexpr double kHeadroom = 1.06;
  fitTo(std::max(longest, 1e-3), 0.0, std::max(fastest, 1.0) * kHeadroom,
        static_cast<int>(over_) * 2 + static_cast<int>(ride_));
}

void RunChart::paintOver(QPainter& painter) {
  if (!plan_) return;
  painter.save();
  painter.setClipRect(plotArea());
  const QFontMetricsF metrics(chartFont(true));
  for (const auto& [setup, colour] :
       {std::pair{&plan_->stock, colours().stock}, std::pair{&plan_->proposed, colours().proposed}}) {
    painter.setPen(QPen(colour, 1));
    painter.setBrush(colours().background);
    for (const RunShift& shift : shifts(*setup)) {
      const QPointF place = at(along(shift.timeS, shift.distanceM), shownSpeed(shift.speedMps));
      painter.drawEllipse(place, kShiftMark, kShiftMark);
      if (setup == &plan_->proposed) {
        const QString gears = tr("%1–%2").arg(shift.fromGear).arg(shift.fromGear + 1);
        texts().draw(painter, chartFont(true), QPointF(place.x() + 5, place.y()), gears);
      }
    }
    painter.setBrush(Qt::NoBrush);
  }
  painter.restore();
  paintAxisTitles(
      painter, tr("Road speed, %1").arg(units_.name(Quantity::Speed)),
      over_ == Over::Time ? tr("Time, s") : tr("Distance, %1").arg(units_.name(Quantity::Length)));
  paintSetupNames(painter, Qt::BottomRightCorner);
}

QString RunChart::crosshairTitle(double x) const {
  return over_ == Over::Time ? tr("%1 s").arg(number(x, 2)) : units_.withUnit(number(x, 0), Quantity::Length);
}

std::vector<CrosshairRow> RunChart::crosshairRows(double x) const {
  CrosshairRow speed{tr("Speed, %1").arg(units_.name(Quantity::Speed)), {}};
  CrosshairRow other{
      over_ == Over::Time ? tr("Distance, %1").arg(units_.name(Quantity::Length)) : tr("Time, s"), {}};
  CrosshairRow gear{tr("Gear"), {}}, engine{tr("Engine, rpm"), {}};
  bool any = false;
  for (const Shown& setup : shown()) {
    const auto& run = points(*setup.plan);
    QList<QPointF> others;
    for (const RunPoint& point : run)
      others.append({along(point.timeS, point.distanceM),
                     over_ == Over::Time ? units_.shown(Quantity::Length, point.distanceM) : point.timeS});
    const auto v = valueAt(lineOf(*setup.plan), x), o = valueAt(others, x);
    any = any || v;
    speed.values << (v ? number(*v, 0) : tr("–"));
    other.values << (o ? number(*o, over_ == Over::Time ? 0 : 2) : tr("–"));
    const auto point = std::lower_bound(run.begin(), run.end(), x, [this](const RunPoint& p, double value) {
      return along(p.timeS, p.distanceM) < value;
    });
    const bool inside = v && point != run.end();
    gear.values << (inside ? number(point->gear, 0) : tr("–"));
    engine.values << (inside ? number(engineRpm(*setup.plan, *point, units_.si(Quantity::Speed, *v)), 0)
                             : tr("–"));
  }
  return any ? std::vector{speed, other, gear, engine} : std::vector<CrosshairRow>();
}

}  // namespace layshaft::ui
