// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/save_dialog.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QStandardPaths>

#include "core/file.h"
#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(SaveDialog)
};

QString filterOf(const FileKind& kind) {
  return QStringLiteral("%1 (*%2)").arg(kind.name, kind.ending);
}

/// The bike as its file calls it, else by its name.
QString bikeName(const Document& document) {
  if (document.file().isEmpty()) return document.title();
  QString name = shownFile(QFileInfo(document.file()).fileName());
  for (const QString& ending : {QStringLiteral(".json"), QStringLiteral(".bike")})
    if (name.endsWith(ending, Qt::CaseInsensitive)) name.chop(ending.size());
  return name;
}

/// Beside the bike's file, else where the last export went, else where documents are.
QString exportFolder(const Document& document) {
  QStringList places{preferences::exportFolder(),
                     QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)};
  if (!document.file().isEmpty()) places.prepend(QFileInfo(document.file()).absolutePath());
  for (const QString& place : places)
    if (!place.isEmpty() && QFileInfo(place).isDir()) return place;
  return QDir::homePath();
}

bool isOpenBike(const QString& file) {
  for (MainWindow* window : MainWindow::all())
    if (const QString& open = window->document().file();
        !open.isEmpty() && sameFile(pathOf(open), pathOf(file)))
      return true;
  return false;
}

}  // namespace

QString fileNameFrom(const QString& title) {
  QString name;
  for (const QChar c : onOneLine(title))
    name += QStringLiteral("/\\:*?\"<>|").contains(c) ? QLatin1Char('-') : c;
  name = name.simplified();
  while (name.startsWith(QLatin1Char('.'))) name.remove(0, 1);  // else it would be hidden
  constexpr qsizetype kLongest = 80;  // in bytes at most four times that, and an ending must fit too
  return name.left(name.size() > kLongest && name[kLongest - 1].isHighSurrogate() ? kLongest - 1 : kLongest);
}

QString exportName(const Document& document, const QString& of) {
  return fileNameFrom(
      Say::tr("%1 – %2", "bike and what is shown of it, as a file's name").arg(bikeName(document), of));
}

QString exportPath(const Document& document, const QString& of, const QString& ending) {
  return QDir(exportFolder(document)).filePath(exportName(document, of) + ending);
}

QString fileToSave(QWidget* parent, const QString& title, const QString& start, const QList<FileKind>& kinds,
                   const QString& usual) {
  QStringList filters;
  QString filter;
  for (const FileKind& kind : kinds) {
    filters << filterOf(kind);
    if (kind.ending == usual || filter.isEmpty()) filter = filters.back();
  }
  const QString chosen =
      QFileDialog::getSaveFileName(parent, title, start, filters.join(QStringLiteral(";;")), &filter);
  if (chosen.isEmpty()) return {};
  QString ending = kinds.front().ending;
  for (const FileKind& kind : kinds) {
    if (chosen.endsWith(kind.ending, Qt::CaseInsensitive)) return chosen;
    if (filterOf(kind) == filter) ending = kind.ending;
  }
  const QString file = chosen + ending;
  if (QFileInfo::exists(file) && ask(parent, QMessageBox::Question, title,
                                     Say::tr("%1 already exists. Replace it?").arg(shownFile(file)),
                                     QMessageBox::Yes | QMessageBox::No, QMessageBox::No) != QMessageBox::Yes)
    return {};
  return file;
}

void saveExport(MainWindow& window, const Export& what, const WriteFile& write) {
  const QString last = preferences::exportEnding(what.word);
  QString ending = what.kinds.front().ending;
  for (const FileKind& kind : what.kinds)
    if (kind.ending == last) ending = last;
  const QString file =
      fileToSave(&window, what.title, exportPath(window.document(), what.of, ending), what.kinds, ending);
  if (file.isEmpty()) return;
  if (isOpenBike(file))
    return warn(&window, what.failure,
                Say::tr("%1 is a bike that is open. Give it another name.").arg(shownFile(file)));
  if (const auto why = write(file)) return warnOfFile(&window, what.failure, file, *why);
  preferences::setExportFolder(QFileInfo(file).absolutePath());
  for (const FileKind& kind : what.kinds)
    if (file.endsWith(kind.ending, Qt::CaseInsensitive)) preferences::setExportEnding(what.word, kind.ending);
  window.say(Say::tr("Saved to %1.").arg(shownFile(file)));
}

}  // namespace layshaft::ui
