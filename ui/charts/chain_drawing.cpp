// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/chain_drawing.h"

#include <QContextMenuEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "core/units.h"
#include "ui/charts/chain_shapes.h"
#include "ui/charts/turn_tally.h"
#include "ui/words/cautions.h"
#include "ui/words/chain_labels.h"
#include "ui/words/chart_words.h"
#include "ui/words/numbers.h"
#include "ui/words/picture_words.h"

namespace layshaft::ui {
namespace {

constexpr double kMargin = 12.0;  // px round the picture
constexpr double kGap = 6.0;      // px between a label and what it names
constexpr double kStep = 10.0;    // px between places that are tried
constexpr double kCovered = 0.3;  // of a sprocket at most, by words on it
constexpr double kFullTurn = 2.0 * units::kPi;

/// How far the larger of the front sprockets reaches from its middle, m.
double frontTipM(const ChainScene& scene) {
  const auto radius = [](const ChainLoop& loop) { return pitchRadiusM(loop.pair.pitchM, loop.pair.teeth1); };
  return std::max(radius(scene.stock), radius(scene.proposed)) + scene.stock.pair.pitchM / 2.0;
}

}  // namespace

ChainDrawing::ChainDrawing(QWidget* parent) : QWidget(parent), colours_(palette()) {
  exposeReadablePictures();
  setAccessibleName(tr("Drawing of chain or belt"));
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
  setAccessibleDescription(hasRun() ? chainDrawingWords(*plan, units_) : QString());
  update();
}

void ChainDrawing::setTurn(double turn) {
  turn_ = std::clamp(turn, 0.0, 1.0);
  update();
}

void ChainDrawing::showTally(bool on) {
  tally_ = on;
  update();
}

void ChainDrawing::setZoomed(bool zoomed) {
  zoomed_ = zoomed;
  update();
}

double ChainDrawing::tallyHeight() const {
  if (zoomed_ || !tally_ || !plan_) return 0.0;
  return turnTallyHeight({colours_, font_, boldFont_, texts_}, *plan_, width());
}

/// High enough for the loop to be seen between its labels, with the turns told below.
QSize ChainDrawing::minimumSizeHint() const {
  constexpr int kLeastWidth = 320;
  constexpr double kSceneLines = 12.0, kTallyLines = 4.6;
  return {kLeastWidth, static_cast<int>((kSceneLines + kTallyLines) * QFontMetricsF(boldFont_).height())};
}

bool ChainDrawing::hasRun() const {
  return plan_ && plan_->stock.chainRun && plan_->proposed.chainRun;
}

QRectF ChainDrawing::sceneArea() const {
  return QRectF(rect()).adjusted(0, 0, 0, -tallyHeight());
}

ChainScene ChainDrawing::scene() const {
  ChainScene scene(*plan_, turn_);
  const QFontMetricsF metrics(boldFont_);
  if (zoomed_)
    scene.zoomInto(sceneArea());
  else
    scene.fitInto(sceneArea(), {.over = 2.2 * metrics.height() + kGap,
                                .under = 1.6 * metrics.height() + kGap,
                                .side = metrics.horizontalAdvance(tr("Wrap 000° (stock 000°)")) / 2.0});
  return scene;
}

void ChainDrawing::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  if (!hasRun()) return painter.fillRect(rect(), colours_.background);
  const ChainScene now = scene();
  painter.drawPixmap(0, 0, stockPixels(now, painter.deviceTransform().m11()));
  paintRest(painter, now);
}

QString ChainDrawing::pictureHeading() const {
  return plan_ ? ui::pictureHeading(*plan_) : QString();
}

QString ChainDrawing::pictureCaption() const {
  return plan_ ? cautionsFor(*plan_, CautionPlace::ChainPage).join(QLatin1Char('\n')) : QString();
}

void ChainDrawing::renderInto(QPainter& painter, const QRectF& target) {
  painter.save();
  const double scale = std::min(target.width() / width(), target.height() / height());
  painter.translate(target.topLeft());
  painter.scale(scale, scale);
  if (hasRun()) {
    const ChainScene now = scene();
    paintStock(painter, now);
    paintRest(painter, now);
  } else {
    painter.fillRect(rect(), colours_.background);
  }
  painter.restore();
}

