// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/file_actions.h"

#include <QApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QPushButton>
#include <QStandardPaths>
#include <filesystem>
#include <utility>

#include "core/profile_file.h"
#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/document/samples.h"
#include "ui/editors/new_bike_dialog.h"
#include "ui/window/bikes_window.h"
#include "ui/window/export_actions.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/window/print_actions.h"
#include "ui/window/save_dialog.h"
#include "ui/words/plain_text.h"
#include "ui/words/record_words.h"

namespace layshaft::ui {
namespace {

const QString kFileEnding = QStringLiteral(".bike.json");

/// How bikes are called in dialogs, and how their files end; what other programs wrote may end otherwise.
QList<FileKind> bikeKinds() {
  return {{FileActions::tr("Bike profiles"), kFileEnding},
          {FileActions::tr("JSON files"), QStringLiteral(".json")}};
}

QString openFilter() {
  return FileActions::tr("Bike profiles (*.bike.json);;All files (*)");
}

/// The window that shows a file, whatever link or detour leads to it; null if none does.
MainWindow* windowOn(const QString& file) {
  for (MainWindow* window : MainWindow::all())
    if (const QString& shown = window->document().file();
        !shown.isEmpty() && sameFile(pathOf(shown), pathOf(file)))
      return window;
  return nullptr;
}

}  // namespace

void finishTyping(QWidget& window) {
  if (QWidget* field = window.focusWidget()) {
    field->clearFocus();
    field->setFocus();
  }
}

FileActions::FileActions(MainWindow& window)
    : QObject(&window), window_(window), exports_(new ExportActions(window)) {}

void FileActions::addFileMenu(QMenuBar& bar) {
  const auto icon = [](const char* name) { return QIcon::fromTheme(QLatin1String(name)); };
  QMenu* menu = bar.addMenu(tr("&File"));
  menu->addAction(icon("document-new"), tr("&New Bike…"), QKeySequence::New, this, &FileActions::newBike);
  menu->addAction(icon("document-open"), tr("&Open…"), QKeySequence::Open, this, &FileActions::open);
  QMenu* recent = menu->addMenu(icon("document-open-recent"), tr("Open &Recent"));
  connect(recent, &QMenu::aboutToShow, this, [this, recent] { rebuildRecent(recent); });
  menu->addAction(tr("&Bikes in a Folder…"), this, [this] { BikesWindow::open(window_); });
  QAction* again = menu->addAction(tr("Open the &Last File at Start"), this,
                                   [](bool on) { preferences::setOpensLastFile(on); });
  again->setCheckable(true);
  connect(menu, &QMenu::aboutToShow, again, [again] { again->setChecked(preferences::opensLastFile()); });
  menu->addSeparator();
  menu->addAction(icon("document-save"), tr("&Save"), QKeySequence::Save, this, &FileActions::save);
  menu->addAction(icon("document-save-as"), tr("Save &As…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
                  this, &FileActions::saveAs);
  revert_ = menu->addAction(icon("document-revert"), tr("Re&vert to Saved"), this, &FileActions::revert);
  menu->addSeparator();
  QMenu* exports = menu->addMenu(icon("document-export"), tr("&Export"));
  exports_->addTo(*exports);
  (new PrintActions(window_))->addTo(*menu);
  menu->addSeparator();
  menu->addAction(icon("window-close"), tr("&Close Window"), QKeySequence::Close, &window_, &QWidget::close);
  menu->addAction(icon("application-exit"), tr("&Quit"), QKeySequence::Quit, qApp,
                  &QApplication::closeAllWindows);
}

void FileActions::watchOverUnsavedWork() {
  Session& session = window_.session();
  connect(&session.document(), &Document::titleChanged, this, &FileActions::updateRevert);
  connect(&session.watch(), &FileWatch::changed, this, &FileActions::updateRevert);
  updateRevert();
  const auto sayTrouble = [this](const QString& why) {
    window_.say(tr("Unsaved work cannot be kept safe in %1: %2.").arg(shownFile(recoveryFolder()), why));
  };
  connect(&session.recovery(), &RecoveryCopy::troubled, this, sayTrouble);
  if (!session.recovery().trouble().isEmpty()) sayTrouble(session.recovery().trouble());
}

void FileActions::updateRevert() {
  const Document& document = window_.document();
  window_.session().watch().follow(document.file());
  const bool other = document.changedOutside();
  revert_->setEnabled(!document.file().isEmpty() && (document.isModified() || other));
  if (other && !toldOfOther_)
    window_.say(tr("%1 was changed by another program. File ▸ Revert to Saved loads it as it is now.")
                    .arg(shownFile(QFileInfo(document.file()).fileName())));
  toldOfOther_ = other;
}

void FileActions::rebuildRecent(QMenu* menu) {
  menu->clear();
  const QStringList files = preferences::recentFiles();
  for (const QString& file : files) {
    QString name = shownFile(file);
    menu->addAction(name.replace(QLatin1Char('&'), QStringLiteral("&&")), this,
                    [this, file] { openFile(file); });
  }
  if (files.isEmpty()) {
    menu->addAction(tr("Nothing yet"))->setEnabled(false);
    return;
  }
  menu->addSeparator();
  menu->addAction(tr("Clear This List"), this, [] { preferences::clearRecentFiles(); });
}

void FileActions::newBike() {
  NewBikeDialog dialog(samples(), &window_, preferences::units());
  if (dialog.exec() != QDialog::Accepted) return;
  if (auto profile = dialog.profile()) MainWindow::showUnsaved(*profile);
}

void FileActions::open() {
  const QString& file = window_.document().file();
  const QString folder = file.isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                                        : QFileInfo(file).path();
  for (const QString& chosen :
       QFileDialog::getOpenFileNames(&window_, tr("Open a Bike"), folder, openFilter()))
    openFile(chosen);
}

void FileActions::openFile(const QString& file) {
  std::error_code error;
  const QString path = nameOf(std::filesystem::absolute(pathOf(file), error));
  if (MainWindow* window = windowOn(path)) {
    window->raise();
    window->activateWindow();
    return;
  }
  const auto mark = markOf(pathOf(path));  // before it is read: a change in between is one of somebody else
  auto profile = loadProfile(pathOf(path));
  if (!profile) return warnOfFile(&window_, tr("Bike Not Opened"), path, profile.problem());
  preferences::addRecentFile(path);
  const Document& here = window_.document();
  const bool untouchedSample = here.file().isEmpty() && !here.isModified();
  MainWindow* window = untouchedSample ? &window_ : MainWindow::create(*profile);
  window->document().load(std::move(profile).value(), path, mark);
  window->show();
  if (const QString decision = latestDecision(window->document().profile()); !decision.isEmpty())
    window->say(decision);
}

void FileActions::openLastFile() {
  const QString last = preferences::recentFiles().value(0);
  if (!preferences::opensLastFile() || last.isEmpty()) return;
  if (!markOf(pathOf(last)))
    return window_.say(tr("The last file, %1, is not there any more.").arg(shownFile(last)));
  openFile(last);
}

void FileActions::openDropped(const QList<QUrl>& urls) {
  for (const QUrl& url : urls) {
    if (url.isLocalFile())
      openFile(
          nameOf(QByteArray::fromPercentEncoding(url.path(QUrl::FullyEncoded).toLatin1()).toStdString()));
    else
      warn(&window_, tr("Bike Not Opened"),
           tr("%1 is not a file on this computer.").arg(onOneLine(url.toDisplayString())));
  }
}

bool FileActions::saveTo(const QString& file) {
  if (const auto problem = window_.document().save(file)) {
    warnOfFile(&window_, tr("Bike Not Saved"), file, *problem);
    return false;
  }
  preferences::addRecentFile(file);
  return true;
}

bool FileActions::save() {
  finishTyping(window_);
  const Document& document = window_.document();
  if (document.file().isEmpty()) return saveAs();
  if (document.changedOutside() &&
      ask(&window_, QMessageBox::Warning, tr("Save"),
          tr("%1 was changed by something else since it was opened or saved here. Replace it with what this "
             "window shows?")
              .arg(shownFile(document.file())),
          QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Cancel) != QMessageBox::Save)
    return false;
  return saveTo(document.file());
}

bool FileActions::saveAs() {
  finishTyping(window_);
  QString start = window_.document().file();
  if (start.isEmpty())
    start = QDir(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation))
                .filePath(fileNameFrom(window_.document().title()) + kFileEnding);
  const QString chosen = fileToSave(&window_, tr("Save the Bike As"), start, bikeKinds(), kFileEnding);
  if (chosen.isEmpty()) return false;
  const QString file = QFileInfo(chosen).absoluteFilePath();
  if (MainWindow* other = windowOn(file); other && other != &window_) {
    warn(&window_, tr("Bike Not Saved"), tr("%1 is open in another window.").arg(shownFile(file)));
    return false;
  }
  return saveTo(file);
}

void FileActions::revert() {
  Document& document = window_.document();
  if (document.isModified() && !mayRevert()) return;
  const QString file = document.file();
  const auto mark = markOf(pathOf(file));
  auto profile = loadProfile(pathOf(file));
  if (!profile) return warnOfFile(&window_, tr("Bike Not Reverted"), file, profile.problem());
  document.revert(std::move(profile).value(), mark);
}

bool FileActions::mayRevert() {
  QMessageBox question(QMessageBox::Question, tr("Revert"),
                       tr("Go back to the bike as it was saved? Edit ▸ Undo brings your changes back."),
                       QMessageBox::Cancel, &window_);
  const QPushButton* revert = question.addButton(tr("Revert"), QMessageBox::AcceptRole);
  question.setDefaultButton(QMessageBox::Cancel);
  question.exec();
  return question.clickedButton() == revert;
}

bool FileActions::mayDiscard() {
  finishTyping(window_);
  const Document& document = window_.document();
  const bool gone = !document.file().isEmpty() && !markOf(pathOf(document.file()));
  if (!document.isModified() && !gone) return true;
  const auto answer =
      ask(&window_, QMessageBox::Warning, tr("Save the Changes?"),
          document.isModified()
              ? tr("“%1” has changes that are not saved.").arg(document.title())
              : tr("The file of “%1” is gone, and this window has the last of it.").arg(document.title()),
          QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
  if (answer == QMessageBox::Save) return save();
  return answer == QMessageBox::Discard;
}

}  // namespace layshaft::ui
