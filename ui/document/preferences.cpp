// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/preferences.h"

#include <QFileInfo>
#include <QSettings>

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

}  // namespace layshaft::ui
