// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/pair_painting.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "ui/charts/contrast.h"
#include "ui/words/chart_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kAroundText = 4.0;    // px, free on either side of a label in its cell
constexpr double kHighestLines = 2.2;  // of text: a cell that is higher says no more
constexpr double kShade = 0.45;        // of the accent in the ground of the quickest pair
constexpr double kHatchShare = 0.3;    // of the text in the strokes over what does not fit
constexpr double kFarOffS = 9.95;      // would take three figures in tenths, and nobody chooses among such
constexpr double kHatchStep = 6.0;     // px
constexpr double kTieWidth = 3.0;      // px
constexpr double kMarkInset = 2.5;     // px, so that a mark and an outline are both seen

double leftOf(const QFontMetricsF& metrics) {
  return metrics.horizontalAdvance(PairPainting::frontTitle()) + 3.0 * kAroundText;
}

/// Beside the cells, where the columns' word and names of lines stand.
double rightOf(const QFontMetricsF& metrics) {
  return std::max(metrics.horizontalAdvance(PairPainting::rearTitle()),
                  metrics.horizontalAdvance(QStringLiteral("+00 %"))) +
         2.0 * kAroundText;
}

/// Above the cells the teeth of the columns and the names of lines, below them names of lines.
double aboveAndBelow(const QFontMetricsF& metrics) {
  return 3.0 * metrics.height() + 2.0 * kAroundText;
}

double leastCell(const QFontMetricsF& metrics) {
  return metrics.height() + 2.0 * kAroundText;
}

int count(int fewest, int most) {
  return std::max(0, most - fewest + 1);
}

}  // namespace

double PairGrid::leastHeight(const LadderRange& range, const QFontMetricsF& metrics) {
  return aboveAndBelow(metrics) + leastCell(metrics) * count(range.fewestFront, range.mostFront);
}

double PairGrid::mostHeight(const LadderRange& range, const QFontMetricsF& metrics) {
  return aboveAndBelow(metrics) +
         kHighestLines * metrics.height() * count(range.fewestFront, range.mostFront);
}

PairGrid PairGrid::in(const LadderRange& range, const QSizeF& size, const QFontMetricsF& metrics) {
  PairGrid grid{.range = range, .cells = {}, .cell = {}};
  if (grid.empty()) return grid;
  const int rows = count(range.fewestFront, range.mostFront),
            columns = count(range.fewestRear, range.mostRear);
  const double left = leftOf(metrics), above = 2.0 * metrics.height() + kAroundText, right = rightOf(metrics);
  grid.cell =
      QSizeF((size.width() - left - right) / columns,
             std::min((size.height() - aboveAndBelow(metrics)) / rows, kHighestLines * metrics.height()));
  grid.cells = QRectF(left, above, grid.cell.width() * columns, grid.cell.height() * rows);
  return grid;
}

QPointF PairGrid::at(double front, double rear) const {
  return {cells.left() + (rear - range.fewestRear + 0.5) * cell.width(),
          cells.top() + (front - range.fewestFront + 0.5) * cell.height()};
}

QRectF PairGrid::cellOf(int front, int rear) const {
  QRectF place(QPointF(0, 0), cell);
  place.moveCenter(at(front, rear));
  return place;
}

std::optional<std::pair<int, int>> PairGrid::pairAt(const QPointF& position) const {
  if (empty() || !cells.contains(position)) return std::nullopt;
  const auto index = [](double from, double step, int most) {
    return std::min(static_cast<int>(from / step), most - 1);
  };
  return std::pair{range.fewestFront + index(position.y() - cells.top(), cell.height(),
                                             count(range.fewestFront, range.mostFront)),
                   range.fewestRear + index(position.x() - cells.left(), cell.width(),
                                            count(range.fewestRear, range.mostRear))};
}

PairPainting::PairPainting(const Scene& scene)
    : scene_(scene), metrics_(scene.font), labels_(labelsWithRoom()) {
  bool any = false;
  for (const RankedPair& pair : scene_.book.pairs()) {
    if (!pair.row.lapS) continue;
    quickestS_ = any ? std::min(quickestS_, *pair.row.lapS) : *pair.row.lapS;
    slowestS_ = any ? std::max(slowestS_, *pair.row.lapS) : *pair.row.lapS;
    any = true;
  }
}

