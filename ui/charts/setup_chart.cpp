// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/setup_chart.h"

#include <QPainter>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "ui/words/cautions.h"
#include "ui/words/numbers.h"
#include "ui/words/picture_words.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

constexpr double kXTickPx = 84;  // room for a label and some air
constexpr double kYTickPx = 30;
constexpr double kSample = 34.0;  // of a line, in the list of names
constexpr double kSampleGap = 8.0, kColumnGap = 14.0;
constexpr int kPatchAlpha = 225;               // a line under words is still seen
constexpr int kRestMs = 700;                   // after the last step: then nothing is being turned
constexpr double kNamesShare = 0.45;           // of the plot at most, for the list of names in one column
constexpr double kNamesShareOfColumns = 0.85;  // the same in several
constexpr double kLeastHeadroom = 1.06;        // above the highest point

}  // namespace

SetupChart::SetupChart(const QString& name, QWidget* parent) : LiveChart(parent) {
  stockLine_ = addLine();
  for (int i = 0; i < limits::kMostPins; ++i) pinLines_.push_back(addLine());
  proposedLine_ = addLine();
  setAccessibleName(name);
  untilRest_.setSingleShot(true);
  untilRest_.setInterval(kRestMs);
  connect(&untilRest_, &QTimer::timeout, this, [this] {
    setRanges(rest_.first, rest_.second);
    feedLines();
  });
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
  if (footHeight() == foot && rightMargin() == right) return;
  updateGeometry();
  layOut();
  refresh();  // in a plot of another size
}

void SetupChart::refresh() {
  fitRanges();
  feedLines();
}

void SetupChart::feedLines() {
  feed(stockLine_, lineOf(plan_->stock));
  for (std::size_t i = 0; i < pinLines_.size(); ++i)
    feed(pinLines_[i], i < plan_->pins.size() ? lineOf(plan_->pins[i]) : QList<QPointF>());
  feed(proposedLine_, lineOf(plan_->proposed));
  updateOverlay();
  describe();
}

void SetupChart::fitTo(double xHigh, double yLow, double yHigh, int kind, XEnd end) {
  const auto ticksIn = [](double px, double pxPerTick) {
    return std::clamp(static_cast<int>(px / pxPerTick), 3, 14);
  };
  const int xTicks = ticksIn(plotArea().width(), kXTickPx), yTicks = ticksIn(plotArea().height(), kYTickPx);
  AxisRange x = roundRange(0.0, xHigh, xTicks);
  if (end == XEnd::OfData) x.high = xHigh;
  const AxisRange y = closeRange(yLow, yHigh, yTicks);
  const auto steadyX = [&](const AxisRange& current) {
    return end == XEnd::OfData ? x : steadyRange(current, 0.0, xHigh, x);
  };
  // Another view, bike or size of the window is meant to move the axes; a step is not.
  const bool same =
      kind == kind_ && xTicks == xTicks_ && yTicks == yTicks_ && plan_->bikeName == home_.bikeName;
  kind_ = kind;
  xTicks_ = xTicks;
  yTicks_ = yTicks;
  if (!same || !(plan_->input.stock == home_.stock)) home_ = {plan_->bikeName, plan_->input.stock, x, y};
  rest_ = {steadyX(home_.x), steadyRange(home_.y, yLow, yHigh, y)};
  if (same)
    setRanges(steadyX(xRange()), steadyRange(yRange(), yLow, yHigh, y));
  else
    setRanges(x, y);
  if (xRange() == rest_.first && yRange() == rest_.second)
    untilRest_.stop();
  else
    untilRest_.start();
}

double SetupChart::withHeadroom(double low, double high) const {
  const double plot = plotArea().height();
  const double row = QFontMetricsF(chartFont()).height() + 4.0;
  // In a very low chart the lines need it all.
  const double share = std::clamp(1.0 - row / std::max(plot, 1.0), 0.75, 1.0 / kLeastHeadroom);
  return low + (high - low) / share;
}

const std::vector<ChartLabel>& SetupChart::labels() const {
  if (labels_) return *labels_;
  labels_.emplace();
  namesArea_ = {};
  if (!plan_) return *labels_;
  LabelSpace space(plotArea());
  avoidLines(space);
  putTitles(space);
  putNames(space);
  putLabels(space);
  return *labels_;
}

