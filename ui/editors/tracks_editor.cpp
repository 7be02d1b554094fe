// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/tracks_editor.h"

#include <QBoxLayout>
#include <QCheckBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QTimer>
#include <algorithm>

#include "core/limits.h"
#include "ui/charts/curvature_preview.h"
#include "ui/charts/track_preview.h"
#include "ui/document/track_edits.h"
#include "ui/document/track_list_edits.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/refusal_bubble.h"
#include "ui/editors/segments_editor.h"
#include "ui/editors/track_list.h"
#include "ui/words/field_table.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"
#include "ui/words/track_words.h"

namespace layshaft::ui {
namespace {

constexpr int kTrackRowsInView = 7;
constexpr double kUsualStartKmh = 60.0;  // where stepping begins

const Field& startField() {
  return *fieldRow("tracks[].start_speed_kmh");
}

}  // namespace

TracksEditor::TracksEditor(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      parts_(new QBoxLayout(QBoxLayout::LeftToRight, this)),
      list_(new TrackList),
      name_(new QLineEdit),
      closed_(new QCheckBox(tr("C&losed: a lap ends where it begins"))),
      startSpeed_(new DecimalBox),
      startLabel_(new QLabel(tr("&Start speed"))),
      made_(new QStackedWidget),
      segments_(new SegmentsEditor(document)),
      complaints_(new QLabel),
      path_(new QLabel),
      curvature_(new CurvaturePreview),
      shape_(new QLabel),
      map_(new TrackPreview) {
  parts_->setContentsMargins(0, 0, 0, 0);
  shown_ = makeTrack();
  parts_->addWidget(list_);
  parts_->addWidget(shown_, 1);
  followList();
  connect(&document_, &Document::changed, this, [this] {
    if (isVisible()) refresh(units_);
  });
}

QSize TracksEditor::minimumSizeHint() const {
  const int widest = std::max(list_->minimumSizeHint().width(), shown_->minimumSizeHint().width());
  return {widest, parts_->minimumSize().height()};
}

void TracksEditor::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  const int both = list_->minimumSizeHint().width() + shown_->minimumSizeHint().width() + parts_->spacing();
  parts_->setDirection(width() >= both ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

void TracksEditor::followList() {
  connect(list_, &TrackList::currentChanged, this, &TracksEditor::showTrack);
  // A key may want something while a name is half typed.
  const auto on = [this](auto wanted, auto what) {
    connect(list_, wanted, this, [this, what] {
      rename();
      (this->*what)();
    });
  };
  on(&TrackList::newWanted, &TracksEditor::make);
  on(&TrackList::duplicateWanted, &TracksEditor::duplicate);
  on(&TrackList::removeWanted, &TracksEditor::remove);
  on(&TrackList::rideWanted, &TracksEditor::ride);
  on(&TrackList::importWanted, &TracksEditor::importWanted);
  on(&TrackList::anotherBikeWanted, &TracksEditor::anotherBikeWanted);
  connect(list_, &TrackList::exportWanted, this, [this] {
    if (const auto at = current()) emit exportWanted(*at);
  });
}

QWidget* TracksEditor::makeTrack() {
  auto* part = new QWidget;
  auto* column = new QVBoxLayout(part);
  column->setContentsMargins(0, 0, 0, 0);
  auto* form = new QFormLayout;
  addFields(*form);
  column->addLayout(form);
  segments_->table().setMinimumHeight(segments_->table().verticalHeader()->defaultSectionSize() *
                                      kTrackRowsInView);
  made_->addWidget(segments_);
  auto* recorded = new QWidget;
  auto* lines = new QVBoxLayout(recorded);
  lines->setContentsMargins(0, 0, 0, 0);
  path_->setWordWrap(true);
  path_->setTextFormat(Qt::PlainText);
  lines->addWidget(path_);
  lines->addWidget(curvature_, 1);
  made_->addWidget(recorded);
  column->addWidget(made_, 3);
  for (QLabel* label : {complaints_, shape_}) {
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    column->addWidget(label);
  }
  complaints_->setAccessibleName(tr("What is not understood"));
  complaints_->hide();
  shape_->setAccessibleName(tr("Length and closing"));
  column->addWidget(map_, 2);
  connect(segments_, &SegmentsEditor::said, this, [this](const QString& why) {
    complaints_->setText(why);
    complaints_->setVisible(!why.isEmpty());
  });
  return part;
}

void TracksEditor::addFields(QFormLayout& form) {
  name_->setMaxLength(limits::kLongestName);
  auto* label = new QLabel(tr("Na&me"));
  label->setBuddy(name_);
  name_->setAccessibleName(tr("Name of the track"));
  form.addRow(label, name_);
  closed_->setToolTip(fieldHelp(*fieldRow("tracks[].closed"), FieldRule(), units_));
  startSpeed_->setKeyboardTracking(false);
  startLabel_->setBuddy(startSpeed_);
  auto* row = new QHBoxLayout;
  row->addWidget(closed_);
  row->addStretch();
  row->addWidget(startLabel_);
  row->addWidget(startSpeed_);
  form.addRow(row);
  connect(name_, &QLineEdit::editingFinished, this, &TracksEditor::rename);
  connect(closed_, &QCheckBox::clicked, this, [this](bool on) {
    if (const auto at = current()) report(TrackListEdits(document_).setClosed(*at, on), {});
  });
  connect(startSpeed_, &DecimalBox::valueChanged, this, &TracksEditor::setStartSpeed);
  startSpeed_->whenRefused([this](const RefusedNumber& refusal) {
    const QString why = refusedNumber(tr("Start speed"), refusal);
    // The value from before comes back first.
    QTimer::singleShot(0, startSpeed_, [this, why] {
      RefusalBubble::near(*startSpeed_).say(*startSpeed_, why, document_);
      emit said(why);
    });
  });
}

std::optional<std::size_t> TracksEditor::current() const {
  const auto at = list_->current();
  return at && *at < document_.profile().tracks.size() ? at : std::nullopt;
}

const Track* TracksEditor::track() const {
  const auto at = current();
  return at ? &document_.profile().tracks[*at] : nullptr;
}

void TracksEditor::report(const std::optional<Problem>& problem, const QString& done) {
  if (problem) {
    showTrack();  // as it is
    emit said(spokenSentence(*problem));
  } else if (!done.isEmpty()) {
    emit said(done);
  }
}

void TracksEditor::add(const std::vector<Track>& tracks) {
  const std::size_t first = document_.profile().tracks.size();
  added(first, TrackListEdits(document_).add(tracks));
}

/// Those from `first` on are new: the first of them is looked at.
void TracksEditor::added(std::size_t first, const std::optional<Problem>& problem) {
  refresh(units_);
  const auto& now = document_.profile().tracks;
  if (problem || first >= now.size()) return report(problem, {});
  list_->look(first);
  const auto count = static_cast<int>(now.size() - first);
  report({}, count == 1 ? tr("Added the track “%1”.").arg(shownName(now[first].name))
                        : tr("Added %n tracks.", nullptr, count));
}

void TracksEditor::make() {
  Track fresh;
  fresh.name = tr("Track").toStdString();
  fresh.closed = true;
  const std::size_t first = document_.profile().tracks.size();
  add({fresh});
  if (document_.profile().tracks.size() == first) return;
  name_->setFocus();
  name_->selectAll();
}

void TracksEditor::duplicate() {
  const std::size_t first = document_.profile().tracks.size();
  if (const auto at = current()) added(first, TrackListEdits(document_).duplicate(*at));
}

void TracksEditor::remove() {
  const auto at = current();
  if (!at) return;
  const QString name = shownName(track()->name);
  const auto problem = TrackListEdits(document_).remove(*at);
  refresh(units_);
  report(problem, tr("Took out the track “%1”; Undo brings it back.").arg(name));
}

void TracksEditor::ride() {
  if (!track()) return;
  const std::string name = track()->name;
  report(TrackEdits(document_).ride(name), tr("Laps are ridden on “%1”.").arg(shownName(name)));
}

void TracksEditor::rename() {
  const auto at = current();
  const QString typed = name_->text();
  name_->setModified(false);  // from now on it shows what the track is called
  if (!at || typed.simplified() == shownName(track()->name)) return;
  report(TrackListEdits(document_).rename(*at, typed), {});
}

void TracksEditor::setStartSpeed() {
  const auto at = current();
  if (!at) return;
  auto speed = startSpeed_->optionalValue();
  if (speed) speed = fileNumber(startField(), *speed, units_);
  report(TrackListEdits(document_).setStartSpeed(*at, speed), {});
}

void TracksEditor::showStart(const Track& shown) {
  const bool closed = shown.closed.value_or(false);
  startLabel_->setEnabled(!closed);
  startSpeed_->setEnabled(!closed);
  {
    const QSignalBlocker quiet(startSpeed_);
    startSpeed_->setDecimals(typedDecimals(startField(), units_));
    startSpeed_->setMaximum(shownNumber(startField(), limits::kSpeedKmh.high, units_));
    startSpeed_->setSuffix(QLatin1Char(' ') + units_.name(Quantity::Speed));
    startSpeed_->allowNone(-1.0, 0.0, tr("Standing start"),
                           shownNumber(startField(), kUsualStartKmh, units_));
  }
  startSpeed_->setAccessibleName(nameWithUnit(tr("Start speed"), units_.name(Quantity::Speed)));
  std::optional<double> start;
  if (shown.startSpeedKmh) start = shownValue(startField(), *shown.startSpeedKmh, units_);
  showValue(*startSpeed_, startSpeed_->valueFor(start));
}

void TracksEditor::showTrack() {
  const Track* now = track();
  shown_->setEnabled(now != nullptr);
  const Track none;
  const Track& shown = now ? *now : none;
  if (!name_->hasFocus() || !name_->isModified()) name_->setText(shownName(shown.name));
  closed_->setChecked(shown.closed.value_or(false));
  showStart(shown);
  segments_->edit(current());
  segments_->refresh(units_);
  draw(now);
}

/// Only what is another: a spin step elsewhere draws no map.
void TracksEditor::draw(const Track* now) {
  const Drawn wanted{now ? std::optional(*now) : std::nullopt, units_};
  if (drawn_ == wanted) return;
  drawn_ = wanted;
  const Track shown = now ? *now : Track();
  made_->setCurrentIndex(shown.path ? 1 : 0);
  if (shown.path) {
    path_->setText(recordedPathWords(*shown.path, units_));
    curvature_->show(*shown.path, units_);
  }
  const TrackLine line = trackLine(shown);
  const QString words = now ? trackShapeWords(shown, line, units_) : QString();
  shape_->setText(words);
  map_->setEmptyWords(now ? tr("The map grows with the segments.")
                          : tr("No tracks yet: make a new one, import a recorded lap, or copy one from "
                               "another bike."));
  map_->show(line, namedPlaces(shown, line), words, units_);
}

void TracksEditor::refresh(const UnitsShown& units) {
  units_ = units;
  list_->show(document_.profile(), units_);
  showTrack();
}

}  // namespace layshaft::ui
