// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/readout.h"

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
  /// `cellWidth` is what a figure has: in a narrow one the values are smaller, so that "3,551→3,637 rpm"
  /// fits.
  explicit Fonts(const QFont& font, double cellWidth = 0)
      : headline(sized(font, 1.45, true)),
        tightHeadline(sized(font, 1.1, true)),
        detail(sized(font, 1.0)),
        label(sized(font, 0.92)),
        value(sized(font, valueFactor(font, cellWidth))),
        valueBold(sized(font, valueFactor(font, cellWidth), true)),
        unit(sized(font, 0.92)) {}

 private:
  static double valueFactor(const QFont& font, double cellWidth) {
    constexpr double kRoomy = 1.25, kTight = 0.95, kCharacters = 15;
    if (cellWidth <= 0) return kRoomy;
    return std::clamp(cellWidth / (kCharacters * QFontMetricsF(font).horizontalAdvance(QLatin1Char('0'))),
                      kTight, kRoomy);
  }
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
                 const KeyFigure& figure, TextCache& texts) {
  const QFontMetricsF labelMetrics(fonts.label), valueMetrics(fonts.value);
  double y = cell.top();
  painter.setPen(colours.mutedText);
  const bool tooLong = texts.width(fonts.label, figure.label) > cell.width();
  texts.draw(painter, fonts.label, QPointF(cell.left(), y),
             tooLong ? labelMetrics.elidedText(figure.label, Qt::ElideRight, cell.width()) : figure.label);
  y += labelMetrics.height();
  double x = cell.left();
  const auto write = [&](const QFont& font, double top, const QColor& colour, const QString& text) {
    painter.setPen(colour);
    texts.draw(painter, font, QPointF(x, top), text);
    x += texts.width(font, text);
  };
  if (figure.stock != figure.proposed) {
    write(fonts.value, y, colours.mutedText, figure.stock);
    write(fonts.value, y, colours.mutedText, QStringLiteral("\u200a→\u200a"));
    write(fonts.valueBold, y, colours.proposed, figure.proposed);
  } else {
    write(fonts.value, y, colours.text, figure.stock);
  }
  x += 4;
  write(fonts.unit, y + valueMetrics.ascent() - labelMetrics.ascent(), colours.mutedText, figure.unit);
  y += valueMetrics.height();
  painter.setPen(colours.mutedText);
  QString difference = figure.difference;
  if (difference.isEmpty())
    difference = figure.stock == figure.proposed ? Readout::tr("as stock") : Readout::tr("not comparable");
  texts.draw(painter, fonts.label, QPointF(cell.left(), y), difference);
}

}  // namespace

Readout::Readout(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Readout"));
  setAttribute(Qt::WA_OpaquePaintEvent);
}

void Readout::show(const Plan& plan, const UnitsShown& units) {
  summary_ = summary(plan, units);
  figures_ = keyFigures(plan, units, wanted_);
  setAccessibleDescription(text());
  update();
}

QString Readout::text() const {
  QStringList lines{summary_.headline, summary_.detail};
  for (const KeyFigure& figure : figures_) {
    QString value = figure.stock;
    if (figure.stock != figure.proposed)
      value = tr("%1 → %2", "stock and proposed").arg(figure.stock, figure.proposed);
    if (!figure.unit.isEmpty()) value = tr("%1 %2", "number and unit").arg(value, figure.unit);
    if (!figure.difference.isEmpty())
      value = tr("%1 (%2)", "figure and difference").arg(value, figure.difference);
    lines << tr("%1: %2", "what is measured, and the figure").arg(figure.label, value);
  }
  return lines.join(QLatin1Char('\n'));
}

double Readout::heightFor(const QFont& font) {
  const Fonts fonts(font);
  return kTopMargin + headlineHeight(fonts) + 2 + detailHeight(fonts) + 6 + figuresHeight(fonts) + 8;
}

void Readout::paint(QPainter& painter, const QRectF& area, const QFont& font, const ChartPalette& colours,
                    const Summary& summary, const std::vector<KeyFigure>& figures, TextCache& texts) {
  const auto count = std::min(figures.size(), kMostFigures);
  const double width = area.width() - 2 * kSideMargin;
  // Never fewer places than six, so that a figure stays where it was when another comes or goes.
  const double cellWidth = width / static_cast<double>(std::max<std::size_t>(count, 6));
  const Fonts fonts(font, cellWidth - 8);
  QRectF line(area.left() + kSideMargin, area.top() + kTopMargin, width, headlineHeight(fonts));
  painter.setPen(colours.text);
  if (texts.width(fonts.headline, summary.headline) <= width)
    texts.draw(painter, fonts.headline, line, Qt::AlignLeft, summary.headline);
  else
    texts.drawWrapped(painter, fonts.tightHeadline, line, summary.headline);
  line = QRectF(line.left(), line.bottom() + 2, width, detailHeight(fonts));
  painter.setPen(colours.mutedText);
  texts.drawWrapped(painter, fonts.detail, line, summary.detail);
  if (figures.empty()) return;
  QRectF cell(line.left(), line.bottom() + 6, cellWidth - 8, figuresHeight(fonts));
  for (std::size_t i = 0; i < count; ++i, cell.translate(cellWidth, 0))
    paintFigure(painter, cell, fonts, colours, figures[i], texts);
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
  paint(painter, rect(), font(), ChartPalette(palette()), summary_, figures_, texts_);
}

void Readout::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) updateGeometry();
}

}  // namespace layshaft::ui