QString PairPainting::frontTitle() {
  return tr("Front");
}

QString PairPainting::rearTitle() {
  return tr("Rear");
}

QString PairPainting::labelAs(const LapRow& row, PairLabels labels) const {
  if (!row.changeS) return noValue();
  switch (labels) {
    case PairLabels::Hundredths:
      return signedNumber(*row.changeS, 2);
    case PairLabels::Tenths:
      return signedNumber(*row.changeS, 1);
    case PairLabels::WholeTenths:  // − alone tells the quicker
      if (std::abs(*row.changeS) >= kFarOffS) return {};
      return signedNumber(10.0 * *row.changeS, 0).remove(QLatin1Char('+'));
    case PairLabels::None:
      break;
  }
  return {};
}

PairLabels PairPainting::labelsWithRoom() const {
  QFont bold = scene_.font;
  bold.setBold(true);
  const QFontMetricsF metrics(bold);
  const double room = scene_.grid.cell.width() - kAroundText;
  for (const auto labels : {PairLabels::Hundredths, PairLabels::Tenths, PairLabels::WholeTenths}) {
    const auto fits = [&](const RankedPair& pair) {
      return metrics.horizontalAdvance(labelAs(pair.row, labels)) <= room;
    };
    if (std::all_of(scene_.book.pairs().begin(), scene_.book.pairs().end(), fits)) return labels;
  }
  return PairLabels::None;
}

QString PairPainting::labelOf(const LapRow& row) const {
  return labelAs(row, labels_);
}

/// The nearer to the quickest the stronger, and there in finer steps: who chooses, chooses among the best.
QColor PairPainting::groundOf(const RankedPair& pair) const {
  const ChartPalette& colours = scene_.colours;
  if (pair.old || !pair.row.lapS) return colours.background;
  const double span = slowestS_ - quickestS_;
  const double behind = span > 0.0 ? std::sqrt((*pair.row.lapS - quickestS_) / span) : 0.0;
  return mixed(colours.background, colours.proposed, kShade * (1.0 - behind));
}

QColor PairPainting::inkOn(const RankedPair& pair) const {
  return standingOut(pair.old ? scene_.colours.mutedText : scene_.colours.text, {groundOf(pair)},
                     kTextContrast);
}

void PairPainting::paint(QPainter& painter) const {
  painter.fillRect(QRectF(QPointF(0, 0), scene_.size), scene_.colours.background);
  if (scene_.grid.empty()) return;
  painter.setFont(scene_.font);
  paintTeeth(painter);
  const LadderRange& range = scene_.grid.range;
  for (int front = range.fewestFront; front <= range.mostFront; ++front)
    for (int rear = range.fewestRear; rear <= range.mostRear; ++rear) paintCell(painter, front, rear);
  painter.setRenderHint(QPainter::Antialiasing);
  paintRatios(painter);
  for (const RankedPair& pair : scene_.book.pairs()) paintLabel(painter, pair);
  paintTies(painter);
  paintMarks(painter);
}

void PairPainting::paintTeeth(QPainter& painter) const {
  const PairGrid& grid = scene_.grid;
  const double line = metrics_.height(), top = kAroundText / 2.0;
  painter.setPen(scene_.colours.text);
  painter.drawText(QRectF(0.0, top, grid.cells.left() - kAroundText, line), Qt::AlignRight | Qt::AlignVCenter,
                   frontTitle());
  painter.drawText(QRectF(grid.cells.right() + kAroundText, top, rightOf(metrics_), line),
                   Qt::AlignLeft | Qt::AlignVCenter, rearTitle());
  for (int rear = grid.range.fewestRear; rear <= grid.range.mostRear; ++rear) {
    const QRectF cell = grid.cellOf(grid.range.fewestFront, rear);
    painter.drawText(QRectF(cell.left(), top, cell.width(), line), Qt::AlignCenter, QString::number(rear));
  }
  for (int front = grid.range.fewestFront; front <= grid.range.mostFront; ++front) {
    const QRectF cell = grid.cellOf(front, grid.range.fewestRear);
    painter.drawText(QRectF(0.0, cell.top(), grid.cells.left() - kAroundText, cell.height()),
                     Qt::AlignRight | Qt::AlignVCenter, QString::number(front));
  }
}

