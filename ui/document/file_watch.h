// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <QString>

namespace layshaft::ui {

/// Tells when a file may have become another: written over, replaced by a new one, or gone and come back.
class FileWatch : public QObject {
  Q_OBJECT
 public:
  explicit FileWatch(QObject* parent = nullptr);

  /// Watches this file from now on, and no other; empty: none.
  void follow(const QString& file);

 signals:
  void changed();

 private:
  void watch();

  QFileSystemWatcher watcher_;
  QString file_;
};

}  // namespace layshaft::ui
