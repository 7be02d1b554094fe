// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QStringList>
#include <QVariantMap>
#include <optional>
#include <vector>

#include "ui/words/compare_rows.h"
#include "ui/words/key_figures.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

enum class Appearance { Desktop, Light, Dark };

/// What the program remembers for its user; only what differs from the default is written.
namespace preferences {

/// The readout's figures as picked; empty: the usual ones.
std::vector<Figure> figures();
void setFigures(const std::vector<Figure>& figures);

/// The rows of the comparison as chosen.
std::vector<CompareFigure> compareFigures();
void setCompareFigures(const std::vector<CompareFigure>& figures);

UnitsShown units();
void setUnits(const UnitsShown& units);

Appearance appearance();
void setAppearance(Appearance appearance);

/// Whether pictures may move of themselves.
bool motion();
void setMotion(bool on);

bool hintsDismissed();
void setHintsDismissed(bool dismissed);

/// Where the window's docks are, as the window writes it; empty: where they are at first.
QByteArray dockPlaces();
void setDockPlaces(const QByteArray& places);
/// Whether Bike Details was open when a window was closed last.
bool detailsOpen();
void setDetailsOpen(bool open);

/// Most recent first, at most ten, files that are gone included: a stick may be plugged in again.
QStringList recentFiles();
void addRecentFile(const QString& file);
void clearRecentFiles();

/// Size, place and state of the window that was closed last, as the toolkit writes them; empty before.
QByteArray windowGeometry();
void setWindowGeometry(const QByteArray& geometry);
/// The page that was in view, by a word of its own; empty before.
QString pageInView();
void setPageInView(const QString& page);
/// How a page was set up, in the page's own words.
QVariantMap pageState(const QString& page);
void setPageState(const QString& page, const QVariantMap& state);

/// What the user's shop puts at the head of its sheets: a line, and a picture by the name of its file; empty
/// before.
QString shopLine();
void setShopLine(const QString& line);
QString shopLogo();
void setShopLogo(const QString& file);

/// Whether the program starts with the file that was worked on last.
bool opensLastFile();
void setOpensLastFile(bool on);

/// Where pictures, data and reports went last; empty before.
QString exportFolder();
void setExportFolder(const QString& folder);
/// The folder whose bikes were listed last; empty before.
QString bikesFolder();
void setBikesFolder(const QString& folder);
/// The ending of the last export of that name, such as "picture"; empty before.
QString exportEnding(const QString& word);
void setExportEnding(const QString& word, const QString& ending);

}  // namespace preferences

}  // namespace layshaft::ui
