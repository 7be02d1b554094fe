// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <QString>
#include <memory>

namespace layshaft::ui {

/// Tells when a file may have become another: written over, replaced by a new one, or gone and come back.
class FileWatch : public QObject {
  Q_OBJECT
 public:
  using QObject::QObject;

  /// Watches this file from now on, and no other; empty: none.
  void follow(const QString& file);

 signals:
  void changed();

 private:
  void watch();

  std::unique_ptr<QFileSystemWatcher> watcher_;  ///< none before there is a file
  QString file_;
};

}  // namespace layshaft::ui
