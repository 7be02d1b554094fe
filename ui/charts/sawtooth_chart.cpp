// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/sawtooth_chart.h"

#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/limits.h"
#include "ui/charts/contrast.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kThousand = 1000.0;
constexpr double kBarHeight = 5.0;
constexpr double kOverrunShare = 0.5;  // of the ground, in the colour beyond the shift
constexpr double kHeadroom = 1.06;     // above the rev limit, for its label
constexpr double kLeanTitleDrop = 1.0, kTitleGap = 14.0;
constexpr int kCurvedLineParts = 12;  // a gear's line is straight unless the tyre grows with speed

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
    const double toRpm = gear.shiftRpm.value_or(gearing.revLimitRpm);
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
  double lowestAfterShift = plan_->revLimitRpm;
  for (const Shown& setup : shown())
    for (const GearFigures& gear : setup.plan->gearing.gears) {
      fastest = std::max(fastest, shownSpeed(gear.speedAtRevLimitMps));
      if (gear.rpmAfterShift) lowestAfterShift = std::min(lowestAfterShift, *gear.rpmAfterShift);
    }
  const double top = plan_->revLimitRpm * kHeadroom / kThousand;
  const double low =
      teethOnly_ && lowestAfterShift < plan_->revLimitRpm ? lowestAfterShift * 0.98 / kThousand : 0.0;
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
  paintAxisTitles(painter, tr("Engine speed, 1,000 rpm"),
                  tr("Road speed, %1").arg(units_.name(Quantity::Speed)));
  paintCruise(painter);
  paintGearNumbers(painter);
  // The lower right of a saw is always empty.
  paintSetupNames(painter, Qt::BottomRightCorner);
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
                         at(shownSpeed(gear.speedAtRevLimitMps), gearing.revLimitRpm / kThousand));
  }
}

void SawtoothChart::paintGearNumbers(QPainter& painter) const {
  const Gearing& gearing = plan_->proposed.gearing;
  painter.setPen(colours().proposed);
  const QFontMetricsF metrics(chartFont(true));
  for (std::size_t g = 0; g < gearing.gears.size(); ++g) {
    const GearFigures& gear = gearing.gears[g];
    // Beside the climbing line, near its upper end: free of the drop, of the rev limit and of its label.
    const double rpm = gear.shiftRpm.value_or(gearing.revLimitRpm);
    const double foot = g == 0 ? 0.0 : *gearing.gears[g - 1].rpmAfterShift;
    const double place = std::max(rpm - 0.28 * (rpm - std::max(foot, yRange().low * kThousand)), foot);
    const QPointF point = at(shownSpeed(gearing.speedMps(place, g)), place / kThousand);
    const QString text = QString::number(gear.gear);
    const double width = texts().width(chartFont(true), text);
    // On the side away from stock's line, on a patch of background where lines cross it all the same.
    const bool taller = plan_->proposed.change.direction == Direction::Taller;
    const QRectF patch(taller ? point.x() + 5 : point.x() - 5 - width,
                       point.y() - (taller ? 0 : metrics.ascent()), width, metrics.ascent());
    painter.fillRect(patch.adjusted(-1, 1, 1, 0), colours().background);
    texts().draw(painter, chartFont(true), patch, Qt::AlignLeft, text);
  }
}

void SawtoothChart::paintLimit(QPainter& painter) const {
  const QRectF plot = plotArea();
  const QFontMetricsF metrics(chartFont());
  const double y = at(0, plan_->revLimitRpm / kThousand).y();
  painter.setPen(QPen(colours().warning, 1, Qt::DotLine));
  painter.setRenderHint(QPainter::Antialiasing, false);  // a level line needs none, and its dots are many
  painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y));
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(colours().warning);
  const double top = y - metrics.height() - 2;
  double right = plot.right();
  if (const QString lean = leanTitle();
      !lean.isEmpty() && top < plot.top() + kLeanTitleDrop + metrics.height())
    right -= texts().width(chartFont(), lean) + kTitleGap;  // its title stands there
  texts().draw(painter, chartFont(), QRectF(right - 300, top, 300, metrics.height()), Qt::AlignRight,
               tr("Rev limit %1 rpm").arg(number(plan_->revLimitRpm, 0)));
}

/// A second scale for the same lines: what the engine turns leaned over, where the tyre rolls on a smaller
/// radius.
void SawtoothChart::paintLeanScale(QPainter& painter) const {
  const QString title = leanTitle();
  if (title.isEmpty()) return;
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
  texts().draw(painter, chartFont(), QRectF(plot.right() - 306, plot.top() + kLeanTitleDrop, 300, height),
               Qt::AlignRight, title);
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
  const std::array<QPointF, 3> handle{QPointF(sceneX - 6, plot.top()), QPointF(sceneX + 6, plot.top()),
                                      QPointF(sceneX, plot.top() + 9)};
  painter.drawConvexPolygon(handle.data(), static_cast<int>(handle.size()));
  painter.setPen(colours().marker);
  painter.setBrush(Qt::NoBrush);
  const QFontMetricsF metrics(chartFont());
  const QString text = tr("Cruise %1").arg(units_.withUnit(number(*x, 0), Quantity::Speed));
  const double width = texts().width(chartFont(), text);
  // Low in the plot, where no tooth is; on the side that has room.
  const bool leftSide = sceneX + 8 + width > plot.right();
  texts().draw(painter, chartFont(),
               QPointF(leftSide ? sceneX - 8 - width : sceneX + 8, plot.bottom() - 8 - metrics.ascent()),
               text);
}

double SawtoothChart::barRowHeight() const {
  return std::max(QFontMetricsF(chartFont()).height() * 0.98, 2 * kBarHeight + 4);
}

std::size_t SawtoothChart::mostGears() const {
  return std::max(plan_->stock.gearing.gears.size(), plan_->proposed.gearing.gears.size());
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
    double top = row.center().y() - kBarHeight - 0.5;
    for (const auto& [gearing, colour] : {std::pair{&plan_->stock.gearing, colours().stock},
                                          std::pair{&plan_->proposed.gearing, colours().proposed}}) {
      if (g < gearing->gears.size()) {
        const double from = g == 0 ? 0.0 : *gearing->gears[g - 1].shiftSpeedMps;
        const double startX = at(shownSpeed(from), 0).x();
        const double endX = at(shownSpeed(gearing->gears[g].speedAtRevLimitMps), 0).x();
        painter.fillRect(QRectF(startX, top, endX - startX, kBarHeight), colour);
        leftmost = std::min(leftmost, startX);
        rightmost = std::max(rightmost, endX);
        ends << number(shownSpeed(gearing->gears[g].speedAtRevLimitMps), 0);
      }
      top += kBarHeight + 1;
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
  const double limit = plan_ ? at(0, plan_->revLimitRpm / kThousand).y() : plotArea().top();
  return {plotArea().left() + 6, limit + 4};
}

std::optional<double> SawtoothChart::markerX() const {
  if (!plan_ || !plan_->stock.gearing.cruiseSpeedMps) return std::nullopt;
  return shownSpeed(*plan_->stock.gearing.cruiseSpeedMps);
}

QString SawtoothChart::crosshairTitle(double x) const {
  return units_.withUnit(number(x, 0), Quantity::Speed);
}

std::vector<CrosshairRow> SawtoothChart::crosshairRows(double x) const {
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
      row.values << (holds ? rpmWords(setup.plan->leanFactor, rpm) : tr("–"));
      any = any || holds;
    }
    if (any) rows.push_back(row);
  }
  return rows;
}

}  // namespace layshaft::ui
