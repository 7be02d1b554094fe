// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "core/import/recording.h"
#include "core/problem.h"
#include "core/track/laps.h"
#include "core/track/recorded_track.h"
#include "ui/document/background_lane.h"

namespace layshaft::ui {

/// A recording that was read, and the laps that were found in it.
struct ReadRecording {
  std::shared_ptr<const Recording> recording;
  std::vector<RecordedLap> laps;
};

/// Reads recordings and makes tracks of them in the background: of each kind of request the latest wins.
class RecordingStudy : public BackgroundWork {
  Q_OBJECT
 public:
  using BackgroundWork::BackgroundWork;

  /// A file, with a track of its best lap.
  void read(const QString& file);
  /// Another track of a recording that is read.
  void make(const ReadRecording& read, const TrackOptions& options);

 signals:
  void recordingRead(const layshaft::ui::ReadRecording& read);
  void trackMade(const layshaft::RecordedTrack& track);
  void refused(const layshaft::Problem& problem);

 private:
  Delivery trackOf(const std::shared_ptr<const Recording>& recording, const TrackOptions& options);
};

}  // namespace layshaft::ui
