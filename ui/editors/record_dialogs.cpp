// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/record_dialogs.h"

#include <QHBoxLayout>
#include <QLabel>
#include <algorithm>

#include "core/bike/words.h"
#include "core/profile_file/entry_access.h"
#include "ui/words/choice_words.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"
#include "ui/words/record_words.h"
#include "ui/words/use_words.h"

namespace layshaft::ui {
namespace {

constexpr int kHighestRating = 10;

/// What a file could not hold, such as a text without end.
template <class Entry>
void complainOf(const Entry& entry, QString& complaint) {
  if (!complaint.isEmpty()) return;
  if (auto problem = entryProblem(entry)) {
    problem->path.clear();
    complaint = spokenSentence(*problem);
  }
}

/// The place of a choice that may be open, in a list with "not noted" first.
template <class Enum, std::size_t N>
int placeOf(const std::optional<Enum>& value, const Words<Enum, N>& words) {
  for (std::size_t i = 0; value && i < N; ++i)
    if (words[i].first == *value) return static_cast<int>(i) + 1;
  return 0;
}

QString plain(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

ServiceDialog::ServiceDialog(const Service& start, UseUnit useUnit, const UnitsShown& units, QWidget* parent)
    : RecordForm(tr("New Service"), tr("Write Down"), parent), useUnit_(useUnit), units_(units) {
  day_ = addDay(tr("&Date"), start.date);
  use_ = addLine(tr("&Use, %1").arg(useName(useUnit, units)),
                 start.at ? number(shownUse(useUnit, *start.at, units), useDecimals(useUnit)) : QString(),
                 tr("Reading of the hour meter or odometer."));
  auto* fresh = new QWidget;
  auto* row = new QHBoxLayout(fresh);
  row->setContentsMargins(0, 0, 0, 0);
  const auto box = [&](const QString& text, const std::optional<bool>& ticked) {
    auto* made = new QCheckBox(text);
    made->setChecked(ticked.value_or(false));
    row->addWidget(made);
    return made;
  };
  chain_ = box(tr("New &chain"), start.newChain);
  front_ = box(tr("New &front sprocket"), start.newFrontSprocket);
  rear_ = box(tr("New &rear sprocket"), start.newRearSprocket);
  chain_->setToolTip(tr(
      "Wear is counted from this entry's use on, and an elongation typed for the old chain is taken out."));
  row->addStretch();
  addRow(QString(), fresh);
  parts_ = addText(tr("&Parts fitted"), plain(start.parts));
  note_ = addText(tr("&Note"), plain(start.note));
  begin();
}

Service ServiceDialog::read(QString& complaint) const {
  Service entry;
  entry.date = dayOf(*day_);
  const Limit limit{0.0, shownUse(useUnit_, limits::kUse.high, units_), ""};
  if (const auto shown = numberOf(*use_, limit, complaint)) entry.at = fileUse(useUnit_, *shown, units_);
  const auto ticked = [](const QCheckBox& box) {
    return box.isChecked() ? std::optional(true) : std::nullopt;
  };
  entry.newChain = ticked(*chain_);
  entry.newFrontSprocket = ticked(*front_);
  entry.newRearSprocket = ticked(*rear_);
  entry.parts = textOf(*parts_);
  entry.note = textOf(*note_);
  if (!entry.newChain && !entry.newFrontSprocket && !entry.newRearSprocket && entry.parts.empty() &&
      entry.note.empty() && complaint.isEmpty())
    complaint = tr("Say what was done: tick a new part, or name parts or work.");
  complainOf(entry, complaint);
  return entry;
}

Service ServiceDialog::entry() const {
  QString complaint;
  return read(complaint);
}

QString ServiceDialog::complaint() const {
  QString complaint;
  read(complaint);
  return complaint;
}

TrackNoteDialog::TrackNoteDialog(const TrackNote& start, QWidget* parent)
    : RecordForm(tr("New Track Note"), tr("Write Down"), parent), start_(start) {
  if (start.setup) addWords(tr("Setup, as proposed"), setupText(*start.setup));
  day_ = addDay(tr("&Date"), start.date);
  place_ = addLine(tr("&Place"), plain(start.place));
  QStringList surfaces{tr("Not noted")};
  for (const auto& choice : kSurfaceWords) surfaces << choiceOption(choice.second);
  surface_ = addChoice(tr("&Surface"), surfaces, placeOf(start.surface, kSurfaceWords));
  weather_ = addLine(tr("&Weather"), plain(start.weather));
  gear_ = addLine(tr("&Gear at the end of the straight"),
                  start.gearAtEnd ? number(*start.gearAtEnd, 0) : QString());
  rpm_ = addLine(tr("&Revs there, rpm"), start.rpmAtEnd ? number(*start.rpmAtEnd, 0) : QString());
  limiter_ = addChoice(tr("L&imiter hit"), {tr("Not noted"), flagOption(true), flagOption(false)},
                       start.limiterHit ? (*start.limiterHit ? 1 : 2) : 0);
  lapTime_ = addLine(tr("&Lap time"), start.lapTimeS ? lapTimeText(*start.lapTimeS) : QString(),
                     tr("Seconds, or minutes and seconds as in %1.").arg(lapTimeText(92.41)));
  QStringList ratings{tr("Not noted")};
  for (int i = 1; i <= kHighestRating; ++i) ratings << number(i, 0);
  rating_ = addChoice(tr("Rider's &rating, 10 is best"), ratings, start.rating.value_or(0));
  words_ = addText(tr("Rider's w&ords"), plain(start.words));
  begin();
}

TrackNote TrackNoteDialog::read(QString& complaint) const {
  TrackNote entry = start_;
  entry.date = dayOf(*day_);
  entry.place = textOf(*place_);
  const int surface = surface_->currentIndex();
  entry.surface =
      surface > 0 ? std::optional(kSurfaceWords[static_cast<std::size_t>(surface) - 1].first) : std::nullopt;
  entry.weather = textOf(*weather_);
  entry.gearAtEnd = wholeOf(*gear_, limits::kGear, complaint);
  entry.rpmAtEnd = numberOf(*rpm_, limits::kNoteRpm, complaint);
  const int limiter = limiter_->currentIndex();
  entry.limiterHit = limiter > 0 ? std::optional(limiter == 1) : std::nullopt;
  entry.lapTimeS.reset();
  if (const QString text = lapTime_->text().trimmed(); !text.isEmpty()) {
    entry.lapTimeS = typedLapTime(text);
    if (!entry.lapTimeS)
      say(complaint, *lapTime_,
          tr("seconds are expected, or minutes and seconds as in %1").arg(lapTimeText(92.41)));
    else if (!limits::kLapTimeS.contains(*entry.lapTimeS) && complaint.isEmpty())
      complaint = outsideAllowed(nameOf(*lapTime_), text, limits::kLapTimeS.low, limits::kLapTimeS.high);
  }
  const int rating = rating_->currentIndex();
  entry.rating = rating > 0 ? std::optional(rating) : std::nullopt;
  entry.words = textOf(*words_);
  complainOf(entry, complaint);
  return entry;
}

TrackNote TrackNoteDialog::entry() const {
  QString complaint;
  return read(complaint);
}

QString TrackNoteDialog::complaint() const {
  QString complaint;
  read(complaint);
  return complaint;
}

StrikeDialog::StrikeDialog(const QString& entry, const Date& today, QWidget* parent)
    : RecordForm(tr("Strike Through"), tr("Strike Through"), parent), today_(today) {
  addWords(tr("Entry"), entry);
  reason_ = addLine(tr("&Reason"), QString(), tr("It stays with the entry, which no longer counts."));
  begin();
}

Struck StrikeDialog::struck() const {
  return {.date = today_, .reason = textOf(*reason_), .extras = {}};
}

QString StrikeDialog::complaint() const {
  if (textOf(*reason_).empty()) return tr("Give a reason: the entry stays in the records with it.");
  constexpr int kMost = limits::kLongestRecordText;
  return reason_->text().size() > kMost ? tr("%1 characters at most.").arg(number(kMost, 0)) : QString();
}

}  // namespace layshaft::ui
