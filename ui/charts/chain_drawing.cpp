// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/chain_drawing.h"

#include <QContextMenuEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "core/units.h"
#include "ui/charts/chain_shapes.h"
#include "ui/charts/turn_tally.h"
#include "ui/words/chain_labels.h"
#include "ui/words/chain_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kMargin = 12.0;    // px round the picture
constexpr double kGap = 6.0;        // px between a label and what it names
constexpr double kBoxStepM = 0.05;  // the picture's scale changes in steps, not with every tooth
constexpr double kSlotHalfHeightM = 0.008;
constexpr double kAxleRadiusM = 0.007;
constexpr double kSwingarmWidthM = 0.024;
constexpr double kPlateHeight = 0.72;  // of a pitch; about what the trade's link plates measure
constexpr double kZoomMarginM = 0.02;
constexpr double kFullTurn = 2.0 * units::kPi;

QPen thin(const QColor& colour, double width, Qt::PenStyle style = Qt::SolidLine) {
  QPen pen(colour, width, style, Qt::FlatCap, Qt::BevelJoin);  // round ones cost several times as much
  pen.setCosmetic(true);                                       // the same on the screen at any scale
  return pen;
}

}  // namespace

ChainDrawing::ChainDrawing(QWidget* parent) : QWidget(parent), colours_(palette()) {
  setAccessibleName(tr("Drawing of the chain run"));
  makeFonts();
}

void ChainDrawing::makeFonts() {
  font_ = font();
  font_.setPointSizeF(std::max(9.0, font_.pointSizeF() * 0.92));
  boldFont_ = font_;
  boldFont_.setBold(true);
}

void ChainDrawing::show(const SharedPlan& plan, const UnitsShown& units) {
  plan_ = plan;
  units_ = units;
  setAccessibleDescription(turnWords(*plan));
  update();
}

void ChainDrawing::setTurn(double turn) {
  turn_ = std::clamp(turn, 0.0, 1.0);
  update();
}

void ChainDrawing::setZoomed(bool zoomed) {
  zoomed_ = zoomed;
  update();
}

ChainDrawing::Loop ChainDrawing::loopOf(const SetupPlan& setup) const {
  const ChainRunFigures& run = *setup.chainRun;
  Loop loop{.setup = &setup,
            .pair = driveLoop(setup.setup)->pair,
            .path = {},
            .centreM = run.tightCentreM.value_or(*plan_->stock.chainRun->tightCentreM)};
  if (run.tightCentreM) loop.path.emplace(loop.pair, loop.centreM);
  return loop;
}

double ChainDrawing::tallyHeight() const {
  return zoomed_ ? 0.0 : turnTallyHeight(boldFont_);
}

