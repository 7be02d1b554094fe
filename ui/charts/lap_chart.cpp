// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/lap_chart.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/words/chart_words.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kWonShare = 0.2;                       // of the picture's height
constexpr double kFewestLines = 3.0, kMostLines = 7.0;  // of text, that the strip is high
constexpr double kLeastSpanS = 0.1;                     // so that hundredths do not look like a race
constexpr int kWonTicks = 4;
constexpr double kFinerThan = 1.0;  // px: points closer together are not told apart

}  // namespace

LapChart::LapChart(QWidget* parent) : SetupChart(tr("Lap chart"), parent) {
  applyPalette();
  connect(this, &LiveChart::crosshairMoved, this, [this] { emit crosshairWentTo(crosshairM()); });
}

void LapChart::show(const LapBook& book, const UnitsShown& units) {
  book_ = book;
  SetupChart::show(book.plan, units);
}

const LapOfSetup* LapChart::lapOf(const SetupPlan& setup) const {
  for (const LapOfSetup& lap : book_.setups)
    if (lap.setup == &setup) return &lap;
  return nullptr;
}

QList<QPointF> LapChart::lineOf(const SetupPlan& setup) const {
  QList<QPointF> line;
  const LapOfSetup* lap = lapOf(setup);
  if (!lap) return line;
  // A recorded track has more points than the picture; of those that fall together the first and the ends of
  // every rise and fall stay.
  const double px = plotArea().width() / std::max(xRange().high - xRange().low, 1e-9);
  const auto& points = lap->points;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const QPointF point(shownLength(points[i].distanceM), shownSpeed(points[i].speedMps));
    const bool turns =
        i == 0 || i + 1 == points.size() ||
        (points[i].speedMps - points[i - 1].speedMps) * (points[i + 1].speedMps - points[i].speedMps) <= 0.0;
    if (!turns && (point.x() - line.back().x()) * px < kFinerThan) continue;
    if (line.isEmpty() || point != line.back()) line.append(point);
  }
  return line;
}

void LapChart::fitRanges() {
  double fastest = 1.0;
  for (const LapOfSetup& lap : book_.setups)
    if (lap.laps()) fastest = std::max(fastest, shownSpeed(lap.figures->topMps));
  fitTo(std::max(shownLength(book_.lengthM), 1e-3), 0.0, withHeadroom(0.0, fastest), 0, XEnd::OfData);
  fitWon();
}

void LapChart::fitWon() {
  double low = 0.0, high = 0.0;
  for (const LapOfSetup& lap : book_.setups)
    for (const LapDifference& difference : lap.later) {
      low = std::min(low, -difference.laterS);
      high = std::max(high, -difference.laterS);
    }
  const double more = std::max(0.0, kLeastSpanS - (high - low)) / 2.0;
  low -= more;
  high += more;
  wonRange_ = steadyRange(wonRange_, low, high, kWonTicks);
}

QString LapChart::xTitle() const {
  return tr("Distance, %1").arg(units_.name(Quantity::Length));
}

QString LapChart::yTitle() const {
  return tr("Road speed, %1").arg(units_.name(Quantity::Speed));
}

FootLayout LapChart::footLayout() const {
  const double line = std::ceil(QFontMetricsF(chartFont()).height());
  return {.names = line + 6.0,
          .won = std::clamp(kWonShare * viewport()->height(), kFewestLines * line, kMostLines * line),
          .gear = line + 3.0,
          .setups = plan_ ? 2 + static_cast<int>(plan_->pins.size()) : 2};
}

double LapChart::footHeight() const {
  return footLayout().height();
}

LapFoot LapChart::foot() const {
  std::vector<QPen> pens;
  for (const Shown& setup : shown()) pens.push_back(setup.pen);
  return {book_,
          {.area = footArea(),
           .left = plotArea().left(),
           .right = plotArea().right(),
           .xAt = [this](double metres) { return at(shownLength(metres), 0.0).x(); },
           .layout = footLayout(),
           .won = wonRange_},
          {.colours = colours(),
           .font = chartFont(),
           .boldFont = chartFont(true),
           .texts = texts(),
           .pens = pens}};
}