void PairPainting::paintCell(QPainter& painter, int front, int rear) const {
  const QRectF cell = scene_.grid.cellOf(front, rear);
  if (const RankedPair* pair = scene_.book.at(front, rear)) {
    painter.fillRect(cell, groundOf(*pair));
    painter.setPen({mixed(groundOf(*pair), scene_.colours.text, kHatchShare), 1.0});
    if (!pair->row.fits) hatch(painter, cell, !pair->row.links);
  }
  painter.setPen({scene_.colours.grid, 1.0});
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(cell);
}

/// Strokes from edge to edge: formats of drawings know no cutting off.
void PairPainting::hatch(QPainter& painter, const QRectF& cell, bool crossed) const {
  for (double along = kHatchStep; along < cell.width() + cell.height(); along += kHatchStep) {
    const double high = std::min(along, cell.height()), far = std::min(along, cell.width());
    const QPointF low(along - high, high), up(far, along - far);
    painter.drawLine(cell.topLeft() + low, cell.topLeft() + up);
    if (!crossed) continue;
    const auto mirrored = [&](const QPointF& p) { return cell.topRight() + QPointF(-p.x(), p.y()); };
    painter.drawLine(mirrored(low), mirrored(up));
  }
}

/// Per cent from line to line: so far that a cell without one lies between two, and their names have room.
double PairPainting::ratioStep() const {
  constexpr std::array kSteps{2.0, 5.0, 10.0};
  constexpr double kCellsApart = 1.9, kNamesApart = 2.2;
  const double name = metrics_.horizontalAdvance(QStringLiteral("+00 %")), cell = scene_.grid.cell.width();
  for (const double step : kSteps)
    if (scene_.book.ground().stockRear * step / 100.0 * cell >=
        std::max(kCellsApart * cell, kNamesApart * name))
      return step;
  return 2.0 * kSteps.back();
}

void PairPainting::paintRatios(QPainter& painter) const {
  const PairBook::Ground& ground = scene_.book.ground();
  const double stock = static_cast<double>(ground.stockRear) / ground.stockFront;
  std::vector<QRectF> names;
  // Stock's own line is named by the ratio, the others by what they differ from it.
  paintRatio(painter, stock, scene_.colours.stockPen(), number(stock, 3), names);
  constexpr double kMostPercent = 60.0;
  const double step = ratioStep();
  for (double percent = step; percent <= kMostPercent; percent += step)
    for (const double change : {percent, -percent})
      paintRatio(painter, stock * (1.0 + change / 100.0), {scene_.colours.line, 1.0},
                 tr("%1 %", "a change").arg(signedNumber(change, 0)), names);
}

/// A line without room for its name is left out.
bool PairPainting::paintRatio(QPainter& painter, double ratio, const QPen& pen, const QString& name,
                              std::vector<QRectF>& names) const {
  const PairGrid& grid = scene_.grid;
  const double fewestFront = grid.range.fewestFront - 0.5, mostFront = grid.range.mostFront + 0.5,
               fewestRear = grid.range.fewestRear - 0.5, mostRear = grid.range.mostRear + 0.5;
  const double from = std::max(fewestFront, fewestRear / ratio), to = std::min(mostFront, mostRear / ratio);
  if (from >= to) return false;
  const QRectF place = placeOfName(ratio, metrics_.size(Qt::TextSingleLine, name));
  if (std::any_of(names.begin(), names.end(), [&](const QRectF& other) { return other.intersects(place); }))
    return false;
  names.push_back(place);
  painter.setPen(pen);
  painter.drawLine(grid.at(from, ratio * from), grid.at(to, ratio * to));
  painter.setPen(scene_.colours.words(pen.color()));
  painter.drawText(place, Qt::AlignCenter, name);
  return true;
}