QTransform ChainDrawing::view(const QRectF& area, const Loop& stock, const Loop& proposed) const {
  const auto& arm = plan_->stock.chainRun->swingarm;
  const double rise = arm ? arm->axleToCountershaftDeg : 0.0;
  QTransform to;
  if (zoomed_) {
    const ChainRun& room = plan_->chainRoom;
    const double forward = units::metresFromMillimetres(room.adjusterForwardMm.value_or(15.0));
    const double back = units::metresFromMillimetres(room.adjusterBackMm.value_or(15.0));
    const double shift = proposed.centreM - stock.centreM;
    const double low = std::min(-forward, shift) - kZoomMarginM, high = std::max(back, shift) + kZoomMarginM;
    constexpr double kSlotShare = 0.55;  // of the height at most; the rest is for numbers
    const double scale =
        std::min(area.width() / (high - low), area.height() * kSlotShare / (2.0 * kSlotHalfHeightM));
    const QPointF axle(stock.centreM + (low + high) / 2.0, 0.0);
    to.translate(area.center().x(), area.center().y());
    to.scale(scale, -scale);
    to.translate(-axle.x(), -axle.y());
    return to;
  }
  const auto stepped = [](double metres) { return std::ceil(metres / kBoxStepM) * kBoxStepM; };
  double front = 0.0, rear = 0.0, centre = 0.0;
  for (const Loop* loop : {&stock, &proposed}) {
    front = std::max(front, pitchRadiusM(loop->pair.pitchM, loop->pair.teeth1));
    rear = std::max(rear, pitchRadiusM(loop->pair.pitchM, loop->pair.teeth2));
    centre = std::max(centre, loop->centreM);
  }
  const double tooth = stock.pair.pitchM;
  const double radians = units::radiansFromDegrees(rise);
  const double left = front + tooth, right = rear + tooth;
  const double width = stepped(left + centre * std::cos(radians) + right);
  const double drop = centre * std::sin(radians);  // the axle below the countershaft
  const double top = std::max(left, right - drop), bottom = std::max(left, drop + right);
  const QFontMetricsF metrics(boldFont_);
  const double over = 2.2 * metrics.height() + kGap, under = 1.6 * metrics.height() + kGap;  // labels
  const double side = metrics.horizontalAdvance(tr("wrap 000°, stock 000°")) / 2.0;
  const double scale =
      std::min((area.width() - side - 2.0 * kMargin) / (width - left + std::min(left, 0.05)),
               (area.height() - over - under - 2.0 * kMargin) / std::max(stepped(top + bottom), 0.05));
  // In the middle of what is left.
  const double usedWidth = scale * width, usedHeight = scale * (top + bottom);
  const double x = area.left() + std::max((area.width() - usedWidth) / 2.0, side - scale * left + kMargin);
  const double y = area.top() + over + kMargin +
                   std::max(0.0, (area.height() - over - under - 2.0 * kMargin - usedHeight) / 2.0);
  to.translate(x + scale * left, y + scale * top);
  to.scale(scale, -scale);
  to.rotate(-rise);
  return to;
}

void ChainDrawing::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), colours_.background);
  paint(painter, rect());
}

void ChainDrawing::renderInto(QPainter& painter, const QRectF& target) {
  painter.save();
  const double scale = std::min(target.width() / width(), target.height() / height());
  painter.translate(target.topLeft());
  painter.scale(scale, scale);
  painter.fillRect(rect(), colours_.background);
  paint(painter, rect());
  painter.restore();
}

void ChainDrawing::paint(QPainter& painter, const QRectF& whole) const {
  if (!plan_ || !plan_->stock.chainRun || !plan_->proposed.chainRun) return;
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF area = whole.adjusted(0, 0, 0, -tallyHeight());
  const Loop stock = loopOf(plan_->stock), proposed = loopOf(plan_->proposed);
  const QTransform to = view(area, stock, proposed);
  painter.save();
  painter.setClipRect(area, Qt::IntersectClip);
  paintSwingarm(painter, to, stock);
  paintSlot(painter, to, stock);
  paintGhost(painter, to, stock);
  paintSolid(painter, to, proposed);
  if (zoomed_)
    paintAxleNumbers(painter, to, stock, proposed);
  else
    paintNumbers(painter, to, stock, proposed);
  painter.restore();
  if (!zoomed_)
    paintTurnTally(painter, QRectF(whole.left(), area.bottom(), whole.width(), tallyHeight()), *plan_, turn_,
                   {colours_, font_, boldFont_, texts_});
}

