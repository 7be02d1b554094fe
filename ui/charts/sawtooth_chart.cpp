// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/sawtooth_chart.h"

#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/limits.h"
#include "ui/charts/contrast.h"
#include "ui/words/chart_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kThousand = 1000.0;
constexpr double kBarHeight = 5.0, kBarHeightOverPins = 3.0;
constexpr double kPinBarHeight = 2.0;
constexpr double kOverrunShare = 0.5;  // of the ground, in the colour beyond the shift
constexpr double kHandle = 6.0;        // half the width of the cruise marker's handle, px
constexpr double kLabelStep = 12.0;    // px between places that are tried
constexpr int kCurvedLineParts = 12;   // a gear's line is straight unless the tyre grows with speed

/// What the engine turns, and in brackets what it turns leaned over where there is a lean angle.
QString rpmWords(const std::optional<double>& factor, double rpm) {
  const QString upright = number(rpm, 0);
  return factor && *factor > 1.0 ? SawtoothChart::tr("%1 (%2)", "engine speed, upright and leaned over")
                                       .arg(upright, number(rpm * *factor, 0))
                                 : upright;
}

}  // namespace

SawtoothChart::SawtoothChart(QWidget* parent) : SetupChart(tr("Sawtooth chart"), parent) {
  applyPalette();
}

void SawtoothChart::setTeethOnly(bool teethOnly) {
  teethOnly_ = teethOnly;
  if (plan_) refresh();
}

QList<QPointF> SawtoothChart::saw(const Gearing& gearing) const {
  QList<QPointF> points;
  double fromRpm = yRange().low * kThousand;  // not below the picture: a vector file clips nothing
  for (std::size_t g = 0; g < gearing.gears.size(); ++g) {
    const GearFigures& gear = gearing.gears[g];
    const double toRpm = gear.shiftRpm.value_or(*gearing.revLimitRpm);
    const int parts = gearing.rollout.growthPerMps2 == 0.0 ? 1 : kCurvedLineParts;
    for (int i = 0; i <= parts; ++i) {
      const double rpm = fromRpm + (toRpm - fromRpm) * i / parts;
      points.append({shownSpeed(gearing.speedMps(rpm, g)), rpm / kThousand});
    }
    fromRpm = gear.rpmAfterShift.value_or(0.0);
  }
  return points;
}

void SawtoothChart::fitRanges() {
  double fastest = 0.0;
  double lowestAfterShift = limitRpm();
  for (const Shown& setup : shown())
    for (const GearFigures& gear : setup.plan->gearing.gears) {
      fastest = std::max(fastest, shownSpeed(*gear.speedAtRevLimitMps));
      if (gear.rpmAfterShift) lowestAfterShift = std::min(lowestAfterShift, *gear.rpmAfterShift);
    }
  const double low = teethOnly_ && lowestAfterShift < limitRpm() ? lowestAfterShift * 0.98 / kThousand : 0.0;
  // A row for words above the rev limit.
  const double top = withHeadroom(std::floor(low), limitRpm() / kThousand);
  // The teeth and the whole are different views.
  fitTo(fastest, low, top, low > 0.0 ? 1 : 0);
}

void SawtoothChart::paintOver(QPainter& painter) {
  if (!plan_) return;
  painter.save();
  painter.setClipRect(plotArea());
  paintOverruns(painter);
  painter.restore();
  paintLimit(painter);
  paintLeanScale(painter);
  paintCruise(painter);
  paintLabels(painter);
}

QString SawtoothChart::xTitle() const {
  return tr("Road speed, %1").arg(units_.name(Quantity::Speed));
}

QString SawtoothChart::yTitle() const {
  return tr("Engine speed, 1,000 rpm");
}

void SawtoothChart::reserveCorner(const QSizeF& size) {
  if (corner_ == size) return;
  corner_ = size;
  updateOverlay();
}

void SawtoothChart::avoidLines(LabelSpace& space) const {
  SetupChart::avoidLines(space);
  const QRectF plot = plotArea();
  const double limit = at(0, limitRpm() / kThousand).y();
  space.take(QRectF(plot.left(), limit - 0.5, plot.width(), 1.0));
  if (const auto cruise = markerX()) {
    const double x = at(*cruise, 0).x();
    space.avoid(QPolygonF{QPointF(x, plot.top()), QPointF(x, plot.bottom())});
    space.avoid(QPolygonF{QPointF(x - kHandle, plot.top()), QPointF(x, plot.top() + 1.5 * kHandle),
                          QPointF(x + kHandle, plot.top())});
  }
}