/// Where the line leaves the cells: above them, below them, else at their right.
QRectF PairPainting::placeOfName(double ratio, const QSizeF& name) const {
  const PairGrid& grid = scene_.grid;
  const auto x = [&](double front) { return grid.at(front, ratio * front).x(); };
  const auto inside = [&](double at) { return at > grid.cells.left() && at < grid.cells.right(); };
  const double top = x(grid.range.fewestFront - 0.5), bottom = x(grid.range.mostFront + 0.5);
  const auto centred = [&](double at, double upper) {
    const double most = std::max(0.0, scene_.size.width() - name.width());
    return QRectF(QPointF(std::clamp(at - name.width() / 2.0, 0.0, most), upper), name);
  };
  if (inside(top)) return centred(top, grid.cells.top() - name.height());
  if (inside(bottom)) return centred(bottom, grid.cells.bottom());
  const double front = (grid.range.mostRear + 0.5) / ratio;
  const QPointF end = grid.at(front, ratio * front);
  return {end + QPointF(kAroundText / 2.0, -name.height() / 2.0), name};
}

void PairPainting::paintLabel(QPainter& painter, const RankedPair& pair) const {
  const QString label = labelOf(pair.row);
  if (label.isEmpty()) return;
  QFont font = scene_.font;
  font.setBold(scene_.book.isTaken(pair.row));
  painter.setFont(font);
  const QColor ground = groundOf(pair);
  QRectF place(QPointF(0, 0), QFontMetricsF(font).size(Qt::TextSingleLine, label));
  place.moveCenter(scene_.grid.cellOf(pair.row.frontTeeth, pair.row.rearTeeth).center());
  painter.fillRect(place.adjusted(-1.0, 0.0, 1.0, 0.0), ground);  // no stroke goes through figures
  painter.setPen(inkOn(pair));
  painter.drawText(place, Qt::AlignCenter, label);
  painter.setFont(scene_.font);
}

/// One outline round all neighbours that are equal to the quickest.
void PairPainting::paintTies(QPainter& painter) const {
  const LadderRange& range = scene_.grid.range;
  QPen pen(scene_.colours.text, kTieWidth);
  pen.setCapStyle(Qt::SquareCap);
  painter.setPen(pen);
  for (int front = range.fewestFront; front <= range.mostFront; ++front)
    for (int rear = range.fewestRear; rear <= range.mostRear; ++rear) {
      if (!scene_.book.isAsQuick(front, rear)) continue;
      const QRectF cell = scene_.grid.cellOf(front, rear);
      const auto edge = [&](int toFront, int toRear, const QPointF& a, const QPointF& b) {
        if (!scene_.book.isAsQuick(front + toFront, rear + toRear)) painter.drawLine(a, b);
      };
      edge(-1, 0, cell.topLeft(), cell.topRight());
      edge(1, 0, cell.bottomLeft(), cell.bottomRight());
      edge(0, -1, cell.topLeft(), cell.bottomLeft());
      edge(0, 1, cell.topRight(), cell.bottomRight());
    }
}

/// The ladder's triangle and a frame for the proposal; stock's dashes.
void PairPainting::paintMarks(QPainter& painter) const {
  const auto framed = [&](int front, int rear, const QPen& pen) {
    if (!scene_.grid.range.contains(front, rear)) return QRectF();
    const QRectF frame =
        scene_.grid.cellOf(front, rear).adjusted(kMarkInset, kMarkInset, -kMarkInset, -kMarkInset);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(frame);
    return frame;
  };
  const auto [front, rear] = scene_.book.proposed();
  const QRectF proposed = framed(front, rear, scene_.colours.proposedPen());
  framed(scene_.book.ground().stockFront, scene_.book.ground().stockRear, scene_.colours.stockPen());
  if (proposed.isNull()) return;
  constexpr double kSide = 8.0;
  painter.setPen(Qt::NoPen);
  painter.setBrush(scene_.colours.text);
  painter.drawPolygon(QPolygonF({proposed.topLeft(), proposed.topLeft() + QPointF(kSide * 0.8, kSide / 2.0),
                                 proposed.topLeft() + QPointF(0.0, kSide)}));
}

}  // namespace layshaft::ui
