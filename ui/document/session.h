// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/document/background_lane.h"
#include "ui/document/document.h"
#include "ui/document/file_watch.h"
#include "ui/document/ladder_study.h"
#include "ui/document/planner.h"
#include "ui/document/recovery.h"

namespace layshaft::ui {

/// One bike that is worked on: the document, its plan, what keeps it safe and what is worked out beside it.
/// Any number of windows may show it.
class Session {
 public:
  explicit Session(Profile profile)
      : document_(std::move(profile)), recovery_(document_, recoveryFolder()), planner_(document_) {}

  Document& document() { return document_; }
  RecoveryCopy& recovery() { return recovery_; }
  FileWatch& watch() { return watch_; }
  Planner& planner() { return planner_; }
  LadderStudy& ladder() { return ladder_; }
  /// For long work that somebody else starts, who is gone before the session is.
  BackgroundLane& lane() { return lane_; }

 private:
  Document document_;
  RecoveryCopy recovery_;
  FileWatch watch_;
  Planner planner_;
  BackgroundLane lane_;
  LadderStudy ladder_{lane_};
};

}  // namespace layshaft::ui