void SawtoothChart::putLabels(LabelSpace& space) const {
  if (!corner_.isEmpty()) space.take(QRectF(freeCorner(), corner_));
  putLimit(space);
  putCruise(space);
  putGearNumbers(space);
}

void SawtoothChart::paintFoot(QPainter& painter) {
  if (plan_) paintBars(painter);
}

void SawtoothChart::paintOverruns(QPainter& painter) const {
  for (const Shown& setup : shown()) {
    const Gearing& gearing = setup.plan->gearing;
    // Fainter than the line it goes on from, and still seen.
    const QColor& ground = colours().background;
    const QColor thin = standingOut(mixed(setup.pen.color(), ground, kOverrunShare), {ground}, kLineContrast);
    painter.setPen(QPen(thin, 1.0, Qt::SolidLine, Qt::FlatCap));  // dots would cost more than all else here
    for (const GearFigures& gear : gearing.gears)
      if (gear.shiftRpm && *gear.shiftRpm < gearing.revLimitRpm)
        painter.drawLine(at(shownSpeed(*gear.shiftSpeedMps), *gear.shiftRpm / kThousand),
                         at(shownSpeed(*gear.speedAtRevLimitMps), *gearing.revLimitRpm / kThousand));
  }
}

/// Beside the climbing line, near its upper end: free of the drop, of the rev limit and of its label; on the
/// side away from stock's line where that is as good.
void SawtoothChart::putGearNumbers(LabelSpace& space) const {
  const Gearing& gearing = plan_->proposed.gearing;
  const bool taller = plan_->proposed.change.direction == Direction::Taller;
  const double height = std::ceil(QFontMetricsF(chartFont(true)).ascent());
  for (std::size_t g = 0; g < gearing.gears.size(); ++g) {
    const GearFigures& gear = gearing.gears[g];
    ChartLabel label{QString::number(gear.gear), colours().proposed, true, true};
    label.box.setSize({sizeOf(label).width(), height});
    const double width = label.box.width();
    const double to = gear.shiftRpm.value_or(*gearing.revLimitRpm);
    const double foot = g == 0 ? 0.0 : *gearing.gears[g - 1].rpmAfterShift;
    const double from = std::max(foot, yRange().low * kThousand);
    std::vector<QPointF> corners;
    for (const double gap : {5.0, 10.0})
      for (const double down : {0.28, 0.36, 0.2, 0.45, 0.55, 0.65, 0.75}) {
        const double rpm = std::max(to - down * (to - from), foot);
        const QPointF point = at(shownSpeed(gearing.speedMps(rpm, g)), rpm / kThousand);
        const QPointF below(point.x() + gap, point.y()), above(point.x() - gap - width, point.y() - height);
        corners.push_back(taller ? below : above);
        corners.push_back(taller ? above : below);
      }
    put(space, label, corners);
  }
}

void SawtoothChart::paintLimit(QPainter& painter) const {
  const QRectF plot = plotArea();
  const double y = at(0, limitRpm() / kThousand).y();
  painter.setPen(QPen(colours().warning, 1, Qt::DotLine));
  painter.setRenderHint(QPainter::Antialiasing, false);  // a level line needs none, and its dots are many
  painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y));
  painter.setRenderHint(QPainter::Antialiasing);
}

/// Above its line, in the row of the axis' title; below it where that row is full.
void SawtoothChart::putLimit(LabelSpace& space) const {
  const QRectF plot = plotArea();
  const double limit = at(0, limitRpm() / kThousand).y();
  const auto rightmost = [&](const ChartLabel& label, double level) {
    std::vector<QPointF> corners;
    const QSizeF size = sizeOf(label);
    for (const double top : {level, limit - size.height() - 1, limit + 2})
      for (double left = plot.right() - size.width(); left >= plot.left(); left -= kLabelStep)
        corners.emplace_back(left, top);
    return corners;
  };
  if (const QString lean = leanTitle(); !lean.isEmpty()) {
    const ChartLabel label{lean, colours().mutedText};
    put(space, label, rightmost(label, plot.top() + 1));
  }
  const ChartLabel label{tr("Rev limit %1 rpm").arg(number(limitRpm(), 0)), colours().warning};
  put(space, label, rightmost(label, limit - sizeOf(label).height() - 1));
}

