// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/pull_chart.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/units.h"
#include "ui/words/chart_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kShiftMark = 3.5;  // half the size of the mark, px

bool hasAssumed(const std::vector<PullPoint>& points) {
  return std::any_of(points.begin(), points.end(), [](const PullPoint& point) { return point.assumed; });
}

}  // namespace

PullChart::PullChart(QWidget* parent) : SetupChart(tr("Pull chart"), parent) {
  applyPalette();
}

void PullChart::setMeasure(PullMeasure measure) {
  measure_ = measure;
  if (plan_) refresh();
}

QPointF PullChart::shownPoint(const PullPoint& point) const {
  const double x = shownSpeed(point.speedMps);
  switch (measure_) {
    case PullMeasure::Acceleration:
      return {x, point.accelerationMps2 / units::kStandardGravityMps2};
    case PullMeasure::Power:
      // The wheel turns faster than the road passes by what slips.
      return {x, units_.shown(Quantity::Power, point.forceN * point.speedMps / (1.0 - plan_->road.slip))};
    case PullMeasure::Force:
      break;
  }
  return {x, units_.shown(Quantity::Force, point.forceN)};
}

QList<QPointF> PullChart::shownLine(const std::vector<PullPoint>& points) const {
  QList<QPointF> line;
  line.reserve(static_cast<qsizetype>(points.size()));
  for (const PullPoint& point : points) line.append(shownPoint(point));
  return line;
}

void PullChart::prepare() {
  curves_.update(*plan_, [](const SetupPlan& setup) { return pullCurves(setup); });
}

QList<QPointF> PullChart::lineOf(const SetupPlan& setup) const {
  // A series has one pen: a line that is thin in parts is painted.
  if (hasAssumed(curves_.of(setup).followed)) return {};
  return shownLine(curves_.of(setup).followed);
}

void PullChart::fitRanges() {
  double fastest = 0.0, highest = 0.0;
  for (const Shown& setup : shown())
    for (const auto& gear : curves_.of(*setup.plan).gears)
      for (const PullPoint& point : gear) {
        const QPointF shown = shownPoint(point);
        fastest = std::max(fastest, shown.x());
        highest = std::max(highest, shown.y());
      }
  fitTo(fastest, 0.0, withHeadroom(0.0, std::max(highest, 1e-3)), static_cast<int>(measure_));
}

QString PullChart::yTitle() const {
  switch (measure_) {
    case PullMeasure::Acceleration:
      return tr("Acceleration, g");
    case PullMeasure::Power:
      return tr("Power at the wheel, %1").arg(units_.name(Quantity::Power));
    case PullMeasure::Force:
      break;
  }
  return tr("Pull at the wheel, %1").arg(units_.name(Quantity::Force));
}

int PullChart::decimals() const {
  return measure_ == PullMeasure::Force ? 0 : measure_ == PullMeasure::Power ? 1 : 2;
}

void PullChart::paintOver(QPainter& painter) {
  if (!plan_) return;
  painter.save();
  painter.setClipRect(plotArea());
  paintBounds(painter);
  paintFollowed(painter);
  paintGears(painter);
  paintResistance(painter);
  paintShifts(painter);
  painter.restore();
  paintLabels(painter);
}

QString PullChart::xTitle() const {
  return tr("Road speed, %1").arg(units_.name(Quantity::Speed));
}

QPolygonF PullChart::inPlot(const std::vector<PullPoint>& points) const {
  QPolygonF line;
  line.reserve(static_cast<qsizetype>(points.size()));
  for (const PullPoint& point : points) {
    const QPointF shown = shownPoint(point);
    line << at(shown.x(), shown.y());
  }
  return line;
}

std::vector<PullChart::Bound> PullChart::boundsInView() const {
  const PullCurves& curves = curves_.of(plan_->proposed);
  std::vector<Bound> bounds;
  for (const auto& [bound, name, shade] : {std::tuple{&curves.grip, tr("Grip limit"), Qt::FDiagPattern},
                                           std::tuple{&curves.lift, tr("Wheelie limit"), Qt::BDiagPattern}}) {
    const QPolygonF edge = inPlot(*bound);
    const bool inView =
        std::any_of(edge.begin(), edge.end(), [this](const QPointF& p) { return p.y() >= plotArea().top(); });
    if (edge.size() >= 2 && inView) bounds.push_back({edge, name, shade});
  }
  return bounds;
}

