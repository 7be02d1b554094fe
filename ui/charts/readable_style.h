// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProxyStyle>

namespace layshaft::ui {

/// The toolkit's own style draws outlines and focus rings as a shade of the window, which is lost on many
/// palettes, and so is which of two buttons is held down. This draws them over, in colours that stand out
/// from the palette's grounds; all else stays.
class ReadableStyle : public QProxyStyle {
  Q_OBJECT
 public:
  ReadableStyle();

  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                          const QWidget* widget) const override;
};

/// Puts it over the program's style, once, if that is the toolkit's own; a desktop's style is left alone.
void useReadableStyle();

}  // namespace layshaft::ui
