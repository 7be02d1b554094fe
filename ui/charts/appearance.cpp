// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/appearance.h"

#include <QApplication>

namespace layshaft::ui {
namespace {

/// The desktop's own palette, before any switch in the program.
const QPalette& desktopPalette() {
  static const QPalette palette = QApplication::palette();
  return palette;
}

struct Tones {
  QColor window, base, alternate, text, muted, button, highlight, highlightedText, link;
};

QPalette paletteOf(const Tones& tones) {
  QPalette palette(tones.button, tones.window);
  palette.setColor(QPalette::Window, tones.window);
  palette.setColor(QPalette::Base, tones.base);
  palette.setColor(QPalette::AlternateBase, tones.alternate);
  palette.setColor(QPalette::ToolTipBase, tones.base);
  palette.setColor(QPalette::Button, tones.button);
  palette.setColor(QPalette::Highlight, tones.highlight);
  palette.setColor(QPalette::HighlightedText, tones.highlightedText);
  palette.setColor(QPalette::Link, tones.link);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText,
                          QPalette::BrightText})
    palette.setColor(role, tones.text);
  palette.setColor(QPalette::PlaceholderText, tones.muted);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, tones.muted);
  return palette;
}

}  // namespace

QPalette lightPalette() {
  return paletteOf({.window = QColor(0xf6, 0xf7, 0xf8),
                    .base = Qt::white,
                    .alternate = QColor(0xf0, 0xf2, 0xf4),
                    .text = QColor(0x1d, 0x21, 0x26),
                    .muted = QColor(0x66, 0x6d, 0x76),
                    .button = QColor(0xec, 0xee, 0xf0),
                    .highlight = QColor(0x00, 0x72, 0xb2),
                    .highlightedText = Qt::white,
                    .link = QColor(0x00, 0x72, 0xb2)});
}

QPalette darkPalette() {
  return paletteOf({.window = QColor(0x23, 0x26, 0x2b),
                    .base = QColor(0x1a, 0x1c, 0x20),
                    .alternate = QColor(0x26, 0x29, 0x2e),
                    .text = QColor(0xe8, 0xea, 0xed),
                    .muted = QColor(0x9a, 0xa1, 0xaa),
                    .button = QColor(0x33, 0x37, 0x3d),
                    .highlight = QColor(0x2f, 0x7f, 0xb5),
                    .highlightedText = Qt::white,
                    .link = QColor(0x56, 0xb4, 0xe9)});
}

void applyAppearance(Appearance appearance) {
  const QPalette& desktop = desktopPalette();
  switch (appearance) {
    case Appearance::Desktop:
      QApplication::setPalette(desktop);
      break;
    case Appearance::Light:
      QApplication::setPalette(lightPalette());
      break;
    case Appearance::Dark:
      QApplication::setPalette(darkPalette());
      break;
  }
}

}  // namespace layshaft::ui
