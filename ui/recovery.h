// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>
#include <vector>

#include "ui/document.h"

namespace layshaft::ui {

/// Keeps a copy of unsaved work beside the settings, so that a crash or a flat battery loses nothing. The
/// copy goes when the document is saved or closed.
class RecoveryCopy : public QObject {
  Q_OBJECT
 public:
  RecoveryCopy(const Document& document, const QString& folder, QObject* parent = nullptr);
  ~RecoveryCopy() override;

  void writeNow();
  void discard();

 private:
  const Document& document_;
  QString path_;
  std::unique_ptr<QLockFile> lock_;
  QTimer delay_;
};

/// Work that a program which is no longer running left behind.
struct Recovered {
  QString copy;          ///< the recovery file
  QString originalFile;  ///< empty if it had never been saved
  Profile profile;
};

/// What can be recovered in `folder`; copies of programs still running are left alone, unreadable ones are
/// kept.
std::vector<Recovered> recoverable(const QString& folder);

/// Removes a recovery file and its lock, once its work is open again or declined.
void removeRecovery(const QString& copy);

/// Where recovery copies are kept for this user.
QString recoveryFolder();

}  // namespace layshaft::ui
