// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/wear_trend.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/words/numbers.h"
#include "ui/words/use_words.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {
namespace {

constexpr double kPoint = 4.0;           // half the size of a measurement's mark, px
constexpr double kOutlook = 4.0;         // of the use so far, that the axis goes on at most to show an end
constexpr double kTrendHeadroom = 1.25;  // above the limit
constexpr double kTickPx = 70.0, kUprightTickPx = 34.0;
constexpr int kBandAlpha = 45, kPatchAlpha = 225;

}  // namespace

WearTrend::WearTrend(QWidget* parent) : LiveChart(parent), limit_(addLine()), line_(addLine()) {
  setAccessibleName(tr("Trend of wear"));
  applyPalette();
}

void WearTrend::recolour() {
  QPen limit(colours().warning, 1.5);
  limit.setDashPattern({6, 3});
  limit_->setPen(limit);
  line_->setPen(colours().proposedPen());
}

double WearTrend::shownAt(double use) const {
  return shownUse(book_->figures.useUnit, use, units_);
}

double WearTrend::usualEnd() const {
  const WearFigures& figures = book_->figures;
  const double life = figures.useUnit == UseUnit::Hours ? kUsualMotocrossLifeHours : kLongRoadLifeKm;
  return figures.chainFittedAt.value_or(0.0) + life;
}

void WearTrend::show(const WearBook& book, const UnitsShown& units) {
  book_ = book;
  units_ = units;
  refresh();
}

void WearTrend::resizeEvent(QResizeEvent* event) {
  LiveChart::resizeEvent(event);
  if (book_) refresh();
}

void WearTrend::refresh() {
  const WearFigures& figures = book_->figures;
  double first = figures.chainFittedAt.value_or(usualEnd()), last = figures.chainFittedAt.value_or(0.0);
  double highest = figures.limitPercent * kTrendHeadroom, lowest = 0.0;
  for (const MeasuredElongation& one : figures.measured) {
    if (one.earlierChain) continue;
    highest = std::max(highest, one.greatestPercent);
    lowest = std::min(lowest, one.greatestPercent);
    if (!one.at) continue;
    first = std::min(first, *one.at);
    last = std::max(last, *one.at);
  }
  // From the fitting of the chain; where that is not known, from nothing.
  const double from = figures.chainFittedAt ? std::min(first, *figures.chainFittedAt) : 0.0;
  const double soFar = std::max(last - from, 0.05 * (usualEnd() - from));
  double to = last > from ? last + 0.1 * soFar : usualEnd() * 1.05;
  const auto reach = [&](double end) {
    if (end <= from + kOutlook * soFar) to = std::max(to, end + 0.06 * (end - from));
  };
  if (figures.endOfLife) {
    reach(figures.endOfLife->at);
    if (figures.endOfLife->high) reach(*figures.endOfLife->high);
  }
  reach(usualEnd());
  const auto ticksIn = [](double px, double each) { return std::clamp(static_cast<int>(px / each), 3, 12); };
  setRanges(roundRange(shownAt(from), shownAt(to), ticksIn(plotArea().width(), kTickPx)),
            roundRange(lowest, highest, ticksIn(plotArea().height(), kUprightTickPx)));
  feed(limit_, {{xRange().low, figures.limitPercent}, {xRange().high, figures.limitPercent}});
  QList<QPointF> line;
  if (figures.trendPercentPerUse && figures.trendInterceptPercent) {
    const double until = figures.endOfLife ? std::min(figures.endOfLife->at, to) : last;
    for (const double use : {first, std::max(first, until)})
      line.append({shownAt(use), *figures.trendInterceptPercent + *figures.trendPercentPerUse * use});
  }
  feed(line_, line);
  updateOverlay();
  describe();
}

void WearTrend::paintBand(QPainter& painter) const {
  const auto& end = book_->figures.endOfLife;
  if (!end) return;
  const QRectF plot = plotArea();
  const double limit = book_->figures.limitPercent;
  if (end->low && end->high) {
    const double low = at(shownAt(*end->low), 0).x(), high = at(shownAt(*end->high), 0).x();
    painter.fillRect(QRectF(QPointF(low, plot.top()), QPointF(high, plot.bottom())) & plot,
                     faint(colours().proposed, kBandAlpha));
  }
  const double x = at(shownAt(end->at), 0).x();
  if (x > plot.right()) return;
  painter.setPen(QPen(colours().proposed, 1, Qt::DashLine));
  painter.drawLine(QPointF(x, at(0, limit).y()), QPointF(x, plot.bottom()));
}

void WearTrend::paintWords(QPainter& painter, LabelSpace& space, const QString& text, const QColor& colour,
                           const std::vector<QPointF>& corners) const {
  const QSizeF size(std::ceil(texts().width(chartFont(), text)),
                    std::ceil(QFontMetricsF(chartFont()).height()));
  std::vector<QRectF> places;
  places.reserve(corners.size());
  for (const QPointF& corner : corners) places.emplace_back(corner, size);
  const auto place = space.put(places);
  if (!place) return;
  painter.fillRect(place->adjusted(-1, 0, 1, 0), faint(colours().background, kPatchAlpha));
  painter.setPen(colour);
  texts().draw(painter, chartFont(), *place, Qt::AlignLeft, text);
}

