// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QFileSystemWatcher>
#include <QObject>
#include <QString>
#include <QTimer>
#include <optional>
#include <vector>

#include "core/file.h"
#include "ui/document/background_lane.h"

namespace layshaft::ui {

/// One file of a folder as a list of bikes shows it.
struct FolderBike {
  enum class State { Waiting, Read, Broken };

  QString file;                  ///< the whole path, as `nameOf` makes it
  std::optional<FileMark> mark;  ///< how it was when it was listed
  State state = State::Waiting;
  QString name, customer;  ///< as they may be shown
  QString pair;            ///< "16/43", or "16/43 → 15/45" where another is proposed
  QString problem;         ///< of a broken one, a sentence without full stop

  QDateTime changed() const;
};

/// The bikes of a folder. Files are listed at once and read in the background a few at a time, so that
/// thousands of them block nothing; what is read stays until its file changes. Follows the folder.
class BikeFolder : public QObject {
  Q_OBJECT
 public:
  explicit BikeFolder(QObject* parent = nullptr);

  /// Lists a folder from now on, and no other.
  void open(const QString& folder);
  const QString& folder() const { return folder_; }
  /// Why it cannot be listed, in the system's words; empty where it can.
  const QString& trouble() const { return trouble_; }

  const std::vector<FolderBike>& bikes() const { return bikes_; }
  bool reading() const { return work_.running(); }

  /// Looks which files are there by now and reads those that are new or changed.
  void refresh();

 signals:
  void listing();                          ///< the list is about to become another
  void listed();                           ///< the list is another
  void bikesChanged(int first, int last);  ///< from here to there, both included, more is known
  void settled();                          ///< everything is read

 private:
  std::vector<FolderBike> look();
  void read();

  QString folder_, trouble_;
  std::vector<FolderBike> bikes_;
  QFileSystemWatcher watcher_;
  QTimer delay_;  ///< a folder that is copied into changes many times a second
  BackgroundLane lane_;
  BackgroundWork work_{lane_};
};

}  // namespace layshaft::ui
