// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/recording_study.h"

#include <QFileInfo>
#include <utility>

#include "ui/document/file_name.h"

namespace layshaft::ui {

void RecordingStudy::read(const QString& file) {
  start({[this, file](const Stopped& stopped) -> Delivery {
    auto loaded = loadRecording(pathOf(file));
    if (!loaded) return [this, problem = loaded.problem()] { emit refused(problem); };
    auto recording = std::move(loaded).value();
    // A profile is text, which a file's name need not be.
    recording.source = shownFile(QFileInfo(file).fileName()).toStdString();
    const auto shared = std::make_shared<const Recording>(std::move(recording));
    if (stopped()) return {};
    const auto line = recordedLine(*shared);
    if (!line) return [this, problem = line.problem()] { emit refused(problem); };
    ReadRecording read{shared, recordedLaps(*line)};
    if (stopped()) return {};
    return [this, read = std::move(read), track = trackOf(shared, {})] {
      emit recordingRead(read);
      track();
    };
  }});
}

void RecordingStudy::make(const ReadRecording& read, const TrackOptions& options) {
  start({[this, recording = read.recording, options](const Stopped&) -> Delivery {
    return trackOf(recording, options);
  }});
}

BackgroundWork::Delivery RecordingStudy::trackOf(const std::shared_ptr<const Recording>& recording,
                                                 const TrackOptions& options) {
  auto track = recordedTrack(*recording, options);
  if (!track) return [this, problem = track.problem()] { emit refused(problem); };
  return [this, track = std::move(track).value()] { emit trackMade(track); };
}

}  // namespace layshaft::ui
