// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/measure_sketch.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "ui/charts/palette.h"

namespace layshaft::ui {
namespace {

// In characters and lines of the font, so that a sketch grows with its words.
constexpr int kWidth = 29;
constexpr double kHeight = 6.0;
constexpr double kArrowHead = 6.0;  // px
constexpr double kGap = 4.0;        // px between a thing and its word

/// Where things are, as shares of the sketch: not to scale, but so that every measure can be seen.
struct Places {
  explicit Places(const QRectF& area)
      : countershaft(area.left() + 0.20 * area.width(), area.top() + 0.36 * area.height()),
        pivot(area.left() + 0.42 * area.width(), area.top() + 0.58 * area.height()),
        axle(area.left() + 0.76 * area.width(), area.top() + 0.78 * area.height()),
        front(0.10 * area.height()),
        rear(0.19 * area.height()) {}

  QPointF countershaft, pivot, axle;
  double front, rear;  ///< radii of what sits on countershaft and axle
};

class Pencil {
 public:
  Pencil(QPainter& painter, const QPalette& palette, const QRectF& area)
      : painter_(painter), colours_(palette, QPalette::Window), area_(area) {}

  /// A solid part of the bike.
  void part(const QPointF& from, const QPointF& to) {
    painter_.setPen(QPen(colours_.line, 5, Qt::SolidLine, Qt::RoundCap));
    painter_.drawLine(from, to);
  }
  void wheel(const QPointF& middle, double radius, Qt::PenStyle style = Qt::SolidLine) {
    painter_.setPen(QPen(colours_.mutedText, 1.2, style));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawEllipse(middle, radius, radius);
  }
  void point(const QPointF& at) {
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(colours_.text);
    painter_.drawEllipse(at, 2.5, 2.5);
  }
  /// A line that only helps to see where a measure ends.
  void help(const QPointF& from, const QPointF& to) {
    painter_.setPen(QPen(colours_.mutedText, 1, Qt::DashLine));
    painter_.drawLine(from, to);
  }
  void word(const QString& text, QPointF middle, Qt::Alignment side) {
    const QFontMetricsF metrics(painter_.font());
    QRectF box(QPointF(), metrics.size(0, text) + QSizeF(2, 0));
    box.moveCenter(middle);
    if (side & Qt::AlignLeft) box.moveLeft(middle.x() + kGap);
    if (side & Qt::AlignRight) box.moveRight(middle.x() - kGap);
    if (side & Qt::AlignTop) box.moveTop(middle.y() + kGap);
    if (side & Qt::AlignBottom) box.moveBottom(middle.y() - kGap);
    box.moveLeft(std::clamp(box.left(), area_.left(), std::max(area_.left(), area_.right() - box.width())));
    painter_.setPen(colours_.text);
    painter_.drawText(box, Qt::AlignCenter, text);
  }
  void arrow(const QPointF& from, const QPointF& to) {
    painter_.setPen(QPen(colours_.proposed, 2));
    painter_.drawLine(from, to);
    head(from, std::atan2(from.y() - to.y(), from.x() - to.x()));
    head(to, std::atan2(to.y() - from.y(), to.x() - from.x()));
  }
  /// The angle at `corner` from the level line leftwards up to `to`.
  void angle(const QPointF& corner, const QPointF& to) {
    const double radius = 0.8 * std::hypot(to.x() - corner.x(), to.y() - corner.y());
    const double rise = std::atan2(corner.y() - to.y(), corner.x() - to.x());
    const QRectF circle(corner - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius));
    QPainterPath arc;
    constexpr double kHalfTurnDeg = 180.0;
    arc.arcMoveTo(circle, kHalfTurnDeg);
    arc.arcTo(circle, kHalfTurnDeg, -rise * kHalfTurnDeg / M_PI);
    painter_.setPen(QPen(colours_.proposed, 2));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawPath(arc);
    head(arc.currentPosition(), rise - M_PI / 2);
  }

 private:
  void head(const QPointF& tip, double direction) {
    constexpr double kSpread = 0.45;  // rad
    const auto back = [&](double turned) {
      return tip - kArrowHead * QPointF(std::cos(direction + turned), std::sin(direction + turned));
    };
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(colours_.proposed);
    painter_.drawPolygon(QPolygonF{tip, back(kSpread), back(-kSpread)});
  }

  QPainter& painter_;
  ChartPalette colours_;
  QRectF area_;
};

}  // namespace

std::optional<Measure> measureOf(std::string_view key) {
  if (key == "bike.chain_run.centre_distance_mm") return Measure::CentreDistance;
  if (key == "bike.chain_run.swingarm_length_mm") return Measure::SwingarmLength;
  if (key == "bike.chain_run.swingarm_angle_deg") return Measure::SwingarmAngle;
  if (key == "bike.chain_run.countershaft_ahead_of_pivot_mm") return Measure::CountershaftAhead;
  if (key == "bike.chain_run.countershaft_above_pivot_mm") return Measure::CountershaftAbove;
  if (key == "bike.chassis.front_rollout_mm" || key == "stock.rollout_mm") return Measure::Rollout;
  return std::nullopt;
}

