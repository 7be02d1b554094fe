// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/run_chart.h"

#include <QPainter>
#include <algorithm>

#include "ui/words/chart_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kShiftDot = 3.5;  // half the size of the mark, px

/// The engine speed at a road speed shortly before a point of a run: where the clutch slips, the launch's.
double engineRpm(const RoadModel& model, const RunPoint& next, double mps) {
  const auto gear = static_cast<std::size_t>(next.gear - 1);
  constexpr double kSlips = 1.0;  // rpm
  const bool slips = next.rpm > model.rpm(next.speedMps, gear) + kSlips;
  return slips ? next.rpm : model.rpm(mps, gear);
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
  fitTo(std::max(longest, 1e-3), 0.0, withHeadroom(0.0, std::max(fastest, 1.0)),
        static_cast<int>(over_) * 2 + static_cast<int>(ride_));
}

QString RunChart::xTitle() const {
  return over_ == Over::Time ? tr("Time, s") : tr("Distance, %1").arg(units_.name(Quantity::Length));
}

void RunChart::paintOver(QPainter& painter) {
  if (!plan_) return;
  painter.save();
  painter.setClipRect(plotArea());
  for (const auto& [setup, colour] :
       {std::pair{&plan_->stock, colours().stock}, std::pair{&plan_->proposed, colours().proposed}}) {
    painter.setPen(QPen(colour, 1));
    painter.setBrush(colours().background);
    for (const RunShift& shift : shifts(*setup)) {
      const QPointF place = at(along(shift.timeS, shift.distanceM), shownSpeed(shift.speedMps));
      painter.drawEllipse(place, kShiftDot, kShiftDot);
    }
    painter.setBrush(Qt::NoBrush);
  }
  painter.restore();
  paintLabels(painter);
}

QString RunChart::yTitle() const {
  return tr("Road speed, %1").arg(units_.name(Quantity::Speed));
}

/// Which gears are shifted, beside each mark of the proposal.
void RunChart::putLabels(LabelSpace& space) const {
  for (const RunShift& shift : shifts(plan_->proposed)) {
    const QPointF mark = at(along(shift.timeS, shift.distanceM), shownSpeed(shift.speedMps));
    const ChartLabel label{tr("%1–%2").arg(shift.fromGear).arg(shift.fromGear + 1), colours().proposed, true};
    const double width = sizeOf(label).width(), height = sizeOf(label).height();
    std::vector<QPointF> corners;
    for (const double gap : {5.0, 12.0, 20.0})
      for (const QPointF& corner :
           {QPointF(mark.x() + gap, mark.y()), QPointF(mark.x() - gap - width, mark.y() - height),
            QPointF(mark.x() - width / 2, mark.y() + gap),
            QPointF(mark.x() - width / 2, mark.y() - gap - height)})
        corners.push_back(corner);
    put(space, label, corners);
  }
}

QString RunChart::planInWords() const {
  return runChartWords(*plan_, units_, xTitle(), ride_ == Ride::Drive);
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
    speed.values << (v ? number(*v, 0) : noValue());
    other.values << (o ? number(*o, over_ == Over::Time ? 0 : 2) : noValue());
    const auto point = std::lower_bound(run.begin(), run.end(), x, [this](const RunPoint& p, double value) {
      return along(p.timeS, p.distanceM) < value;
    });
    const bool inside = v && point != run.end();
    gear.values << (inside ? number(point->gear, 0) : noValue());
    engine.values << (inside
                          ? number(engineRpm(*setup.plan->model, *point, units_.si(Quantity::Speed, *v)), 0)
                          : noValue());
  }
  return any ? std::vector{speed, other, gear, engine} : std::vector<CrosshairRow>();
}

}  // namespace layshaft::ui