/// A second scale for the same lines: what the engine turns leaned over, where the tyre rolls on a smaller
/// radius.
void SawtoothChart::paintLeanScale(QPainter& painter) const {
  if (leanTitle().isEmpty()) return;
  const double factor = *plan_->proposed.leanFactor;
  const QRectF plot = plotArea();
  const double height = QFontMetricsF(chartFont()).height();
  painter.setPen(colours().mutedText);
  for (const double tick : ticks(yRange())) {
    const double y = at(0, tick / factor).y();
    if (y < plot.top() || y > plot.bottom() + 0.5) continue;
    painter.drawLine(QPointF(plot.right(), y), QPointF(plot.right() + 4, y));
    texts().draw(painter, chartFont(), QRectF(plot.right() + 6, y - height / 2, rightMargin() - 6, height),
                 Qt::AlignLeft, number(tick, yRange().step < 1 ? 1 : 0));
  }
}

QString SawtoothChart::leanTitle() const {
  const bool leaned = plan_ && plan_->proposed.leanFactor && *plan_->leanDeg > 0.0;
  return leaned ? tr("%1° lean").arg(number(*plan_->leanDeg, 0)) : QString();
}

double SawtoothChart::rightMargin() const {
  return leanTitle().isEmpty() ? LiveChart::rightMargin() : 44.0;
}

void SawtoothChart::paintCruise(QPainter& painter) const {
  const auto x = markerX();
  if (!x) return;
  const QRectF plot = plotArea();
  const double sceneX = at(*x, 0).x();
  painter.setPen(QPen(colours().marker, 1.4, Qt::DashLine, Qt::FlatCap));
  painter.drawLine(QPointF(sceneX, plot.top()), QPointF(sceneX, plot.bottom()));
  painter.setPen(Qt::NoPen);
  painter.setBrush(colours().marker);
  const std::array<QPointF, 3> handle{QPointF(sceneX - kHandle, plot.top()),
                                      QPointF(sceneX + kHandle, plot.top()),
                                      QPointF(sceneX, plot.top() + 1.5 * kHandle)};
  painter.drawConvexPolygon(handle.data(), static_cast<int>(handle.size()));
  painter.setBrush(Qt::NoBrush);
}

/// Low in the plot, where no tooth is; on the side that has room.
void SawtoothChart::putCruise(LabelSpace& space) const {
  const auto x = markerX();
  if (!x) return;
  const ChartLabel label{tr("Cruise %1").arg(units_.chosenSpeed(*plan_->stock.gearing.cruiseSpeedMps)),
                         colours().marker};
  const QSizeF size = sizeOf(label);
  const QRectF plot = plotArea();
  const double marker = at(*x, 0).x();
  std::vector<QPointF> corners;
  for (double top = plot.bottom() - 4 - size.height(); top > plot.top(); top -= size.height())
    for (const double left : {marker + 8, marker - 8 - size.width()})
      if (left >= plot.left() && left + size.width() <= plot.right()) corners.emplace_back(left, top);
  if (corners.empty()) corners.emplace_back(marker + 8, plot.bottom() - 4 - size.height());
  put(space, label, corners);
}

double SawtoothChart::barHeight() const {
  return plan_->pins.empty() ? kBarHeight : kBarHeightOverPins;
}

double SawtoothChart::pinBarPitch() const {
  return plan_->pins.size() > 2 ? kPinBarHeight : kPinBarHeight + 1;
}

double SawtoothChart::barsHeight() const {
  return 2 * barHeight() + 1 + pinBarPitch() * static_cast<double>(plan_->pins.size());
}

double SawtoothChart::barRowHeight() const {
  return std::max(QFontMetricsF(chartFont()).height() * 0.98, barsHeight() + 3);
}

std::size_t SawtoothChart::mostGears() const {
  std::size_t most = 0;
  for (const Shown& setup : shown()) most = std::max(most, setup.plan->gearing.gears.size());
  return most;
}