void ChainDrawing::paintSwingarm(QPainter& painter, const QTransform& to, const Loop& stock) const {
  const ChainRun& room = plan_->chainRoom;
  const auto& arm = plan_->stock.chainRun->swingarm;
  painter.save();
  painter.setTransform(to, true);
  const QPointF axle(stock.centreM, 0.0);
  if (arm) {
    // The countershaft is ahead of the pivot: in the line's own frame the pivot lies towards the axle.
    const double angle = units::radiansFromDegrees(-arm->axleToCountershaftDeg);
    const double x = units::metresFromMillimetres(*room.countershaftAheadOfPivotMm);
    const double y = -units::metresFromMillimetres(*room.countershaftAbovePivotMm);
    const QPointF pivot(x * std::cos(angle) + y * std::sin(angle),
                        -x * std::sin(angle) + y * std::cos(angle));
    painter.setPen(QPen(faint(colours_.mutedText, 60), kSwingarmWidthM, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(pivot, axle);
    painter.setPen(thin(colours_.mutedText, 1.5));
    painter.setBrush(colours_.background);
    painter.drawEllipse(pivot, kAxleRadiusM, kAxleRadiusM);
  }
  painter.setPen(thin(colours_.mutedText, 1, Qt::DashDotLine));
  painter.drawLine(QPointF(0, 0), axle);
  painter.restore();
}

void ChainDrawing::paintSlot(QPainter& painter, const QTransform& to, const Loop& stock) const {
  const ChainRun& room = plan_->chainRoom;
  if (!room.adjusterForwardMm || !room.adjusterBackMm) return;
  const double forward = units::metresFromMillimetres(*room.adjusterForwardMm);
  const double back = units::metresFromMillimetres(*room.adjusterBackMm);
  painter.save();
  painter.setTransform(to, true);
  // The slot ends an axle's radius beyond where the axle's middle may go.
  const QRectF slot(stock.centreM - forward - kAxleRadiusM, -kSlotHalfHeightM,
                    forward + back + 2 * kAxleRadiusM, 2 * kSlotHalfHeightM);
  painter.setPen(thin(colours_.text, 1.5));
  painter.setBrush(colours_.background);
  painter.drawRoundedRect(slot, kSlotHalfHeightM, kSlotHalfHeightM);
  painter.restore();
}

void ChainDrawing::paintSprockets(QPainter& painter, const QTransform& to, const Loop& loop, const QPen& pen,
                                  const QBrush& brush) const {
  const auto& size = loop.setup->setup.options.chainSize;
  const bool belt = isBelt(loop.setup->setup) || !size;
  const double travel = turn_ * loop.pair.teeth2;
  const auto one = [&](const QPointF& centre, int teeth, double seatRad) {
    painter.save();
    QTransform place = to;
    place.translate(centre.x(), centre.y());
    place.rotateRadians(seatRad);
    painter.setTransform(place, true);
    painter.setPen(pen);
    painter.setBrush(brush);
    painter.drawPath(belt ? pulleyOf(pitchRadiusM(loop.pair.pitchM, teeth)) : outlineOf(*size, teeth));
    painter.restore();
  };
  one({0, 0}, loop.pair.teeth1, loop.path ? loop.path->frontSeatRad(travel) : 0.0);
  one({loop.centreM, 0}, loop.pair.teeth2, loop.path ? loop.path->rearSeatRad(travel) : 0.0);
}

void ChainDrawing::paintMarks(QPainter& painter, const QTransform& to, const Loop& loop, const QColor& colour,
                              bool filled) const {
  // A painted mark on each sprocket, straight up before anything turns.
  const auto mark = [&](const QPointF& centre, int teeth, double turns, double share) {
    const double angle = kFullTurn * (0.25 + turns);
    const double r = pitchRadiusM(loop.pair.pitchM, teeth) * share;
    const QPointF place = to.map(centre + QPointF(r * std::cos(angle), r * std::sin(angle)));
    painter.setPen(QPen(colour, 1.5));
    painter.setBrush(filled ? QBrush(colour) : Qt::NoBrush);
    painter.drawEllipse(place, 4.0, 4.0);
  };
  mark({0, 0}, loop.pair.teeth1, turn_ * loop.pair.teeth2 / loop.pair.teeth1, filled ? 0.68 : 0.62);
  mark({loop.centreM, 0}, loop.pair.teeth2, turn_, filled ? 0.86 : 0.80);
}

void ChainDrawing::paintGhost(QPainter& painter, const QTransform& to, const Loop& loop) const {
  paintSprockets(painter, to, loop, thin(colours_.stock, 1), Qt::NoBrush);
  painter.save();
  painter.setTransform(to, true);
  QPen dashed = thin(colours_.stock, 1.5);
  dashed.setDashPattern({4, 3});
  painter.setPen(dashed);
  painter.setBrush(Qt::NoBrush);
  if (loop.path) painter.drawPath(pitchLine(*loop.path));
  painter.setPen(thin(colours_.stock, 1.5));
  painter.drawEllipse(QPointF(loop.centreM, 0), kAxleRadiusM, kAxleRadiusM);
  painter.restore();
  paintMarks(painter, to, loop, colours_.stock, false);
}

void ChainDrawing::paintSolid(QPainter& painter, const QTransform& to, const Loop& loop) const {
  const QColor& accent = colours_.proposed;
  paintSprockets(painter, to, loop, thin(accent, 1.2), faint(accent, 40));
  painter.save();
  painter.setTransform(to, true);
  if (loop.path) {
    const double pitch = loop.pair.pitchM;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(faint(accent, 80), kPlateHeight * pitch, Qt::SolidLine, Qt::FlatCap, Qt::BevelJoin));
    painter.drawPath(pitchLine(*loop.path));
    const auto& size = loop.setup->setup.options.chainSize;
    if (!isBelt(loop.setup->setup) && size) {
      const double roller = units::metresFromMillimetres(size->rollerDiameterMm) / 2.0;
      painter.setPen(Qt::NoPen);
      painter.setBrush(accent);
      const double travel = turn_ * loop.pair.teeth2;
      painter.drawPath(rollersOf(*loop.path, loop.setup->chainRun->links, travel, roller));
      // One link in another colour: what moves is seen to move.
      painter.setPen(QPen(colours_.marker, kPlateHeight * pitch, Qt::SolidLine, Qt::RoundCap));
      const double marked = travel + loop.path->links() - 12.0;
      painter.drawLine(point(loop.path->at(marked)), point(loop.path->at(marked + 1.0)));
    }
  }
  painter.setPen(thin(accent, 1.5));
  painter.setBrush(faint(accent, 160));
  painter.drawEllipse(QPointF(loop.centreM, 0), kAxleRadiusM, kAxleRadiusM);
  painter.restore();
  paintMarks(painter, to, loop, accent, true);
}

void ChainDrawing::paintLabel(QPainter& painter, const QPointF& place, Qt::Alignment side,
                              const QStringList& lines, const QColor& colour) const {
  const double height = QFontMetricsF(boldFont_).height();
  double widest = 0.0;
  for (qsizetype i = 0; i < lines.size(); ++i)
    widest = std::max(widest, texts_.width(i == 0 ? boldFont_ : font_, lines[i]));
  const double tall = height * static_cast<double>(lines.size());
  QRectF box(place.x() - widest / 2.0, place.y(), widest, tall);
  if (side & Qt::AlignBottom) box.moveBottom(place.y());
  if (side & Qt::AlignVCenter) box.moveTop(place.y() - tall / 2.0);
  const QRectF bounds = rect();
  if (side & Qt::AlignRight) box.moveRight(place.x());
  if (side & Qt::AlignLeft) box.moveLeft(place.x());
  box.moveLeft(std::clamp(box.left(), kMargin, std::max(kMargin, bounds.right() - kMargin - widest)));
  box.moveTop(std::max(box.top(), 2.0));
  painter.fillRect(box.adjusted(-3, -1, 3, 1), faint(colours_.background, 200));
  QRectF line(box.left(), box.top(), widest, height);
  for (qsizetype i = 0; i < lines.size(); ++i, line.translate(0, height)) {
    painter.setPen(i == 0 ? colour : colours_.mutedText);
    texts_.draw(painter, i == 0 ? boldFont_ : font_, line, Qt::AlignHCenter, lines[i]);
  }
}

void ChainDrawing::paintNumbers(QPainter& painter, const QTransform& to, const Loop& stock,
                                const Loop& proposed) const {
  const double frontTip = std::max(pitchRadiusM(stock.pair.pitchM, stock.pair.teeth1),
                                   pitchRadiusM(proposed.pair.pitchM, proposed.pair.teeth1)) +
                          stock.pair.pitchM / 2.0;
  const double rear = pitchRadiusM(proposed.pair.pitchM, proposed.pair.teeth2);
  const double scale = std::hypot(to.m11(), to.m12());
  const QPointF front = to.map(QPointF(0, 0)), axle = to.map(QPointF(proposed.centreM, 0));
  const QColor& accent = colours_.proposed;

  paintLabel(painter, front - QPointF(0, scale * frontTip + kGap), Qt::AlignBottom,
             proposed.path ? QStringList{teethLabel(*plan_, SprocketPlace::Front), wrapLabel(*plan_)}
                           : QStringList{teethLabel(*plan_, SprocketPlace::Front)},
             accent);
  paintLabel(painter, axle - QPointF(0, scale * rear * 0.5), Qt::AlignVCenter,
             {teethLabel(*plan_, SprocketPlace::Rear)}, accent);
  paintLabel(painter, axle + QPointF(0, scale * rear * 0.5), Qt::AlignVCenter, axleLabel(*plan_, units_),
             accent);
  if (proposed.path) {
    const QPointF a = to.map(point(proposed.path->topFront())), b = to.map(point(proposed.path->topRear()));
    const double steep = b.x() > a.x() ? (b.y() - a.y()) / (b.x() - a.x()) : 0.0;
    const QStringList words = loopLabel(*plan_, units_);
    double half = 0.0;
    for (const QString& line : words) half = std::max(half, texts_.width(boldFont_, line) / 2.0);
    // Clear of the run also at the end where it is higher.
    paintLabel(painter,
               (a + b) / 2.0 - QPointF(0, std::abs(steep) * half + scale * stock.pair.pitchM / 2.0 + kGap),
               Qt::AlignBottom, words, accent);
  } else {
    paintLabel(painter, (front + axle) / 2.0, Qt::AlignBottom, loopLabel(*plan_, units_), colours_.warning);
  }

  if (!proposed.path) return;
  // The centre distance as a dimension below both.
  const QFontMetricsF metrics(boldFont_);
  const double level =
      std::max(front.y() + scale * frontTip, axle.y() + scale * (rear + stock.pair.pitchM / 2.0)) + kGap +
      metrics.height() / 2.0;
  painter.setPen(QPen(colours_.mutedText, 1));
  painter.drawLine(QPointF(front.x(), front.y() + scale * frontTip), QPointF(front.x(), level + 4));
  painter.drawLine(QPointF(axle.x(), axle.y() + scale * rear), QPointF(axle.x(), level + 4));
  const QPointF left(front.x(), level), right(axle.x(), level);
  painter.drawLine(left, right);
  for (const auto& [tip, way] : {std::pair{left, 1.0}, {right, -1.0}}) {
    painter.drawLine(tip, tip + QPointF(way * 7, -3));
    painter.drawLine(tip, tip + QPointF(way * 7, 3));
  }
  paintLabel(painter, (left + right) / 2.0, Qt::AlignVCenter, {centreLabel(*plan_, units_)}, colours_.text);
}

void ChainDrawing::paintAxleNumbers(QPainter& painter, const QTransform& to, const Loop& stock,
                                    const Loop& proposed) const {
  const ChainRun& room = plan_->chainRoom;
  const double scale = std::hypot(to.m11(), to.m12());
  const QPointF from = to.map(QPointF(stock.centreM, 0)), now = to.map(QPointF(proposed.centreM, 0));
  const double under = scale * kSlotHalfHeightM;
  const double height = QFontMetricsF(boldFont_).height();
  const auto length = [&](double mm) {
    return number(units_.shown(Quantity::SmallLength, units::metresFromMillimetres(mm)),
                  units_.system() == UnitSystem::Imperial ? 2 : 1) +
           QLatin1Char(' ') + units_.name(Quantity::SmallLength);
  };
  if (room.adjusterForwardMm && room.adjusterBackMm) {
    // A scale on the slot, zero where stock's axle is.
    const bool imperial = units_.system() == UnitSystem::Imperial;
    const double step = imperial ? units::metresFromInches(0.125) : 0.005;
    painter.setPen(QPen(colours_.mutedText, 1));
    const int first =
        static_cast<int>(std::ceil(-units::metresFromMillimetres(*room.adjusterForwardMm) / step - 1e-9));
    const int last =
        static_cast<int>(std::floor(units::metresFromMillimetres(*room.adjusterBackMm) / step + 1e-9));
    for (int tick = first; tick <= last; ++tick) {
      const QPointF at = to.map(QPointF(stock.centreM + tick * step, -kSlotHalfHeightM));
      painter.drawLine(at, at + QPointF(0, tick == 0 ? 10 : 6));
    }
    const QPointF forward =
        to.map(QPointF(stock.centreM - units::metresFromMillimetres(*room.adjusterForwardMm), 0));
    const QPointF back =
        to.map(QPointF(stock.centreM + units::metresFromMillimetres(*room.adjusterBackMm), 0));
    // Side by side also where the slot is short.
    paintLabel(painter, QPointF(std::min(forward.x() + 40, from.x() - 8), forward.y() + under + 14),
               Qt::AlignTop | Qt::AlignRight,
               {tr("forward end"), tr("%1 from stock").arg(length(*room.adjusterForwardMm))}, colours_.text);
    paintLabel(painter, QPointF(std::max(back.x() - 40, from.x() + 8), back.y() + under + 14),
               Qt::AlignTop | Qt::AlignLeft,
               {tr("back end"), tr("%1 from stock").arg(length(*room.adjusterBackMm))}, colours_.text);
  }
  paintLabel(painter, from - QPointF(0, under + kGap), Qt::AlignBottom, {tr("stock")}, colours_.stock);
  paintLabel(painter, now - QPointF(0, under + 1.6 * height + kGap), Qt::AlignBottom,
             axleLabel(*plan_, units_), colours_.proposed);
  painter.setPen(QPen(colours_.proposed, 1));
  painter.drawLine(now, now - QPointF(0, under + 1.5 * height + kGap));
}

void ChainDrawing::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::PaletteChange && event->type() != QEvent::FontChange) return;
  colours_ = ChartPalette(palette());
  makeFonts();
  update();
}

