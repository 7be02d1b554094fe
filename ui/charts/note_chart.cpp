// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/note_chart.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/bike/record_list.h"
#include "ui/words/chart_words.h"
#include "ui/words/dates.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/record_words.h"

namespace layshaft::ui {
namespace {

constexpr double kDot = 4.5;  // half of it, px
constexpr double kXTickPx = 70.0, kYTickPx = 34.0;
constexpr double kLeastStep = 0.1;  // what axis labels tell apart
constexpr double kLeastRatios = 0.4, kLeastSeconds = 1.0;

/// A round range with about as many ticks as there is room for, none closer than labels can tell.
AxisRange readableRange(double low, double high, double px, double pxPerTick) {
  AxisRange range;
  for (int ticks = std::clamp(static_cast<int>(px / pxPerTick), 2, 10); ticks >= 1; --ticks) {
    range = roundRange(low, high, ticks);
    if (range.step >= kLeastStep * 0.999) break;
  }
  // The axis counts its ticks from zero and leaves out one that lies a rounding error outside the range.
  constexpr double kTouch = 1e-9;
  range.low -= kTouch * range.step;
  range.high += kTouch * range.step;
  return range;
}

}  // namespace

std::vector<NotePoint> notePoints(const Profile& profile) {
  std::vector<NotePoint> points;
  for (const RecordRef& ref : newestFirst(profile)) {
    if (ref.kind != RecordKind::TrackNote) continue;
    const TrackNote& note = profile.records->trackNotes[ref.index];
    if (note.struck || !note.setup || !note.setup->frontTeeth || !note.setup->rearTeeth) continue;
    if (!note.lapTimeS && !note.rating) continue;
    const Teeth front = *note.setup->frontTeeth, rear = *note.setup->rearTeeth;
    points.push_back({.finalRatio = finalRatio(front, rear),
                      .lapTimeS = note.lapTimeS,
                      .rating = note.rating,
                      .pair = pairText(front.count(), rear.count()),
                      .day = shownDate(note.date),
                      .place = onOneLine(QString::fromStdString(note.place)).simplified()});
  }
  return points;
}

NoteChart::NoteChart(QWidget* parent) : LiveChart(parent) {
  setAccessibleName(tr("Track notes chart"));
  applyPalette();
}

void NoteChart::show(std::vector<NotePoint> notes) {
  notes_ = std::move(notes);
  fitRanges();
}

void NoteChart::setFigure(Figure figure) {
  figure_ = figure;
  fitRanges();
}

void NoteChart::setRatios(double stock, double proposed) {
  if (stock == stock_ && proposed == proposed_) return;
  stock_ = stock;
  proposed_ = proposed;
  fitRanges();
}

bool NoteChart::has(Figure figure) const {
  return std::any_of(notes_.begin(), notes_.end(), [figure](const NotePoint& note) {
    return figure == Figure::LapTime ? note.lapTimeS.has_value() : note.rating.has_value();
  });
}

std::optional<double> NoteChart::value(const NotePoint& note) const {
  if (figure_ == Figure::LapTime) return note.lapTimeS;
  return note.rating ? std::optional<double>(*note.rating) : std::nullopt;
}

void NoteChart::fitRanges() {
  double left = std::min(stock_, proposed_), right = std::max(stock_, proposed_);
  std::optional<double> low, high;
  for (const NotePoint& note : notes_)
    if (const auto y = value(note)) {
      left = std::min(left, note.finalRatio);
      right = std::max(right, note.finalRatio);
      low = std::min(low.value_or(*y), *y);
      high = std::max(high.value_or(*y), *y);
    }
  const double aside = std::max(0.1, (kLeastRatios - (right - left)) / 2.0);
  const AxisRange x = readableRange(left - aside, right + aside, plotArea().width(), kXTickPx);
  const auto seconds = [&] {
    const double from = low.value_or(0.0), to = high.value_or(1.0);
    const double room = std::max(0.15 * (to - from), (kLeastSeconds - (to - from)) / 2.0);
    return readableRange(std::max(0.0, from - room), to + room, plotArea().height(), kYTickPx);
  };
  setRanges(x, figure_ == Figure::LapTime ? seconds() : AxisRange{0.0, 12.0, 2.0});
  updateOverlay();
  describe();
}

QString NoteChart::figureTitle() const {
  return figure_ == Figure::LapTime ? tr("Lap time, s") : tr("Rating, 1 to 10");
}

void NoteChart::paintOver(QPainter& painter) {
  const QRectF plot = plotArea();
  const double line = QFontMetricsF(chartFont()).height();
  painter.save();
  painter.setClipRect(plot);
  const auto mark = [&](double ratio, const QPen& pen, const QString& name, double top) {
    const double x = at(ratio, 0).x();
    painter.setPen(pen);
    painter.drawLine(QPointF(x, plot.top() + top + line), QPointF(x, plot.bottom()));
    const double width = texts().width(chartFont(), name) + 1.0;
    const double from = std::clamp(x - width / 2.0, plot.left() + 4.0, plot.right() - width - 4.0);
    painter.setPen(colours().words(pen.color()));
    texts().draw(painter, chartFont(), QRectF(from, plot.top() + top, width, line), Qt::AlignLeft, name);
  };
  mark(stock_, colours().stockPen(), tr("Stock"), line);
  if (proposed_ != stock_) mark(proposed_, colours().proposedPen(), tr("Proposed"), 2.0 * line);
  painter.setPen(colours().mutedText);
  texts().draw(painter, chartFont(), QRectF(plot.left() + 6.0, plot.top() + 1.0, plot.width(), line),
               Qt::AlignLeft, figureTitle());
  const QString ratio = tr("Final ratio");
  const double width = texts().width(chartFont(), ratio) + 1.0;
  texts().draw(painter, chartFont(),
               QRectF(plot.right() - width - 4.0, plot.bottom() - line - 4.0, width, line), Qt::AlignLeft,
               ratio);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colours().background, 1.5));
  painter.setBrush(colours().text);
  for (const NotePoint& note : notes_)
    if (const auto y = value(note)) painter.drawEllipse(at(note.finalRatio, *y), kDot, kDot);
  painter.restore();
}

