// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/chain_scene.h"

#include <QImage>
#include <QPaintEngine>
#include <algorithm>
#include <cmath>

#include "core/units.h"
#include "ui/charts/chain_shapes.h"

namespace layshaft::ui {
namespace {

constexpr double kScenePadding = 12.0;  // px round the picture
constexpr double kBoxStepM = 0.05;      // the picture's scale changes in steps, not with every tooth
constexpr double kPlaceStepM = 0.01;    // and so does its place; half a step is less than the margin
constexpr double kAxleRadiusM = 0.007;
constexpr double kSwingarmWidthM = 0.024;
constexpr double kPlateHeight = 0.72;  // of a pitch; about what the trade's link plates measure
constexpr double kZoomMarginM = 0.02;
constexpr double kTurn = 2.0 * units::kPi;

QPen thin(const QColor& colour, double width, Qt::PenStyle style = Qt::SolidLine) {
  QPen pen(colour, width, style, Qt::FlatCap, Qt::BevelJoin);  // round ones cost several times as much
  pen.setCosmetic(true);                                       // the same on the screen at any scale
  return pen;
}

ChainLoop loopOf(const SetupPlan& setup, const SetupPlan& stock) {
  const ChainRunFigures& run = *setup.chainRun;
  ChainLoop loop{.setup = &setup,
                 .pair = driveLoop(setup.setup)->pair,
                 .path = {},
                 .centreM = run.tightCentreM.value_or(*stock.chainRun->tightCentreM)};
  if (run.tightCentreM) loop.path.emplace(loop.pair, loop.centreM);
  return loop;
}

void paintSwingarm(QPainter& painter, const ChainScene& scene, const ChartPalette& colours) {
  const ChainRun& room = scene.plan.chainRoom;
  const auto& arm = scene.plan.stock.chainRun->swingarm;
  painter.save();
  painter.setTransform(scene.toPixels, true);
  const QPointF axle(scene.stock.centreM, 0.0);
  if (arm) {
    // The countershaft is ahead of the pivot: in the line's own frame the pivot lies towards the axle.
    const double angle = units::radiansFromDegrees(-arm->axleToCountershaftDeg);
    const double x = units::metresFromMillimetres(*room.countershaftAheadOfPivotMm);
    const double y = -units::metresFromMillimetres(*room.countershaftAbovePivotMm);
    const QPointF pivot(x * std::cos(angle) + y * std::sin(angle),
                        -x * std::sin(angle) + y * std::cos(angle));
    painter.setPen(QPen(faint(colours.mutedText, 60), kSwingarmWidthM, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(pivot, axle);
    painter.setPen(thin(colours.mutedText, 1.5));
    painter.setBrush(colours.background);
    painter.drawEllipse(pivot, kAxleRadiusM, kAxleRadiusM);
  }
  painter.setPen(thin(colours.mutedText, 1, Qt::DashDotLine));
  painter.drawLine(QPointF(0, 0), axle);
  painter.restore();
}

void paintSlot(QPainter& painter, const ChainScene& scene, const ChartPalette& colours) {
  const ChainRun& room = scene.plan.chainRoom;
  if (!room.adjusterForwardMm || !room.adjusterBackMm) return;
  const double forward = units::metresFromMillimetres(*room.adjusterForwardMm);
  const double back = units::metresFromMillimetres(*room.adjusterBackMm);
  painter.save();
  painter.setTransform(scene.toPixels, true);
  // The slot ends an axle's radius beyond where the axle's middle may go.
  const QRectF slot(scene.stock.centreM - forward - kAxleRadiusM, -kSlotHalfHeightM,
                    forward + back + 2 * kAxleRadiusM, 2 * kSlotHalfHeightM);
  painter.setPen(thin(colours.text, 1.5));
  painter.setBrush(colours.background);
  painter.drawRoundedRect(slot, kSlotHalfHeightM, kSlotHalfHeightM);
  painter.restore();
}

bool paintsPixels(const QPainter& painter) {
  return painter.paintEngine()->type() == QPaintEngine::Raster;
}

/// Fills a shape with a colour that one can see through. The rasteriser has threads do a few lines of such a
/// fill each and waits for them, which takes longer than the fill; an opaque one it does itself. So pixels
/// are filled opaque, and laid over the picture.
void fillFaint(QPainter& painter, const QPainterPath& shape, const QColor& colour, int alpha) {
  if (!paintsPixels(painter)) return painter.fillPath(shape, faint(colour, alpha));
  const QTransform place = painter.worldTransform();
  const QRect bounds = place.mapRect(shape.boundingRect()).toAlignedRect() & painter.viewport();
  if (bounds.isEmpty()) return;
  painter.save();
  painter.resetTransform();
  const double pixelRatio = painter.deviceTransform().m11();
  QImage layer((QSizeF(bounds.size()) * pixelRatio).toSize(), QImage::Format_ARGB32_Premultiplied);
  layer.setDevicePixelRatio(pixelRatio);
  layer.fill(Qt::transparent);
  QPainter on(&layer);
  on.setRenderHint(QPainter::Antialiasing);
  on.setWorldTransform(place * QTransform::fromTranslate(-bounds.x(), -bounds.y()));
  on.fillPath(shape, colour);
  on.end();
  painter.setOpacity(alpha / 255.0);
  painter.drawImage(bounds.topLeft(), layer);
  painter.restore();
}

/// Draws an outline. As pixels, a path costs five times what its short lines do under a pen
/// wider than one; square caps close the bends.
void drawOutline(QPainter& painter, const QPainterPath& outline, QPen pen) {
  if (pen.widthF() <= 1.0 || !paintsPixels(painter)) return painter.strokePath(outline, pen);
  QList<QLineF> lines;
  for (const QPolygonF& part : outline.toSubpathPolygons(painter.worldTransform()))
    for (qsizetype i = 1; i < part.size(); ++i) lines << QLineF(part[i - 1], part[i]);
  pen.setCapStyle(Qt::SquareCap);
  painter.save();
  painter.resetTransform();
  painter.setPen(pen);
  painter.drawLines(lines);
  painter.restore();
}

void paintSprockets(QPainter& painter, const ChainScene& scene, const ChainLoop& loop, const QPen& pen,
                    int fillAlpha) {
  const auto& size = loop.setup->setup.options.chainSize;
  const bool belt = isBelt(loop.setup->setup) || !size;
  const double travel = scene.turn * loop.pair.teeth2;
  const auto one = [&](const QPointF& centre, int teeth, double seatRad) {
    painter.save();
    QTransform place = scene.toPixels;
    place.translate(centre.x(), centre.y());
    place.rotateRadians(seatRad);
    painter.setTransform(place, true);
    const QPainterPath outline =
        belt ? pulleyOf(pitchRadiusM(loop.pair.pitchM, teeth)) : outlineOf(*size, teeth);
    if (fillAlpha > 0) fillFaint(painter, outline, pen.color(), fillAlpha);
    drawOutline(painter, outline, pen);
    painter.restore();
  };
  one({0, 0}, loop.pair.teeth1, loop.path ? loop.path->frontSeatRad(travel) : 0.0);
  one({loop.centreM, 0}, loop.pair.teeth2, loop.path ? loop.path->rearSeatRad(travel) : 0.0);
}

void paintMarks(QPainter& painter, const ChainScene& scene, const ChainLoop& loop, const QColor& colour,
                bool filled) {
  // A painted mark on each sprocket, straight up before anything turns.
  const auto mark = [&](const QPointF& centre, int teeth, double turns, double share) {
    const double angle = kTurn * (0.25 + turns);
    const double r = pitchRadiusM(loop.pair.pitchM, teeth) * share;
    const QPointF place = scene.toPixels.map(centre + QPointF(r * std::cos(angle), r * std::sin(angle)));
    painter.setPen(QPen(colour, 1.5));
    painter.setBrush(filled ? QBrush(colour) : Qt::NoBrush);
    painter.drawEllipse(place, 4.0, 4.0);
  };
  mark({0, 0}, loop.pair.teeth1, scene.turn * loop.pair.teeth2 / loop.pair.teeth1, filled ? 0.68 : 0.62);
  mark({loop.centreM, 0}, loop.pair.teeth2, scene.turn, filled ? 0.86 : 0.80);
}

void paintGhost(QPainter& painter, const ChainScene& scene, const ChartPalette& colours) {
  const ChainLoop& loop = scene.stock;
  paintSprockets(painter, scene, loop, thin(colours.stock, 1), 0);
  painter.save();
  painter.setTransform(scene.toPixels, true);
  QPen dashed = thin(colours.stock, 1.5);
  dashed.setDashPattern({4, 3});
  painter.setPen(dashed);
  painter.setBrush(Qt::NoBrush);
  if (loop.path) painter.drawPath(pitchLine(*loop.path));
  painter.setPen(thin(colours.stock, 1.5));
  painter.drawEllipse(QPointF(loop.centreM, 0), kAxleRadiusM, kAxleRadiusM);
  painter.restore();
  paintMarks(painter, scene, loop, colours.stock, false);
}

}  // namespace

ChainScene::ChainScene(const Plan& shown, double turnOfWheel)
    : plan(shown),
      stock(loopOf(shown.stock, shown.stock)),
      proposed(loopOf(shown.proposed, shown.stock)),
      turn(turnOfWheel) {}

void ChainScene::fitInto(const QRectF& area, const LabelRoom& labels) {
  const auto& arm = plan.stock.chainRun->swingarm;
  const double rise = arm ? arm->axleToCountershaftDeg : 0.0;
  const auto stepped = [](double metres) { return std::ceil(metres / kBoxStepM) * kBoxStepM; };
  const auto placed = [](double metres) { return std::round(metres / kPlaceStepM) * kPlaceStepM; };
  double front = 0.0, rear = 0.0, centre = 0.0;
  for (const ChainLoop* loop : {&stock, &proposed}) {
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
  const double roomX = area.width() - labels.side - 2.0 * kScenePadding;
  const double roomY = area.height() - labels.over - labels.under - 2.0 * kScenePadding;
  const double scale =
      std::min(roomX / (width - left + std::min(left, 0.05)), roomY / std::max(stepped(top + bottom), 0.05));
  // In the middle of what is left.
  const double x = area.left() + std::max((area.width() - scale * width) / 2.0 + scale * placed(left),
                                          labels.side + kScenePadding);
  const double y = area.top() + labels.over + kScenePadding +
                   std::max(roomY / 2.0 + scale * placed((top - bottom) / 2.0), scale * top);
  toPixels = QTransform();
  toPixels.translate(x, y);
  toPixels.scale(scale, -scale);
  toPixels.rotate(-rise);
}

void ChainScene::zoomInto(const QRectF& area) {
  const ChainRun& room = plan.chainRoom;
  const double forward = units::metresFromMillimetres(room.adjusterForwardMm.value_or(15.0));
  const double back = units::metresFromMillimetres(room.adjusterBackMm.value_or(15.0));
  const double shift = proposed.centreM - stock.centreM;
  const double low = std::min(-forward, shift) - kZoomMarginM, high = std::max(back, shift) + kZoomMarginM;
  constexpr double kSlotShare = 0.55;  // of the height at most; the rest is for numbers
  const double scale =
      std::min(area.width() / (high - low), area.height() * kSlotShare / (2.0 * kSlotHalfHeightM));
  const QPointF axle(stock.centreM + (low + high) / 2.0, 0.0);
  toPixels = QTransform();
  toPixels.translate(area.center().x(), area.center().y());
  toPixels.scale(scale, -scale);
  toPixels.translate(-axle.x(), -axle.y());
}

void ChainScene::paintStock(QPainter& painter, const ChartPalette& colours) const {
  paintSwingarm(painter, *this, colours);
  paintSlot(painter, *this, colours);
  paintGhost(painter, *this, colours);
}

void ChainScene::paintProposal(QPainter& painter, const ChartPalette& colours) const {
  const ChainLoop& loop = proposed;
  const QColor& accent = colours.proposed;
  paintSprockets(painter, *this, loop, thin(accent, 1.2), 40);
  painter.save();
  painter.setTransform(toPixels, true);
  if (loop.path) {
    const double pitch = loop.pair.pitchM;
    fillFaint(painter, platesOf(*loop.path, kPlateHeight * pitch), accent, 80);
    const auto& size = loop.setup->setup.options.chainSize;
    if (!isBelt(loop.setup->setup) && size) {
      const double roller = units::metresFromMillimetres(size->rollerDiameterMm) / 2.0;
      painter.setPen(Qt::NoPen);
      painter.setBrush(accent);
      const double travel = turn * loop.pair.teeth2;
      for (const QPolygonF& each : rollersOf(*loop.path, loop.setup->chainRun->links, travel, roller))
        painter.drawConvexPolygon(each);
      // One link in another colour: what moves is seen to move.
      painter.setPen(QPen(colours.marker, kPlateHeight * pitch, Qt::SolidLine, Qt::RoundCap));
      const double marked = travel + loop.path->links() - 12.0;
      painter.drawLine(point(loop.path->at(marked)), point(loop.path->at(marked + 1.0)));
    }
  }
  painter.setPen(thin(accent, 1.5));
  painter.setBrush(faint(accent, 160));
  painter.drawEllipse(QPointF(loop.centreM, 0), kAxleRadiusM, kAxleRadiusM);
  painter.restore();
  paintMarks(painter, *this, loop, accent, true);
}

}  // namespace layshaft::ui
