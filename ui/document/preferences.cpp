// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/preferences.h"

#include <QFileInfo>
#include <QSettings>
#include <algorithm>

#include "ui/document/file_name.h"

namespace layshaft::ui {
namespace {

const QString kUnits = QStringLiteral("units");
const QString kFigureSetting = QStringLiteral("figures");
const QString kCompareSetting = QStringLiteral("compare");
const QString kAppearance = QStringLiteral("appearance");
const QString kHintsDismissed = QStringLiteral("hints_dismissed");
const QString kMotion = QStringLiteral("view/motion");
const QString kDockPlaces = QStringLiteral("view/docks");
const QString kDetailsOpen = QStringLiteral("view/details_open");
const QString kRecent = QStringLiteral("recent_files");
const QString kGeometry = QStringLiteral("window/geometry");
const QString kPageInView = QStringLiteral("window/page");
const QString kPageState = QStringLiteral("window/%1");
const QString kOpensLastFile = QStringLiteral("open_last_file");
const QString kBikesFolder = QStringLiteral("bikes_folder");
const QString kShopLine = QStringLiteral("shop/line");
const QString kShopLogo = QStringLiteral("shop/logo");
const QString kExportFolder = QStringLiteral("export/folder");
const QString kExportEnding = QStringLiteral("export/%1_ending");
constexpr qsizetype kMostRecent = 10;

const QStringList kAppearanceWords{QStringLiteral("desktop"), QStringLiteral("light"),
                                   QStringLiteral("dark")};

/// Settings hold text: a name that is none is kept as its bytes, percent-encoded.
const QString kBytes = QStringLiteral("bytes:");

QString keptFile(const QString& name) {
  if (QString::fromUtf8(name.toUtf8()) == name) return name;
  const QByteArray bytes = QByteArray::fromStdString(pathOf(name).native());
  return kBytes + QString::fromLatin1(bytes.toPercentEncoding("/"));
}

QString fileOf(const QString& kept) {
  if (!kept.startsWith(kBytes)) return kept;
  return nameOf(QByteArray::fromPercentEncoding(kept.mid(kBytes.size()).toLatin1()).toStdString());
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

std::vector<CompareFigure> compareFigures() {
  std::vector<CompareFigure> chosen;
  for (const QString& word : QSettings().value(kCompareSetting).toStringList())
    if (const auto figure = compareFigureOf(word)) chosen.push_back(*figure);
  if (chosen.empty()) return usualCompareFigures();
  std::sort(chosen.begin(), chosen.end());  // whatever order a file of settings has
  return chosen;
}

void setCompareFigures(const std::vector<CompareFigure>& figures) {
  QStringList words;
  for (const CompareFigure figure : figures) words << compareWord(figure);
  if (words.isEmpty() || figures == usualCompareFigures())
    QSettings().remove(kCompareSetting);
  else
    QSettings().setValue(kCompareSetting, words);
}

UnitsShown units() {
  return UnitsShown::fromWord(QSettings().value(kUnits).toString())
      .value_or(UnitsShown::forLocale(QLocale()));
}

void setUnits(const UnitsShown& units) {
  QSettings().setValue(kUnits, units.word());
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

QByteArray dockPlaces() {
  return QSettings().value(kDockPlaces).toByteArray();
}
void setDockPlaces(const QByteArray& places) {
  QSettings().setValue(kDockPlaces, places);
}

bool detailsOpen() {
  return QSettings().value(kDetailsOpen, false).toBool();
}
void setDetailsOpen(bool open) {
  if (open)
    QSettings().setValue(kDetailsOpen, true);
  else
    QSettings().remove(kDetailsOpen);
}

QStringList recentFiles() {
  QStringList files;
  for (const QString& kept : QSettings().value(kRecent).toStringList()) files << fileOf(kept);
  return files;
}

void addRecentFile(const QString& file) {
  const QString path = QFileInfo(file).absoluteFilePath();
  QStringList files = recentFiles();
  files.removeAll(path);
  files.prepend(path);
  if (files.size() > kMostRecent) files.resize(kMostRecent);
  QStringList kept;
  for (const QString& name : files) kept << keptFile(name);
  QSettings().setValue(kRecent, kept);
}

void clearRecentFiles() {
  QSettings().remove(kRecent);
}

QByteArray windowGeometry() {
  return QSettings().value(kGeometry).toByteArray();
}
void setWindowGeometry(const QByteArray& geometry) {
  QSettings().setValue(kGeometry, geometry);
}

QString pageInView() {
  return QSettings().value(kPageInView).toString();
}
void setPageInView(const QString& page) {
  QSettings().setValue(kPageInView, page);
}

QVariantMap pageState(const QString& page) {
  return QSettings().value(kPageState.arg(page)).toMap();
}
void setPageState(const QString& page, const QVariantMap& state) {
  if (state.isEmpty())
    QSettings().remove(kPageState.arg(page));
  else
    QSettings().setValue(kPageState.arg(page), state);
}

bool opensLastFile() {
  return QSettings().value(kOpensLastFile, false).toBool();
}
void setOpensLastFile(bool on) {
  QSettings().setValue(kOpensLastFile, on);
}

QString shopLine() {
  return QSettings().value(kShopLine).toString();
}

void setShopLine(const QString& line) {
  if (line.isEmpty())
    QSettings().remove(kShopLine);
  else
    QSettings().setValue(kShopLine, line);
}

QString shopLogo() {
  return fileOf(QSettings().value(kShopLogo).toString());
}

void setShopLogo(const QString& file) {
  if (file.isEmpty())
    QSettings().remove(kShopLogo);
  else
    QSettings().setValue(kShopLogo, keptFile(file));
}

QString exportFolder() {
  return fileOf(QSettings().value(kExportFolder).toString());
}
void setExportFolder(const QString& folder) {
  QSettings().setValue(kExportFolder, keptFile(folder));
}

QString bikesFolder() {
  return fileOf(QSettings().value(kBikesFolder).toString());
}
void setBikesFolder(const QString& folder) {
  QSettings().setValue(kBikesFolder, keptFile(folder));
}

QString exportEnding(const QString& word) {
  return QSettings().value(kExportEnding.arg(word)).toString();
}
void setExportEnding(const QString& word, const QString& ending) {
  QSettings().setValue(kExportEnding.arg(word), ending);
}

}  // namespace preferences

}  // namespace layshaft::ui