const QPixmap& ChainDrawing::stockPixels(const ChainScene& scene, double pixelRatio) {
  const auto sameStock = [](const PlanInput& a, const PlanInput& b) {
    return a.stock == b.stock && a.shared == b.shared;
  };
  StockPicture& kept = stockPicture_;
  if (!kept.pixels.isNull() && kept.toPixels == scene.toPixels && kept.turn == scene.turn &&
      kept.size == size() && kept.pixelRatio == pixelRatio && sameStock(kept.plan->input, plan_->input))
    return kept.pixels;
  kept = {plan_,  scene.toPixels, scene.turn,
          size(), pixelRatio,     QPixmap((QSizeF(size()) * pixelRatio).toSize())};
  kept.pixels.setDevicePixelRatio(pixelRatio);
  QPainter painter(&kept.pixels);
  paintStock(painter, scene);
  return kept.pixels;
}

void ChainDrawing::paintStock(QPainter& painter, const ChainScene& scene) const {
  painter.fillRect(rect(), colours_.background);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(sceneArea(), Qt::IntersectClip);
  scene.paintStock(painter, colours_);
  painter.restore();
}

void ChainDrawing::paintRest(QPainter& painter, const ChainScene& scene) const {
  painter.setRenderHint(QPainter::Antialiasing);
  painter.save();
  painter.setClipRect(sceneArea(), Qt::IntersectClip);
  scene.paintProposal(painter, colours_);
  if (zoomed_) {
    paintAxleNumbers(painter, scene);
  } else {
    for (const Label& label : labels(scene)) paintLabel(painter, label);
    paintCentres(painter, scene);
  }
  painter.restore();
  if (!zoomed_ && tally_)
    paintTurnTally(painter, QRectF(0, sceneArea().bottom(), width(), tallyHeight()), *plan_, turn_,
                   {colours_, font_, boldFont_, texts_});
}

ChainDrawing::Label ChainDrawing::labelAt(const QPointF& place, Qt::Alignment side, const QStringList& lines,
                                          const QColor& colour) const {
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
  return {box, lines, colour};
}

void ChainDrawing::paintLabel(QPainter& painter, const Label& label) const {
  painter.fillRect(label.box.adjusted(-3, -1, 3, 1), faint(colours_.background, 200));
  QRectF line = label.box;
  line.setHeight(QFontMetricsF(boldFont_).height());
  for (qsizetype i = 0; i < label.lines.size(); ++i, line.translate(0, line.height())) {
    painter.setPen(i == 0 ? label.colour : colours_.mutedText);
    texts_.draw(painter, i == 0 ? boldFont_ : font_, line, Qt::AlignHCenter, label.lines[i]);
  }
}

std::vector<QRectF> ChainDrawing::labelBoxes() const {
  std::vector<QRectF> boxes;
  if (!hasRun() || zoomed_) return boxes;
  for (const Label& label : labels(scene())) boxes.push_back(label.box);
  return boxes;
}

std::vector<QRectF> ChainDrawing::sprocketBoxes() const {
  return hasRun() && !zoomed_ ? sprocketBoxes(scene()) : std::vector<QRectF>();
}

std::vector<QRectF> ChainDrawing::sprocketBoxes(const ChainScene& scene) const {
  const ChainLoop& loop = scene.proposed;
  const double scale = std::hypot(scene.toPixels.m11(), scene.toPixels.m12());
  const auto box = [&](const QPointF& centre, int teeth) {
    const double reach = scale * (pitchRadiusM(loop.pair.pitchM, teeth) + loop.pair.pitchM / 2.0);
    return QRectF(-reach, -reach, 2 * reach, 2 * reach).translated(scene.toPixels.map(centre));
  };
  return {box({0, 0}, loop.pair.teeth1), box({loop.centreM, 0}, loop.pair.teeth2)};
}

/// Over the upper strand in its middle, or as near to there as it is free, on the strand's slope.
void ChainDrawing::putStrandLabel(const ChainScene& scene, LabelSpace& space,
                                  std::vector<Label>& labels) const {
  const ChainLoop& proposed = scene.proposed;
  const QTransform& to = scene.toPixels;
  const QStringList words = loopLabel(*plan_, units_);
  if (!proposed.path) {
    const QPointF middle = (to.map(QPointF(0, 0)) + to.map(QPointF(proposed.centreM, 0))) / 2.0;
    return putLabel(space, labels, labelAt(middle, Qt::AlignBottom, words, colours_.warning), {});
  }
  const QPointF a = to.map(point(proposed.path->topFront())), b = to.map(point(proposed.path->topRear()));
  const double steep = b.x() > a.x() ? (b.y() - a.y()) / (b.x() - a.x()) : 0.0;
  double half = 0.0;
  for (const QString& line : words) half = std::max(half, texts_.width(boldFont_, line) / 2.0);
  // Clear of the run also at the end where it is higher.
  const double over =
      std::abs(steep) * half + std::hypot(to.m11(), to.m12()) * scene.stock.pair.pitchM / 2.0 + kGap;
  const Label label = labelAt((a + b) / 2.0 - QPointF(0, over), Qt::AlignBottom, words, colours_.proposed);
  std::vector<QPointF> others;
  for (double away = kStep; away < b.x() - a.x(); away += kStep)
    for (const double way : {away, -away}) others.push_back(label.box.topLeft() + QPointF(way, steep * way));
  putLabel(space, labels, label, others);
}

