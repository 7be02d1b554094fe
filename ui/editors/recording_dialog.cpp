// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/recording_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QScreen>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "ui/charts/curvature_preview.h"
#include "ui/charts/track_preview.h"
#include "ui/document/file_name.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/dialog_body.h"
#include "ui/words/track_words.h"

namespace layshaft::ui {
namespace {

constexpr int kSliderSteps = 100;

/// Fine where little is smoothed: metres grow with the square of the slider.
double metresOf(int step) {
  const double share = static_cast<double>(step) / kSliderSteps;
  return limits::kSmoothingM.low + (limits::kSmoothingM.high - limits::kSmoothingM.low) * share * share;
}

int stepOf(double metres) {
  const double share =
      (metres - limits::kSmoothingM.low) / (limits::kSmoothingM.high - limits::kSmoothingM.low);
  return static_cast<int>(std::lround(kSliderSteps * std::sqrt(std::clamp(share, 0.0, 1.0))));
}

}  // namespace

RecordingDialog::RecordingDialog(BackgroundLane& lane, const QString& file, const UnitsShown& units,
                                 QWidget* parent)
    : QDialog(parent),
      file_(file),
      units_(units),
      study_(lane),
      name_(new QLineEdit(trackNameFromFile(shownFile(file)))),
      laps_(new CalmComboBox),
      automatic_(new QCheckBox(tr("&Automatic"))),
      smoothing_(new QSlider(Qt::Horizontal)),
      smoothingWords_(new QLabel),
      findings_(new QLabel),
      map_(new TrackPreview),
      curvature_(new CurvaturePreview),
      progress_(new QProgressBar),
      stop_(new QPushButton(tr("St&op"))),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)) {
  setWindowTitle(tr("Import a Recorded Lap"));
  auto* column = new QVBoxLayout(this);
  auto* body = new DialogBody;
  column->addWidget(body, 1);
  addChoices(body->column());
  addPictures(body->column());
  auto* foot = new QHBoxLayout;
  progress_->setRange(0, 0);
  progress_->setTextVisible(false);
  progress_->setAccessibleName(tr("Reading the recording"));
  stop_->setAutoDefault(false);
  foot->addWidget(progress_, 1);
  foot->addWidget(stop_);
  foot->addWidget(buttons_, 1);
  column->addLayout(foot);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("Add Track"));
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(stop_, &QPushButton::clicked, this, &RecordingDialog::stop);
  connect(name_, &QLineEdit::textChanged, this, &RecordingDialog::showState);
  connect(&study_, &RecordingStudy::recordingRead, this, &RecordingDialog::takeRecording);
  connect(&study_, &RecordingStudy::trackMade, this, &RecordingDialog::takeTrack);
  connect(&study_, &RecordingStudy::refused, this, [this](const Problem& problem) {
    refuse(recordingRefusalWords(shownFile(QFileInfo(file_).fileName()), problem));
  });
  connect(&study_, &RecordingStudy::failed, this, &RecordingDialog::refuse);
  connect(&study_, &RecordingStudy::finished, this, &RecordingDialog::showState);
  study_.read(file);
  showState();
  // Pictures take what room there is.
  constexpr int kCharacters = 120, kLines = 42;
  constexpr double kShareOfScreen = 0.9;
  const QSize wanted(kCharacters * fontMetrics().averageCharWidth(), kLines * fontMetrics().lineSpacing());
  fitToScreen(*this);
  resize(size().expandedTo(wanted.boundedTo(screen()->availableSize() * kShareOfScreen)));
}