void PullChart::avoidLines(LabelSpace& space) const {
  for (const Shown& setup : shown()) space.avoid(inPlot(curves_.of(*setup.plan).followed));
  for (const SetupPlan* setup : {&plan_->stock, &plan_->proposed})
    for (const auto& gear : curves_.of(*setup).gears) space.avoid(inPlot(gear));
  if (measure_ != PullMeasure::Acceleration) space.avoid(inPlot(curves_.of(plan_->proposed).resistance));
  for (const Bound& bound : boundsInView()) space.avoid(bound.edge);
  for (const TopSpeed& reached : topSpeeds()) {
    const double x = at(reached.shown, 0).x();
    space.avoid(QPolygonF{QPointF(x, plotArea().bottom()), QPointF(x, plotArea().center().y())});
  }
}

void PullChart::putLabels(LabelSpace& space) const {
  putTopSpeeds(space);
  for (const Bound& bound : boundsInView()) {
    ChartLabel label{bound.name, colours().warning, false, true};
    putAlong(space, label, bound.edge);
  }
  if (const auto& resistance = curves_.of(plan_->proposed).resistance;
      resistance.size() > 1 && measure_ != PullMeasure::Acceleration)
    putAlong(space, {tr("Drag and rolling"), colours().text}, inPlot(resistance));
  putGearNumbers(space);
}

void PullChart::putAlong(LabelSpace& space, const ChartLabel& label, const QPolygonF& line) const {
  std::vector<QPointF> corners;
  for (const QRectF& place : placesAlong({line, sizeOf(label)}, plotArea()))
    corners.push_back(place.topLeft());
  put(space, label, corners);
}

/// Beyond a bound the pull is of no use: shaded.
void PullChart::paintBounds(QPainter& painter) const {
  for (const Bound& bound : boundsInView()) paintBound(painter, bound.edge, bound.shade);
}

void PullChart::paintBound(QPainter& painter, const QPolygonF& edge, Qt::BrushStyle shade) const {
  const QRectF plot = plotArea();
  QPolygonF beyond = edge;
  beyond << QPointF(edge.back().x(), plot.top()) << QPointF(edge.front().x(), plot.top());
  painter.setPen(Qt::NoPen);
  painter.setBrush(QBrush(faint(colours().warning, 60), shade));
  painter.drawPolygon(beyond);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colours().warning, 1));
  painter.drawPolyline(edge);
}

/// The lines that no series shows, stock below and proposed above as there.
void PullChart::paintFollowed(QPainter& painter) const {
  auto setups = shown();
  std::rotate(setups.begin() + 1, setups.begin() + 2, setups.end());
  for (const Shown& setup : setups) {
    const auto& points = curves_.of(*setup.plan).followed;
    if (!hasAssumed(points)) continue;
    QPolygonF part;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const QPointF point = shownPoint(points[i]);
      part << at(point.x(), point.y());
      if (i + 1 < points.size() && points[i + 1].assumed == points[i].assumed) continue;
      QPen pen = setup.pen;
      if (points[i].assumed) pen.setWidthF(1.0);
      painter.setPen(pen);
      painter.drawPolyline(part);
      part = QPolygonF{part.back()};
    }
  }
}

void PullChart::paintGears(QPainter& painter) const {
  const auto paint = [&](const SetupPlan& setup, const QColor& colour) {
    painter.setPen(QPen(colour, 1));
    for (const auto& gear : curves_.of(setup).gears) painter.drawPolyline(inPlot(gear));
  };
  paint(plan_->stock, colours().stock);
  paint(plan_->proposed, colours().proposed);
}

/// Each gear's number at its peak, or as near to it along the curve as it stands free.
void PullChart::putGearNumbers(LabelSpace& space) const {
  const double height = std::ceil(QFontMetricsF(chartFont(true)).ascent());
  int gearNumber = 0;
  for (const auto& gear : curves_.of(plan_->proposed).gears) {
    ++gearNumber;
    if (gear.empty()) continue;
    ChartLabel label{QString::number(gearNumber), colours().proposed, true, true};
    label.box.setSize({sizeOf(label).width(), height});
    const QPolygonF line = inPlot(gear);
    const auto peak = std::min_element(line.begin(), line.end(),
                                       [](const QPointF& a, const QPointF& b) { return a.y() < b.y(); });
    std::vector<QPointF> corners;
    const auto add = [&](const QPointF& point) {
      for (const double gap : {2.0, 7.0}) {
        corners.emplace_back(point.x() - label.box.width() / 2, point.y() - height - gap);
        corners.emplace_back(point.x() - label.box.width() / 2, point.y() + gap);
      }
    };
    add(*peak);
    for (qsizetype away = 1; away < line.size(); ++away)
      for (const qsizetype i : {peak - line.begin() - away, peak - line.begin() + away})
        if (i >= 0 && i < line.size()) add(line[i]);
    put(space, label, corners);
  }
}

void PullChart::paintResistance(QPainter& painter) const {
  const auto& resistance = curves_.of(plan_->proposed).resistance;
  if (resistance.empty() || measure_ == PullMeasure::Acceleration) return;
  painter.setPen(QPen(colours().text, 1.4, Qt::DashDotLine, Qt::FlatCap));
  painter.drawPolyline(inPlot(resistance));
}

