// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/setup_chart.h"

#include <QPainter>
#include <algorithm>

#include "core/limits.h"
#include "ui/words/cautions.h"
#include "ui/words/numbers.h"
#include "ui/words/picture_words.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

constexpr double kXTickPx = 84;  // room for a label and some air
constexpr double kYTickPx = 30;
constexpr double kSample = 34.0;  // of a line, in the list of names

}  // namespace

SetupChart::SetupChart(const QString& name, QWidget* parent) : LiveChart(parent) {
  stockLine_ = addLine();
  for (int i = 0; i < limits::kMostPins; ++i) pinLines_.push_back(addLine());
  proposedLine_ = addLine();
  setAccessibleName(name);
}

std::vector<SetupChart::Shown> SetupChart::shown() const {
  std::vector<Shown> all{{&plan_->stock, tr("Stock"), colours().stockPen()},
                         {&plan_->proposed, tr("Proposed"), colours().proposedPen()}};
  for (std::size_t i = 0; i < plan_->pins.size(); ++i)
    all.push_back({&plan_->pins[i], shownName(plan_->pins[i].name), colours().pinPen(static_cast<int>(i))});
  return all;
}

void SetupChart::show(const SharedPlan& plan, const UnitsShown& units) {
  const double foot = footHeight(), right = rightMargin();
  plan_ = plan;
  units_ = units;
  prepare();
  refresh();
  if (footHeight() != foot || rightMargin() != right) layOut();
}

void SetupChart::refresh() {
  fitRanges();
  feed(stockLine_, lineOf(plan_->stock));
  for (std::size_t i = 0; i < pinLines_.size(); ++i)
    feed(pinLines_[i], i < plan_->pins.size() ? lineOf(plan_->pins[i]) : QList<QPointF>());
  feed(proposedLine_, lineOf(plan_->proposed));
  updateOverlay();
}

void SetupChart::fitTo(double xHigh, double yLow, double yHigh, int kind) {
  const auto ticksIn = [](double px, double pxPerTick) {
    return std::clamp(static_cast<int>(px / pxPerTick), 3, 14);
  };
  const int xTicks = ticksIn(plotArea().width(), kXTickPx), yTicks = ticksIn(plotArea().height(), kYTickPx);
  // Another view or another size of the window is meant to move the axes; a step is not.
  const bool same = kind == kind_ && xTicks == xTicks_ && yTicks == yTicks_;
  kind_ = kind;
  xTicks_ = xTicks;
  yTicks_ = yTicks;
  if (same)
    setRanges(steadyRange(xRange(), 0.0, xHigh, xTicks), steadyRange(yRange(), yLow, yHigh, yTicks));
  else
    setRanges(roundRange(0.0, xHigh, xTicks), roundRange(yLow, yHigh, yTicks));
}

void SetupChart::paintAxisTitles(QPainter& painter, const QString& y, const QString& x) const {
  const QRectF plot = plotArea();
  const double height = QFontMetricsF(chartFont()).height();
  painter.setPen(colours().mutedText);
  texts().draw(painter, chartFont(), QRectF(plot.left() + 6, plot.top() + 1, 300, height), Qt::AlignLeft, y);
  // Every chart of setups has top speeds, runs or speeds at the limit on it.
  const QString closed = closedCourseMark();
  const double right = plot.right() - 4 - texts().width(chartFont(), closed);
  texts().draw(painter, chartFont(), QRectF(right - 308, plot.bottom() - height - 4, 300, height),
               Qt::AlignRight, x);
  painter.setPen(colours().text);
  texts().draw(painter, chartFont(), QPointF(right, plot.bottom() - height - 4), closed);
}

QStringList SetupChart::setupLabels() const {
  QStringList labels;
  for (const Shown& setup : shown()) {
    const QString teeth = teethPair(setup.plan->setup);
    // A pin is often named after its teeth.
    QString named = setup.name;
    named.remove(QLatin1Char(' '))
        .replace(QChar(0xd7), QLatin1Char('/'))
        .replace(QLatin1Char('x'), QLatin1Char('/'));
    labels << (named.contains(teeth) ? setup.name
                                     : tr("%1 %2", "setup and its teeth").arg(setup.name, teeth));
  }
  return labels;
}

QRectF SetupChart::setupNamesArea(Qt::Corner corner) const {
  const double textHeight = QFontMetricsF(chartFont(true)).height();
  const QRectF plot = plotArea();
  const QStringList labels = setupLabels();
  double widest = 0;
  for (const QString& label : labels) widest = std::max(widest, texts().width(chartFont(true), label));
  const double height = (textHeight + 2) * static_cast<double>(labels.size());
  const double left = plot.right() - widest - kSample - 20;
  const double top = corner == Qt::TopRightCorner ? plot.top() + 4 : plot.bottom() - height - textHeight - 14;
  return {left, top, kSample + 8 + widest + 4, height};
}

void SetupChart::paintSetupNames(QPainter& painter, Qt::Corner corner) const {
  const auto setups = shown();
  const QStringList labels = setupLabels();
  const QRectF area = setupNamesArea(corner);
  QRectF line(area.topLeft(), QSizeF(area.width(), area.height() / static_cast<double>(setups.size())));
  for (std::size_t i = 0; i < setups.size(); ++i, line.translate(0, line.height())) {
    const double middle = line.center().y();
    painter.setPen(setups[i].pen);
    painter.drawLine(QPointF(line.left(), middle), QPointF(line.left() + kSample, middle));
    painter.setPen(colours().words(setups[i].pen.color()));
    texts().draw(painter, chartFont(true), line.adjusted(kSample + 8, 0, 0, 0), Qt::AlignLeft,
                 labels[static_cast<qsizetype>(i)]);
  }
}

QString SetupChart::pictureHeading() const {
  return plan_ ? ui::pictureHeading(*plan_) : QString();
}

QString SetupChart::pictureCaption() const {
  return plan_ ? cautionsFor(*plan_, CautionPlace::Readout).join(QLatin1Char(' ')) : QString();
}

void SetupChart::resizeEvent(QResizeEvent* event) {
  LiveChart::resizeEvent(event);
  if (plan_) refresh();
}

void SetupChart::recolour() {
  stockLine_->setPen(colours().stockPen());
  for (std::size_t i = 0; i < pinLines_.size(); ++i)
    pinLines_[i]->setPen(colours().pinPen(static_cast<int>(i)));
  proposedLine_->setPen(colours().proposedPen());
}

QStringList SetupChart::setupNames() const {
  QStringList names;
  for (const Shown& setup : shown()) names << setup.name;
  return names;
}

std::vector<QColor> SetupChart::setupColours() const {
  std::vector<QColor> result;
  for (const Shown& setup : shown()) result.push_back(colours().words(setup.pen.color()));
  return result;
}

std::optional<double> valueAt(const QList<QPointF>& line, double x) {
  const auto after = std::lower_bound(line.begin(), line.end(), x,
                                      [](const QPointF& p, double value) { return p.x() < value; });
  if (after == line.end()) return std::nullopt;
  if (after == line.begin()) return after->x() == x ? std::optional(after->y()) : std::nullopt;
  const QPointF a = *(after - 1), b = *after;
  return a.y() + (b.y() - a.y()) * (b.x() > a.x() ? (x - a.x()) / (b.x() - a.x()) : 1.0);
}

}  // namespace layshaft::ui
