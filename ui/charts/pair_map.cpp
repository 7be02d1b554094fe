// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/pair_map.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <utility>

#include "ui/words/lap_words.h"
#include "ui/words/pair_laps_words.h"
#include "ui/words/picture_words.h"

namespace layshaft::ui {

PairMap::PairMap(QWidget* parent) : PaintedPicture(parent) {
  setAccessibleName(tr("Map of pairs"));
}

void PairMap::show(const PairBook& book, const SharedPlan& plan) {
  const bool sameRange = book.ground().range == book_.ground().range;
  book_ = book;
  plan_ = plan;
  if (!sameRange) {
    setMaximumHeight(static_cast<int>(PairGrid::mostHeight(book_.ground().range, QFontMetricsF(font()))));
    updateGeometry();
    if (cursor_ && !book_.ground().range.contains(cursor_->first, cursor_->second)) cursor_.reset();
  }
  setAccessibleDescription(pairMapWords(book_));
  fit();
  repaintAll();
}

void PairMap::fit() {
  grid_ = PairGrid::in(book_.ground().range, size(), QFontMetricsF(font()));
  emit cursorMoved();
}

QSize PairMap::minimumSizeHint() const {
  constexpr int kLeastWidth = 320;
  return {kLeastWidth,
          static_cast<int>(PairGrid::leastHeight(book_.ground().range, QFontMetricsF(font()))) + 1};
}

QSize PairMap::sizeHint() const {
  return {2 * minimumSizeHint().width(), minimumSizeHint().height()};
}

void PairMap::moveTo(std::optional<Pair> pair) {
  if (cursor_ == pair) return;
  cursor_ = pair;
  update();
  emit cursorMoved();
  if (hasFocus()) tellMovedCrosshair(*this);
}

PairPainting PairMap::painting() const {
  return PairPainting({.book = book_, .grid = grid_, .colours = colours(), .size = size(), .font = font()});
}

QString PairMap::legend() const {
  return pairMapLegend(book_, painting().labels() == PairLabels::WholeTenths);
}

void PairMap::paintMoving(QPainter& painter) const {
  if (!cursor_) return;
  // A ring of the ground around it: the highlight may be much like what it stands on.
  constexpr double kWide = 5.0, kNarrow = 2.0;
  QPen ring(colours().background, kWide);
  ring.setJoinStyle(Qt::MiterJoin);
  const QRectF cell = grid_.cellOf(cursor_->first, cursor_->second);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(ring);
  painter.drawRect(cell);
  ring.setColor(colours().focus);
  ring.setWidthF(kNarrow);
  painter.setPen(ring);
  painter.drawRect(cell);
}

QString PairMap::pictureHeading() const {
  return plan_ ? ui::pictureHeading(*plan_) : QString();
}

QString PairMap::pictureCaption() const {
  if (!plan_) return {};
  QStringList words{pairPickWords(book_), legend(), ui::pictureCaption(*plan_, true), lapHonesty(*plan_)};
  words.removeAll(QString());
  return words.join(QLatin1Char(' '));
}

void PairMap::mouseMoveEvent(QMouseEvent* event) {
  const auto pair = grid_.pairAt(event->position());
  setCursor(pair ? Qt::PointingHandCursor : Qt::ArrowCursor);
  if (pair || !hasFocus()) moveTo(pair);
}

void PairMap::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) pressed_ = grid_.pairAt(event->position());
  QWidget::mousePressEvent(event);
}

void PairMap::mouseReleaseEvent(QMouseEvent* event) {
  QWidget::mouseReleaseEvent(event);
  if (event->button() != Qt::LeftButton) return;
  const auto pair = std::exchange(pressed_, std::nullopt);
  if (!pair || pair != grid_.pairAt(event->position())) return;
  moveTo(pair);
  choose();
}

void PairMap::leaveEvent(QEvent* event) {
  QWidget::leaveEvent(event);
  if (!hasFocus()) moveTo(std::nullopt);
}

/// Where the keys begin: at the proposal, if it is there.
PairMap::Pair PairMap::start() const {
  const LadderRange& range = book_.ground().range;
  const Pair proposed = book_.proposed();
  return range.contains(proposed.first, proposed.second) ? proposed
                                                         : Pair{range.fewestFront, range.fewestRear};
}

void PairMap::step(int fronts, int rears) {
  const LadderRange& range = book_.ground().range;
  const Pair from = cursor_.value_or(start());
  moveTo(Pair{std::clamp(from.first + fronts, range.fewestFront, range.mostFront),
              std::clamp(from.second + rears, range.fewestRear, range.mostRear)});
}

void PairMap::choose() {
  if (cursor_) emit pairChosen(cursor_->first, cursor_->second);
}

void PairMap::keyPressEvent(QKeyEvent* event) {
  if (grid_.empty()) return QWidget::keyPressEvent(event);
  switch (event->key()) {
    case Qt::Key_Left:
      return step(0, -1);
    case Qt::Key_Right:
      return step(0, 1);
    case Qt::Key_Up:
      return step(-1, 0);
    case Qt::Key_Down:
      return step(1, 0);
    case Qt::Key_Home:
      return step(0, -book_.rears());
    case Qt::Key_End:
      return step(0, book_.rears());
    case Qt::Key_Enter:
    case Qt::Key_Return:
    case Qt::Key_Space:
      return choose();
    default:
      break;
  }
  QWidget::keyPressEvent(event);
}

void PairMap::focusInEvent(QFocusEvent* event) {
  PaintedPicture::focusInEvent(event);
  if (!cursor_ && !grid_.empty()) moveTo(start());
}

void PairMap::focusOutEvent(QFocusEvent* event) {
  PaintedPicture::focusOutEvent(event);
  if (!underMouse()) moveTo(std::nullopt);
}

std::optional<ReadablePicture::CrosshairSpan> PairMap::crosshairSpan() const {
  return CrosshairSpan{0.0, std::max(0.0, static_cast<double>(book_.fronts() * book_.rears() - 1)), 1.0};
}

/// The pairs one after the other, row by row.
std::optional<double> PairMap::crosshairAt() const {
  if (!cursor_) return std::nullopt;
  const LadderRange& range = book_.ground().range;
  return (cursor_->first - range.fewestFront) * book_.rears() + cursor_->second - range.fewestRear;
}

void PairMap::moveCrosshair(double x) {
  if (grid_.empty()) return;
  const LadderRange& range = book_.ground().range;
  const int place = std::clamp(static_cast<int>(x), 0, book_.fronts() * book_.rears() - 1);
  moveTo(Pair{range.fewestFront + place / book_.rears(), range.fewestRear + place % book_.rears()});
}

QString PairMap::crosshairWords() const {
  const RankedPair* pair = cursor_ ? book_.at(cursor_->first, cursor_->second) : nullptr;
  return pair ? pairWords(book_, *pair) : QString();
}

}  // namespace layshaft::ui
