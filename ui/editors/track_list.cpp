// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/track_list.h"

#include <QGridLayout>
#include <QHeaderView>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/bike/track_rules.h"
#include "ui/words/plain_text.h"
#include "ui/words/track_words.h"

namespace layshaft::ui {
namespace {

constexpr int kName = 0, kLength = 1, kKind = 2;
constexpr int kCharacters = 58, kRowsInView = 7;

}  // namespace

TrackList::TrackList(QWidget* parent) : QWidget(parent), list_(new QTreeWidget), buttons_(new QGridLayout) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  list_->setAccessibleName(tr("Tracks"));
  list_->setHeaderLabels({tr("Track"), tr("Length"), tr("Made Of")});
  list_->setRootIsDecorated(false);
  list_->setUniformRowHeights(true);
  list_->setAllColumnsShowFocus(true);
  const int character = fontMetrics().averageCharWidth();
  list_->setMinimumWidth(kCharacters * character);
  list_->header()->setStretchLastSection(false);
  list_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
  list_->header()->setSectionResizeMode(kName, QHeaderView::Stretch);
  list_->setMinimumHeight(kRowsInView * fontMetrics().lineSpacing());
  column->addWidget(list_, 1);
  column->addLayout(buttons_);
  addButton(tr("&New"), tr("A track made of segments, to be typed or pasted."), &TrackList::newWanted);
  duplicate_ = addButton(tr("&Duplicate"), tr("Another track like this one."), &TrackList::duplicateWanted);
  remove_ = addButton(tr("Remo&ve"), tr("Takes this track out. It can be undone."), &TrackList::removeWanted);
  ride_ = addButton(tr("&Ride This One"), tr("Laps are ridden on this track from now on."),
                    &TrackList::rideWanted);
  addButton(tr("&Import a Recorded Lap…"),
            tr("Reads a lap out of a recording: GPX, NMEA, or a table of positions."),
            &TrackList::importWanted);
  addButton(tr("From &Another Bike…"), tr("Copies tracks out of another bike's file."),
            &TrackList::anotherBikeWanted);
  export_ = addButton(tr("&Export…"), tr("Saves this track as a table or as a GPX file."),
                      &TrackList::exportWanted);
  connect(list_, &QTreeWidget::currentItemChanged, this, [this] {
    if (filling_) return;
    offer();
    emit currentChanged();
  });
}

QPushButton* TrackList::addButton(const QString& text, const QString& help, void (TrackList::*wanted)()) {
  auto* button = new QPushButton(text);
  button->setAutoDefault(false);  // Enter is the table's
  button->setToolTip(help);
  const int place = buttons_->count();
  buttons_->addWidget(button, place / 2, place % 2);
  connect(button, &QPushButton::clicked, this, wanted);
  return button;
}

std::optional<std::size_t> TrackList::current() const {
  const int row = list_->indexOfTopLevelItem(list_->currentItem());
  return row < 0 ? std::nullopt : std::optional(static_cast<std::size_t>(row));
}

void TrackList::look(std::size_t track) {
  list_->setCurrentItem(list_->topLevelItem(static_cast<int>(track)));
}

/// Only what there is something to do for.
void TrackList::offer() {
  const auto at = current();
  for (QPushButton* button : {duplicate_, remove_, export_}) button->setEnabled(at.has_value());
  ride_->setEnabled(at && at != ridden_);
}

void TrackList::show(const Profile& profile, const UnitsShown& units) {
  const auto& tracks = profile.tracks;
  const Track* ridden = trackOfTheRide(profile);
  ridden_ = ridden ? std::optional(static_cast<std::size_t>(ridden - tracks.data())) : std::nullopt;
  const auto before = current();
  filling_ = true;
  while (list_->topLevelItemCount() > static_cast<int>(tracks.size()))
    delete list_->takeTopLevelItem(list_->topLevelItemCount() - 1);
  for (std::size_t i = 0; i < tracks.size(); ++i) {
    const int row = static_cast<int>(i);
    if (row == list_->topLevelItemCount()) list_->addTopLevelItem(new QTreeWidgetItem);
    QTreeWidgetItem& item = *list_->topLevelItem(row);
    const QString kind = trackKindWords(tracks[i]);
    item.setText(kName, shownName(tracks[i].name));
    item.setText(kLength, trackLengthText(trackLengthM(tracks[i]), units));
    item.setText(kKind, i == ridden_
                            ? tr("%1; ridden", "what a track is made of, and that it is used").arg(kind)
                            : kind);
    for (const int c : {kName, kKind}) item.setToolTip(c, asMarkup(item.text(c)));
  }
  if (!tracks.empty()) look(std::min(before.value_or(ridden_.value_or(0)), tracks.size() - 1));
  filling_ = false;
  offer();
}

}  // namespace layshaft::ui