void PullChart::paintShifts(QPainter& painter) const {
  const auto paint = [&](const SetupPlan& setup, const QColor& colour) {
    painter.setPen(QPen(colour, 1));
    painter.setBrush(colours().background);
    for (const PullPoint& point : curves_.of(setup).shifts) {
      const QPointF shown = shownPoint(point);
      painter.drawEllipse(at(shown.x(), shown.y()), kShiftMark, kShiftMark);
    }
    painter.setBrush(Qt::NoBrush);
  };
  paint(plan_->stock, colours().stock);
  paint(plan_->proposed, colours().proposed);
}

std::vector<PullChart::TopSpeed> PullChart::topSpeeds() const {
  std::vector<TopSpeed> speeds;
  if (!plan_->pullBike->accelerates()) return speeds;
  for (const auto& [setup, colour] :
       {std::pair{&plan_->stock, colours().stock}, std::pair{&plan_->proposed, colours().proposed}})
    if (setup->road.topSpeed) speeds.push_back({shownSpeed(setup->road.topSpeed->speedMps), colour});
  return speeds;
}

/// Low in the plot beside a line up from the axis, as low as words stand free.
void PullChart::putTopSpeeds(LabelSpace& space) const {
  const QRectF plot = plotArea();
  for (const TopSpeed& reached : topSpeeds()) {
    const double x = at(reached.shown, 0).x();
    ChartLabel label{tr("Top speed %1").arg(units_.withUnit(number(reached.shown, 0), Quantity::Speed)),
                     reached.colour, true};
    const QSizeF size = sizeOf(label);
    std::vector<QPointF> corners;
    for (double top = plot.bottom() - 2 * size.height() - 6; top > plot.top(); top -= size.height() / 2)
      for (const double left : {x + 4, x - size.width() - 4})
        if (left >= plot.left() && left + size.width() <= plot.right()) corners.emplace_back(left, top);
    if (corners.empty()) corners.emplace_back(x - size.width() / 2, plot.bottom() - 2 * size.height());
    label.leader =
        QLineF(x, plot.bottom(), x, plot.bottom());  // as high as its words, once they have a place
    put(space, label, corners);
  }
}

QString PullChart::planInWords() const {
  return pullChartWords(*plan_, units_, yTitle());
}

QString PullChart::crosshairTitle(double x) const {
  const QString unit = measure_ == PullMeasure::Acceleration
                           ? tr("g")
                           : units_.name(measure_ == PullMeasure::Power ? Quantity::Power : Quantity::Force);
  return tr("%1, %2", "road speed, and the unit of the pull there")
      .arg(units_.withUnit(number(x, 0), Quantity::Speed), unit);
}

std::vector<CrosshairRow> PullChart::crosshairRows(double x) const {
  std::vector<CrosshairRow> rows;
  const auto setups = shown();
  std::size_t gears = 0;
  for (const Shown& setup : setups) gears = std::max(gears, curves_.of(*setup.plan).gears.size());
  const auto words = [this](const std::optional<double>& value) {
    return value ? number(*value, decimals()) : noValue();
  };
  for (std::size_t g = 0; g < gears; ++g) {
    CrosshairRow row{tr("Gear %1").arg(g + 1), {}};
    bool any = false;
    for (const Shown& setup : setups) {
      const auto& curves = curves_.of(*setup.plan).gears;
      const auto value = g < curves.size() ? valueAt(shownLine(curves[g]), x) : std::nullopt;
      any = any || value;
      row.values << words(value);
    }
    if (any) rows.push_back(row);
  }
  if (measure_ != PullMeasure::Acceleration && !curves_.of(plan_->stock).resistance.empty()) {
    CrosshairRow row{tr("Drag and rolling"), {}};
    for (const Shown& setup : setups)
      row.values << words(valueAt(shownLine(curves_.of(*setup.plan).resistance), x));
    rows.push_back(row);
  }
  return rows;
}

std::vector<QStringList> PullChart::numbers() const {
  if (!plan_) return {};
  const auto setups = shown();
  std::vector<QStringList> rows;
  QStringList titles{tr("%1").arg(units_.name(Quantity::Speed)), tr("Gear")};
  for (const Shown& setup : setups)
    titles << tr("%1, %2", "setup and what is measured").arg(setup.name, yTitle());
  rows.push_back(titles);
  for (const double x : ticks(xRange()))
    for (const CrosshairRow& row : crosshairRows(x)) {
      QStringList cells{number(x, 0), row.name};
      cells << row.values;
      rows.push_back(cells);
    }
  return rows;
}

}  // namespace layshaft::ui
