// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <optional>

#include "core/bike/track.h"
#include "ui/document/recording_study.h"
#include "ui/words/units_shown.h"

class QCheckBox;
class QDialogButtonBox;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;
class QSlider;
class QVBoxLayout;

namespace layshaft::ui {

class CalmComboBox;
class CurvaturePreview;
class TrackPreview;

/// Makes a track of a recording: which lap, and how much it is smoothed, with its map and its curvature in
/// view. The recording is read in the background; what is refused is said in the dialog.
class RecordingDialog : public QDialog {
  Q_OBJECT
 public:
  /// The lane must outlive the dialog.
  RecordingDialog(BackgroundLane& lane, const QString& file, const UnitsShown& units,
                  QWidget* parent = nullptr);

  /// As it stands there; nothing while none could be made.
  std::optional<Track> track() const;
  bool working() const { return study_.running(); }

 private:
  void addChoices(QVBoxLayout& column);
  void addPictures(QVBoxLayout& column);
  void takeRecording(const ReadRecording& read);
  void takeTrack(const RecordedTrack& track);
  void refuse(const QString& why);
  void makeAnew();
  void stop();
  void showState();
  double sliderM() const;

  QString file_;
  UnitsShown units_;
  RecordingStudy study_;
  std::optional<ReadRecording> read_;
  std::optional<RecordedTrack> made_;
  bool stale_ = false;  ///< what is made is not of what is chosen
  QLineEdit* name_;
  CalmComboBox* laps_;
  QCheckBox* automatic_;
  QSlider* smoothing_;
  QLabel *smoothingWords_, *findings_;
  TrackPreview* map_;
  CurvaturePreview* curvature_;
  QProgressBar* progress_;
  QPushButton* stop_;
  QDialogButtonBox* buttons_;
};

}  // namespace layshaft::ui
