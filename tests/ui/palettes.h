// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QApplication>
#include <QPalette>
#include <QString>
#include <QStyle>
#include <utility>
#include <vector>

#include "tests/ui/support.h"
#include "ui/charts/appearance.h"

namespace layshaft::test {

/// As some dark desktops have it: no colour for placeholders but text let through, light accents under white.
inline QPalette darkWithoutPlaceholder() {
  QPalette palette(QColor(0x31, 0x36, 0x3b), QColor(0x2a, 0x2e, 0x32));
  palette.setColor(QPalette::Base, QColor(0x1b, 0x1e, 0x20));
  palette.setColor(QPalette::AlternateBase, QColor(0x23, 0x26, 0x29));
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(role, QColor(0xfc, 0xfc, 0xfc));
  palette.setColor(QPalette::PlaceholderText, QColor(0x3a, 0x3f, 0x44));
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, QColor(0x4d, 0x52, 0x56));
  palette.setColor(QPalette::Highlight, QColor(0x3d, 0xae, 0xe9));
  palette.setColor(QPalette::HighlightedText, QColor(0xfc, 0xfc, 0xfc));
  return palette;
}

inline QPalette yellowOnBlack() {
  QPalette palette(Qt::black, Qt::black);
  for (const auto role : {QPalette::Base, QPalette::AlternateBase, QPalette::ToolTipBase})
    palette.setColor(role, Qt::black);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText})
    palette.setColor(role, Qt::yellow);
  palette.setColor(QPalette::Highlight, QColor(0x00, 0x00, 0x80));
  palette.setColor(QPalette::HighlightedText, Qt::yellow);
  return palette;
}

inline QPalette greyDesktop() {
  QPalette palette(QColor(0xb0, 0xb0, 0xb0), QColor(0xb8, 0xb8, 0xb8));
  palette.setColor(QPalette::Base, QColor(0xd0, 0xd0, 0xd0));
  palette.setColor(QPalette::AlternateBase, QColor(0xc8, 0xc8, 0xc8));
  return palette;
}

struct NamedPalette {
  const char* name;
  QPalette palette;
};

/// What desktops may bring, and the program's own two.
inline std::vector<NamedPalette> palettes() {
  return {{"light", ui::lightPalette()},
          {"dark", ui::darkPalette()},
          {"the style's own", QApplication::style()->standardPalette()},
          {"dark without a placeholder colour", darkWithoutPlaceholder()},
          {"yellow on black", yellowOnBlack()},
          {"grey", greyDesktop()}};
}

/// Sets a palette as a desktop would, and the program's answer to it; the desktop's own again at the end.
class UnderPalette {
 public:
  explicit UnderPalette(const QPalette& palette) {
    QApplication::setPalette(palette);
    ui::keepReadable();
  }
  ~UnderPalette() { ui::applyAppearance(ui::Appearance::Desktop); }
  UnderPalette(const UnderPalette&) = delete;
  UnderPalette& operator=(const UnderPalette&) = delete;
};

}  // namespace layshaft::test
