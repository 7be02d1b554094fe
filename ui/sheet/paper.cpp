// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/paper.h"

#include <QFontMetricsF>
#include <QTextLayout>
#include <QTextOption>
#include <algorithm>

#include "ui/charts/appearance.h"

namespace layshaft::ui {
namespace {

/// Lays `layout` out to the width; its height.
/// Words may be parted after a stroke; "km/h" must not be.
void keepUnitsWhole(const QString& text, QTextLine& line, double width) {
  const int end = line.textStart() + line.textLength();
  if (end >= text.size() || text[end - 1] != QLatin1Char('/')) return;
  const auto blank = static_cast<int>(text.lastIndexOf(QLatin1Char(' '), end - 1));
  if (blank >= line.textStart()) line.setNumColumns(blank + 1 - line.textStart(), width);
}

double breakLines(QTextLayout& layout, double width, Qt::Alignment alignment) {
  QTextOption option(alignment);
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  layout.setTextOption(option);
  layout.beginLayout();
  double y = 0.0;
  for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
    line.setLineWidth(std::max(width, 1.0));
    keepUnitsWhole(layout.text(), line, width);
    line.setPosition({0.0, y});
    y += line.height();
  }
  layout.endLayout();
  return y;
}

QString withLineBreaks(QString text) {
  return text.replace(QLatin1Char('\n'), QChar(QChar::LineSeparator));
}

}  // namespace

QPalette paperPalette() {
  QPalette palette = lightPalette();
  palette.setColor(QPalette::Window, Qt::white);
  palette.setColor(QPalette::Base, Qt::white);
  return palette;
}

QFont paperFont(double points, bool bold) {
  QFont font;
  font.setPointSizeF(points);
  font.setBold(bold);
  return font;
}

double brokenHeight(const QFont& font, const QString& text, double width) {
  if (text.isEmpty()) return QFontMetricsF(font).height();
  QTextLayout layout(withLineBreaks(text), font);
  return breakLines(layout, width, Qt::AlignLeft);
}

void drawBroken(QPainter& painter, const QFont& font, const QRectF& area, const QString& text,
                Qt::Alignment alignment) {
  if (text.isEmpty()) return;
  QTextLayout layout(withLineBreaks(text), font);
  breakLines(layout, area.width(), alignment);
  layout.draw(&painter, area.topLeft());
}

}  // namespace layshaft::ui
