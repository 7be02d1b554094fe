// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPalette>
#include <QPen>

namespace layshaft::ui {

/// The colour with an alpha of 0 to 255.
inline QColor faint(QColor colour, int alpha) {
  colour.setAlpha(alpha);
  return colour;
}

/// Colours and dashes shared by every chart. The set is the published Okabe–Ito palette, safe for
/// colour-blind eyes; each line also has a dash of its own. Light and dark follow the window's palette.
class ChartPalette {
 public:
  explicit ChartPalette(const QPalette& palette);

  static bool isDark(const QPalette& palette);

  bool dark;
  QColor background;
  QColor text;
  QColor mutedText;
  QColor grid;
  QColor stock;
  QColor proposed;
  QColor warning;  ///< the rev limit
  QColor marker;   ///< what the user can drag
  QColor panel;
  QColor panelBorder;

  QPen stockPen() const;
  QPen proposedPen() const;
  QPen pinPen(int index) const;
  QColor pinColour(int index) const;
};

}  // namespace layshaft::ui
