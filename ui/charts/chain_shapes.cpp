// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/chain_shapes.h"

#include <cmath>

#include "core/units.h"

namespace layshaft::ui {

QPointF point(const ChainPoint& p) {
  return {p.x, p.y};
}

QPainterPath outlineOf(const ChainSize& size, int teeth) {
  QPainterPath path;
  const auto outline = sprocketOutline(size, teeth);
  path.moveTo(point(outline.front()));
  for (const ChainPoint& p : outline) path.lineTo(point(p));
  path.closeSubpath();
  const double bore = sprocketShape(size, teeth).boreRadiusM;
  path.addEllipse(QPointF(0, 0), bore, bore);
  return path;
}

QPainterPath pulleyOf(double radiusM) {
  QPainterPath path;
  path.addEllipse(QPointF(0, 0), radiusM, radiusM);
  path.addEllipse(QPointF(0, 0), radiusM * 0.4, radiusM * 0.4);
  return path;
}

QPainterPath pitchLine(const ChainPath& path) {
  const auto polygon = path.polygon();
  QPainterPath line(point(polygon.front()));
  for (const ChainPoint& p : polygon) line.lineTo(point(p));
  line.closeSubpath();
  return line;
}

QPainterPath rollersOf(const ChainPath& path, int links, double travel, double radiusM) {
  constexpr int kCorners = 12;  // round enough at a few pixels
  QPainterPath rollers;
  rollers.setFillRule(Qt::WindingFill);
  for (int link = 0; link < links; ++link) {
    const QPointF centre = point(path.at(link + travel));
    for (int c = 0; c < kCorners; ++c) {
      const double angle = 2.0 * units::kPi * c / kCorners;
      const QPointF corner = centre + radiusM * QPointF(std::cos(angle), std::sin(angle));
      c == 0 ? rollers.moveTo(corner) : rollers.lineTo(corner);
    }
    rollers.closeSubpath();
  }
  return rollers;
}

}  // namespace layshaft::ui
