// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/pull_chart.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/units.h"
#include "ui/charts/label_places.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kHeadroom = 1.08;  // above the highest pull, for its label
constexpr auto kNamesCorner = Qt::TopRightCorner;
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
  fitTo(fastest, 0.0, std::max(highest, 1e-3) * kHeadroom, static_cast<int>(measure_));
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
  paintTopSpeeds(painter);
  painter.restore();
  paintAxisTitles(painter, yTitle(), tr("Road speed, %1").arg(units_.name(Quantity::Speed)));
  paintSetupNames(painter, kNamesCorner);
}

/// Beyond a bound the pull is of no use: shaded, and named where it begins.
void PullChart::paintBounds(QPainter& painter) const {
  const PullCurves& curves = curves_.of(plan_->proposed);
  const double height = QFontMetricsF(chartFont()).height();
  std::vector<NamedLine> lines;
  QStringList names;
  for (const auto& [bound, name, shade] : {std::tuple{&curves.grip, tr("Grip limit"), Qt::FDiagPattern},
                                           std::tuple{&curves.lift, tr("Wheelie limit"), Qt::BDiagPattern}}) {
    QPolygonF edge;
    for (const PullPoint& point : *bound) {
      const QPointF shown = shownPoint(point);
      edge << at(shown.x(), shown.y());
    }
    const bool inView =
        std::any_of(edge.begin(), edge.end(), [this](const QPointF& p) { return p.y() >= plotArea().top(); });
    if (edge.size() < 2 || !inView) continue;
    paintBound(painter, edge, shade);
    lines.push_back({edge, {texts().width(chartFont(), name) + 6, height}});
    names << name;
  }
  const auto places = lineNamePlaces(lines, plotArea(), setupNamesArea(kNamesCorner));
  painter.setPen(colours().warning);
  for (std::size_t i = 0; i < places.size(); ++i) {
    painter.fillRect(places[i], colours().background);
    texts().draw(painter, chartFont(), places[i].topLeft() + QPointF(3, 0), names[static_cast<qsizetype>(i)]);
  }
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
    for (const auto& gear : curves_.of(setup).gears) {
      QPolygonF line;
      for (const PullPoint& point : gear) {
        const QPointF shown = shownPoint(point);
        line << at(shown.x(), shown.y());
      }
      painter.drawPolyline(line);
    }
  };
  paint(plan_->stock, colours().stock);
  paint(plan_->proposed, colours().proposed);
  // Each gear's number at its peak.
  painter.setPen(colours().proposed);
  const double height = QFontMetricsF(chartFont(true)).height();
  int number = 0;
  for (const auto& gear : curves_.of(plan_->proposed).gears) {
    ++number;
    if (gear.empty()) continue;
    const auto peak = std::max_element(
        gear.begin(), gear.end(),
        [this](const PullPoint& a, const PullPoint& b) { return shownPoint(a).y() < shownPoint(b).y(); });
    const QPointF shown = shownPoint(*peak), place = at(shown.x(), shown.y());
    const QString text = QString::number(number);
    const double width = texts().width(chartFont(true), text);
    const QRectF patch(place.x() - width / 2, place.y() - height, width, height - 2);
    painter.fillRect(patch.adjusted(-1, 2, 1, 0), colours().background);
    texts().draw(painter, chartFont(true), patch.topLeft(), text);
  }
}

void PullChart::paintResistance(QPainter& painter) const {
  const auto& resistance = curves_.of(plan_->proposed).resistance;
  if (resistance.empty() || measure_ == PullMeasure::Acceleration) return;
  QPolygonF line;
  for (const PullPoint& point : resistance) {
    const QPointF shown = shownPoint(point);
    line << at(shown.x(), shown.y());
  }
  painter.setPen(QPen(colours().text, 1.4, Qt::DashDotLine, Qt::FlatCap));
  painter.drawPolyline(line);
  painter.setPen(colours().text);
  const QString text = tr("Drag and rolling");
  const QPointF place = line[line.size() / 3];
  texts().draw(painter, chartFont(), QPointF(place.x(), place.y() - QFontMetricsF(chartFont()).height() - 3),
               text);
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

void PullChart::paintTopSpeeds(QPainter& painter) const {
  if (!plan_->pullBike->accelerates()) return;
  const QRectF plot = plotArea();
  const double height = QFontMetricsF(chartFont(true)).height();
  double y = plot.bottom() - 2 * height - 6, furthest = 0.0;
  for (const SetupPlan* setup : {&plan_->stock, &plan_->proposed})
    if (setup->road.topSpeed)
      furthest = std::max(furthest, at(shownSpeed(setup->road.topSpeed->speedMps), 0).x());
  for (const auto& [setup, colour] :
       {std::pair{&plan_->stock, colours().stock}, std::pair{&plan_->proposed, colours().proposed}}) {
    if (!setup->road.topSpeed) continue;
    const double speed = shownSpeed(setup->road.topSpeed->speedMps);
    const double x = at(speed, 0).x();
    painter.setPen(QPen(colour, 1, Qt::DotLine));
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.drawLine(QPointF(x, plot.bottom()), QPointF(x, y));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(colour);
    const QString text = tr("Top speed %1").arg(units_.withUnit(number(speed, 0), Quantity::Speed));
    const double width = texts().width(chartFont(true), text);
    const bool right = x >= furthest && x + width + 4 <= plot.right();
    texts().draw(painter, chartFont(true), QPointF(right ? x + 4 : x - width - 4, y), text);
    y -= height + 2;
  }
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
    return value ? number(*value, decimals()) : tr("–");
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
