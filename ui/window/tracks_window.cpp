// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/tracks_window.h"

#include <QAction>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QVBoxLayout>

#include "core/profile_file.h"
#include "core/track/gpx_out.h"
#include "core/track/track_csv.h"
#include "ui/document/file_name.h"
#include "ui/document/save_bytes.h"
#include "ui/editors/copy_tracks_dialog.h"
#include "ui/editors/dialog_body.h"
#include "ui/editors/recording_dialog.h"
#include "ui/editors/tracks_editor.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/window/save_dialog.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

/// Where files are asked for first: beside the bike.
QString folderOf(MainWindow& window) {
  const QString& bike = window.document().file();
  return bike.isEmpty() ? QString() : QFileInfo(bike).path();
}

}  // namespace

TracksWindow::TracksWindow(MainWindow& window)
    : QDialog(&window), window_(window), tracks_(new TracksEditor(window.document())), message_(new QLabel) {
  setWindowTitle(tr("Tracks"));
  auto* column = new QVBoxLayout(this);
  auto* body = new DialogBody;
  body->column().addWidget(tracks_);
  column->addWidget(body, 1);
  auto* foot = new QHBoxLayout;
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);  // it quotes names
  message_->setAccessibleName(tr("Message"));
  auto* close = new QPushButton(tr("&Close"));
  close->setAutoDefault(false);
  foot->addWidget(message_, 1);
  foot->addWidget(close);
  column->addLayout(foot);
  connect(close, &QPushButton::clicked, this, &QDialog::close);
  // The history is the window's; its keys work here, too.
  QUndoStack& undo = window.document().undoStack();
  QAction* back = undo.createUndoAction(this, tr("&Undo"));
  back->setShortcuts(QKeySequence::Undo);
  QAction* again = undo.createRedoAction(this, tr("&Redo"));
  again->setShortcuts(QKeySequence::Redo);
  addActions({back, again});
  connect(tracks_, &TracksEditor::said, message_, &QLabel::setText);
  connect(tracks_, &TracksEditor::importWanted, this, &TracksWindow::askForRecording);
  connect(tracks_, &TracksEditor::anotherBikeWanted, this, &TracksWindow::askForBike);
  connect(tracks_, &TracksEditor::exportWanted, this, &TracksWindow::save);
  connect(&window, &MainWindow::preferencesTaken, this, [this] { tracks_->refresh(window_.units()); });
  const int character = fontMetrics().averageCharWidth();
  resize(QSize(165 * character, 45 * fontMetrics().lineSpacing())
             .boundedTo(window.screen()->availableSize() * 0.92));
}

void TracksWindow::open(MainWindow& window) {
  auto* tracks = window.findChild<TracksWindow*>(QString(), Qt::FindDirectChildrenOnly);
  if (!tracks) tracks = new TracksWindow(window);
  tracks->show();
  tracks->raise();
  tracks->activateWindow();
}

void TracksWindow::showEvent(QShowEvent* event) {
  QDialog::showEvent(event);
  tracks_->refresh(window_.units());
}

void TracksWindow::askForRecording() {
  const QString file =
      QFileDialog::getOpenFileName(this, tr("Import a Recorded Lap"), folderOf(window_),
                                   tr("Recordings (*.gpx *.csv *.tsv *.txt *.nmea *.log);;All files (*)"));
  if (!file.isEmpty()) importRecording(file);
}

void TracksWindow::importRecording(const QString& file) {
  RecordingDialog dialog(window_.session().lane(), file, window_.units(), this);
  if (dialog.exec() != QDialog::Accepted) return;
  if (const auto track = dialog.track()) tracks_->add({*track});
}

void TracksWindow::askForBike() {
  const QString file = QFileDialog::getOpenFileName(this, tr("Tracks From Another Bike"), folderOf(window_),
                                                    tr("Bikes (*.bike.json *.json);;All files (*)"));
  if (!file.isEmpty()) copyFrom(file);
}

void TracksWindow::copyFrom(const QString& file) {
  const QString failure = tr("Tracks Not Copied");
  const auto other = loadProfile(pathOf(file));
  if (!other) return warnOfFile(this, failure, file, other.problem());
  if (other->tracks.empty()) return warnOfFile(this, failure, file, tr("this bike has no tracks"));
  CopyTracksDialog dialog(other->tracks, shownName(other->name), window_.units(), this);
  if (dialog.exec() == QDialog::Accepted) tracks_->add(dialog.chosen());
}

void TracksWindow::save(std::size_t index) {
  const Track track = window_.document().profile().tracks[index];
  saveExport(window_,
             {.word = QStringLiteral("track"),
              .title = tr("Export Track"),
              .failure = tr("Track Not Exported"),
              .of = shownName(track.name),
              .kinds = {{tr("Comma-separated values"), QStringLiteral(".csv")},
                        {tr("GPX track"), QStringLiteral(".gpx")}}},
             [&](const QString& file) -> std::optional<QString> {
               const bool gpx = file.endsWith(QLatin1String(".gpx"), Qt::CaseInsensitive);
               return saveBytes(file, QByteArray::fromStdString(gpx ? trackGpx(track, trackLine(track))
                                                                    : trackCsv(track)));
             });
}

}  // namespace layshaft::ui
