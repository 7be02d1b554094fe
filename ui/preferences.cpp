// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/preferences.h"

#include <QApplication>
#include <QFileInfo>
#include <QSettings>
#include <QStyle>
#include <QStyleFactory>

namespace layshaft::ui {
namespace {

const QString kUnits = QStringLiteral("units");
const QString kFigureSetting = QStringLiteral("figures");
const QString kAppearance = QStringLiteral("appearance");
const QString kHintsDismissed = QStringLiteral("hints_dismissed");
const QString kMotion = QStringLiteral("view/motion");
const QString kRecent = QStringLiteral("recent_files");
constexpr qsizetype kMostRecent = 10;

const QStringList kUnitWords{QStringLiteral("metric"), QStringLiteral("imperial"), QStringLiteral("mixed")};
const QStringList kAppearanceWords{QStringLiteral("desktop"), QStringLiteral("light"),
                                   QStringLiteral("dark")};

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

namespace preferences {

std::vector<Figure> figures() {
  std::vector<Figure> picked;
  for (const QString& word : QSettings().value(kFigureSetting).toStringList())
    if (const auto figure = figureOf(word)) picked.push_back(*figure);
  return picked;
}

void setFigures(const std::vector<Figure>& figures) {
  QStringList words;
  for (const Figure figure : figures) words << figureWord(figure);
  if (words.isEmpty())
    QSettings().remove(kFigureSetting);
  else
    QSettings().setValue(kFigureSetting, words);
}

UnitsShown units() {
  const auto index = kUnitWords.indexOf(QSettings().value(kUnits).toString());
  return index < 0 ? UnitsShown::forLocale(QLocale()) : UnitsShown(static_cast<UnitSystem>(index));
}

void setUnits(const UnitsShown& units) {
  QSettings().setValue(kUnits, kUnitWords[static_cast<int>(units.system())]);
}

Appearance appearance() {
  const auto index = kAppearanceWords.indexOf(QSettings().value(kAppearance).toString());
  return static_cast<Appearance>(std::max<qsizetype>(index, 0));
}

void setAppearance(Appearance appearance) {
  if (appearance == Appearance::Desktop)
    QSettings().remove(kAppearance);
  else
    QSettings().setValue(kAppearance, kAppearanceWords[static_cast<int>(appearance)]);
}

bool motion() {
  return QSettings().value(kMotion, true).toBool();
}
void setMotion(bool on) {
  QSettings().setValue(kMotion, on);
}

bool hintsDismissed() {
  return QSettings().value(kHintsDismissed, false).toBool();
}
void setHintsDismissed(bool dismissed) {
  QSettings().setValue(kHintsDismissed, dismissed);
}

QStringList recentFiles() {
  return QSettings().value(kRecent).toStringList();
}

void addRecentFile(const QString& file) {
  const QString path = QFileInfo(file).absoluteFilePath();
  QStringList files = recentFiles();
  files.removeAll(path);
  files.prepend(path);
  if (files.size() > kMostRecent) files.resize(kMostRecent);
  QSettings().setValue(kRecent, files);
}

void clearRecentFiles() {
  QSettings().remove(kRecent);
}

}  // namespace preferences

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
