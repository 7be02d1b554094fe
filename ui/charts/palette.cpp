// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/palette.h"

#include <array>

#include "ui/charts/contrast.h"

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

bool ChartPalette::isDark(const QPalette& palette, QPalette::ColorRole ground) {
  const QColor colour = palette.color(ground);
  return contrast(colour, Qt::white) > contrast(colour, Qt::black);
}

ChartPalette::ChartPalette(const QPalette& palette, QPalette::ColorRole ground)
    : dark(isDark(palette, ground)), background(palette.color(ground)) {
  constexpr double kGridShare = 0.13, kPanelShare = 0.07, kMarkerShare = 0.1, kStockShare = 0.45;
  const bool inWindow = ground == QPalette::Window;
  const QColor ink = palette.color(inWindow ? QPalette::WindowText : QPalette::Text);
  text = standingOut(ink, {background}, kTextContrast);
  panel = dark ? mixed(background, text, kPanelShare) : background;
  grounds_ = {background, panel};
  // The same colours in the window and in its pictures, unless one is light and the other dark.
  const auto other = inWindow ? QPalette::Base : QPalette::Window;
  if (isDark(palette, other) == dark) grounds_.push_back(palette.color(other));
  mutedText = ui::mutedText(text, grounds_);
  grid = mixed(background, text, kGridShare);
  line = panelBorder = standingOut(mixed(text, background, 0.6), grounds_, kLineContrast);
  stock = words(mixed(text, background, kStockShare));
  proposed = words(dark ? QColor(0x56, 0xb4, 0xe9) : QColor(0x00, 0x72, 0xb2));
  warning = words(dark ? QColor(0xf0, 0x8a, 0x80) : QColor(0xa8, 0x32, 0x28));
  marker = words(mixed(text, background, kMarkerShare));
  focus = standingOut(palette.color(QPalette::Highlight), {background}, kLineContrast);
}

QColor ChartPalette::words(const QColor& colour) const {
  return standingOut(colour, grounds_, kTextContrast);
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
  return standingOut(kPins[static_cast<std::size_t>(index) % kPins.size()], grounds_, kLineContrast);
}

QPen ChartPalette::pinPen(int index) const {
  // Long, dotted, dash-dot, dash-dot-dot: told apart from stock's even dashes and from each other where
  // colours are not.
  static const std::array<QList<qreal>, 4> kDashes{QList<qreal>{10, 3}, QList<qreal>{1.5, 2},
                                                   QList<qreal>{8, 2, 1.5, 2},
                                                   QList<qreal>{6, 2, 1.5, 2, 1.5, 2}};
  QPen pen = flatPen(pinColour(index), kLineWidth);
  pen.setDashPattern(kDashes[static_cast<std::size_t>(index) % kDashes.size()]);
  return pen;
}

}  // namespace layshaft::ui
