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

QPainterPath platesOf(const ChainPath& path, double width) {
  const auto line = path.polygon();
  const std::size_t count = line.size();
  const auto direction = [&](std::size_t from) {
    const QPointF along = point(line[(from + 1) % count]) - point(line[from]);
    return along / std::hypot(along.x(), along.y());
  };
  QPainterPath plates;
  for (const double aside : {-width / 2.0, width / 2.0}) {
    for (std::size_t i = 0; i < count; ++i) {
      const QPointF tangent = direction((i + count - 1) % count) + direction(i);
      const double length = std::hypot(tangent.x(), tangent.y());
      const QPointF place = point(line[i]) + aside / length * QPointF(tangent.y(), -tangent.x());
      i == 0 ? plates.moveTo(place) : plates.lineTo(place);
    }
    plates.closeSubpath();
  }
  return plates;
}

std::vector<QPolygonF> rollersOf(const ChainPath& path, int links, double travel, double radiusM) {
  constexpr int kCorners = 12;  // round enough at a few pixels
  QPolygonF round;
  for (int c = 0; c < kCorners; ++c) {
    const double angle = 2.0 * units::kPi * c / kCorners;
    round << radiusM * QPointF(std::cos(angle), std::sin(angle));
  }
  std::vector<QPolygonF> rollers;
  for (int link = 0; link < links; ++link) rollers.push_back(round.translated(point(path.at(link + travel))));
  return rollers;
}

}  // namespace layshaft::ui
