// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/track_fields.h"

#include <QLabel>
#include <QTimer>
#include <string>

#include "core/bike/track_rules.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/refusal_bubble.h"
#include "ui/words/field_table.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

/// The row of the field table that an effort has.
const Field& fieldOf(TrackEffort effort) {
  return *fieldRow(std::string("tracks[].") + keyOf(effort));
}

constexpr double kStartLeanDeg = 50.0;  // where stepping begins, in the middle of what is typical

}  // namespace

TrackFields::TrackFields(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), layout_(new QFormLayout(this)) {
  layout_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  layout_->setContentsMargins(0, 0, 0, 0);
  addChoice();
  for (const TrackEffort effort : {TrackEffort::CornerShare, TrackEffort::BrakeShare, TrackEffort::MaxLean})
    addEffort(effort);
}

void TrackFields::addChoice() {
  tracks_ = new CalmComboBox;
  tracks_->setAccessibleName(fieldLabel("ride.track"));
  const QString help = fieldHelp(*fieldRow("ride.track"), FieldRule(), UnitsShown());
  tracks_->setToolTip(help);
  // A name may be a sentence.
  tracks_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  constexpr int kCharacters = 14;
  tracks_->setMinimumContentsLength(kCharacters);
  auto* label = new QLabel(fieldLabel("ride.track"));
  label->setBuddy(tracks_);
  label->setToolTip(help);
  layout_->addRow(label, tracks_);
  connect(tracks_, &QComboBox::activated, this, [this](int index) {
    const auto& tracks = document_.profile().tracks;
    if (index < 0 || static_cast<std::size_t>(index) >= tracks.size()) return;
    if (const auto problem = TrackEdits(document_).ride(tracks[static_cast<std::size_t>(index)].name))
      refuse(*tracks_, spokenSentence(*problem));
  });
}

void TrackFields::addEffort(TrackEffort effort) {
  auto* box = new DecimalBox;
  const QString name = effortLabel(effort);
  const bool lean = effort == TrackEffort::MaxLean;
  const Limit& limit = limitOf(effort);
  box->setAccessibleName(nameWithUnit(name, fileUnitWord(limit.unit)));
  box->setKeyboardTracking(false);
  box->setDecimals(1);
  box->setMaximum(limit.high);
  box->setSingleStep(1.0);
  const auto& usual = fieldOf(effort).measure.usual;
  const QString ending = lean ? tr("°") : tr(" %");
  box->allowNone(limit.low - 1.0, limit.low,
                 usual ? tr("%1%2 (usual)").arg(QLocale().toString(*usual), ending) : tr("Not given"),
                 usual.value_or(kStartLeanDeg));
  box->setSuffix(ending);
  box->whenRefused(
      [this, box, name](const RefusedNumber& refusal) { refuse(*box, refusedNumber(name, refusal)); });
  auto* label = new QLabel(name);
  label->setBuddy(box);
  FieldRule rule;
  rule.limit = limit;
  const QString help = fieldHelp(fieldOf(effort), rule, UnitsShown());
  label->setToolTip(help);
  box->setToolTip(help);
  layout_->addRow(label, box);
  connect(box, &DecimalBox::valueChanged, this, [this, box, effort] { take(*box, effort); });
  efforts_.emplace_back(effort, box);
}

void TrackFields::take(DecimalBox& box, TrackEffort effort) {
  const auto problem = TrackEdits(document_).setEffort(effort, box.optionalValue());
  if (problem) refuse(box, spokenSentence(*problem));
}

/// The value from before comes back first.
void TrackFields::refuse(QWidget& field, const QString& why) {
  QTimer::singleShot(0, &field, [this, &field, why] {
    RefusalBubble::near(field).say(field, why, document_);
    emit refused(why);
  });
}

void TrackFields::refresh(const UnitsShown&) {
  const Profile& profile = document_.profile();
  QStringList names;
  for (const Track& track : profile.tracks) names << shownName(track.name);
  QStringList listed;
  for (int i = 0; i < tracks_->count(); ++i) listed << tracks_->itemText(i);
  if (names != listed) {
    tracks_->clear();
    tracks_->addItems(names);
  }
  const Track* track = trackOfTheRide(profile);
  tracks_->setCurrentIndex(track ? static_cast<int>(track - profile.tracks.data()) : -1);
  setEnabled(track != nullptr);
  for (const auto& [effort, box] : efforts_)
    showValue(*box, box->valueFor(TrackEdits(document_).effort(effort)));
}

}  // namespace layshaft::ui