MeasureSketch::MeasureSketch(Measure measure, const QString& name, QWidget* parent)
    : QWidget(parent), measure_(measure) {
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  setAccessibleName(tr("Sketch: %1").arg(name));
  setAccessibleDescription(inWords());
  setToolTip(inWords());
}

QSize MeasureSketch::sizeHint() const {
  return {fontMetrics().averageCharWidth() * kWidth, qRound(fontMetrics().lineSpacing() * kHeight)};
}

QString MeasureSketch::inWords() const {
  switch (measure_) {
    case Measure::CentreDistance:
      return tr("In a straight line from the middle of the countershaft to the middle of the rear axle.");
    case Measure::SwingarmLength:
      return tr("In a straight line from the middle of the swingarm pivot to the middle of the rear axle.");
    case Measure::SwingarmAngle:
      return tr(
          "From the level to the line from the rear axle up to the swingarm pivot; with the pivot lower "
          "than the axle it is negative.");
    case Measure::CountershaftAhead:
      return tr("Level, along the ground, from the swingarm pivot forward to the countershaft.");
    case Measure::CountershaftAbove:
      return tr("Straight up from the height of the swingarm pivot to the height of the countershaft.");
    case Measure::Rollout:
      return tr(
          "Along the ground, from where the tyre stands on a mark to where the mark is down again after "
          "one turn of the loaded wheel.");
  }
  return {};
}

void MeasureSketch::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  // What is measured is named by the field's label beside it.
  const QRectF area = QRectF(rect()).adjusted(2, 2, -2, -2);
  Pencil pencil(painter, palette(), area);
  if (measure_ == Measure::Rollout) {
    const double radius = 0.34 * area.height(), ground = area.bottom() - 0.22 * area.height();
    const QPointF start(area.left() + radius + 4, ground), end(area.right() - radius - 4, ground);
    pencil.help(QPointF(area.left(), ground), QPointF(area.right(), ground));
    pencil.wheel(start - QPointF(0, radius), radius);
    pencil.wheel(end - QPointF(0, radius), radius, Qt::DashLine);
    pencil.point(start);
    pencil.point(end);
    pencil.word(tr("one turn"), QPointF(area.center().x(), ground - radius), Qt::AlignCenter);
    const QPointF below(0, 0.13 * area.height());
    return pencil.arrow(start + below, end + below);
  }
  const Places at(area);
  const QString shaft = tr("countershaft"), pivot = tr("pivot"), axle = tr("axle");
  pencil.part(at.pivot, at.axle);
  pencil.wheel(at.countershaft, at.front);
  pencil.wheel(at.axle, at.rear);
  const QPointF overShaft = at.countershaft - QPointF(0, at.front - kGap / 2);
  const QPointF besideAxle = at.axle + QPointF(at.rear, 0);
  switch (measure_) {
    case Measure::CentreDistance:
      pencil.word(shaft, overShaft, Qt::AlignBottom);
      pencil.word(axle, besideAxle, Qt::AlignLeft);
      pencil.arrow(at.countershaft, at.axle);
      break;
    case Measure::SwingarmLength:
      pencil.word(pivot, at.pivot, Qt::AlignRight);
      pencil.word(axle, besideAxle, Qt::AlignLeft);
      pencil.arrow(at.pivot, at.axle);
      break;
    case Measure::SwingarmAngle: {
      const QPointF level(area.left() + 0.30 * area.width(), at.axle.y());
      pencil.help(at.axle, level);
      pencil.word(tr("level"), level, Qt::AlignRight);
      pencil.word(pivot, at.pivot, Qt::AlignRight);
      pencil.word(axle, besideAxle, Qt::AlignLeft);
      pencil.angle(at.axle, at.pivot);
      break;
    }
    case Measure::CountershaftAhead: {
      const double level = area.bottom() - 0.08 * area.height();
      pencil.help(at.countershaft, QPointF(at.countershaft.x(), level));
      pencil.help(at.pivot, QPointF(at.pivot.x(), level));
      pencil.word(shaft, overShaft, Qt::AlignBottom);
      pencil.word(pivot, at.pivot, Qt::AlignLeft | Qt::AlignBottom);
      pencil.arrow(QPointF(at.pivot.x(), level), QPointF(at.countershaft.x(), level));
      break;
    }
    case Measure::CountershaftAbove: {
      const double x = area.left() + 0.06 * area.width();
      pencil.help(at.countershaft, QPointF(x, at.countershaft.y()));
      pencil.help(at.pivot, QPointF(x, at.pivot.y()));
      pencil.word(shaft, overShaft, Qt::AlignBottom);
      pencil.word(pivot, at.pivot, Qt::AlignLeft | Qt::AlignBottom);
      pencil.arrow(QPointF(x, at.pivot.y()), QPointF(x, at.countershaft.y()));
      break;
    }
    case Measure::Rollout:
      break;
  }
  pencil.point(at.countershaft);
  pencil.point(at.pivot);
  pencil.point(at.axle);
}

}  // namespace layshaft::ui