QPointF ChainDrawing::fromRearAxle(const QPointF& pixel, const Loop& proposed) const {
  const QRectF area = QRectF(rect()).adjusted(0, 0, 0, -tallyHeight());
  return view(area, loopOf(plan_->stock), proposed).inverted().map(pixel) - QPointF(proposed.centreM, 0);
}

void ChainDrawing::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || zoomed_ || !plan_ || !plan_->proposed.chainRun) return;
  const Loop proposed = loopOf(plan_->proposed);
  const QPointF away = fromRearAxle(event->position(), proposed);
  constexpr double kReach = 1.2;  // of the pitch radius: the chain belongs to it
  if (std::hypot(away.x(), away.y()) <= pitchRadiusM(proposed.pair.pitchM, proposed.pair.teeth2) * kReach)
    dragAngle_ = std::atan2(away.y(), away.x());
}

void ChainDrawing::mouseMoveEvent(QMouseEvent* event) {
  if (!dragAngle_ || !plan_ || !plan_->proposed.chainRun) return;
  const QPointF away = fromRearAxle(event->position(), loopOf(plan_->proposed));
  const double angle = std::atan2(away.y(), away.x());
  const double by = std::remainder(angle - *dragAngle_, kFullTurn) / kFullTurn;
  dragAngle_ = angle;
  setTurn(turn_ + by);
  emit turned(turn_);
}

void ChainDrawing::mouseReleaseEvent(QMouseEvent*) {
  dragAngle_.reset();
}

void ChainDrawing::contextMenuEvent(QContextMenuEvent* event) {
  emit menuRequested(event->globalPos());
}

}  // namespace layshaft::ui