void ChainDrawing::putLabel(LabelSpace& space, std::vector<Label>& labels, Label label,
                            const std::vector<QPointF>& otherCorners) const {
  std::vector<QRectF> places{label.box};
  for (const QPointF& corner : otherCorners) places.emplace_back(corner, label.box.size());
  const auto place = space.put(places);
  // Where there is no room it rather covers the drawing than is missing.
  if (place) label.box = *place;
  labels.push_back(std::move(label));
}

std::vector<ChainDrawing::Label> ChainDrawing::labels(const ChainScene& scene) const {
  const ChainLoop& proposed = scene.proposed;
  const QTransform& to = scene.toPixels;
  const double rear = pitchRadiusM(proposed.pair.pitchM, proposed.pair.teeth2);
  const double scale = std::hypot(to.m11(), to.m12());
  const QPointF front = to.map(QPointF(0, 0)), axle = to.map(QPointF(proposed.centreM, 0));
  const QColor& accent = colours_.proposed;
  LabelSpace space(sceneArea().adjusted(kMargin, 2, -kMargin, 0));
  if (proposed.path) space.take(centresLabel(scene).box);
  if (proposed.path)
    space.avoid(QPolygonF{to.map(point(proposed.path->topFront())), to.map(point(proposed.path->topRear()))});
  const auto sprockets = sprocketBoxes(scene);
  space.take(sprockets[0]);

  std::vector<Label> labels;
  QStringList frontWords{teethLabel(*plan_, SprocketPlace::Front)};
  if (proposed.path) frontWords << wrapLabel(*plan_);
  const Label frontLabel =
      labelAt(front - QPointF(0, scale * frontTipM(scene) + kGap), Qt::AlignBottom, frontWords, accent);
  putLabel(space, labels, frontLabel,
           {sprockets[0].topLeft() - QPointF(frontLabel.box.width() + kGap, 0),
            sprockets[0].bottomLeft() - QPointF(frontLabel.box.width() / 2, -kGap)});

  // On the rear sprocket where it is large; beside it where little of it would be left to see.
  Label teeth = labelAt(axle - QPointF(0, scale * rear * 0.5), Qt::AlignVCenter,
                        {teethLabel(*plan_, SprocketPlace::Rear)}, accent);
  Label place =
      labelAt(axle + QPointF(0, scale * rear * 0.5), Qt::AlignVCenter, axleLabel(*plan_, units_), accent);
  const auto area = [](const QRectF& box) { return box.width() * box.height(); };
  if (area(teeth.box) + area(place.box) <= kCovered * area(sprockets[1]) &&
      std::max(teeth.box.width(), place.box.width()) <= 2.2 * scale * rear) {
    putLabel(space, labels, teeth, {});
    putLabel(space, labels, place, {});
    space.take(sprockets[1]);
  } else {
    space.take(sprockets[1]);
    const double beside = sprockets[1].right() + kGap;
    const QPointF over(sprockets[1].center().x() - teeth.box.width() / 2,
                       sprockets[1].top() - kGap - teeth.box.height());
    teeth.box.moveTopLeft({beside, axle.y() - teeth.box.height() - 1});
    place.box.moveTopLeft({beside, axle.y() + 1});
    const QPointF under(sprockets[1].center().x() - place.box.width() / 2, sprockets[1].bottom() + kGap);
    putLabel(space, labels, teeth, {over});
    putLabel(space, labels, place, {under});
  }
  putStrandLabel(scene, space, labels);
  return labels;
}

ChainDrawing::Label ChainDrawing::centresLabel(const ChainScene& scene) const {
  const QPointF front = scene.toPixels.map(QPointF(0, 0));
  const QPointF axle = scene.toPixels.map(QPointF(scene.proposed.centreM, 0));
  return labelAt({(front.x() + axle.x()) / 2.0, centresLevel(scene)}, Qt::AlignVCenter,
                 {centreLabel(*plan_, units_)}, colours_.text);
}