QRectF SetupChart::namesArea() const {
  labels();
  return namesArea_;
}

QSizeF SetupChart::sizeOf(const ChartLabel& label) const {
  const QFont& font = chartFont(label.bold);
  return {std::ceil(texts().width(font, label.text)), std::ceil(QFontMetricsF(font).height())};
}

std::optional<QRectF> SetupChart::put(LabelSpace& space, ChartLabel label,
                                      const std::vector<QPointF>& corners) const {
  const QSizeF size = label.box.isEmpty() ? sizeOf(label) : label.box.size();
  std::vector<QRectF> places;
  places.reserve(corners.size());
  for (const QPointF& corner : corners) places.emplace_back(corner, size);
  const auto place = space.put(places);
  if (!place) return std::nullopt;
  label.box = *place;
  if (label.leader) label.leader->setP2({label.leader->x2(), label.box.center().y()});
  labels_->push_back(std::move(label));
  return place;
}

void SetupChart::avoidLines(LabelSpace& space) const {
  for (const QLineSeries* line : lines()) {
    QPolygonF points;
    for (const QPointF& point : line->points()) points << at(point.x(), point.y());
    space.avoid(points);
  }
}

void SetupChart::paintLabels(QPainter& painter) const {
  for (const ChartLabel& label : labels()) {
    if (label.leader) {
      painter.setPen(QPen(label.colour, 1, Qt::DotLine));
      painter.setRenderHint(QPainter::Antialiasing, false);
      painter.drawLine(*label.leader);
      painter.setRenderHint(QPainter::Antialiasing);
    }
    if (label.onPatch)
      painter.fillRect(label.box.adjusted(-1, 1, 1, 0), faint(colours().background, kPatchAlpha));
    double left = label.box.left();
    if (label.sample) {
      const double middle = label.box.center().y();
      painter.setPen(*label.sample);
      painter.drawLine(QPointF(left, middle), QPointF(left + kSample, middle));
      left += kSample + kSampleGap;
    }
    painter.setPen(label.colour);
    QRectF words = label.box;
    words.setLeft(left);
    texts().draw(painter, chartFont(label.bold), words, Qt::AlignLeft, label.text);
  }
}

