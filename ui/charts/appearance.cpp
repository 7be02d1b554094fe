// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/appearance.h"

#include <QApplication>
#include <optional>

#include "ui/charts/contrast.h"
#include "ui/charts/readable_style.h"

namespace layshaft::ui {
namespace {

/// As it was made readable last; none before that. A palette that is only default-constructed would be the
/// program's of that moment, and so pass for made.
std::optional<QPalette>& paletteMade() {
  static std::optional<QPalette> palette;
  return palette;
}

/// Whether what was made readable is still set and something below it has changed.
bool desktopHasChangedBelow(const QPalette& now) {
  const std::optional<QPalette>& made = paletteMade();
  return made && now.resolveMask() == made->resolveMask() &&
         now.color(QPalette::PlaceholderText) == made->color(QPalette::PlaceholderText);
}

void setReadable(const QPalette& palette) {
  const QPalette better = readable(palette);
  paletteMade() = better;  // before it is set: all windows are told of it at once
  if (better != QApplication::palette()) QApplication::setPalette(better);
}

struct Tones {
  QColor window, base, alternate, text, button, highlight, highlightedText, link;
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
  return readable(palette);
}

}  // namespace

QPalette lightPalette() {
  return paletteOf({.window = QColor(0xf6, 0xf7, 0xf8),
                    .base = Qt::white,
                    .alternate = QColor(0xf0, 0xf2, 0xf4),
                    .text = QColor(0x1d, 0x21, 0x26),
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
                    .button = QColor(0x33, 0x37, 0x3d),
                    .highlight = QColor(0x2f, 0x7f, 0xb5),
                    .highlightedText = Qt::white,
                    .link = QColor(0x56, 0xb4, 0xe9)});
}

void applyAppearance(Appearance appearance) {
  useReadableStyle();
  switch (appearance) {
    case Appearance::Desktop:
      paletteMade().reset();
      QApplication::setPalette({});  // the desktop's own
      keepReadable();
      break;
    case Appearance::Light:
      setReadable(lightPalette());
      break;
    case Appearance::Dark:
      setReadable(darkPalette());
      break;
  }
}

void keepReadable() {
  useReadableStyle();
  const QPalette now = QApplication::palette();
  if (now == paletteMade()) return;
  if (desktopHasChangedBelow(now)) return applyAppearance(Appearance::Desktop);
  setReadable(now);
}

}  // namespace layshaft::ui
