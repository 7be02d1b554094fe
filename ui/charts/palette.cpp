// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/palette.h"

#include <array>

namespace layshaft::ui {
namespace {

constexpr double kLineWidth = 2.0;

QPen flatPen(const QColor& colour, double width) {
  QPen pen(colour, width);
  // Flat caps and mitred joins take the painter's fast path; round ones go through the path stroker.
  pen.setCapStyle(Qt::FlatCap);
  pen.setJoinStyle(Qt::MiterJoin);
  return pen;
}

}  // namespace

bool ChartPalette::isDark(const QPalette& palette) {
  return palette.color(QPalette::Window).lightnessF() < palette.color(QPalette::WindowText).lightnessF();
}

ChartPalette::ChartPalette(const QPalette& palette) : dark(isDark(palette)) {
  background = palette.color(QPalette::Base);
  text = palette.color(QPalette::WindowText);
  mutedText = dark ? QColor(0xa8, 0xae, 0xb6) : QColor(0x5a, 0x62, 0x6c);
  grid = dark ? QColor(0x3a, 0x3f, 0x46) : QColor(0xe4, 0xe7, 0xea);
  stock = dark ? QColor(0xa0, 0xa6, 0xae) : QColor(0x80, 0x86, 0x8e);
  proposed = dark ? QColor(0x56, 0xb4, 0xe9) : QColor(0x00, 0x72, 0xb2);
  warning = dark ? QColor(0xf0, 0x8a, 0x80) : QColor(0xa8, 0x32, 0x28);
  marker = dark ? QColor(0xd8, 0xdc, 0xe2) : QColor(0x30, 0x36, 0x3e);
  panel = dark ? QColor(0x2b, 0x2f, 0x35) : QColor(0xff, 0xff, 0xff);
  panelBorder = dark ? QColor(0x55, 0x5b, 0x63) : QColor(0xc8, 0xcd, 0xd2);
}

QPen ChartPalette::stockPen() const {
  QPen pen = flatPen(stock, kLineWidth);
  pen.setDashPattern({4, 3});
  return pen;
}

QPen ChartPalette::proposedPen() const {
  return flatPen(proposed, kLineWidth);
}

QColor ChartPalette::pinColour(int index) const {
  static const std::array<QColor, 4> kPins{QColor(0xd5, 0x5e, 0x00), QColor(0x00, 0x9e, 0x73),
                                           QColor(0xcc, 0x79, 0xa7), QColor(0xe6, 0x9f, 0x00)};
  return kPins[static_cast<std::size_t>(index) % kPins.size()];
}

QPen ChartPalette::pinPen(int index) const {
  static const std::array<QList<qreal>, 4> kDashes{QList<qreal>{8, 3}, QList<qreal>{1.5, 2},
                                                   QList<qreal>{8, 2, 1.5, 2}, QList<qreal>{3, 1.5}};
  QPen pen = flatPen(pinColour(index), kLineWidth);
  pen.setDashPattern(kDashes[static_cast<std::size_t>(index) % kDashes.size()]);
  return pen;
}

}  // namespace layshaft::ui