void RecordingDialog::addChoices(QVBoxLayout& column) {
  auto* form = new QFormLayout;
  name_->setMaxLength(limits::kLongestName);
  name_->setAccessibleName(tr("Name of the track"));
  laps_->setAccessibleName(tr("Lap"));
  form->addRow(tr("&Name"), name_);
  laps_->setToolTip(
      tr("Laps that were found in the recording. The fastest of about the usual length is taken "
         "at first."));
  form->addRow(tr("&Lap"), laps_);
  auto* row = new QHBoxLayout;
  automatic_->setChecked(true);
  automatic_->setToolTip(tr("As much as the scatter of the points asks for."));
  smoothing_->setRange(0, kSliderSteps);
  smoothing_->setAccessibleName(tr("Smoothing"));
  smoothing_->setToolTip(
      tr("Wiggles shorter than this are smoothed away. Too little leaves bends that are not "
         "there; too much cuts those that are."));
  smoothingWords_->setMinimumWidth(10 * fontMetrics().averageCharWidth());
  row->addWidget(smoothing_, 1);
  row->addWidget(smoothingWords_);
  row->addWidget(automatic_);
  auto* label = new QLabel(tr("&Smoothing"));
  label->setBuddy(smoothing_);
  form->addRow(label, row);
  column.addLayout(form);
  connect(laps_, &QComboBox::activated, this, &RecordingDialog::makeAnew);
  connect(automatic_, &QCheckBox::clicked, this, &RecordingDialog::makeAnew);
  connect(smoothing_, &QSlider::valueChanged, this, [this] {
    automatic_->setChecked(false);
    makeAnew();
  });
}

void RecordingDialog::addPictures(QVBoxLayout& column) {
  map_->setEmptyWords(tr("The map appears here when the recording is read."));
  findings_->setWordWrap(true);
  findings_->setTextFormat(Qt::PlainText);  // it quotes the file
  findings_->setAccessibleName(tr("What was found"));
  findings_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  column.addWidget(findings_);
  column.addWidget(map_, 3);
  column.addWidget(curvature_, 2);
}

double RecordingDialog::sliderM() const {
  return metresOf(smoothing_->value());
}

void RecordingDialog::takeRecording(const ReadRecording& read) {
  read_ = read;
  laps_->clear();
  for (std::size_t i = 0; i < read.laps.size(); ++i) laps_->addItem(lapOption(read.laps[i], i + 1, units_));
  if (read.laps.empty()) laps_->addItem(tr("The whole line"));
}

void RecordingDialog::takeTrack(const RecordedTrack& track) {
  made_ = track;
  stale_ = false;
  if (track.lap) laps_->setCurrentIndex(static_cast<int>(*track.lap));
  if (automatic_->isChecked()) {
    const QSignalBlocker quiet(smoothing_);
    smoothing_->setValue(stepOf(track.smoothingM));
  }
  Track shown;
  shown.closed = track.closed;
  shown.path = SharedPath(track.path);
  const QStringList words = recordedTrackWords(track, units_);
  findings_->setText(words.join(QLatin1Char(' ')));
  map_->show(trackLine(shown), {}, words.value(0), units_);
  curvature_->show(track.path, units_);
  showState();
}

/// What was made before no longer stands for what is chosen.
void RecordingDialog::refuse(const QString& why) {
  made_.reset();
  findings_->setText(why);
  map_->setEmptyWords(tr("No track was made of the recording."));
  map_->show({}, {}, why, units_);
  curvature_->show({}, units_);
  showState();
}

void RecordingDialog::makeAnew() {
  if (!read_) return;
  TrackOptions options;
  if (!read_->laps.empty()) options.lap = static_cast<std::size_t>(std::max(laps_->currentIndex(), 0));
  if (!automatic_->isChecked()) options.smoothingM = sliderM();
  stale_ = true;
  study_.make(*read_, options);
  showState();
}

void RecordingDialog::stop() {
  study_.cancel();
  if (!read_) refuse(tr("Reading was stopped."));
  showState();
}

void RecordingDialog::showState() {
  const bool working = study_.running();
  progress_->setVisible(working && !read_);
  stop_->setVisible(working && !read_);
  laps_->setEnabled(read_ && read_->laps.size() > 1);
  smoothing_->setEnabled(read_.has_value());
  automatic_->setEnabled(read_.has_value());
  const bool known = made_ && automatic_->isChecked();
  smoothingWords_->setText(read_ ? shortDistanceText(known ? made_->smoothingM : sliderM(), units_)
                                 : QString());
  buttons_->button(QDialogButtonBox::Ok)
      ->setEnabled(made_ && !stale_ && !name_->text().simplified().isEmpty());
}

std::optional<Track> RecordingDialog::track() const {
  if (!made_ || stale_) return std::nullopt;
  Track track;
  track.name = name_->text().simplified().toStdString();
  track.closed = made_->closed;
  track.path = SharedPath(made_->path);
  return track;
}

}  // namespace layshaft::ui
