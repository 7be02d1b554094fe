// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/curve_preview.h"

#include <QPainter>
#include <algorithm>

#include "core/parts/torque_spline.h"
#include "core/units.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr int kSteps = 160;
constexpr double kHeadroom = 1.12;
constexpr double kPointRadius = 3.0;

}  // namespace

CurvePreview::CurvePreview(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setAccessibleName(tr("Picture of the torque curve"));
}

void CurvePreview::show(const std::optional<TorqueCurve>& curve, const std::optional<double>& revLimitRpm,
                        const UnitsShown& units) {
  curve_ = curve;
  revLimitRpm_ = revLimitRpm;
  units_ = units;
  update();
}

void CurvePreview::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const ChartPalette colours(palette());
  painter.fillRect(rect(), colours.background);
  const int lineHeight = fontMetrics().height();
  const QRectF plot = QRectF(rect()).adjusted(8, 8 + lineHeight, -8, -8 - lineHeight);
  painter.setPen(colours.mutedText);
  if (!curve_) {
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                     tr("No curve yet: type or paste two columns."));
    return;
  }
  const double lastPoint = curve_->points().back().rpm;
  const double limit = revLimitRpm_.value_or(lastPoint);
  const TorqueSpline spline(*curve_, limit);
  const double last = std::max(limit, lastPoint);
  double most = 0.0, mostPower = 0.0, mostPowerRpm = 0.0;
  for (const TorquePoint& point : curve_->points()) most = std::max(most, point.torqueNm);
  const auto power = [&](double rpm) { return spline.at(rpm) * units::radPerSecondFromRpm(rpm); };
  for (int i = 0; i <= kSteps; ++i) {
    const double rpm = limit * i / kSteps;
    if (power(rpm) > mostPower) {
      mostPower = power(rpm);
      mostPowerRpm = rpm;
    }
  }
  const auto place = [&](double rpm, double share) {
    return QPointF(plot.left() + rpm / last * plot.width(),
                   plot.bottom() - share / kHeadroom * plot.height());
  };
  painter.setPen(QPen(colours.line, 1));
  painter.drawLine(plot.bottomLeft(), plot.bottomRight());
  painter.setPen(QPen(colours.warning, 1, Qt::DotLine));
  if (revLimitRpm_) painter.drawLine(place(limit, 0), place(limit, kHeadroom));

  const auto line = [&](double from, double to, const auto& shareAt) {
    QPolygonF points;
    for (int i = 0; i <= kSteps; ++i) {
      const double rpm = from + (to - from) * i / kSteps;
      points << place(rpm, shareAt(rpm));
    }
    return points;
  };
  const auto torqueShare = [&](double rpm) { return spline.at(rpm) / most; };
  const double measured = spline.beyond() ? spline.beyond()->lastPointRpm : limit;
  painter.setPen(QPen(colours.stock, 1, Qt::DashLine));
  if (mostPower > 0.0)
    painter.drawPolyline(line(0.0, limit, [&](double rpm) { return power(rpm) / mostPower; }));
  painter.setPen(QPen(colours.proposed, 2));
  painter.drawPolyline(line(0.0, measured, torqueShare));
  // Thin: assumed.
  painter.setPen(QPen(colours.proposed, 1));
  painter.drawPolyline(line(measured, limit, torqueShare));
  painter.setBrush(colours.background);
  painter.setPen(QPen(colours.proposed, 1));
  for (const TorquePoint& point : curve_->points())
    painter.drawEllipse(place(point.rpm, point.torqueNm / most), kPointRadius, kPointRadius);

  paintWords(painter, colours, spline.peak(), {.rpm = mostPowerRpm, .watts = mostPower});
}

void CurvePreview::paintWords(QPainter& painter, const ChartPalette& colours, const TorquePoint& peak,
                              const PowerPoint& power) const {
  const int lineHeight = fontMetrics().height();
  painter.setPen(colours.proposed);
  painter.drawText(QRectF(8, 4, width() - 16, lineHeight), Qt::AlignLeft,
                   tr("Torque, peak %1 %2 at %3 rpm")
                       .arg(number(units_.shown(Quantity::Torque, peak.torqueNm), 1),
                            units_.name(Quantity::Torque), number(peak.rpm, 0)));
  painter.setPen(colours.mutedText);
  painter.drawText(QRectF(8, height() - lineHeight - 4, width() - 16, lineHeight), Qt::AlignLeft,
                   tr("Power (dashed), peak %1 %2 near %3 rpm")
                       .arg(number(units_.shown(Quantity::Power, power.watts), 1),
                            units_.name(Quantity::Power), number(power.rpm, 0)));
}

}  // namespace layshaft::ui