void WearTrend::paintUsual(QPainter& painter, LabelSpace& space) const {
  const QRectF plot = plotArea();
  const double x = at(shownAt(usualEnd()), 0).x();
  if (x < plot.left() || x > plot.right()) return;
  painter.setPen(QPen(colours().stock, 1, Qt::DotLine));
  painter.drawLine(QPointF(x, plot.top()), QPointF(x, plot.bottom()));
  const double line = QFontMetricsF(chartFont()).height();
  const QString what = book_->figures.useUnit == UseUnit::Hours
                           ? tr("usual in motocross: %1", "a chain's life")
                           : tr("a long life on the road: %1", "a chain's life");
  const double life = usualEnd() - book_->figures.chainFittedAt.value_or(0.0);
  const QStringList lines{what.arg(useText(book_->figures.useUnit, life, units_)),
                          tr("(common practice, no source)")};
  const double wide = std::max(texts().width(chartFont(), lines[0]), texts().width(chartFont(), lines[1]));
  std::vector<QRectF> places;
  for (double y = plot.top() + line; y < plot.bottom() - 2.0 * line; y += 3.0)
    for (const double left : {x + 4.0, x - 4.0 - wide}) places.emplace_back(left, y, wide, 2.0 * line);
  const auto place = space.put(places);
  if (!place) return;
  painter.fillRect(place->adjusted(-1, 0, 1, 0), faint(colours().background, kPatchAlpha));
  painter.setPen(colours().stock);
  for (qsizetype i = 0; i < lines.size(); ++i)
    texts().draw(painter, chartFont(), place->topLeft() + QPointF(0, static_cast<double>(i) * line),
                 lines[i]);
}

void WearTrend::paintPoints(QPainter& painter) const {
  for (const MeasuredElongation& one : book_->figures.measured) {
    if (!one.at || one.earlierChain) continue;
    const QPointF place = at(shownAt(*one.at), one.greatestPercent);
    painter.setPen(QPen(one.inTrend() ? colours().proposed : colours().stock, 1.5));
    painter.setBrush(one.inTrend() ? colours().proposed : colours().background);
    painter.drawEllipse(place, kPoint, kPoint);
  }
  painter.setBrush(Qt::NoBrush);
}

void WearTrend::paintOver(QPainter& painter) {
  if (!book_) return;
  const WearFigures& figures = book_->figures;
  const QRectF plot = plotArea();
  LabelSpace space(plot);
  for (const QLineSeries* series : lines()) {
    QPolygonF points;
    for (const QPointF& point : series->points()) points << at(point.x(), point.y());
    space.avoid(points);
  }
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(plot);
  paintBand(painter);
  const double line = QFontMetricsF(chartFont()).height();
  const QString x = tr("Use, %1").arg(useName(figures.useUnit, units_));
  paintWords(painter, space, tr("Elongation, %"), colours().mutedText, {plot.topLeft() + QPointF(6, 1)});
  paintWords(painter, space, x, colours().mutedText,
             {QPointF(plot.right() - 4 - texts().width(chartFont(), x), plot.bottom() - line - 2)});
  const double limit = at(0, figures.limitPercent).y();
  paintWords(painter, space, tr("limit %1 %").arg(number(figures.limitPercent, 1)), colours().warning,
             {QPointF(plot.left() + 6, limit - line - 1), QPointF(plot.left() + 6, limit + 2)});
  if (figures.endOfLife && shownAt(figures.endOfLife->at) <= xRange().high) {
    const QString end = tr("limit at %1").arg(useText(figures.useUnit, figures.endOfLife->at, units_));
    const double middle = at(shownAt(figures.endOfLife->at), 0).x(), wide = texts().width(chartFont(), end);
    paintWords(painter, space, end, colours().proposed,
               {QPointF(middle - wide / 2.0, limit - line - 3), QPointF(middle - wide - 6, limit - line - 3),
                QPointF(middle - wide - 6, limit + 3)});
  }
  for (const MeasuredElongation& one : figures.measured)
    if (one.at && !one.earlierChain) {
      const QPointF middle = at(shownAt(*one.at), one.greatestPercent);
      space.take(QRectF(middle - QPointF(kPoint, kPoint), QSizeF(2 * kPoint, 2 * kPoint)));
    }
  paintUsual(painter, space);
  paintPoints(painter);
  painter.restore();
}

std::vector<CrosshairRow> WearTrend::crosshairRows(double x) const {
  std::vector<CrosshairRow> rows;
  if (!book_) return rows;
  const WearFigures& figures = book_->figures;
  const double use = fileUse(figures.useUnit, x, units_);
  if (figures.trendPercentPerUse && figures.trendInterceptPercent) {
    const double percent = *figures.trendInterceptPercent + *figures.trendPercentPerUse * use;
    rows.push_back({tr("Line through the measurements"), {tr("%1 %").arg(number(percent, 2))}});
  }
  const MeasuredElongation* nearest = nullptr;
  for (const MeasuredElongation& one : figures.measured)
    if (one.at && !one.earlierChain && (!nearest || std::abs(*one.at - use) < std::abs(*nearest->at - use)))
      nearest = &one;
  if (nearest)
    rows.push_back({tr("Measured at %1").arg(useText(figures.useUnit, *nearest->at, units_)),
                    {tr("%1 %").arg(number(nearest->greatestPercent, 2))}});
  return rows;
}

QString WearTrend::crosshairTitle(double x) const {
  return book_ ? useText(book_->figures.useUnit, fileUse(book_->figures.useUnit, x, units_), units_)
               : QString();
}

QString WearTrend::inWords() const {
  if (!book_) return {};
  QStringList words{tr("Elongation over use."), wearTrendWords(book_->figures, units_),
                    wearLimitWords(book_->figures)};
  return words.join(QLatin1Char(' '));
}

QString WearTrend::pictureHeading() const {
  return book_ ? wearVerdictWords(book_->figures) : QString();
}

QString WearTrend::pictureCaption() const {
  if (!book_) return {};
  return wearTrendWords(book_->figures, units_) + QLatin1Char('\n') + wearLimitWords(book_->figures);
}

}  // namespace layshaft::ui
