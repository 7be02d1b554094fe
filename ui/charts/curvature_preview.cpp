// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/curvature_preview.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/units.h"
#include "ui/words/track_words.h"

namespace layshaft::ui {
namespace {

constexpr double kHeadroom = 1.1;
constexpr double kStraightPerKm = 0.5;  // a radius of 2 km: nothing to see below it

constexpr double kLabelGap = 6.0;  // px, beside words
constexpr double kRadiiM[] = {500.0, 200.0, 100.0, 50.0, 20.0, 10.0, 5.0, 2.0};

}  // namespace

CurvaturePreview::CurvaturePreview(QWidget* parent) : QWidget(parent) {
  exposeReadablePictures();
  setAccessibleName(tr("Curvature along the lap"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void CurvaturePreview::show(const TrackPath& path, const UnitsShown& units) {
  path_ = path;
  units_ = units;
  mostPerKm_ = kStraightPerKm;
  int lefts = 0, rights = 0;
  bool bent = false, toLeft = false;
  constexpr double kBendPerKm = 5.0;  // a radius of 200 m
  for (const double perKm : path_.curvaturePerKm) {
    mostPerKm_ = std::max(mostPerKm_, std::abs(perKm));
    const bool bends = std::abs(perKm) >= kBendPerKm;
    if (bends && (!bent || toLeft != (perKm > 0.0))) ++(perKm > 0.0 ? lefts : rights);
    bent = bends;
    toLeft = perKm > 0.0;
  }
  setAccessibleDescription(
      tr("%1 bends to the left and %2 to the right below a radius of %3; the tightest has %4.")
          .arg(lefts)
          .arg(rights)
          .arg(shortDistanceText(units::kMetresPerKilometre / kBendPerKm, units_),
               shortDistanceText(units::kMetresPerKilometre / mostPerKm_, units_)));
  update();
}

void CurvaturePreview::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const ChartPalette colours(palette());
  painter.fillRect(rect(), colours.background);
  const auto count = path_.curvaturePerKm.size();
  if (count < 2) return;
  const double line = fontMetrics().height();
  const double scale = fontMetrics().horizontalAdvance(radiusWords(kRadiiM[0])) + 2.0 * kLabelGap;
  const QRectF plot = QRectF(rect()).adjusted(scale, 4 + line, -8, -4 - line);
  paintScale(painter, colours, plot);
  const double most = mostPerKm_ * kHeadroom;
  QPolygonF steps;
  for (std::size_t i = 0; i < count; ++i) {
    const double y = plot.center().y() - path_.curvaturePerKm[i] / most * plot.height() / 2.0;
    const double from = static_cast<double>(i) / static_cast<double>(count);
    const double to = static_cast<double>(i + 1) / static_cast<double>(count);
    steps << QPointF(plot.left() + from * plot.width(), y) << QPointF(plot.left() + to * plot.width(), y);
  }
  painter.setPen(QPen(colours.proposed, 1.5));
  painter.drawPolyline(steps);
  painter.setPen(colours.mutedText);
  painter.drawText(QRectF(plot.left(), 2, plot.width(), line), Qt::AlignLeft, tr("Bends to the left"));
  painter.drawText(QRectF(plot.left(), height() - line - 2.0, plot.width(), line), Qt::AlignLeft,
                   tr("Bends to the right"));
  painter.drawText(QRectF(plot.left(), height() - line - 2.0, plot.width(), line), Qt::AlignRight,
                   trackLengthText(path_.spacingM * static_cast<double>(count), units_));
}

QString CurvaturePreview::radiusWords(double radiusM) const {
  return tr("radius %1").arg(shortDistanceText(radiusM, units_));
}

/// The middle, and round radii on both sides of it.
void CurvaturePreview::paintScale(QPainter& painter, const ChartPalette& colours, const QRectF& plot) const {
  painter.setPen(QPen(colours.line, 1));
  const double middle = plot.center().y();
  painter.drawLine(QPointF(plot.left(), middle), QPointF(plot.right(), middle));
  // From wide to tight: each where it has room.
  const double most = mostPerKm_ * kHeadroom, line = fontMetrics().height();
  double last = middle;
  for (const double radiusM : kRadiiM) {
    const double perKm = units::kMetresPerKilometre / radiusM;
    const double up = perKm / most * plot.height() / 2.0;
    if (perKm > most) break;
    if (last - (middle - up) < line) continue;
    last = middle - up;
    painter.setPen(QPen(colours.grid, 1));
    painter.drawLine(QPointF(plot.left(), middle - up), QPointF(plot.right(), middle - up));
    painter.drawLine(QPointF(plot.left(), middle + up), QPointF(plot.right(), middle + up));
    painter.setPen(colours.mutedText);
    painter.drawText(QRectF(0.0, middle - up - line / 2.0, plot.left() - kLabelGap, line),
                     Qt::AlignRight | Qt::AlignVCenter, radiusWords(radiusM));
  }
}

}  // namespace layshaft::ui
