// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/readout.h"

#include <QCoreApplication>
#include <QEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace layshaft::ui {
namespace {

constexpr double kSideMargin = 24.0;
constexpr double kTopMargin = 10.0;

QFont sized(const QFont& font, double factor, bool bold = false) {
  QFont result = font;
  result.setPointSizeF(std::max(9.0, font.pointSizeF() * factor));
  result.setBold(bold);
  return result;
}

struct Fonts {
  QFont headline, tightHeadline, detail, label, value, valueBold, unit;
  explicit Fonts(const QFont& font)
      : headline(sized(font, 1.45, true)),
        tightHeadline(sized(font, 1.1, true)),
        detail(sized(font, 1.0)),
        label(sized(font, 0.92)),
        value(sized(font, 1.25)),
        valueBold(sized(font, 1.25, true)),
        unit(sized(font, 0.92)) {}
};

/// A headline in one large line or, where it is too long, in up to two tighter ones.
double headlineHeight(const Fonts& fonts) {
  return std::max(QFontMetricsF(fonts.headline).height(), 2 * QFontMetricsF(fonts.tightHeadline).height());
}

double detailHeight(const Fonts& fonts) {
  return 2 * QFontMetricsF(fonts.detail).lineSpacing() + 2;
}

double figuresHeight(const Fonts& fonts) {
  return 2 * QFontMetricsF(fonts.label).height() + QFontMetricsF(fonts.value).height() + 4;
}

void paintFigure(QPainter& painter, const QRectF& cell, const Fonts& fonts, const ChartPalette& colours,
                 const KeyFigure& figure) {
  const QFontMetricsF labelMetrics(fonts.label), valueMetrics(fonts.value), boldMetrics(fonts.valueBold);
  double y = cell.top();
  painter.setFont(fonts.label);
  painter.setPen(colours.mutedText);
  painter.drawText(QRectF(cell.left(), y, cell.width(), labelMetrics.height()), Qt::AlignLeft,
                   labelMetrics.elidedText(figure.label, Qt::ElideRight, cell.width()));
  y += labelMetrics.height();
  double x = cell.left();
  const auto write = [&](const QFont& font, const QFontMetricsF& metrics, const QColor& colour,
                         const QString& text) {
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(QRectF(x, y, metrics.horizontalAdvance(text) + 2, valueMetrics.height()),
                     Qt::AlignLeft | Qt::AlignBottom, text);
    x += metrics.horizontalAdvance(text);
  };
  if (figure.stock != figure.proposed) {
    write(fonts.value, valueMetrics, colours.mutedText, figure.stock + QStringLiteral("\u200a→\u200a"));
    write(fonts.valueBold, boldMetrics, colours.proposed, figure.proposed);
  } else {
    write(fonts.value, valueMetrics, colours.text, figure.stock);
  }
  x += 4;
  write(fonts.unit, labelMetrics, colours.mutedText, figure.unit);
  y += valueMetrics.height();
  painter.setFont(fonts.label);
  painter.setPen(colours.mutedText);
  painter.drawText(
      QRectF(cell.left(), y, cell.width(), labelMetrics.height()), Qt::AlignLeft,
      figure.difference.isEmpty() ? QCoreApplication::translate("Readout", "as stock") : figure.difference);
}

}  // namespace

Readout::Readout(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Readout"));
  setAttribute(Qt::WA_OpaquePaintEvent);
}

void Readout::show(const Plan& plan, const UnitsShown& units) {
  summary_ = summary(plan, units);
  figures_ = keyFigures(plan, units);
  setAccessibleDescription(text());
  update();
}

QString Readout::text() const {
  QString all = summary_.headline + QLatin1Char('\n') + summary_.detail;
  for (const KeyFigure& figure : figures_) {
    all += QLatin1Char('\n') + figure.label + QStringLiteral(": ") + figure.stock;
    if (figure.stock != figure.proposed) all += QStringLiteral(" → ") + figure.proposed;
    if (!figure.unit.isEmpty()) all += QLatin1Char(' ') + figure.unit;
    if (!figure.difference.isEmpty()) all += QStringLiteral(" (%1)").arg(figure.difference);
  }
  return all;
}

double Readout::heightFor(const QFont& font) {
  const Fonts fonts(font);
  return kTopMargin + headlineHeight(fonts) + 2 + detailHeight(fonts) + 6 + figuresHeight(fonts) + 8;
}

void Readout::paint(QPainter& painter, const QRectF& area, const QFont& font, const ChartPalette& colours,
                    const Summary& summary, const std::vector<KeyFigure>& figures) {
  const Fonts fonts(font);
  const double width = area.width() - 2 * kSideMargin;
  QRectF line(area.left() + kSideMargin, area.top() + kTopMargin, width, headlineHeight(fonts));
  const bool fits = QFontMetricsF(fonts.headline).horizontalAdvance(summary.headline) <= width;
  painter.setFont(fits ? fonts.headline : fonts.tightHeadline);
  painter.setPen(colours.text);
  painter.drawText(line, (fits ? 0 : Qt::TextWordWrap) | Qt::AlignLeft | Qt::AlignVCenter, summary.headline);
  line = QRectF(line.left(), line.bottom() + 2, width, detailHeight(fonts));
  painter.setFont(fonts.detail);
  painter.setPen(colours.mutedText);
  painter.drawText(line, Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, summary.detail);
  if (figures.empty()) return;
  constexpr std::size_t kMost = 7;
  const auto count = std::min(figures.size(), kMost);
  // Seven places whatever the number, so that a figure stays where it was when another comes or goes.
  const double cellWidth = width / static_cast<double>(std::max<std::size_t>(count, 6));
  QRectF cell(line.left(), line.bottom() + 6, cellWidth - 8, figuresHeight(fonts));
  for (std::size_t i = 0; i < count; ++i, cell.translate(cellWidth, 0))
    paintFigure(painter, cell, fonts, colours, figures[i]);
}

QSize Readout::sizeHint() const {
  return {900, static_cast<int>(std::ceil(heightFor(font())))};
}
QSize Readout::minimumSizeHint() const {
  return {820, sizeHint().height()};
}

void Readout::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette().color(QPalette::Window));
  paint(painter, rect(), font(), ChartPalette(palette()), summary_, figures_);
}

void Readout::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) updateGeometry();
}

}  // namespace layshaft::ui
