// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QObject>
#include <QString>
#include <QThreadPool>
#include <QTimer>
#include <atomic>
#include <memory>
#include <optional>
#include <vector>

#include "ui/document/document.h"

namespace layshaft::ui {

/// Says to other programs that somebody looks after a recovery copy, as long as this lives: the system lets
/// go of it however the program ends, and no process number is written anywhere that could be another's by
/// now.
class RecoveryLock {
 public:
  enum class State { Held, SomebodyElses, Impossible };

  explicit RecoveryLock(const QString& copy);
  RecoveryLock(const RecoveryLock&) = delete;
  RecoveryLock& operator=(const RecoveryLock&) = delete;
  ~RecoveryLock();

  State state() const { return state_; }

 private:
  int file_;
  State state_;
};

/// Keeps a copy of unsaved work beside the settings, so that a crash or a flat battery loses nothing. The
/// copy goes when the document is saved or closed.
class RecoveryCopy : public QObject {
  Q_OBJECT
 public:
  RecoveryCopy(const Document& document, const QString& folder, QObject* parent = nullptr);
  ~RecoveryCopy() override;

  /// Writes without delay and waits until it is on the disk. Whether it is: else what is kept elsewhere must
  /// stay.
  bool writeNow();
  void discard();

  /// Why unsaved work cannot be kept safe; empty while it can.
  const QString& trouble() const { return trouble_; }

 signals:
  void troubled(const QString& why);  ///< once for each new reason

 private:
  void write();
  void wrote(const QString& why);

  const Document& document_;
  QString path_;
  std::unique_ptr<RecoveryLock> lock_;
  QTimer delay_;
  std::atomic<bool> onDisk_ = false;  ///< whether the last writing worked
  QThreadPool writer_;                ///< waiting for the disk must not stop the charts
  QString trouble_;
};

/// Work that a program which is no longer running left behind. While this lives no other start is offered it.
struct Recovered {
  QString copy;                  ///< the recovery file
  QString originalFile;          ///< empty if it had never been saved
  std::optional<FileMark> mark;  ///< how that file was when the work on it began
  QDateTime written;             ///< when the copy was; not valid in copies that do not say
  Profile profile;
  std::shared_ptr<RecoveryLock> claim;
};

/// What can be recovered in `folder`, newest first; copies that somebody looks after are left alone,
/// unreadable ones are kept.
std::vector<Recovered> recoverable(const QString& folder);

/// Removes a recovery file and its lock, once its work is open again or declined.
void removeRecovery(const QString& copy);

/// Where recovery copies are kept for this user.
QString recoveryFolder();

}  // namespace layshaft::ui
