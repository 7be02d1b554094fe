// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/file_watch.h"

#include <QFileInfo>

namespace layshaft::ui {

FileWatch::FileWatch(QObject* parent) : QObject(parent) {
  const auto tell = [this] {
    watch();  // a file that was replaced is a new one, which nobody watches yet
    emit changed();
  };
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, tell);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, tell);
}

void FileWatch::follow(const QString& file) {
  if (file == file_) return;
  file_ = file;
  const QStringList old = watcher_.files() + watcher_.directories();
  if (!old.isEmpty()) watcher_.removePaths(old);
  watch();
}

void FileWatch::watch() {
  if (file_.isEmpty()) return;
  const QFileInfo info(file_);
  for (const QString& path : {info.absoluteFilePath(), info.absolutePath()})
    if (QFileInfo::exists(path) && !watcher_.files().contains(path) && !watcher_.directories().contains(path))
      watcher_.addPath(path);
}

}  // namespace layshaft::ui