void LapChart::paintFoot(QPainter& painter) {
  if (plan_ && book_.laps()) foot().paint(painter);
}

void LapChart::paintOver(QPainter& painter) {
  if (!plan_ || !book_.laps()) return;
  painter.save();
  painter.setClipRect(plotArea());
  paintLimiter(painter);
  painter.restore();
  paintLabels(painter);
}

/// Broad where a setup sits on the limiter.
void LapChart::paintLimiter(QPainter& painter) const {
  constexpr double kBroad = 5.0;
  QPen pen(colours().warning, kBroad);
  pen.setCapStyle(Qt::FlatCap);
  painter.setPen(pen);
  for (const LapOfSetup& lap : book_.setups)
    for (std::size_t i = 0; i + 1 < lap.points.size(); ++i) {
      const LapPoint &a = lap.points[i], &b = lap.points[i + 1];
      if (a.limiter && b.limiter)
        painter.drawLine(at(shownLength(a.distanceM), shownSpeed(a.speedMps)),
                         at(shownLength(b.distanceM), shownSpeed(b.speedMps)));
    }
}

/// How long the proposal sits on the limiter, at the first place where it does.
void LapChart::putLabels(LabelSpace& space) const {
  if (!book_.laps()) return;
  const LapOfSetup& lap = book_.proposed();
  for (std::size_t i = 0; i + 1 < lap.points.size(); ++i) {
    if (!lap.points[i].limiter || !lap.points[i + 1].limiter) continue;
    const ChartLabel label{tr("Limiter %1 s").arg(number(lap.figures->limiterS, 2)), colours().warning};
    const QSizeF size = sizeOf(label);
    const QPointF mark = at(shownLength(lap.points[i].distanceM), shownSpeed(lap.points[i].speedMps));
    std::vector<QPointF> corners;
    for (const double gap : {4.0, 14.0, 26.0})
      for (const double left : {mark.x(), mark.x() - size.width(), mark.x() - size.width() / 2.0}) {
        corners.emplace_back(left, mark.y() - size.height() - gap);
        corners.emplace_back(left, mark.y() + gap);
      }
    put(space, label, corners);
    return;
  }
}

QString LapChart::crosshairTitle(double x) const {
  const double metres = units_.si(Quantity::Length, x);
  const QString place = units_.withUnit(number(x, 0), Quantity::Length);
  const LapPart* part = book_.partAt(metres);
  return part ? tr("%1, %2", "distance, and what is ridden there").arg(place, part->name) : place;
}

std::vector<CrosshairRow> LapChart::crosshairRows(double x) const {
  if (!plan_) return {};
  const double metres = units_.si(Quantity::Length, x);
  CrosshairRow speed{tr("Speed, %1").arg(units_.name(Quantity::Speed)), {}}, gear{tr("Gear"), {}},
      engine{tr("Engine, rpm"), {}}, won{tr("Won, s"), {}};
  bool any = false;
  for (const LapOfSetup& lap : book_.setups) {
    const auto point = lapAt(lap, metres);
    const auto later = laterAt(lap, metres);
    any = any || point;
    speed.values << (point ? number(shownSpeed(point->speedMps), 0) : noValue());
    gear.values << (point && point->gear ? number(*point->gear, 0) : noValue());
    engine.values << (point && point->rpm ? number(*point->rpm, 0) : noValue());
    won.values << (later && &lap != book_.setups.data() ? wonText(-*later) : noValue());
  }
  return any ? std::vector{speed, gear, engine, won} : std::vector<CrosshairRow>();
}

QString LapChart::planInWords() const {
  return lapChartWords(book_, units_);
}

QString LapChart::pictureCaption() const {
  const QString rest = SetupChart::pictureCaption();
  return book_.plan ? rest + QLatin1Char(' ') + lapHonesty(*book_.plan) : rest;
}

std::optional<double> LapChart::crosshairM() const {
  const auto x = crosshairX();
  return x ? std::optional(units_.si(Quantity::Length, *x)) : std::nullopt;
}

void LapChart::moveTo(std::optional<double> distanceM) {
  setCrosshair(distanceM ? std::optional(shownLength(*distanceM)) : std::nullopt);
}

}  // namespace layshaft::ui