void SawtoothChart::paintBars(QPainter& painter) const {
  const QFontMetricsF metrics(chartFont());
  const double rowHeight = barRowHeight();
  QRectF row(plotArea().left(), footArea().top(), plotArea().width(), rowHeight);
  for (std::size_t g = 0; g < mostGears(); ++g, row.translate(0, rowHeight)) {
    painter.setPen(colours().mutedText);
    texts().draw(painter, chartFont(), QRectF(0, row.top(), row.left() - 8, rowHeight), Qt::AlignRight,
                 QString::number(g + 1));
    double leftmost = row.right(), rightmost = row.left();
    QStringList ends;
    double top = std::round(row.center().y() - barsHeight() / 2);  // sharp, however thin
    const auto setups = shown();
    for (std::size_t i = 0; i < setups.size(); ++i) {
      const Gearing& gearing = setups[i].plan->gearing;
      const bool pin = i >= 2;
      if (g < gearing.gears.size()) {
        const double from = g == 0 ? 0.0 : *gearing.gears[g - 1].shiftSpeedMps;
        const double startX = at(shownSpeed(from), 0).x();
        const double endX = at(shownSpeed(*gearing.gears[g].speedAtRevLimitMps), 0).x();
        painter.fillRect(QRectF(startX, top, endX - startX, pin ? kPinBarHeight : barHeight()),
                         setups[i].pen.color());
        leftmost = std::min(leftmost, startX);
        rightmost = std::max(rightmost, endX);
        if (!pin) ends << number(shownSpeed(*gearing.gears[g].speedAtRevLimitMps), 0);
      }
      top += pin ? pinBarPitch() : barHeight() + 1;
    }
    ends.removeDuplicates();
    const QString text = ends.join(QStringLiteral(" → "));
    const double width = texts().width(chartFont(), text) + 2;
    const bool fitsRight = rightmost + 8 + width <= viewport()->width();
    texts().draw(painter, chartFont(),
                 QRectF(fitsRight ? rightmost + 8 : leftmost - 8 - width, row.top(), width, rowHeight),
                 Qt::AlignLeft, text);
  }
}

double SawtoothChart::footHeight() const {
  return plan_ ? static_cast<double>(mostGears()) * barRowHeight() + 6.0 : 0.0;
}

QPointF SawtoothChart::freeCorner() const {
  const double limit = plan_ ? at(0, limitRpm() / kThousand).y() : plotArea().top();
  return {plotArea().left() + 6, limit + 4};
}

std::optional<double> SawtoothChart::markerX() const {
  if (!plan_ || !plan_->stock.gearing.cruiseSpeedMps) return std::nullopt;
  return shownSpeed(*plan_->stock.gearing.cruiseSpeedMps);
}

QString SawtoothChart::crosshairTitle(double x) const {
  return units_.withUnit(number(x, 0), Quantity::Speed);
}

QString SawtoothChart::spokenTitle(double x) const {
  return tr("%1, engine speed in rpm", "road speed").arg(crosshairTitle(x));
}

QString SawtoothChart::planInWords() const {
  return sawtoothWords(*plan_, units_);
}

std::vector<QRectF> SawtoothChart::keptClear() const {
  std::vector<QRectF> areas = SetupChart::keptClear();
  if (!corner_.isEmpty()) areas.emplace_back(freeCorner(), corner_);
  return areas;
}

std::vector<CrosshairRow> SawtoothChart::rows(double x, bool leaned) const {
  const double mps = units_.si(Quantity::Speed, x);
  const auto setups = shown();
  std::size_t gears = 0;
  for (const Shown& setup : setups) gears = std::max(gears, setup.plan->gearing.gears.size());
  std::vector<CrosshairRow> rows;
  for (std::size_t g = 0; g < gears; ++g) {
    CrosshairRow row{tr("Gear %1").arg(g + 1), {}};
    bool any = false;
    for (const Shown& setup : setups) {
      const Gearing& gearing = setup.plan->gearing;
      const double rpm = g < gearing.gears.size() ? gearing.rpm(mps, g) : -1.0;
      const bool holds = rpm >= plan_->idleRpm && rpm <= gearing.revLimitRpm;
      row.values << (holds ? rpmWords(leaned ? setup.plan->leanFactor : std::nullopt, rpm) : noValue());
      any = any || holds;
    }
    if (any) rows.push_back(row);
  }
  return rows;
}

}  // namespace layshaft::ui
