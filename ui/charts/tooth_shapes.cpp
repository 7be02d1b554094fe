// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/tooth_shapes.h"

#include <QPainter>
#include <cmath>

#include "core/parts/sprocket_tooth.h"
#include "core/units.h"

namespace layshaft::ui {
namespace {

/// Straight up in a picture whose y goes down.
constexpr double kUp = -units::kPi / 2.0;

/// How far the flanks of a picture of teeth are cut back, of the pitch: to be told apart at a glance.
double lossOf(TeethSeen seen) {
  switch (seen) {
    case TeethSeen::Good:
      return 0.0;
    case TeethSeen::Worn:
      return 0.10;
    case TeethSeen::Hooked:
      break;
  }
  return 0.22;
}

}  // namespace

QPainterPath toothPath(const ChainSize& size, int teeth, double lossM) {
  QPainterPath path;
  bool first = true;
  for (const ChainPoint& p : wornSprocketOutline(size, teeth, lossM)) {
    // The outline's first gap lies on the x axis and its y goes up.
    const double angle = kUp - std::atan2(p.y, p.x), radius = std::hypot(p.x, p.y);
    const QPointF place = radius * QPointF(std::cos(angle), std::sin(angle));
    first ? path.moveTo(place) : path.lineTo(place);
    first = false;
  }
  path.closeSubpath();
  return path;
}

std::vector<QPointF> rollersOn(int teeth, double radiusM, int first, int last) {
  std::vector<QPointF> middles;
  for (int gap = first; gap <= last; ++gap) {
    const double angle = kUp + 2.0 * units::kPi * gap / teeth;
    middles.push_back(radiusM * QPointF(std::cos(angle), std::sin(angle)));
  }
  return middles;
}

QPixmap teethSeenPixmap(TeethSeen seen, int height, double pixelRatio, const ChartPalette& colours) {
  constexpr int kTeeth = 43;
  constexpr double kWide = 2.2;     // of the height
  constexpr double kPitches = 3.0;  // across the drawing
  static const ChainSize size = *chainSize("520");
  const double pitch = units::metresFromMillimetres(size.pitchMm);
  QPixmap pixmap((QSizeF(kWide * height, height) * pixelRatio).toSize());
  pixmap.setDevicePixelRatio(pixelRatio);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  painter.setRenderHint(QPainter::Antialiasing);
  const double scale = kWide * height / (kPitches * pitch);
  painter.translate(kWide * height / 2.0, 0.12 * height);
  painter.scale(scale, scale);
  painter.translate(0.0, sprocketShape(size, kTeeth).tipRadiusM);
  QPen pen(colours.text, 1.4);
  pen.setCosmetic(true);
  painter.setPen(pen);
  painter.setBrush(colours.grid);
  painter.drawPath(toothPath(size, kTeeth, lossOf(seen) * pitch));
  return pixmap;
}

}  // namespace layshaft::ui