void SetupChart::putTitles(LabelSpace& space) const {
  const QRectF plot = plotArea();
  // Every chart of setups has top speeds, runs or speeds at the limit on it.
  const ChartLabel closed{closedCourseMark(), colours().text};
  // What is worked out from an estimate says so where it is read.
  const bool estimated = isFromTorque() && !estimatedCurveWords(*plan_->pullBike).isEmpty();
  const ChartLabel x{xTitle(), colours().mutedText};
  const ChartLabel y{
      .text = estimated ? tr("%1 (estimated torque curve)", "title of an axis").arg(yTitle()) : yTitle(),
      .colour = colours().mutedText,
      .onPatch = true};
  const double level = plot.bottom() - sizeOf(closed).height() - 4;
  // At the right, or as far to the left as they stand clear of what comes up from the axis.
  constexpr double kStep = 24.0;
  double right = plot.right() - 4;
  for (const ChartLabel& title : {closed, x}) {
    std::vector<QPointF> corners;
    for (double left = right - sizeOf(title).width(); left > plot.left(); left -= kStep)
      corners.emplace_back(left, level);
    if (const auto place = put(space, title, corners)) right = place->left() - 8;
  }
  put(space, y, {QPointF(plot.left() + 6, plot.top() + 1)});
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

/// Of a label that is too long the name is cut, never the teeth, which say what it is.
QString SetupChart::shortened(const QString& label, const QString& teeth, double widest) const {
  const QFont& font = chartFont(true);
  if (texts().width(font, label) <= widest) return label;
  static const QRegularExpression pair(QStringLiteral("[\\s:,(]*\\d+\\s*[x/\\x{00D7}]\\s*\\d+\\)?"));
  const QString behind = tr("%1 %2", "setup and its teeth").arg(QString(), teeth);
  const QString name = QString(label).remove(pair);
  const QString cut =
      QFontMetricsF(font).elidedText(name, Qt::ElideRight, widest - texts().width(font, behind));
  return cut.isEmpty() ? teeth : cut + behind;
}

SetupChart::NameColumns SetupChart::nameColumns(int rows) const {
  const QStringList labels = setupLabels();
  const auto setups = shown();
  const auto count = static_cast<int>(labels.size());
  const int columns = (count + rows - 1) / rows;
  const double sample = kSample + kSampleGap;
  // A pin's name may be a sentence.
  const double share = columns == 1 ? kNamesShare : kNamesShareOfColumns / columns;
  double widest = std::max(20.0, share * plotArea().width() - sample - kColumnGap);
  // Stock and proposed have short names, which are worth the room also in a narrow chart.
  if (columns == 1)
    for (const QString& label : labels.first(2))
      widest = std::clamp(std::ceil(texts().width(chartFont(true), label)), widest,
                          std::max(widest, kNamesShareOfColumns * plotArea().width() - sample));
  NameColumns names{.rows = rows, .widths = std::vector<double>(static_cast<std::size_t>(columns), 0.0)};
  for (int i = 0; const QString& label : labels) {
    names.texts << shortened(label, teethPair(setups[static_cast<std::size_t>(i)].plan->setup), widest);
    double& width = names.widths[static_cast<std::size_t>(i++ / rows)];
    width = std::max(width, std::ceil(texts().width(chartFont(true), names.texts.back())) + sample);
  }
  names.wide = kColumnGap * (columns - 1);
  for (const double width : names.widths) names.wide += width;
  return names;
}

void SetupChart::putNames(LabelSpace& space) const {
  const auto setups = shown();
  const QRectF plot = plotArea();
  const auto count = static_cast<int>(setups.size());
  const double lineHeight = std::ceil(QFontMetricsF(chartFont(true)).height()) + 2.0;
  const auto areaOf = [&](const NameColumns& names) {
    const double height = lineHeight * names.rows;
    const double top =
        namesCorner() == Qt::TopRightCorner ? plot.top() + 4 : plot.bottom() - height - lineHeight - 8;
    return QRectF(plot.right() - names.wide - 8, top, names.wide, height);
  };
  // One column as long as there is room; as many as it takes to stay off the lines in a low chart.
  const int most = std::clamp(static_cast<int>(kNamesShare * plot.height() / lineHeight), 1, count);
  std::optional<NameColumns> best;
  int fewest = 0;
  for (int columns = (count + most - 1) / most; columns <= count; ++columns) {
    const int rows = (count + columns - 1) / columns;
    if (best && rows == best->rows) continue;
    const NameColumns names = nameColumns(rows);
    // Of a pin's long name the beginning does.
    if (best && names.texts.first(2) != setupLabels().first(2)) break;
    const int crossed = space.crossings(areaOf(names));
    if (best && crossed >= fewest) continue;
    best = names;
    fewest = crossed;
    if (crossed == 0) break;
  }
  const auto area = space.put({areaOf(*best)});
  if (!area) return;
  namesArea_ = *area;
  double left = area->left();
  for (int i = 0; i < count; ++i) {
    const auto index = static_cast<std::size_t>(i);
    const auto column = static_cast<std::size_t>(i / best->rows);
    if (i > 0 && i % best->rows == 0) left += best->widths[column - 1] + kColumnGap;
    labels_->push_back(
        {.text = best->texts[i],
         .colour = colours().words(setups[index].pen.color()),
         .bold = true,
         .onPatch = true,
         .box = QRectF(left, area->top() + lineHeight * (i % best->rows), best->widths[column], lineHeight),
         .sample = setups[index].pen});
  }
}

QString SetupChart::pictureHeading() const {
  return plan_ ? ui::pictureHeading(*plan_) : QString();
}

QString SetupChart::pictureCaption() const {
  return plan_ ? ui::pictureCaption(*plan_, isFromTorque()) : QString();
}

void SetupChart::resizeEvent(QResizeEvent* event) {
  LiveChart::resizeEvent(event);
  if (plan_) refresh();
}

void SetupChart::changeEvent(QEvent* event) {
  LiveChart::changeEvent(event);
  if (event->type() == QEvent::FontChange && plan_) refresh();  // words need other room
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