std::vector<const NotePoint*> NoteChart::nearest(double ratio) const {
  std::vector<const NotePoint*> found;
  double least = 0.0;
  for (const NotePoint& note : notes_) {
    if (!value(note)) continue;
    const double away = std::abs(note.finalRatio - ratio);
    if (!found.empty() && away > least) continue;
    if (found.empty() || away < least) found.clear();
    least = away;
    found.push_back(&note);
  }
  return found;
}

QString NoteChart::crosshairTitle(double x) const {
  const auto notes = nearest(x);
  if (notes.empty()) return {};
  QStringList pairs;  // of one ratio, such as 15/45 and 16/48
  for (const NotePoint* note : notes)
    if (!pairs.contains(note->pair)) pairs << note->pair;
  return tr("%1: %2", "pairs and their final ratio")
      .arg(pairs.join(tr(", ")), number(notes.front()->finalRatio, 3));
}

std::vector<CrosshairRow> NoteChart::rowsAt(double ratio, bool withPlace) const {
  constexpr std::size_t kMostRows = 8;
  std::vector<CrosshairRow> rows;
  for (const NotePoint* note : nearest(ratio)) {
    if (rows.size() == kMostRows) break;
    rows.push_back({withPlace && !note->place.isEmpty()
                        ? tr("%1, %2", "day and place").arg(note->day, note->place)
                        : note->day,
                    {note->lapTimeS ? lapTimeText(*note->lapTimeS) : noValue(),
                     note->rating ? number(*note->rating, 0) : noValue()}});
  }
  return rows;
}

QString NoteChart::inWords() const {
  int shown = 0;
  const NotePoint* best = nullptr;
  for (const NotePoint& note : notes_) {
    const auto y = value(note);
    if (!y) continue;
    ++shown;
    const bool better = !best || (figure_ == Figure::LapTime ? *y < *value(*best) : *y > *value(*best));
    if (better) best = &note;
  }
  if (!best) return tr("No track note tells this figure yet.");
  const QString what = figure_ == Figure::LapTime
                           ? tr("%n track notes by final ratio. Quickest lap: %1 with %2.", nullptr, shown)
                                 .arg(lapTimeText(*best->lapTimeS), best->pair)
                           : tr("%n track notes by final ratio. Best rating: %1 with %2.", nullptr, shown)
                                 .arg(number(*best->rating, 0), best->pair);
  return what + QLatin1Char(' ') + tr("All of them are in the table.");
}

QStringList NoteChart::setupNames() const {
  return {tr("Lap"), tr("Rating")};
}

std::vector<QColor> NoteChart::setupColours() const {
  return {colours().text, colours().text};
}

void NoteChart::resizeEvent(QResizeEvent* event) {
  LiveChart::resizeEvent(event);
  fitRanges();
}

}  // namespace layshaft::ui