double ChainDrawing::centresLevel(const ChainScene& scene) const {
  const ChainLoop& proposed = scene.proposed;
  const QTransform& to = scene.toPixels;
  const double scale = std::hypot(to.m11(), to.m12());
  const double rear = pitchRadiusM(proposed.pair.pitchM, proposed.pair.teeth2);
  const QPointF front = to.map(QPointF(0, 0)), axle = to.map(QPointF(proposed.centreM, 0));
  return std::max(front.y() + scale * frontTipM(scene),
                  axle.y() + scale * (rear + scene.stock.pair.pitchM / 2.0)) +
         kGap + QFontMetricsF(boldFont_).height() / 2.0;
}

/// The centre distance as a dimension below both.
void ChainDrawing::paintCentres(QPainter& painter, const ChainScene& scene) const {
  const ChainLoop& proposed = scene.proposed;
  if (!proposed.path) return;
  const QTransform& to = scene.toPixels;
  const double scale = std::hypot(to.m11(), to.m12());
  const double frontTip = frontTipM(scene), rear = pitchRadiusM(proposed.pair.pitchM, proposed.pair.teeth2);
  const QPointF front = to.map(QPointF(0, 0)), axle = to.map(QPointF(proposed.centreM, 0));
  const double level = centresLevel(scene);
  painter.setPen(QPen(colours_.mutedText, 1));
  painter.drawLine(QPointF(front.x(), front.y() + scale * frontTip), QPointF(front.x(), level + 4));
  painter.drawLine(QPointF(axle.x(), axle.y() + scale * rear), QPointF(axle.x(), level + 4));
  const QPointF left(front.x(), level), right(axle.x(), level);
  painter.drawLine(left, right);
  for (const auto& [tip, way] : {std::pair{left, 1.0}, {right, -1.0}}) {
    painter.drawLine(tip, tip + QPointF(way * 7, -3));
    painter.drawLine(tip, tip + QPointF(way * 7, 3));
  }
  paintLabel(painter, centresLabel(scene));
}

void ChainDrawing::paintAxleNumbers(QPainter& painter, const ChainScene& scene) const {
  const ChainLoop &stock = scene.stock, &proposed = scene.proposed;
  const QTransform& to = scene.toPixels;
  const ChainRun& room = plan_->chainRoom;
  const double scale = std::hypot(to.m11(), to.m12());
  const QPointF from = to.map(QPointF(stock.centreM, 0)), now = to.map(QPointF(proposed.centreM, 0));
  const double under = scale * kSlotHalfHeightM;
  const double height = QFontMetricsF(boldFont_).height();
  const auto length = [&](double mm) {
    return number(units_.shown(Quantity::SmallLength, units::metresFromMillimetres(mm)),
                  units_.decimals(Quantity::SmallLength)) +
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
               {tr("Forward end"), tr("%1 from stock").arg(length(*room.adjusterForwardMm))}, colours_.text);
    paintLabel(painter, QPointF(std::max(back.x() - 40, from.x() + 8), back.y() + under + 14),
               Qt::AlignTop | Qt::AlignLeft,
               {tr("Back end"), tr("%1 from stock").arg(length(*room.adjusterBackMm))}, colours_.text);
  }
  paintLabel(painter, from - QPointF(0, under + kGap), Qt::AlignBottom, {tr("Stock")}, colours_.stock);
  paintLabel(painter, now - QPointF(0, under + 1.6 * height + kGap), Qt::AlignBottom,
             axleLabel(*plan_, units_), colours_.proposed);
  painter.setPen(QPen(colours_.proposed, 1));
  painter.drawLine(now, now - QPointF(0, under + 1.5 * height + kGap));
}

void ChainDrawing::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::PaletteChange && event->type() != QEvent::FontChange) return;
  colours_ = ChartPalette(palette());
  stockPicture_ = {};
  makeFonts();
  update();
}

void ChainDrawing::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  stockPicture_ = {};
}

QPointF ChainDrawing::fromRearAxle(const QPointF& pixel) const {
  const ChainScene now = scene();
  return now.toPixels.inverted().map(pixel) - QPointF(now.proposed.centreM, 0);
}

void ChainDrawing::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || zoomed_ || !hasRun()) return;
  const ChainPair pair = driveLoop(plan_->proposed.setup)->pair;
  const QPointF away = fromRearAxle(event->position());
  constexpr double kReach = 1.2;  // of the pitch radius: the chain belongs to it
  if (std::hypot(away.x(), away.y()) <= pitchRadiusM(pair.pitchM, pair.teeth2) * kReach)
    dragAngle_ = std::atan2(away.y(), away.x());
}

void ChainDrawing::mouseMoveEvent(QMouseEvent* event) {
  if (!dragAngle_ || !hasRun()) return;
  const QPointF away = fromRearAxle(event->position());
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
