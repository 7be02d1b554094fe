// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPalette>
#include <QPen>
#include <vector>

namespace layshaft::ui {

/// The colour with an alpha of 0 to 255.
inline QColor faint(QColor colour, int alpha) {
  colour.setAlpha(alpha);
  return colour;
}

/// Colours and dashes shared by every chart, for a palette's own ground and text. The accents are the
/// published Okabe–Ito palette, safe for colour-blind eyes, darkened or lightened only as far as the ground
/// asks for; each line also has a dash of its own. What may be written in has the contrast of text; pins are
/// lines, and `words` gives their colour for text.
class ChartPalette {
 public:
  /// `ground` is what is painted on: Base for pictures, Window for what stands in the window itself.
  explicit ChartPalette(const QPalette& palette, QPalette::ColorRole ground = QPalette::Base);

  static bool isDark(const QPalette& palette, QPalette::ColorRole ground = QPalette::Window);

  bool dark;
  QColor background;
  QColor text;
  QColor mutedText;
  QColor grid;  ///< the faint lines that only help to follow a value
  QColor line;  ///< axes, separators and outlines
  QColor stock;
  QColor proposed;
  QColor warning;  ///< the rev limit
  QColor marker;   ///< what the user can drag
  QColor panel;
  QColor panelBorder;
  QColor focus;

  QPen stockPen() const;
  QPen proposedPen() const;
  QPen pinPen(int index) const;
  QColor pinColour(int index) const;
  /// The colour of a line, for its name and figures.
  QColor words(const QColor& colour) const;

 private:
  std::vector<QColor> grounds_;
};

}  // namespace layshaft::ui
