// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/file_watch.h"

#include <QFileInfo>

namespace layshaft::ui {

void FileWatch::follow(const QString& file) {
  if (file == file_) return;
  file_ = file;
  watcher_.reset();
  if (file.isEmpty()) return;
  watcher_ = std::make_unique<QFileSystemWatcher>();
  const auto tell = [this] {
    watch();  // a file that was replaced is a new one, which nobody watches yet
    emit changed();
  };
  connect(watcher_.get(), &QFileSystemWatcher::fileChanged, this, tell);
  connect(watcher_.get(), &QFileSystemWatcher::directoryChanged, this, tell);
  watch();
}

void FileWatch::watch() {
  const QFileInfo info(file_);
  for (const QString& path : {info.absoluteFilePath(), info.absolutePath()})
    if (QFileInfo::exists(path) && !watcher_->files().contains(path) &&
        !watcher_->directories().contains(path))
      watcher_->addPath(path);
}

}  // namespace layshaft::ui
