// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QList>
#include <QString>
#include <QStringList>
#include <functional>
#include <optional>

class QWidget;

namespace layshaft::ui {

class Document;
class MainWindow;

/// A kind of file: what people call it and how its names end, such as ".png".
struct FileKind {
  QString name;
  QString ending;
};

/// Asks where to save, and as which of the kinds; a name without an ending of theirs gets that of the kind
/// that is chosen, `usual` at first, and a file that would then be replaced without the dialog having asked
/// is asked about here. Empty if the user thinks better of it.
QString fileToSave(QWidget* parent, const QString& title, const QString& start, const QList<FileKind>& kinds,
                   const QString& usual);

/// A name for a file from any text: no folder is meant by it, and nothing that a file system may refuse.
QString fileNameFrom(const QString& title);

/// The name that is suggested for what a bike is exported to: "club-600 – sawtooth".
QString exportName(const Document& document, const QString& of);
/// The same as a whole path: beside the bike's file, else where the last export went, else among the
/// documents.
QString exportPath(const Document& document, const QString& of, const QString& ending);

/// What leaves the program other than a bike: never saved over a bike that is open.
struct Export {
  QString word;     ///< what settings call it: its kind is remembered under this name
  QString title;    ///< of the dialog
  QString failure;  ///< title of the message when it could not be saved
  QString of;       ///< what it shows, for the name that is suggested: "acceleration"
  QList<FileKind> kinds;
};

/// Writes a file of the kind that its ending names; says what went wrong.
using WriteFile = std::function<std::optional<QString>(const QString& file)>;

/// Asks where to, beginning at `exportPath`, writes, and says where it is now.
void saveExport(MainWindow& window, const Export& what, const WriteFile& write);

}  // namespace layshaft::ui
