// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/wear_gauge.h"

#include <QEvent>
#include <QPainter>
#include <algorithm>

#include "core/study/wear_watch.h"
#include "ui/words/numbers.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {
namespace {

constexpr double kBeyondLimit = 1.5;  // of the limit, where the scale ends at least
constexpr double kHeadroom = 1.08;    // above the greatest place
constexpr double kTrackWidth = 26.0;  // px
constexpr double kTick = 9.0;         // px
constexpr double kGap = 5.0;          // px between the scale and its words
constexpr int kWatchAlpha = 70, kReplaceAlpha = 150;

}  // namespace

/// Where per cent stand on the widget.
struct WearGauge::Scale {
  QRectF track;
  double high;
  double lineHeight;

  double y(double percent) const {
    return track.bottom() - std::clamp(percent / high, 0.0, 1.0) * track.height();
  }
  QRectF zone(double low, double up) const {
    return {QPointF(track.left(), y(up)), QPointF(track.right(), y(low))};
  }
};

WearGauge::WearGauge(QWidget* parent) : QWidget(parent), colours_(palette()) {
  exposeReadablePictures();
  setAccessibleName(tr("Elongation gauge"));
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
}

void WearGauge::show(const WearFigures& figures) {
  figures_ = figures;
  setAccessibleDescription(wearGaugeWords(figures));
  setToolTip(wearGaugeWords(figures));
  update();
}

QSize WearGauge::sizeHint() const {
  constexpr int kLines = 14;
  const QFontMetrics metrics(font());
  const int left = metrics.horizontalAdvance(tr("%1 %").arg(QStringLiteral("00.00")));
  const int right = std::max(metrics.horizontalAdvance(tr("limit %1 %").arg(QStringLiteral("00.0"))),
                             metrics.horizontalAdvance(verdictWord(WearVerdict::Replace)));
  return {left + right + static_cast<int>(kTrackWidth + 2 * kTick + 4 * kGap), kLines * metrics.height()};
}

QSize WearGauge::minimumSizeHint() const {
  constexpr int kLines = 8;
  return {sizeHint().width(), kLines * fontMetrics().height()};
}

void WearGauge::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) colours_ = ChartPalette(palette());
  if (event->type() == QEvent::FontChange) updateGeometry();
}

void WearGauge::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), colours_.background);
  if (!figures_) return;
  painter.setRenderHint(QPainter::Antialiasing);
  const QFontMetricsF metrics(font());
  const double line = metrics.height();
  const double left = metrics.horizontalAdvance(tr("%1 %").arg(QStringLiteral("00.00"))) + kTick + 2 * kGap;
  double high = kBeyondLimit * figures_->limitPercent;
  if (figures_->elongationPercent) high = std::max(high, kHeadroom * *figures_->elongationPercent);
  const Scale scale{QRectF(left, line, kTrackWidth, std::max(10.0, height() - 3.0 * line)), high, line};
  paintZones(painter, scale);
  paintPlaces(painter, scale);
}

void WearGauge::paintZones(QPainter& painter, const Scale& scale) const {
  const double limit = figures_->limitPercent, watch = kWatchShareOfLimit * limit;
  painter.fillRect(scale.track, colours_.panel);
  painter.fillRect(scale.zone(watch, limit), faint(colours_.warning, kWatchAlpha));
  painter.fillRect(scale.zone(limit, scale.high), faint(colours_.warning, kReplaceAlpha));
  painter.setPen(QPen(colours_.line, 1));
  painter.drawRect(scale.track);
  painter.setPen(QPen(colours_.warning, 2));
  painter.drawLine(QPointF(scale.track.left() - kTick, scale.y(limit)),
                   QPointF(scale.track.right() + kTick, scale.y(limit)));
  const double left = scale.track.right() + kTick + kGap;
  const auto word = [&](double level, const QString& text, const QColor& colour) {
    painter.setPen(colour);
    painter.drawText(QRectF(left, level - scale.lineHeight / 2.0, width() - left, scale.lineHeight),
                     Qt::AlignLeft | Qt::AlignVCenter, text);
  };
  word(scale.y(0.0), tr("new"), colours_.mutedText);
  word(scale.y(limit), tr("limit %1 %").arg(number(limit, 1)), colours_.warning);
  const double room = scale.lineHeight * 1.1;
  const auto zoneWord = [&](double low, double up, WearVerdict verdict) {
    const double middle = (scale.y(low) + scale.y(up)) / 2.0;
    // Between its neighbours, or not at all.
    if (std::abs(middle - scale.y(limit)) >= room && std::abs(middle - scale.y(0.0)) >= room)
      word(middle, verdictWord(verdict), colours_.mutedText);
  };
  zoneWord(0.0, watch, WearVerdict::Good);
  zoneWord(watch, limit, WearVerdict::Watch);
  zoneWord(limit, scale.high, WearVerdict::Replace);
}

void WearGauge::paintPlaces(QPainter& painter, const Scale& scale) const {
  if (!figures_->latest) return;
  const MeasuredElongation& latest = figures_->measured[*figures_->latest];
  painter.setPen(QPen(colours_.proposed, 2));
  for (const double percent : latest.placesPercent)
    painter.drawLine(QPointF(scale.track.left(), scale.y(percent)),
                     QPointF(scale.track.right(), scale.y(percent)));
  const double level = scale.y(latest.greatestPercent);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colours_.proposed);
  const double tip = scale.track.left() - 1.0;
  painter.drawPolygon(QPolygonF{QPointF(tip, level), QPointF(tip - kTick, level - kTick / 2.0),
                                QPointF(tip - kTick, level + kTick / 2.0)});
  painter.setPen(colours_.proposed);
  QFont bold = font();
  bold.setBold(true);
  painter.setFont(bold);
  painter.drawText(QRectF(0, level - scale.lineHeight / 2.0, tip - kTick - kGap, scale.lineHeight),
                   Qt::AlignRight | Qt::AlignVCenter, tr("%1 %").arg(number(latest.greatestPercent, 2)));
  painter.setFont(font());
  if (latest.placesPercent.size() < 2) return;
  painter.setPen(colours_.text);
  painter.drawText(QRectF(0, height() - 1.2 * scale.lineHeight, width(), scale.lineHeight), Qt::AlignHCenter,
                   tr("uneven %1 %").arg(number(latest.unevennessPercent, 2)));
}

}  // namespace layshaft::ui
